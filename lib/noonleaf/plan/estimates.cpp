#include "noonleaf/plan/estimates.hpp"

#include <algorithm>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/garden/garden_doubts.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/salt.hpp"
#include "noonleaf/plan/water_account.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;

/// Days that share a phrase, in the order in which the phrases come up.
class PhraseCount {
 public:
  void add(std::string_view phrase) {
    const auto found = std::find_if(counts_.begin(), counts_.end(),
                                    [&](const Estimate& each) { return each.what == phrase; });
    if (found != counts_.end()) {
      ++found->days;
    } else {
      counts_.push_back({.what = std::string(phrase), .days = 1});
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

void add_day(PhraseCount& counts, const SkyDay& day) {
  if (day.et0_from == Et0From::neighbours) {
    counts.add("no temperature: ET0 from the days around");
    return;
  }
  const DailyEstimate& estimate = day.estimate;
  if (estimate.radiation != RadiationFrom::measured) counts.add(phrase(estimate.radiation));
  const bool humidity_guessed =
      estimate.humidity == HumidityFrom::t_min || estimate.humidity == HumidityFrom::none;
  if (humidity_guessed) counts.add(phrase(estimate.humidity));
  const bool wind_guessed = estimate.wind == WindFrom::usual_wind || estimate.wind == WindFrom::none;
  if (wind_guessed) counts.add(phrase(estimate.wind));
  if (is_missing(day.weather.rain_mm)) counts.add("no rain reading: taken as none");
}

/// Not written down is unknown: neither done nor undone.
void add_journal(std::vector<Estimate>& estimates, const Journal& journal, sys_days date) {
  sys_days last{};
  for (const JournalEntry& entry : journal) {
    if (sys_days(entry.date) <= date) last = std::max(last, sys_days(entry.date));
  }
  if (last == sys_days{}) {
    estimates.push_back(
        {.kind = EstimateKind::journal,
         .what = "nothing is in the journal: watering that nobody wrote down is not counted"});
  } else if (date - last >= std::chrono::days(2)) {
    estimates.push_back({.kind = EstimateKind::journal,
                         .what = "the journal is silent since " + iso_date(last) +
                                 ": watering that nobody wrote down is not counted"});
  }
}

/// What the journal keeps and the account does not reckon with.
void add_unused_entries(std::vector<Estimate>& estimates, const Journal& journal, sys_days date) {
  for (const JournalEntry& entry : journal) {
    if (sys_days(entry.date) > date) continue;
    const std::string where =
        " of " + iso_date(entry.date) + (entry.bed.empty() ? std::string() : " on bed " + entry.bed);
    if (entry.event == JournalEvent::mulch && !entry.mulch) {
      estimates.push_back({.kind = EstimateKind::journal,
                           .what = "the mulch line" + where +
                                   " does not say what was laid: it counts for nothing (column mulch)"});
    }
    const bool told = is_known(entry.organic_pct) || is_known(entry.field_capacity_pct);
    if (entry.event == JournalEvent::amend && !told) {
      estimates.push_back(
          {.kind = EstimateKind::journal,
           .what = "the amend line" + where +
                   " has no numbers: the old soil is taken; weigh a pot (noonleaf soils --pot)"});
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
          {.kind = EstimateKind::crop,
           .what = "bed " + bed.id + ", " + std::string(crop.name_en) +
                   ": in its first year; the plant factor is that of established plants, so look at "
                   "it often and water it sooner"});
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
      const std::string where = "bed " + bed.id + ", " + std::string(crop.name_en) + ": ";
      if (salt.ece_is_guess) {
        estimates.push_back(
            {.kind = EstimateKind::crop,
             .what = where + "salt in the soil is guessed from the water (1.5 times its salinity)"});
      }
      if (salt.too_salty) {
        estimates.push_back(
            {.kind = EstimateKind::crop,
             .what = where + "the water is too salty for it; no leaching is asked for, since none helps"});
      }
    }
  }
}

/// What the soil was taken for on the first day.
void add_start(std::vector<Estimate>& estimates, const Garden& garden, const Sky& sky,
               std::chrono::year_month_day date) {
  const std::string start = iso_date(std::chrono::year_month_day(account_start(sky, date)));
  const bool full = garden.account.start == SoilAtStart::full;
  estimates.push_back(
      {.kind = EstimateKind::soil_start,
       .what = std::string(full ? "soil taken as full of water on " : "soil taken as half full on ") + start +
               ", where the account starts"});
}

void add_garden(std::vector<Estimate>& estimates, const Garden& garden, sys_days date) {
  if (garden.site.location.latitude_deg < 0) {
    estimates.push_back({.kind = EstimateKind::crop,
                         .what =
                             "stage lengths of annual crops are chosen by northern planting months: name a "
                             "region, or write down the stages you see"});
  }
  for (const Sprinkler& sprinkler : garden.sprinklers) {
    const bool by_cans = sprinkler.kind == WettingKind::hand && is_known(sprinkler.can_l);
    if (by_cans) continue;  // litres are carried: no rate is needed
    const bool by_flow =
        sprinkler.rate.basis == RateBasis::flow_and_area || sprinkler.rate.basis == RateBasis::bucket;
    if (by_flow && sprinkler.kind == WettingKind::sprinkler && sprinkler.rate.spray_loss_frac == 0) {
      estimates.push_back({.kind = EstimateKind::sprinkler,
                           .what = sprinkler.name +
                                   ": what wind and sun take of its spray is not stated; none is taken off"});
    }
    if (sprinkler.rate.basis == RateBasis::guess) {
      estimates.push_back(
          {.kind = EstimateKind::sprinkler,
           .what = sprinkler.name + ": its rate is a guess; set cans out for 15 minutes to know it"});
    } else if (sprinkler.evenness_is_guess) {
      estimates.push_back(
          {.kind = EstimateKind::sprinkler,
           .what = sprinkler.name + ": how evenly it waters is a guess; set cans out to know it"});
    }
  }
  for (const GardenDoubt& doubt : garden_doubts(garden)) {
    if (doubt.about_water)
      estimates.push_back({.kind = EstimateKind::sprinkler, .what = doubt.message + "; " + doubt.fix});
  }
  std::vector<std::string_view> named;
  for (const Bed& bed : garden.beds) {
    for (const BedPlanting& planting : bed.plantings) {
      const Crop& crop = find_crop(planting.crop);
      const bool said = std::find(named.begin(), named.end(), crop.id) != named.end();
      if (!crop.surrogate || said || !grows_on(planting, date)) continue;
      named.push_back(crop.id);
      estimates.push_back(
          {.kind = EstimateKind::crop,
           .what = std::string(crop.name_en) + ": no published values, those of a similar crop stand in"});
    }
  }
}

}  // namespace

std::vector<Estimate> estimates_behind(const Garden& garden, const Journal& journal, const Sky& sky,
                                       std::chrono::year_month_day date) {
  PhraseCount counts;
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
  if (forecast_days > 0) {
    estimates.push_back(
        {.what = "weather is a forecast, not a measurement", .days = forecast_days, .of_days = of_days});
  }
  if (mixed_days > 0) {
    estimates.push_back({.what = "what the station did not measure is taken from a forecast",
                         .days = mixed_days,
                         .of_days = of_days});
  }
  if (forecast_rain_days > 0) {
    estimates.push_back({.what = "rain that was only forecast is not counted: read the gauge",
                         .days = forecast_rain_days,
                         .of_days = of_days});
  }
  if (sky.last() < sys_days(date) + std::chrono::days(7)) {
    estimates.push_back({.what = "the weather ends on " + iso_date(std::chrono::year_month_day(sky.last())) +
                                 ": later days are taken like the last three"});
  }
  if (is_missing(sky.find(sys_days(date))->estimate.t_max_c)) {
    estimates.push_back({.what = "no temperature for today: droop and wilt cannot be told"});
  }
  add_journal(estimates, journal, sys_days(date));
  add_unused_entries(estimates, journal, sys_days(date));
  add_garden(estimates, garden, sys_days(date));
  add_establishment(estimates, garden, sys_days(date));
  add_salt(estimates, garden, sys_days(date));
  add_start(estimates, garden, sky, date);
  return estimates;
}

}  // namespace v1
}  // namespace noonleaf
