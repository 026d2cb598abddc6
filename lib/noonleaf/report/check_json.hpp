#pragma once

#include <string>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_folder.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What `check` found, for programs: shape "noonleaf.check" version 1 (docs/json.md).
std::string check_json(const GardenFolder& folder);

/// The same for a folder that could not be read: "ok" is false and the problems are listed.
std::string check_json(const std::vector<Problem>& problems);

}  // namespace v1
}  // namespace noonleaf
