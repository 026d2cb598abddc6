#pragma once

#include <chrono>
#include <memory>
#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/soil/soil_water.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The soil of a bed from a day on.
struct DatedSoil {
  std::chrono::sys_days from{};             ///< the first day on which it holds
  std::shared_ptr<const SoilWater> soil{};  ///< water contents of that stretch
  bool measured = false;                    ///< by numbers of its own, not by its organic matter
};

/// What the journal's amend entries made of a bed's soil, oldest first.
///
/// Rule      An entry with field capacity and wilting point is a measurement: that soil from that day on. One
///           with the organic matter after digging in changes the soil by what Saxton & Rawls (2006) make of
///           the difference to what it had (2.5 % where nobody said), as far as a spade reaches: 20 cm of the
///           bed's rooting depth, or of 50 cm. One without numbers changes nothing, and `today` says so. Ours.
/// Throws    Error as saxton_rawls: more than 8 % organic matter
std::vector<DatedSoil> amendments_of_bed(const Bed& bed, const Journal& journal);

/// The soil of a bed on a day: soil_of_bed, or the last amendment up to that day.
SoilWater soil_of_bed_on(const Bed& bed, const Journal& journal, std::chrono::sys_days date);

/// What mulch leaves of a bed's soil evaporation on a day: that of garden.toml, or the journal's last mulch
/// entry up to that day (mulch_evaporation_factor).
double mulch_factor_on(const Bed& bed, const Journal& journal, std::chrono::sys_days date);

}  // namespace v1
}  // namespace noonleaf
