#include "noonleaf/plan/explanation.hpp"

#include "noonleaf/plan/bed_sky.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/water_account.hpp"
#include "noonleaf/plan/wetting_pattern.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// The garden as far as one bed is concerned, so that nothing is said of what grows elsewhere.
Garden garden_of_bed(const Garden& garden, std::size_t bed) {
  Garden result = garden;
  result.beds = {garden.beds[bed]};
  result.sprinklers = {garden.sprinklers[garden.beds[bed].sprinkler]};
  result.beds.front().sprinkler = 0;
  return result;
}

}  // namespace

DayExplanation explain_day(const Garden& garden, const Journal& journal, const Sky& sky, std::size_t bed,
                           std::chrono::year_month_day date) {
  DayExplanation result;
  result.bed = bed;
  result.today = plan_today(garden, journal, sky, {.date = date});
  result.today.estimates = estimates_behind(garden_of_bed(garden, bed), journal, sky, date);
  const Sky bed_sky = sky_over_bed(garden.site, garden.beds[bed], sky);
  result.sky = *bed_sky.find(std::chrono::sys_days(date));
  if (result.sky.et0_from == Et0From::weather)
    result.et0 = daily_et0(result.sky.estimate, garden.site.location);
  for (const PlantingAccount& account : accounts_of_bed(garden, bed, journal, sky, date)) {
    const BedPlanting planting = planting_in_account(garden, bed, account.planting, journal, bed_sky);
    result.plantings.push_back({account.planting,
                                growth_detail_on(planting, bed_sky, garden.site.location.latitude_deg, date),
                                account.dry_ahead.days.front()});
  }
  return result;
}

}  // namespace v1
}  // namespace noonleaf
