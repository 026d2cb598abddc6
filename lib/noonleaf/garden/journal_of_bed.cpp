#include "noonleaf/garden/journal_of_bed.hpp"

#include <algorithm>
#include <iterator>

namespace noonleaf {
inline namespace v1 {

Journal journal_of_bed(std::string_view bed, const Journal& journal) {
  Journal entries;
  std::copy_if(journal.begin(), journal.end(), std::back_inserter(entries), [bed](const JournalEntry& entry) {
    return entry.bed == bed || entry.bed.empty() || entry.event == JournalEvent::rain;
  });
  return entries;
}

Journal entries_of_bed(std::string_view bed, const Journal& journal, JournalEvent event) {
  Journal entries;
  std::copy_if(journal.begin(), journal.end(), std::back_inserter(entries),
               [bed, event](const JournalEntry& entry) { return entry.event == event && entry.bed == bed; });
  return entries;
}

}  // namespace v1
}  // namespace noonleaf
