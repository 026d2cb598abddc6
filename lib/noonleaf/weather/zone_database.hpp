#pragma once

#include <string_view>

namespace date {
class time_zone;
}

namespace noonleaf {
inline namespace v1 {

/// A zone of the machine's time zone database by its IANA name; it lives as long as the process.
/// Throws    Error, field "zone": no name; unknown, with the nearest known one; no database on this machine
const date::time_zone& zone_named(std::string_view name);

}  // namespace v1
}  // namespace noonleaf
