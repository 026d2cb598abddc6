#pragma once

#include <string>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/estimates.hpp"
#include "noonleaf/report/phrases.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// "sun estimated from the day's temperature range": one thing that was not measured, without its days, a
/// capital and a full stop.
/// Note      A doubt about the garden file keeps its English; the Spanish says so.
std::string estimate_words(const Garden& garden, const Estimate& estimate, Language language);

}  // namespace v1
}  // namespace noonleaf
