#include "noonleaf/garden/garden_doubts.hpp"

#include <fmt/format.h>

#include "noonleaf/missing.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double reading_slack = 1.05;  // cans, stopwatch and bucket are read to a few per cent

std::string flow_text(const Garden& garden, double l_min) {
  return garden.site.units == UnitSystem::us
             ? fmt::format("{:.1f} gallons a minute", gallons_from_litres(l_min))
             : fmt::format("{:.1f} L a minute", l_min);
}

}  // namespace

std::vector<GardenDoubt> garden_doubts(const Garden& garden) {
  std::vector<GardenDoubt> doubts;
  if (garden.caretakers.empty()) {
    doubts.push_back(
        {.message = "nobody can open or close a tap: there is no [[caretaker]], so no run can be planned",
         .fix = "add a [[caretaker]] with id, role and hours = [\"mon-fri 06:00-14:30\"]"});
  }
  for (const Bed& bed : garden.beds) {
    const Sprinkler& sprinkler = garden.sprinklers[bed.sprinkler];
    const Tap& tap = garden.taps[sprinkler.tap];
    if (sprinkler.rate.basis != RateBasis::cans_in_bed || is_missing(tap.flow_l_min)) continue;
    const double caught_l_min = sprinkler.rate.rate_mm_h * bed.area_m2 / 60;  // 1 mm on 1 m2 is a litre
    if (!(caught_l_min > tap.flow_l_min * reading_slack)) continue;
    doubts.push_back(
        {.message = fmt::format("the tap \"{}\" is said to give {}, but the cans of \"{}\" show that "
                                "bed \"{}\" alone gets {}: one of the two is wrong, and so are minutes",
                                tap.id, flow_text(garden, tap.flow_l_min), sprinkler.id, bed.id,
                                flow_text(garden, caught_l_min)),
         .fix = "fill a bucket at that tap by the watch, and set the cans out again",
         .about_water = true});
  }
  return doubts;
}

}  // namespace v1
}  // namespace noonleaf
