#include "noonleaf/report/likelihood_json.hpp"

#include <string_view>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/report/json_parts.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;

std::string_view code(MemberDayFrom from) {
  switch (from) {
    case MemberDayFrom::measured:
      return "measured";
    case MemberDayFrom::forecast:
      return "forecast";
    case MemberDayFrom::past_years:
      return "past_years";
    case MemberDayFrom::this_year:
      return "this_year";
    case MemberDayFrom::last_days:
      return "last_days";
  }
  return {};
}

std::string_view code(CheapMeasurement what) {
  switch (what) {
    case CheapMeasurement::cans_test:
      return "cans_test";
    case CheapMeasurement::bucket_test:
      return "bucket_test";
    case CheapMeasurement::feel_test:
      return "feel_test";
    case CheapMeasurement::rain_gauge:
      return "rain_gauge";
  }
  return {};
}

Json days_json(const std::vector<DayLikelihood>& days) {
  Json out = Json::array();
  for (const DayLikelihood& day : days)
    out.push_back({{"date", iso_date(day.date)},
                   {"weather", code(day.from)},
                   {"beyond_limit_frac", number_or_null(day.beyond_frac)},
                   {"beyond_limit_by_then_frac", number_or_null(day.left_frac)},
                   {"droop_frac", number_or_null(day.droop_frac)},
                   {"stress_frac", number_or_null(day.stress_frac)},
                   {"dry_soil_wilt_frac", number_or_null(day.wilt_frac)},
                   {"dry_soil_wilt_by_then_frac", number_or_null(day.wilted_frac)},
                   {"under_half_demand_frac", number_or_null(day.half_frac)},
                   {"under_half_demand_by_then_frac", number_or_null(day.halved_frac)},
                   {"depletion_p10_mm", number_or_null(day.dr10_mm)},
                   {"depletion_p50_mm", number_or_null(day.dr50_mm)},
                   {"depletion_p90_mm", number_or_null(day.dr90_mm)}});
  return out;
}

Json doubt_json(const Garden& garden, const MinutesDoubt& doubt) {
  return {{"bed", garden.beds[doubt.bed].id},
          {"minutes", number_or_null(doubt.minutes)},
          {"p10_min", number_or_null(doubt.p10_min)},
          {"p50_min", number_or_null(doubt.p50_min)},
          {"p90_min", number_or_null(doubt.p90_min)}};
}

Json gain_json(const Garden& garden, const MeasurementGain& gain) {
  return {{"measurement", code(gain.what)},
          {"bed", garden.beds[gain.bed].id},
          {"explained_frac", number_or_null(gain.explained_frac)},
          {"now", doubt_json(garden, gain.now)},
          {"then", doubt_json(garden, gain.then)}};
}

}  // namespace

Json likelihood_json(const LikelihoodView& view) {
  const Likelihood& likelihood = view.likelihood;
  Json minutes = Json::array(), measurements = Json::array();
  for (const MinutesDoubt& doubt : likelihood.minutes) minutes.push_back(doubt_json(view.garden, doubt));
  for (const MeasurementGain& gain : likelihood.measurements)
    measurements.push_back(gain_json(view.garden, gain));
  return {{"members", likelihood.members},
          {"seed", likelihood.seed},
          {"forecast_to", iso_date(likelihood.forecast_to)},
          {"behind_forecast", code(likelihood.behind_forecast)},
          {"past_years", likelihood.past_years},
          {"assumed", likelihood_head_words(view)},
          {"minutes", std::move(minutes)},
          {"measurements", std::move(measurements)},
          {"measure_next", measure_next_words(view)}};
}

Json planting_likelihood_json(const Likelihood& likelihood, std::size_t bed, std::size_t planting) {
  for (const BedLikelihood& each : likelihood.beds)
    for (const PlantingLikelihood& one : each.plantings)
      if (each.bed == bed && one.planting == planting)
        return {{"days", days_json(one.days)}, {"low_quarter_days", days_json(one.low_quarter_days)}};
  return nullptr;
}

}  // namespace v1
}  // namespace noonleaf
