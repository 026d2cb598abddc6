#pragma once

#include <string_view>

#include "noonleaf/garden/journal.hpp"

namespace noonleaf {
inline namespace v1 {

/// What matters to one bed: its own entries, those of the whole garden, and every rain gauge, in their order.
Journal journal_of_bed(std::string_view bed, const Journal& journal);

/// One kind of entry of one bed, in the order of the file.
Journal entries_of_bed(std::string_view bed, const Journal& journal, JournalEvent event);

}  // namespace v1
}  // namespace noonleaf
