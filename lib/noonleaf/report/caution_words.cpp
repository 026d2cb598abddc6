#include <algorithm>

#include "noonleaf/report/care_rules.hpp"
#include "noonleaf/report/labels.hpp"
#include "noonleaf/report/outdoors_words.hpp"
#include "noonleaf/report/today_phrases.hpp"
#include "noonleaf/report/today_words.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double rain_worth_a_look_mm = 2.0;

std::string say(const TodayView& view, TodayPhrase id, std::initializer_list<Filling> fillings = {}) {
  return fill(view.language, id, fillings);
}

bool any_run(const TodayView& view) { return !view.today.opening_order.empty(); }

void add_heat_caution(const TodayView& view, std::vector<std::string>& cautions) {
  const PeopleDay& people = view.today.people;
  if (!people.peak_category || *people.peak_category == HeatCategory::below_caution) return;
  const QuantityText text = view.text();
  const auto on_the_hour = [&text](int hour) { return text.the_clock(std::chrono::hours(hour)); };
  std::string words = say(view, TodayPhrase::heat_index,
                          {{"temperature", text.temperature(people.peak_c)},
                           {"hour", on_the_hour(people.peak_hour)},
                           {"category", label(view.language, *people.peak_category)}});
  words += beyond_chart_words(view.language, view.today.sky.estimate.t_max_c, people.peak_c);
  if (const auto hour = coolest_hours(people))
    words += say(view, TodayPhrase::coolest, {{"hour", on_the_hour(*hour)}});
  cautions.push_back(words + say(view, TodayPhrase::heat_policy));
}

bool wets_beside_the_bed(const TodayView& view) {
  return std::any_of(view.today.opening_order.begin(), view.today.opening_order.end(),
                     [&](std::size_t index) {
                       const Bed& bed = view.garden.beds[view.today.beds[index].bed];
                       return view.garden.sprinklers[bed.sprinkler].rate.off_target_frac > 0;
                     });
}

bool any_flowers_for_bees(const TodayView& view) {
  return std::any_of(view.today.beds.begin(), view.today.beds.end(), [](const BedToday& bed) {
    return std::any_of(bed.plantings.begin(), bed.plantings.end(), [](const PlantingToday& planting) {
      return has_flowers_for_bees(*planting.crop, planting.stage);
    });
  });
}

}  // namespace

std::vector<std::string> caution_words(const TodayView& view) {
  std::vector<std::string> cautions;
  add_heat_caution(view, cautions);
  if (!any_run(view)) return cautions;
  const SkyDay& sky = view.today.sky;
  if (sky.estimate.t_max_c >= hot_hose_c) cautions.push_back(say(view, TodayPhrase::hot_hose));
  if (wets_beside_the_bed(view)) cautions.push_back(say(view, TodayPhrase::slippery));
  cautions.push_back(say(view, TodayPhrase::backflow));
  if (any_flowers_for_bees(view)) cautions.push_back(say(view, TodayPhrase::bees));
  cautions.push_back(say(view, TodayPhrase::electricity));
  if (sky.weather.rain_mm >= rain_worth_a_look_mm && sky.origin == DayOrigin::forecast)
    cautions.push_back(say(view, TodayPhrase::rain_forecast));
  cautions.push_back(say(view, TodayPhrase::local_rules));
  return cautions;
}

}  // namespace v1
}  // namespace noonleaf
