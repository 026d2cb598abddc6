#include "noonleaf/garden/journal_needs.hpp"

#include <algorithm>
#include <string>

#include "noonleaf/garden/journal_columns.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// One entry, held against what its event needs.
class Needs {
 public:
  Needs(const JournalEntry& entry, LineProblems& problems) : entry_(entry), problems_(problems) {}

  void need(bool there, std::string_view what, std::string_view example) {
    if (there) return;
    const std::string event(event_words[static_cast<std::size_t>(entry_.event)]);
    problems_.refuse_line("\"" + event + "\" needs " + std::string(what), "fill in " + std::string(example));
  }

  void need_bed() { need(!entry_.bed.empty(), "a bed", "the column bed"); }

 private:
  const JournalEntry& entry_;
  LineProblems& problems_;
};

/// Litres of a sprinkler tell its depth only where its flow is known; with minutes beside them they need not.
void check_litres(const JournalEntry& entry, const Garden* garden, LineProblems& problems) {
  if (garden == nullptr || is_missing(entry.litres) || is_known(entry.minutes)) return;
  const Bed* bed = find_bed(*garden, entry.bed);
  if (bed == nullptr || bed->sprinkler >= garden->sprinklers.size()) return;
  const Sprinkler& sprinkler = garden->sprinklers[bed->sprinkler];
  if (sprinkler.kind == WettingKind::hand || is_known(sprinkler.rate.flow_l_min)) return;
  problems.refuse_line(
      "the flow of " + sprinkler.name + " is not known: its litres do not tell the depth",
      "write the minutes as well, or give the sprinkler its flow_l_min or flow_gal_min in garden.toml");
}

void check_rain(const JournalEntry& entry, Needs& needs, LineProblems& problems) {
  needs.need(is_known(entry.rain_mm), "what the gauge held", "rain_mm or rain_in");
  if (!entry.bed.empty()) {
    problems.refuse_line("rain falls on every bed",
                         "leave the cell bed empty; water from a can or a hose is \"water\"");
  }
}

void check_amendment(const JournalEntry& entry, Needs& needs) {
  const bool measured = is_known(entry.field_capacity_pct), wilting = is_known(entry.wilting_point_pct);
  needs.need(
      measured == wilting, "both numbers or none",
      "field_capacity_pct and wilting_point_pct together; `noonleaf soils --pot` tells how to get them");
  needs.need(!(entry.field_capacity_pct <= entry.wilting_point_pct), "field capacity above the wilting point",
             "the two the other way round");
  if (measured || is_known(entry.organic_pct)) needs.need_bed();
}

/// Events that are nothing without a bed.
bool needs_bed(const JournalEntry& entry) {
  switch (entry.event) {
    case JournalEvent::water:
    case JournalEvent::sow:
    case JournalEvent::transplant:
    case JournalEvent::pull:
    case JournalEvent::stage:
    case JournalEvent::feel:
    case JournalEvent::probe:
      return true;
    case JournalEvent::mulch:
      return entry.mulch.has_value();
    default:
      return false;
  }
}

}  // namespace

void check_needs(const JournalEntry& entry, const Garden* garden, LineProblems& problems) {
  Needs needs(entry, problems);
  if (needs_bed(entry)) needs.need_bed();
  switch (entry.event) {
    case JournalEvent::water:
      needs.need(is_known(entry.minutes) || is_known(entry.litres), "how long it ran",
                 "the column minutes, or litres or gallons by the meter or the cans");
      check_litres(entry, garden, problems);
      break;
    case JournalEvent::rain:
      check_rain(entry, needs, problems);
      break;
    case JournalEvent::sow:
    case JournalEvent::transplant:
      needs.need(!entry.crop.empty(), "a crop", "the column crop");
      break;
    case JournalEvent::stage:
      needs.need(std::find(stage_words.begin(), stage_words.end(), entry.stage) != stage_words.end(),
                 "a stage", "the column stage: development, mid_season, late_season or over");
      break;
    case JournalEvent::feel:
      needs.need(entry.feel.has_value(), "how the soil feels",
                 "the column feel: dry, slightly_moist, moist, wet or field_capacity");
      break;
    case JournalEvent::probe:
      needs.need(is_known(entry.water_pct) != is_known(entry.tension_kpa), "one reading",
                 "either water_pct or tension_kpa");
      break;
    case JournalEvent::amend:
      check_amendment(entry, needs);
      break;
    case JournalEvent::undo:
      needs.need(!entry.undoes.empty(), "the id of an entry", "the column undoes");
      break;
    default:
      break;
  }
}

}  // namespace v1
}  // namespace noonleaf
