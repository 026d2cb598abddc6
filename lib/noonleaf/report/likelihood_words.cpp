#include "noonleaf/report/likelihood_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/report/labels.hpp"
#include "noonleaf/report/likelihood_phrases.hpp"
#include "noonleaf/report/local_text.hpp"
#include "noonleaf/report/quantity_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double worth_a_word_frac = 0.05, nearly_all_frac = 0.95, likely_frac = 0.5;

const LikelihoodPhrases& phrases_of(Language language) {
  return language == Language::en ? likelihood_english : likelihood_spanish;
}

std::string day_words(const LikelihoodView& view, std::chrono::year_month_day date) {
  return view.language == Language::en ? day_name(date)
                                       : LocalText(view.language, view.garden.site.units).day(date);
}

std::string crop_words(const LikelihoodView& view, std::size_t bed, std::size_t planting) {
  const Crop& crop = find_crop(view.garden.beds[bed].plantings[planting].crop);
  return std::string(crop_name(view.language, crop));
}

/// The first day on which a share is reached; none = the last one.
template <class Member>
const DayLikelihood& first_at(const std::vector<DayLikelihood>& days, Member member, double share) {
  const auto found =
      std::find_if(days.begin(), days.end(), [&](const DayLikelihood& day) { return day.*member >= share; });
  return found == days.end() ? days.back() : *found;
}

std::string limit_words(const LikelihoodView& view, const std::string& crop, const std::string& bed,
                        const std::vector<DayLikelihood>& days) {
  const LikelihoodPhrases& phrases = phrases_of(view.language);
  const auto share = [&](const DayLikelihood& day) { return share_words(day.left_frac, view.language); };
  const DayLikelihood& today = days.front();
  const DayLikelihood& nearly = first_at(days, &DayLikelihood::left_frac, nearly_all_frac);
  if (nearly.left_frac < worth_a_word_frac)
    return fmt::format(fmt::runtime(phrases.limit_not), crop, bed, share(nearly),
                       day_words(view, nearly.date));
  std::string words;
  const DayLikelihood* told = &today;
  if (today.left_frac >= worth_a_word_frac) {
    words = fmt::format(fmt::runtime(phrases.limit_today), crop, bed, share(today));
  } else {
    told = &first_at(days, &DayLikelihood::left_frac, likely_frac);
    words = fmt::format(fmt::runtime(phrases.limit_by), crop, bed, day_words(view, told->date), share(*told));
  }
  if (told->left_frac < nearly_all_frac && nearly.date != told->date)
    words += fmt::format(fmt::runtime(phrases.limit_also_by), day_words(view, nearly.date), share(nearly));
  return words;
}

/// `wilted` is the share that counts as wilted: no turgor at dawn, or roots that give less than half.
std::string wilt_words(const LikelihoodView& view, const std::vector<DayLikelihood>& days,
                       double DayLikelihood::*wilted) {
  const LikelihoodPhrases& phrases = phrases_of(view.language);
  const DayLikelihood& day = first_at(days, wilted, likely_frac);
  if (is_missing(day.*wilted)) return std::string(phrases.no_hours);
  const std::string share = share_words(day.*wilted, view.language);
  if (day.*wilted < worth_a_word_frac)
    return fmt::format(fmt::runtime(phrases.wilts_not), share, day_words(view, day.date));
  return fmt::format(fmt::runtime(phrases.wilts_by), day_words(view, day.date), share);
}

std::string minutes_text(double minutes) { return fmt::format("{:.0f}", std::max(1.0, minutes)); }

/// Whether any day that was followed lies behind the forecast.
bool goes_behind_forecast(const Likelihood& likelihood) {
  for (const BedLikelihood& bed : likelihood.beds)
    for (const PlantingLikelihood& planting : bed.plantings)
      for (const DayLikelihood& day : planting.days)
        if (day.from != MemberDayFrom::measured && day.from != MemberDayFrom::forecast) return true;
  return false;
}

}  // namespace

std::string share_words(double share, Language language) {
  const LikelihoodPhrases& phrases = phrases_of(language);
  if (share <= 0) return std::string(phrases.none);
  if (share >= 1) return std::string(phrases.all);
  const long tenths = std::lround(10 * share);
  if (tenths == 0) return std::string(phrases.hardly_any);
  if (tenths == 10) return std::string(phrases.nearly_all);
  return fmt::format(fmt::runtime(phrases.in_tenths), tenths);
}

std::string alert_likelihood_words(double share, Language language) {
  const LikelihoodPhrases& phrases = phrases_of(language);
  return std::string(phrases.how_sure) + ": " +
         fmt::format(fmt::runtime(phrases.alert_likely), share_words(share, language)) + ".";
}

