#pragma once

#include "noonleaf/garden/garden_start.hpp"

#include "arguments.hpp"

namespace noonleaf::cli {

/// The garden that the options of `new` describe.
/// Throws    Error, a problem for each option that is missing or cannot be read
GardenStart garden_of_options(const NewArguments& arguments);

}  // namespace noonleaf::cli
