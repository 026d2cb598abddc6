#pragma once

#include <cstddef>

#include "noonleaf/plan/week.hpp"
#include "noonleaf/plan/week_search.hpp"
#include "noonleaf/plan/week_setup.hpp"

namespace noonleaf {
inline namespace v1 {

/// The limit to blame for what a bed suffers under the plan, and the cheapest relaxations.
///
/// Method    The bed is planned again by itself, then without each limit in turn, then without it on one day
///           only. The limit whose lifting leaves the least loss is to blame; of equals the cheapest to lift.
/// Input     cost  of the bed's runs in the plan
void blame(const Garden& garden, const WeekSetup& setup, const PlanCost& cost, WeekMiss& miss);

}  // namespace v1
}  // namespace noonleaf
