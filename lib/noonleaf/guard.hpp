#pragma once

#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Guard at a public door: refuse a value outside the accepted range. A missing value passes.
/// Throws    Error, field = `field`, message naming value, range and unit
void require_within(std::string_view field, double value, double low, double high, std::string_view unit);

}  // namespace v1
}  // namespace noonleaf
