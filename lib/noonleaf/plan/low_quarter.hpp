#pragma once

#include <span>

#include "noonleaf/plan/checked_account.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The account of the driest quarter of a bed: the same sky and plants, its share of each watering.
///
/// Method    Days carry the low-quarter depth in place of the mean. A soil check moves this trace by as
///           many mm as it moved the mean one (one handful does not say from which quarter it came),
///           between 0 and TAW.
/// Input     days, growth  those of the mean account with the low quarter's water; moves  of
///           checked_account
BalanceRun low_quarter_run(const CheckedGround& ground, std::span<const AccountMove> moves);

}  // namespace v1
}  // namespace noonleaf
