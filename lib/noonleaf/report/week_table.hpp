#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "noonleaf/report/week_blocks.hpp"

namespace noonleaf {
inline namespace v1 {

/// A row of the table of runs, with the band that it stands under.
struct RunTableRow {
  std::size_t band = 0;
  PageBlock block{};
  std::string open{}, close{}, minutes{}, rain{}, letter{};
};

/// All rows with their bands, and the head of a table that is as narrow as they allow, so that the boxes to
/// write in are wide.
struct RunTable {
  std::vector<RunTableRow> rows{};
  std::vector<PageBlock> bands{};
  std::string head{};
};

RunTable run_table(const WeekView& view);

/// A part of the table that stands together.
struct TablePart {
  std::size_t end = 0;  ///< row behind the last one
  PageBlock block{};
};

/// Two columns, the left one read first: as even as they can be, or as full as the height allows.
TablePart two_columns(const RunTable& table, std::size_t begin, double height_pt);

}  // namespace v1
}  // namespace noonleaf
