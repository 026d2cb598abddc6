#pragma once

#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/garden/journal_append.hpp"
#include "noonleaf/garden/week_sheet.hpp"

namespace noonleaf::cli {

/// An entry said back in one line: "water, bed c, 25 minutes, 2025-07-16 at 06:00". `event` is the word for it.
std::string said_back(const JournalEntry& entry, const std::string& event, const Garden& garden);

/// "Longer than the longest run of its sprinkler, 60 minutes."; empty for a run that is not, or of no bed.
std::string beyond_longest_words(const Garden& garden, const std::string& bed_id, double minutes);

/// What a sheet brought: the entries with their ids, the rows that gave none with the reason.
struct BroughtIn {
  SheetEntries sheet{};
  std::vector<AppendedEntry> added{};
};

/// What `log --from` answers.
std::string sheet_text(const BroughtIn& brought, const Garden& garden);
std::string sheet_json(const BroughtIn& brought, const std::string& shown_name);

}  // namespace noonleaf::cli
