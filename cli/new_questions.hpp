#pragma once

#include "noonleaf/garden/garden_start.hpp"

namespace noonleaf::cli {

/// Asks for a garden on stdout and reads the answers from stdin, a line each. A wrong answer is asked again.
/// Throws    Error when the input ends before the last question
GardenStart ask_for_garden();

}  // namespace noonleaf::cli
