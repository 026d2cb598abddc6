#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/local_text.hpp"
#include "noonleaf/report/week_changes.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A plan, the garden it is for, and how it is to be told. Garden and plan must outlive it.
struct WeekView {
  const Garden& garden;                              ///< must outlive the view
  const WeekPlan& plan;                              ///< must outlive the view
  Language language = Language::en;                  ///< of the words
  LocalTime made{};                                  ///< on the site's wall clock
  std::optional<std::vector<WeekChange>> changes{};  ///< against an earlier plan; nothing = none was given
  std::vector<PlannedRun> dropped{};                 ///< openings of the earlier plan that are off
  std::vector<Alert> alerts{};  ///< of the plan's first day where that is today, in `language`

  /// Its words for numbers and dates.
  LocalText text() const { return {language, garden.site.units}; }
};

/// One heading with its lines.
struct SheetSection {
  std::string title{};               ///< empty = the section is left out
  std::vector<std::string> lines{};  ///< paragraphs
};

/// Runs of one day that the same people open and close, one behind the other.
struct RunGroup {
  std::chrono::year_month_day date{};  ///< of all of them
  std::vector<const WeekRun*> runs{};  ///< into the plan, which must outlive the group
};

// Every text below is free of control characters.

/// "A": the bed on the sheet and the sketch.
std::string bed_letter(const WeekView& view, std::size_t bed);
/// The bed as the garden file names it.
std::string bed_name(const WeekView& view, std::size_t bed);
/// The caretaker, by role.
std::string role_name(const WeekView& view, std::size_t caretaker);
/// The tap, as the garden file names it.
std::string tap_name(const WeekView& view, std::size_t tap);
/// The sprinkler, as the garden file names it.
std::string sprinkler_name(const WeekView& view, std::size_t sprinkler);
/// What a person can find the bed by, as the garden file names it.
std::string landmark_name(const WeekView& view, std::size_t landmark);

/// The runs in the order of the sheet, grouped by day and people.
std::vector<RunGroup> run_groups(const WeekPlan& plan);

/// "day custodian opens and closes, backup: garden educator"
std::string people_words(const WeekView& view, const WeekRun& run);

/// Water that a run puts into its bed where it is poured by hand, since there the amount counts; missing
/// for any other run.
double by_hand_l(const WeekView& view, const WeekRun& run);
/// "25 gallons: 13 cans of 2 gallons"; without a can size "By hand: 25 gallons". Empty for any other run.
std::string by_hand_words(const WeekView& view, const WeekRun& run);

/// "9 runs, 230 minutes."; with no run, that there is none.
std::string total_words(const WeekView& view);

/// "Wednesday, July 16 to Tuesday, July 22"
std::string dates_words(const WeekView& view);
/// Until which day the sheet holds.
std::string valid_words(const WeekView& view);
/// When it was made.
std::string made_words(const WeekView& view);

/// Do not water if: rain in the gauge by bed, rain now, wind, frost.
SheetSection skip_section(const WeekView& view);

/// Sprinklers with their taps and beds, a line each.
SheetSection where_section(const WeekView& view);

/// What is new against the earlier plan; no title when none was given.
SheetSection changed_section(const WeekView& view);

/// Soil check, droop, water found running, never opened, whom to call, cautions, what was not measured.
std::vector<SheetSection> help_sections(const WeekView& view);

/// What the plan cannot do, which limit is to blame, and what would help most cheaply; for the educator.
SheetSection missed_section(const WeekView& view);

/// Today's alerts for the educator: what will be seen, how sure, one thing to do. No title without any. Beds
/// without a run are left to missed_section.
SheetSection alert_section(const WeekView& view);

/// How sure the plan is, by bed and day: "S3 W1" is short of water in 3 of 10, wilting in 1 of 10.
struct SureTable {
  std::string title{};              ///< of the table
  std::vector<std::string> days{};  ///< "Wed 16"
  /// One bed.
  struct Row {
    std::string letter{};              ///< of the bed
    std::vector<std::string> cells{};  ///< by day; of the planting that is worst off on it
  };
  std::vector<Row> rows{};           ///< beds in which a planting took part
  std::vector<std::string> notes{};  ///< how to read it, and what was assumed
};

/// Nothing where plan.likelihood is not there or no planting took part.
std::optional<SureTable> sure_table(const WeekView& view);

/// "worst on Sun 20: 0.4 in to 1.1 in missing in 8 of 10, limit 0.7 in": the day on which the bed is
/// likeliest to be short with the plan; empty where no planting took part.
std::string sure_range_words(const WeekView& view, std::size_t bed);

/// "without water it lasts until Friday, July 18"
std::string lasts_words(const WeekView& view, const WeekBed& bed);

}  // namespace v1
}  // namespace noonleaf
