#pragma once

#include "noonleaf/garden/garden_start.hpp"

#include "arguments.hpp"

namespace noonleaf::cli {

/// Asks for a garden on stdout and reads the answers from stdin, a line each. A wrong answer is asked again.
/// Throws    Error when the input ends before the last question
GardenStart ask_for_garden();

/// The garden that the options describe.
/// Throws    Error, a problem for each option that is missing or cannot be read
GardenStart garden_of_options(const NewArguments& arguments);

}  // namespace noonleaf::cli
