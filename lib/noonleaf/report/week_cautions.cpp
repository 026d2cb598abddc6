#include <algorithm>
#include <cmath>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/heat/people.hpp"
#include "noonleaf/report/care_rules.hpp"
#include "noonleaf/report/sentences.hpp"
#include "noonleaf/report/week_sections.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::year_month_day;

bool any_run(const WeekView& view, bool (*matters)(const WeekView&, const WeekRun&)) {
  return std::any_of(view.plan.runs.begin(), view.plan.runs.end(),
                     [&](const WeekRun& run) { return matters(view, run); });
}

bool wets_beside_the_bed(const WeekView& view, const WeekRun& run) {
  return view.garden.sprinklers[run.sprinkler].rate.off_target_frac > 0;
}

double hottest_c(const WeekView& view) {
  double hottest = missing;
  for (const SkyDay& day : view.plan.sky) {
    if (is_known(day.estimate.t_max_c)) hottest = std::fmax(hottest, day.estimate.t_max_c);  // fmax drops NaN
  }
  return hottest;
}

/// Whether a day of the plan brings a heat index of the second category (90 °F) in the shade, or, where
/// humidity is not known, that temperature.
bool is_hot_for_people(const WeekView& view) {
  constexpr double extreme_caution_c = 32.2;  // 90 °F, the lower edge of "extreme caution" (heat/people.hpp)
  return std::any_of(view.plan.sky.begin(), view.plan.sky.end(), [&](const SkyDay& day) {
    const double t_c = day.estimate.t_max_c, rh_pct = day.estimate.rh_min_pct;
    if (!is_known(t_c)) return false;
    if (!is_known(rh_pct)) return t_c >= extreme_caution_c;
    return heat_index_c({.t_c = t_c, .rh_pct = rh_pct}) >= extreme_caution_c;
  });
}

bool flowers_for_bees(const BedPlanting& planting, year_month_day date) {
  if (planting.pulled && *planting.pulled <= date) return false;
  if (planting.season.start > date) return false;
  const Crop& crop = find_crop(planting.crop);
  return has_flowers_for_bees(crop, growth_day(crop, planting.season, date, {}).stage);
}

std::vector<std::string> beds_with_flowers(const WeekView& view) {
  std::vector<std::string> letters;
  for (std::size_t index = 0; index < view.garden.beds.size(); ++index) {
    const auto& plantings = view.garden.beds[index].plantings;
    const bool flowers = std::any_of(plantings.begin(), plantings.end(), [&](const BedPlanting& planting) {
      return flowers_for_bees(planting, view.plan.first);
    });
    if (flowers) letters.push_back(bed_letter(view, index));
  }
  return letters;
}

std::vector<std::string> reclaimed_taps(const WeekView& view) {
  std::vector<std::string> names;
  for (std::size_t index = 0; index < view.garden.taps.size(); ++index) {
    if (view.garden.taps[index].reclaimed) names.push_back(tap_name(view, index));
  }
  return names;
}

}  // namespace

SheetSection care_section(const WeekView& view) {
  std::vector<std::string> sentences;
  if (!view.plan.runs.empty()) {
    const double hottest = hottest_c(view);
    if (is_missing(hottest) || hottest >= hot_hose_c) sentences.push_back(say(view, Phrase::care_hot_hose));
    sentences.push_back(say(view, Phrase::care_backflow));
    if (any_run(view, wets_beside_the_bed)) sentences.push_back(say(view, Phrase::care_slips));
    sentences.push_back(say(view, Phrase::care_electricity));
  }
  const auto reclaimed = reclaimed_taps(view);
  if (!reclaimed.empty())
    sentences.push_back(say(view, Phrase::care_reclaimed, {{"taps", view.text().list(reclaimed)}}));
  sentences.push_back(say(view, Phrase::care_lightning));
  const auto flowers = beds_with_flowers(view);
  if (!flowers.empty())
    sentences.push_back(say(view, Phrase::care_bees, {{"beds", beds_words(view, flowers)}}));
  if (is_hot_for_people(view)) sentences.push_back(say(view, Phrase::care_heat));
  sentences.push_back(say(view, Phrase::care_local));
  return {say(view, Phrase::care_title), {joined(sentences, " ")}};
}

}  // namespace v1
}  // namespace noonleaf
