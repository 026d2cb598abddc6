#pragma once

#include <cstddef>
#include <span>
#include <string>

#include "noonleaf/plan/round.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A garden of a round and where its folder is.
struct RoundRow {
  std::string folder{};
  RoundEntry entry{};
};

/// How many gardens are in which state, the ones below the table included.
struct RoundCounts {
  std::size_t gardens = 0, person_needed = 0, run_today = 0, cannot_tell = 0;
};

/// One table, the most pressing garden first: what, since when, who can come, what to do. 80 columns.
/// Input     rows  in their order; counts  of the whole round
std::string round_text(std::span<const RoundRow> rows, const RoundCounts& counts);

/// One garden as a JSON object on one line, shape "noonleaf.round" version 1 (docs/json.md).
std::string round_json(const RoundRow& row);

}  // namespace v1
}  // namespace noonleaf
