#pragma once

#include <string>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/away.hpp"
#include "noonleaf/report/phrases.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What an away answer is about.
struct AwayView {
  const Garden& garden;  ///< must outlive the view
  const Away& away;      ///< must outlive the view
};

/// For whoever goes away: bed by bed when it runs dry and wilts, and what would change it. 80 columns.
std::string away_text(const AwayView& view, Language language);

/// For whoever can come once: the day, the beds, the minutes, what to look for. One self-contained page.
std::string away_sheet_html(const AwayView& view, Language language);

/// The same as plain text, 80 columns.
std::string away_sheet_text(const AwayView& view, Language language);

/// For programs: one JSON object, shape "noonleaf.away" version 1 (docs/json.md).
std::string away_json(const AwayView& view);

}  // namespace v1
}  // namespace noonleaf
