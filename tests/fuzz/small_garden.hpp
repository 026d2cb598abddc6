#pragma once

#include "noonleaf/garden/garden.hpp"

namespace fuzz {

/// Three beds with ids, sprinklers of known and unknown flow, a can: what journals and sheets may name.
const noonleaf::Garden& small_garden();

}  // namespace fuzz
