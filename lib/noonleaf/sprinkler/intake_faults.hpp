#pragma once

#include "noonleaf/sprinkler/fault_list.hpp"
#include "noonleaf/sprinkler/green_ampt.hpp"

namespace noonleaf {
inline namespace v1 {

/// Adds what makes a soil and its moisture unusable for Green and Ampt to a request's other faults.
void add_faults(const IntakeState& state, FaultList& faults);

}  // namespace v1
}  // namespace noonleaf