std::string behind_forecast_words(const LikelihoodView& view) {
  const LikelihoodPhrases& phrases = phrases_of(view.language);
  const std::string until = day_words(view, view.likelihood.forecast_to);
  switch (view.likelihood.behind_forecast) {
    case MemberDayFrom::past_years:
      return fmt::format(fmt::runtime(phrases.past_years), until, view.likelihood.past_years);
    case MemberDayFrom::this_year:
      return fmt::format(fmt::runtime(phrases.this_year), until);
    default:
      return fmt::format(fmt::runtime(phrases.last_days), until);
  }
}

std::vector<std::string> likelihood_head_words(const LikelihoodView& view) {
  const LikelihoodPhrases& phrases = phrases_of(view.language);
  const std::array water{phrases.without_water, phrases.with_plan,
                         phrases.until_leaving};  // as in WaterTried
  std::vector<std::string> words{fmt::format(fmt::runtime(phrases.tried), view.likelihood.members) + " " +
                                 std::string(water[static_cast<std::size_t>(view.water)])};
  if (goes_behind_forecast(view.likelihood)) words.push_back(behind_forecast_words(view));
  words.push_back(fmt::format("{} {}", phrases.assumed, phrases.rain_counts));
  return words;
}

std::string planting_likelihood_words(const LikelihoodView& view, const BedLikelihood& bed,
                                      const PlantingLikelihood& planting) {
  if (planting.days.empty() || is_missing(planting.days.front().left_frac)) return {};
  return limit_words(view, sentence_start(crop_words(view, bed.bed, planting.planting)),
                     view.garden.beds[bed.bed].id, planting.days) +
         wilt_words(view, planting.days, &DayLikelihood::wilted_frac);
}

std::vector<std::string> likelihood_bed_words(const LikelihoodView& view) {
  std::vector<std::string> lines;
  for (const BedLikelihood& bed : view.likelihood.beds)
    for (const PlantingLikelihood& planting : bed.plantings) {
      std::string line = planting_likelihood_words(view, bed, planting);
      if (!line.empty()) lines.push_back(std::move(line));
    }
  if (!lines.empty()) lines.push_back(std::string(phrases_of(view.language).low_quarter));
  return lines;
}

std::string absence_likelihood_words(const LikelihoodView& view, std::size_t bed, std::size_t planting,
                                     std::chrono::year_month_day from) {
  const LikelihoodPhrases& phrases = phrases_of(view.language);
  for (const BedLikelihood& each : view.likelihood.beds)
    for (const PlantingLikelihood& one : each.plantings) {
      if (each.bed != bed || one.planting != planting) continue;
      std::vector<DayLikelihood> days;
      for (const DayLikelihood& day : one.days)
        if (std::chrono::sys_days(day.date) >= std::chrono::sys_days(from)) days.push_back(day);
      if (days.empty() || is_missing(days.front().left_frac)) return {};
      const DayLikelihood& half = first_at(days, &DayLikelihood::left_frac, likely_frac);
      return fmt::format(fmt::runtime(phrases.absence), day_words(view, half.date),
                         share_words(half.left_frac, view.language)) +
             wilt_words(view, days, &DayLikelihood::halved_frac);
    }
  return {};
}

std::vector<std::string> minutes_doubt_words(const LikelihoodView& view) {
  std::vector<std::string> lines;
  for (const MinutesDoubt& doubt : view.likelihood.minutes)
    lines.push_back(fmt::format(fmt::runtime(phrases_of(view.language).minutes), minutes_text(doubt.minutes),
                                view.garden.beds[doubt.bed].id, minutes_text(doubt.p10_min),
                                minutes_text(doubt.p90_min)));
  return lines;
}

std::string measure_next_words(const LikelihoodView& view) {
  if (view.likelihood.measurements.empty()) return {};
  const LikelihoodPhrases& phrases = phrases_of(view.language);
  const MeasurementGain& best = view.likelihood.measurements.front();
  const Bed& bed = view.garden.beds[best.bed];
  const Sprinkler& sprinkler = view.garden.sprinklers[bed.sprinkler];
  const std::string name = local_name(view.language, sprinkler.name, sprinkler.name_es);
  std::string what;
  switch (best.what) {
    case CheapMeasurement::cans_test:
      what = fmt::format(fmt::runtime(phrases.cans_test), name, bed.id);
      break;
    case CheapMeasurement::bucket_test:
      what = fmt::format(fmt::runtime(phrases.bucket_test), name, bed.id);
      break;
    case CheapMeasurement::feel_test:
      what = fmt::format(fmt::runtime(phrases.feel_test), bed.id);
      break;
    case CheapMeasurement::rain_gauge:
      what = std::string(phrases.rain_gauge);
      break;
  }
  return fmt::format(fmt::runtime(phrases.measure), what) + " " +
         fmt::format(fmt::runtime(phrases.measure_gain), std::lround(100 * best.explained_frac),
                     view.garden.beds[best.now.bed].id, minutes_text(best.now.p10_min),
                     minutes_text(best.now.p90_min), minutes_text(best.then.p10_min),
                     minutes_text(best.then.p90_min));
}

}  // namespace v1
}  // namespace noonleaf
