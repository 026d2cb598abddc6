#pragma once

#include <chrono>
#include <cstddef>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Where an entry goes, and how long to wait for others who write at the same time.
struct JournalTarget {
  std::filesystem::path file{};  ///< the journal itself; its lock file stands beside it
  std::string shown_name{};      ///< how messages call it
  /// then the entry is refused, with a word about the lock
  std::chrono::milliseconds longest_wait{10'000};
};

/// An entry that is on the disk.
struct AppendedEntry {
  std::string id{};                  ///< as given to it
  std::size_t line = 0;              ///< where it stands in the file
  std::optional<Problem> cut_off{};  ///< a line before it that somebody did not finish writing
  std::size_t other_problems = 0;    ///< faults of the lines before, which `noonleaf check` lists
  std::string other_water{};         ///< id of other water of the same bed and day, which counts as well;
                                     ///< empty = none, or faults hide it
};

/// Adds one entry to the end of `journal.csv` and brings it to the disk.
///
/// Method    A lock file beside the journal (`journal.csv.lock`, flock) lets one writer at a time in; it
///           stays there, empty. The entry gets the highest number among the ids, plus one. It goes into
///           the file's own columns, separator and line ends, in one write followed by fsync. A new file
///           gets a header with the rain in the site's units. Nothing that stands in the file is changed: a
///           last line that somebody did not finish is marked "[cut off]" and closed, so that it is never
///           read as an entry.
/// Input     entry  without id and line; what its event needs must be there (docs/journal.md)
/// Throws    Error: as parse_journal for the entry itself, with the field; a column that the file lacks for
///           a value; a control character in a text; another writer holds the lock longer than
///           `longest_wait`; a link out of the folder; a full disk: then the file is as it was before
AppendedEntry append_to_journal(const JournalTarget& target, const Garden& garden, const JournalEntry& entry);

/// Chooses the entries to add, with the journal as it stands under the lock.
using EntryChooser = std::function<std::vector<JournalEntry>(const Journal&)>;

/// Adds the chosen entries in one write, all or none: as append_to_journal. Nothing chosen, nothing
/// written.
/// Throws    as append_to_journal; and as parse_journal where the journal itself has faults
std::vector<AppendedEntry> append_chosen_to_journal(const JournalTarget& target, const Garden& garden,
                                                    const EntryChooser& chooser);

}  // namespace v1
}  // namespace noonleaf
