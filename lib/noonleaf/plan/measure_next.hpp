#pragma once

#include <vector>

#include "noonleaf/plan/bed_members.hpp"
#include "noonleaf/plan/likelihood.hpp"

namespace noonleaf {
inline namespace v1 {

/// Today's run of one bed over the members, with what it hangs on.
struct DoubtedRun {
  RunInDoubt run{};
  std::vector<double> minutes;  ///< without the member that has no error
  std::vector<double> dr_mm;    ///< of the planting that decides, this morning
  double taw_mm = missing;
  const BedDraws* draws = nullptr;
};

/// The minutes of the members.
///
/// Equation  minutes = exact x (Dr / Dr without error) x (M / M without error) / rate factor, M of
/// run_time.hpp
std::vector<double> minutes_of(const RunInDoubt& run, const PlantingMembersTrace& trace,
                               const BedDraws& draws);

/// The range of minutes.
MinutesDoubt minutes_doubt(const DoubtedRun& run);

/// What each measurement that makes sense here would tell, best first; empty without a run in doubt.
std::vector<MeasurementGain> measurement_gains(const Garden& garden, const std::vector<DoubtedRun>& runs);

}  // namespace v1
}  // namespace noonleaf
