#pragma once

#include <string>

#include "noonleaf/report/week_view.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The sheet for a terminal or a plain-text mail, within 80 columns: the runs by day, what to do when
/// something is different, and what the plan cannot do.
std::string week_text(const WeekView& view);

/// The runs as a table to fill in and to bring back with `log --from`: the columns of week_sheet_columns,
/// dates and times as 2025-07-16 and 06:00 in every language, beds by their id. A cell that a spreadsheet
/// would take for a formula is made a text (as in the journal).
std::string week_csv(const WeekView& view);

/// For programs: shape "noonleaf.week" (docs/json.md). The same in every language, but for `language`,
/// `words` and the sentences of alerts.
std::string week_json(const WeekView& view);

/// An iCalendar: an event a run in the site's zone, an alarm ten minutes before opening and one at closing.
///
/// Note      The UID of a run is made of the garden, the bed, the date and which run of the bed it is on that
///           day; SEQUENCE counts the minutes since 2020 when the plan was made: a plan made again updates the
///           events. Runs of `view.dropped` are cancelled.
/// Throws    Error, field "zone", when the machine knows no such zone
std::string week_ics(const WeekView& view);

/// The sheet as one page of HTML: styles inside, nothing from elsewhere, no script. Prints on Letter and A4:
/// a page for a usual garden, numbered pages beyond; then the page for the educator.
std::string week_html(const WeekView& view);

}  // namespace v1
}  // namespace noonleaf
