#pragma once

#include <span>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/toml_table.hpp"

namespace noonleaf {
inline namespace v1 {

// The tables of garden.toml that say what is watered and by what. References to a tap or a sprinkler are
// resolved against those read before.
Sprinkler read_sprinkler(TomlTable& table, std::span<const Tap> taps);
Bed read_bed(TomlTable& table, std::span<const Sprinkler> sprinklers);

}  // namespace v1
}  // namespace noonleaf
