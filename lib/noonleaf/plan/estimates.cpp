#include "noonleaf/plan/estimates.hpp"

#include <algorithm>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/garden/garden_doubts.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/salt.hpp"
#include "noonleaf/plan/water_account.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;

/// Days that share a fact, in the order in which the facts come up.
class FactCount {
 public:
  void add(NotMeasured fact) {
    const auto found = std::find_if(counts_.begin(), counts_.end(),
                                    [fact](const Estimate& each) { return each.fact == fact; });
    if (found != counts_.end()) {
      ++found->days;
    } else {
      counts_.push_back({.fact = fact, .days = 1});
    }
  }
  std::vector<Estimate> counts(std::size_t of_days) const {
    std::vector<Estimate> result = counts_;
    for (Estimate& each : result) each.of_days = of_days;
    return result;
  }

 private:
  std::vector<Estimate> counts_;
};

void add_sun(FactCount& counts, RadiationFrom radiation) {
  if (radiation == RadiationFrom::sunshine) counts.add(NotMeasured::sun_from_sunshine);
  if (radiation == RadiationFrom::temperature_range) counts.add(NotMeasured::sun_from_temperature);
  if (radiation == RadiationFrom::none) counts.add(NotMeasured::sun_unknown);
}

void add_day(FactCount& counts, const SkyDay& day) {
  if (day.et0_from == Et0From::neighbours) {
    counts.add(NotMeasured::no_temperature);
    return;
  }
  const DailyEstimate& estimate = day.estimate;
  add_sun(counts, estimate.radiation);
  if (estimate.humidity == HumidityFrom::t_min) counts.add(NotMeasured::humidity_from_night);
  if (estimate.humidity == HumidityFrom::none) counts.add(NotMeasured::humidity_unknown);
  if (estimate.wind == WindFrom::usual_wind) counts.add(NotMeasured::wind_usual);
  if (estimate.wind == WindFrom::none) counts.add(NotMeasured::wind_unknown);
  if (is_missing(day.weather.rain_mm)) counts.add(NotMeasured::no_rain_reading);
}

/// Not written down is unknown: neither done nor undone.
void add_journal(std::vector<Estimate>& estimates, const Journal& journal, sys_days date) {
  sys_days last{};
  for (const JournalEntry& entry : journal) {
    if (sys_days(entry.date) <= date) last = std::max(last, sys_days(entry.date));
  }
  if (last == sys_days{}) {
    estimates.push_back({.kind = EstimateKind::journal, .fact = NotMeasured::journal_empty});
  } else if (date - last >= std::chrono::days(2)) {
    estimates.push_back({.kind = EstimateKind::journal, .fact = NotMeasured::journal_silent, .date = last});
  }
}

/// A soil given by its water content has no particles for the texture equations to change.
bool is_by_texture(const Garden& garden, const std::string& bed) {
  const Bed* const found = find_bed(garden, bed);
  return found == nullptr || is_missing(found->soil.field_capacity_m3_m3);
}

/// What the journal keeps and the account does not reckon with.
void add_unused_entries(std::vector<Estimate>& estimates, const Garden& garden, const Journal& journal,
                        sys_days date) {
  for (const JournalEntry& entry : journal) {
    if (sys_days(entry.date) > date) continue;
    const auto add = [&](NotMeasured fact) {
      estimates.push_back(
          {.kind = EstimateKind::journal, .fact = fact, .date = entry.date, .bed = entry.bed});
    };
    if (entry.event == JournalEvent::mulch && !entry.mulch) add(NotMeasured::mulch_unsaid);
    if (entry.event != JournalEvent::amend || is_known(entry.field_capacity_pct)) continue;
    if (is_missing(entry.organic_pct)) {
      add(NotMeasured::amend_unsaid);
    } else if (!is_by_texture(garden, entry.bed)) {
      add(NotMeasured::amend_measured);
    }
  }
}

/// Ornamentals in their first year: the published plant factors hold for established ones.
void add_establishment(std::vector<Estimate>& estimates, const Garden& garden, sys_days date) {
  constexpr std::chrono::days establishment{365};
  for (const Bed& bed : garden.beds) {
    for (const BedPlanting& planting : bed.plantings) {
      const Crop& crop = find_crop(planting.crop);
      const bool young = date - sys_days(planting.season.start) < establishment;
      if (crop.basis != CropBasis::plant_factor || !young || !grows_on(planting, date)) continue;
      estimates.push_back(
          {.kind = EstimateKind::crop, .fact = NotMeasured::first_year, .bed = bed.id, .crop = &crop});
    }
  }
}

/// Salt that was guessed or that nothing washes out.
void add_salt(std::vector<Estimate>& estimates, const Garden& garden, sys_days date) {
  for (const Bed& bed : garden.beds) {
    for (const BedPlanting& planting : bed.plantings) {
      if (!grows_on(planting, date)) continue;
      const Crop& crop = find_crop(planting.crop);
      const SaltOfPlanting salt = salt_of_planting(garden, bed, crop);
      const auto add = [&](NotMeasured fact) {
        estimates.push_back({.kind = EstimateKind::crop, .fact = fact, .bed = bed.id, .crop = &crop});
      };
      if (salt.ece_is_guess) add(NotMeasured::salt_guessed);
      if (salt.too_salty) add(NotMeasured::too_salty);
    }
  }
}

