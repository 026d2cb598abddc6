#pragma once

#include <chrono>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What can happen in a garden.
enum class JournalEvent {
  water,
  rain,
  sow,
  transplant,
  pull,
  stage,
  amend,
  mulch,
  feel,
  probe,
  droop,
  note,
  undo
};

/// How a handful of soil from the root zone feels and looks, as a share of its available water.
///
/// Source    USDA-NRCS, Estimating Soil Moisture by Feel and Appearance (1998): 0-25, 25-50, 50-75, 75-100 %
///           and field capacity; words from memory
enum class SoilFeel { dry, slightly_moist, moist, wet, field_capacity };

/// "slightly moist"
std::string_view label(SoilFeel feel);

/// One line of the journal: something that really happened.
struct JournalEntry {
  std::string id{};                                   ///< unique in the journal; given when it is appended
  std::chrono::year_month_day date{};                 ///< by the site's clock
  std::optional<std::chrono::minutes> time_of_day{};  ///< wall clock of the site
  JournalEvent event = JournalEvent::note;            ///< decides which of the rest are read
  std::string bed{};                                  ///< id; empty = the whole garden
  std::string crop{};                                 ///< sow, transplant, pull, stage: crop id
  std::string stage{};                                ///< stage: which one began
  std::string who{};                                  ///< did or saw it
  std::string note{};                                 ///< free words
  double minutes = missing;                           ///< water: how long the sprinkler ran
  double litres = missing;                            ///< water: what the meter counted or the cans held
  double rain_mm = missing;                           ///< rain: what the gauge held
  double share_pct = missing;                         ///< sow, transplant: share of the bed
  std::optional<SoilFeel> feel{};                     ///< feel: what the hand found
  std::optional<bool> recovered{};                    ///< droop: whether it stood up again by night
  double water_pct = missing;                         ///< probe: water by volume
  double tension_kpa = missing;                       ///< probe: soil water tension (1 centibar is 1 kPa)
  std::optional<MulchKind> mulch{};                   ///< mulch: what was laid; none = taken off
  double covered_pct = missing;                       ///< mulch: share of the ground; missing = all of it
  double organic_pct = missing;                       ///< amend: organic matter after digging in, % by weight
  double field_capacity_pct = missing;                ///< amend: measured after it, % by volume
  double wilting_point_pct = missing;                 ///< amend: measured after it, % by volume
  std::string undoes{};                               ///< undo: id of the entry that did not happen
  std::size_t line = 0;                               ///< where it stands in the file
};

/// The append-only record of what happened, in the order of the file, without what was undone.
using Journal = std::vector<JournalEntry>;

/// Reads `journal.csv` against the garden it belongs to.
///
/// Input     text  the whole file, comma separated, header names with units (docs/journal.md); garden  whose
///           beds the entries may name; null = their ids are not checked
/// Throws    Error with every problem: an unknown event, bed, crop or column, a number that is none, a date
///           that does not exist, an entry without what its event needs, an undo of what is not there, a line
///           that ends in the middle
/// Note      What was undone is left out, and so is the undo; undoing an undo brings the entry back.
Journal parse_journal(std::string_view text, std::string_view shown_name, const Garden* garden);

/// Reads the file of that name. No file is an empty journal. Throws Error for a link out of its folder.
Journal read_journal(const std::filesystem::path& file, std::string_view shown_name, const Garden* garden);

/// The garden with what the journal says was sown, transplanted, pulled or seen to reach a stage.
/// Throws    Error when an entry pulls a crop that does not grow in its bed
Garden with_journal(Garden garden, const Journal& journal, std::string_view shown_name);

}  // namespace v1
}  // namespace noonleaf
