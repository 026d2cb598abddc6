#pragma once

#include "noonleaf/sprinkler/application_rate.hpp"
#include "noonleaf/sprinkler/fault_list.hpp"

namespace noonleaf {
inline namespace v1 {

/// Adds what makes a rate unusable (require_usable) to a request's other faults.
void add_faults(const ApplicationRate& rate, FaultList& faults);

}  // namespace v1
}  // namespace noonleaf