/// What the soil was taken for on the first day, and why that day is not the first of the weather.
void add_start(std::vector<Estimate>& estimates, const Garden& garden, const Sky& sky,
               std::chrono::year_month_day date) {
  const sys_days start = account_start(sky, date);
  if (start > sky.first()) estimates.push_back({.fact = NotMeasured::account_after_gap, .date = start});
  const bool full = garden.account.start == SoilAtStart::full;
  estimates.push_back({.kind = EstimateKind::soil_start,
                       .fact = full ? NotMeasured::soil_full : NotMeasured::soil_half,
                       .date = start});
}

void add_sprinklers(std::vector<Estimate>& estimates, const Garden& garden) {
  for (const Sprinkler& sprinkler : garden.sprinklers) {
    const bool by_cans = sprinkler.kind == WettingKind::hand && is_known(sprinkler.can_l);
    if (by_cans) continue;  // litres are carried: no rate is needed
    const auto add = [&](NotMeasured fact) {
      estimates.push_back({.kind = EstimateKind::sprinkler, .fact = fact, .sprinkler = sprinkler.id});
    };
    const bool by_flow =
        sprinkler.rate.basis == RateBasis::flow_and_area || sprinkler.rate.basis == RateBasis::bucket;
    if (by_flow && sprinkler.kind == WettingKind::sprinkler && sprinkler.rate.spray_loss_frac == 0)
      add(NotMeasured::spray_loss_unsaid);
    if (sprinkler.rate.basis == RateBasis::guess) {
      add(NotMeasured::rate_guessed);
    } else if (sprinkler.evenness_is_guess) {
      add(NotMeasured::evenness_guessed);
    }
  }
}

void add_garden(std::vector<Estimate>& estimates, const Garden& garden, sys_days date) {
  if (garden.site.location.latitude_deg < 0)
    estimates.push_back({.kind = EstimateKind::crop, .fact = NotMeasured::northern_months});
  add_sprinklers(estimates, garden);
  for (const GardenDoubt& doubt : garden_doubts(garden)) {
    if (doubt.about_water)
      estimates.push_back({.kind = EstimateKind::sprinkler,
                           .fact = NotMeasured::garden_doubt,
                           .doubt = doubt.message + "; " + doubt.fix});
  }
  std::vector<std::string_view> named;
  for (const Bed& bed : garden.beds) {
    for (const BedPlanting& planting : bed.plantings) {
      const Crop& crop = find_crop(planting.crop);
      const bool said = std::find(named.begin(), named.end(), crop.id) != named.end();
      if (!crop.surrogate || said || !grows_on(planting, date)) continue;
      named.push_back(crop.id);
      estimates.push_back({.kind = EstimateKind::crop, .fact = NotMeasured::surrogate_crop, .crop = &crop});
    }
  }
}

}  // namespace

std::vector<Estimate> estimates_behind(const Garden& garden, const Journal& journal, const Sky& sky,
                                       std::chrono::year_month_day date) {
  FactCount counts;
  std::size_t of_days = 0, forecast_days = 0, mixed_days = 0, forecast_rain_days = 0;
  const sys_days start = account_start(sky, date);
  for (const SkyDay& day : sky.days) {
    const sys_days when(day.weather.date);
    if (when > sys_days(date)) break;
    if (when < start) continue;
    ++of_days;
    if (day.origin == DayOrigin::forecast) ++forecast_days;
    if (day.origin == DayOrigin::mixed) ++mixed_days;
    const bool rained = day.weather.rain_mm > 0 && is_missing(measured_rain_mm(day));
    if (rained && when < sys_days(date)) ++forecast_rain_days;
    add_day(counts, day);
  }
  std::vector<Estimate> estimates = counts.counts(of_days);
  const auto add_days = [&](NotMeasured fact, std::size_t days) {
    if (days > 0) estimates.push_back({.fact = fact, .days = days, .of_days = of_days});
  };
  add_days(NotMeasured::forecast_weather, forecast_days);
  add_days(NotMeasured::forecast_in_part, mixed_days);
  add_days(NotMeasured::forecast_rain, forecast_rain_days);
  if (sky.last() < sys_days(date) + std::chrono::days(7))
    estimates.push_back({.fact = NotMeasured::weather_ends, .date = sky.last()});
  if (is_missing(sky.find(sys_days(date))->estimate.t_max_c))
    estimates.push_back({.fact = NotMeasured::no_temperature_today});
  add_journal(estimates, journal, sys_days(date));
  add_unused_entries(estimates, garden, journal, sys_days(date));
  add_garden(estimates, garden, sys_days(date));
  add_establishment(estimates, garden, sys_days(date));
  add_salt(estimates, garden, sys_days(date));
  add_start(estimates, garden, sky, date);
  return estimates;
}

}  // namespace v1
}  // namespace noonleaf
