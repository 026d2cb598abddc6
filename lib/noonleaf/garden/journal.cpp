#include "noonleaf/garden/journal.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/file_problems.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

bool still_grows(const BedPlanting& planting, const JournalEntry& entry) {
  const bool same_crop = entry.crop.empty() || planting.crop == entry.crop;
  const bool begun = planting.season.start <= entry.date;
  return same_crop && begun && (!planting.pulled || entry.date < *planting.pulled);
}

void begin_planting(Bed& bed, const JournalEntry& entry) {
  BedPlanting planting;
  planting.crop = entry.crop;
  if (is_known(entry.share_pct)) planting.share_frac = entry.share_pct / 100.0;
  planting.season.start = entry.date;
  planting.season.method =
      entry.event == JournalEvent::sow ? PlantingStart::sown : PlantingStart::transplanted;
  planting.season.root_limit_m = bed.rooting_depth_m;
  bed.plantings.push_back(std::move(planting));
}

void observe_stage(BedPlanting& planting, const JournalEntry& entry) {
  ObservedStages& seen = planting.season.observed;
  if (entry.stage == "development") seen.development = entry.date;
  if (entry.stage == "mid_season") seen.mid_season = entry.date;
  if (entry.stage == "late_season") seen.late_season = entry.date;
  if (entry.stage == "over") seen.over = entry.date;
}

/// Whether a planting that garden.toml already has is the one that the entry tells of.
bool is_known_start(const Bed& bed, const JournalEntry& entry) {
  return std::any_of(bed.plantings.begin(), bed.plantings.end(), [&](const BedPlanting& planting) {
    return planting.crop == entry.crop && planting.season.start == entry.date;
  });
}

Problem nothing_there(const JournalEntry& entry, std::string_view shown_name) {
  Problem problem;
  problem.file = shown_name;
  problem.line = entry.line;
  problem.field = "bed";
  problem.text = entry.bed;
  problem.message = "nothing of that kind grows in bed \"" + entry.bed + "\" on " + iso_date(entry.date);
  problem.fix = "check the bed, the crop and the date against garden.toml and the lines before";
  return problem;
}

/// Whether what grows on a day shares more than the whole bed.
bool is_overfull(const Bed& bed, std::chrono::year_month_day date) {
  double total = 0;
  for (const BedPlanting& planting : bed.plantings) {
    const bool grows = planting.season.start <= date && (!planting.pulled || date < *planting.pulled);
    if (grows) total += planting.share_frac;
  }
  return total > 1.0 + 1e-6;
}

Problem overfull(const JournalEntry& entry, std::string_view shown_name) {
  Problem problem = nothing_there(entry, shown_name);
  problem.field = "share_pct";
  problem.text.clear();
  problem.message = "with this planting bed \"" + entry.bed + "\" is shared out to more than 100 %";
  problem.fix = "give share_pct, or write a line with the event pull for what made room, before this one";
  return problem;
}

/// Stages seen in an order that no season has.
std::optional<Problem> calendar_fault(const Bed& bed, const JournalEntry& entry,
                                      std::string_view shown_name) {
  for (const BedPlanting& planting : bed.plantings) {
    if (entry.event != JournalEvent::stage || !still_grows(planting, entry)) continue;
    try {
      season_calendar(find_crop(planting.crop), planting.season, entry.date);
    } catch (const Error& refused) {
      Problem problem = refused.problems().front();
      problem.file = shown_name;
      problem.line = entry.line;
      return problem;
    }
  }
  return std::nullopt;
}

/// Applies the entry; false when there is no planting for it.
bool apply(Bed& bed, const JournalEntry& entry) {
  bool found = false;
  for (BedPlanting& planting : bed.plantings) {
    if (!still_grows(planting, entry)) continue;
    found = true;
    if (entry.event == JournalEvent::pull) planting.pulled = entry.date;
    if (entry.event == JournalEvent::stage) observe_stage(planting, entry);
  }
  const bool already_pulled =
      std::any_of(bed.plantings.begin(), bed.plantings.end(), [&](const BedPlanting& planting) {
        return planting.pulled == entry.date && (entry.crop.empty() || planting.crop == entry.crop);
      });
  return found || (entry.event == JournalEvent::pull && already_pulled);
}

}  // namespace

std::string_view label(SoilFeel feel) {
  constexpr std::array<std::string_view, 5> labels{"dry", "slightly moist", "moist", "wet",
                                                   "at field capacity"};
  return labels[static_cast<std::size_t>(feel)];
}

Garden with_journal(Garden garden, const Journal& journal, std::string_view shown_name) {
  Journal in_order = journal;
  // Rows may have been sorted anew in a spreadsheet. Of one day what was pulled comes first: it made the
  // room.
  std::stable_sort(in_order.begin(), in_order.end(), [](const JournalEntry& a, const JournalEntry& b) {
    return std::pair(a.date, a.event != JournalEvent::pull) <
           std::pair(b.date, b.event != JournalEvent::pull);
  });
  FileProblems problems;
  for (const JournalEntry& entry : in_order) {
    const auto bed = std::find_if(garden.beds.begin(), garden.beds.end(),
                                  [&](const Bed& each) { return each.id == entry.bed; });
    if (bed == garden.beds.end()) continue;
    if (entry.event == JournalEvent::sow || entry.event == JournalEvent::transplant) {
      if (!is_known_start(*bed, entry)) begin_planting(*bed, entry);
      if (is_overfull(*bed, entry.date)) problems.add(overfull(entry, shown_name));
    } else if (entry.event == JournalEvent::pull || entry.event == JournalEvent::stage) {
      if (!apply(*bed, entry)) problems.add(nothing_there(entry, shown_name));
      if (auto fault = calendar_fault(*bed, entry, shown_name)) problems.add(std::move(*fault));
    }
  }
  problems.throw_if_any();
  return garden;
}

}  // namespace v1
}  // namespace noonleaf
