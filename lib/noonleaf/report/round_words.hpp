#pragma once

#include <cstddef>
#include <span>
#include <string>

#include "noonleaf/plan/round.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A garden of a round and where its folder is.
struct RoundRow {
  std::string folder{};  ///< as the person wrote it
  RoundEntry entry{};    ///< how the garden stands
};

/// How many gardens are in which state, the ones below the table included.
struct RoundCounts {
  std::size_t gardens = 0;        ///< in all
  std::size_t person_needed = 0;  ///< RoundNeed::person_needed
  std::size_t run_today = 0;      ///< RoundNeed::run_today
  std::size_t cannot_tell = 0;    ///< RoundNeed::cannot_tell
};

/// One table, the most pressing garden first: what, since when, who can come, what to do. 80 columns.
/// Input     rows  in their order; counts  of the whole round
std::string round_text(std::span<const RoundRow> rows, const RoundCounts& counts);

/// One garden as a JSON object on one line, shape "noonleaf.round" version 1 (docs/json.md).
std::string round_json(const RoundRow& row);

}  // namespace v1
}  // namespace noonleaf
