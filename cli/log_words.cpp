#include "log_words.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/report/quantity_text.hpp"
#include "noonleaf/units.hpp"

#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

std::string mulch_said(const JournalEntry& entry) {
  if (*entry.mulch == MulchKind::none) return ", taken off";
  const std::string kind = *entry.mulch == MulchKind::organic ? ", organic" : ", plastic";
  return is_known(entry.covered_pct)
             ? kind + fmt::format(" on {} % of the ground", number_text(entry.covered_pct))
             : kind;
}

std::string_view reason_words(RowLeftOut reason) {
  switch (reason) {
    case RowLeftOut::nothing_written:
      return "nothing is written: unknown, done or not";
    case RowLeftOut::initials_only:
      return "signed, but no minutes: unknown; write the minutes, 0 if it did not run";
    case RowLeftOut::already_brought_in:
      return "brought in before";
    case RowLeftOut::already_logged:
      return "the journal has water for that bed and day from elsewhere; if this is another run, log it by "
             "hand";
  }
  return {};
}

std::string_view code(RowLeftOut reason) {
  switch (reason) {
    case RowLeftOut::nothing_written:
      return "nothing_written";
    case RowLeftOut::initials_only:
      return "initials_only";
    case RowLeftOut::already_brought_in:
      return "already_brought_in";
    case RowLeftOut::already_logged:
      return "already_logged";
  }
  return {};
}

std::string minutes_said(double minutes) {
  return number_text(minutes) + (minutes == 1 ? " minute" : " minutes");
}

/// Minutes that the sheet did not ask for and that the sprinkler should not run; empty where all is usual.
std::string much_longer_words(const FilledRun& row, const Garden& garden) {
  const bool beyond_plan =
      row.actual_minutes > 1.5 * row.planned_minutes && row.actual_minutes > row.planned_minutes + 5;
  std::string words = beyond_longest_words(garden, row.bed, row.actual_minutes);
  if (!words.empty()) return words;
  return beyond_plan ? fmt::format("The sheet asked for {}.", minutes_said(row.planned_minutes))
                     : std::string{};
}

/// "0.4 gal", "1.51 L", "250 gal": three digits, or whole units; what was typed must be recognised.
std::string litres_said(double litres, UnitSystem units) {
  const bool is_us = units == UnitSystem::us;
  const double value = is_us ? gallons_from_litres(litres) : litres;
  const int decimals = value > 0 ? std::clamp(2 - static_cast<int>(std::floor(std::log10(value))), 0, 9) : 0;
  std::string digits = fmt::format("{:.{}f}", value, decimals);
  if (decimals > 0) digits.erase(digits.find_last_not_of('0') + 1);
  if (digits.ends_with('.')) digits.pop_back();
  return digits + (is_us ? " gal" : " L");
}

}  // namespace

std::string beyond_longest_words(const Garden& garden, const std::string& bed_id, double minutes) {
  const Bed* const bed = find_bed(garden, bed_id);
  if (bed == nullptr) return {};
  const double longest_min = garden.sprinklers[bed->sprinkler].longest_run_min;
  if (!(minutes > longest_min)) return {};
  return fmt::format("Longer than the longest run of its sprinkler, {}.", minutes_said(longest_min));
}

std::string said_back(const JournalEntry& entry, const std::string& event, const Garden& garden) {
  const QuantityText text(garden.site.units);
  std::string words = event;
  if (!entry.undoes.empty()) words += " of entry " + entry.undoes;
  if (!entry.bed.empty()) words += ", bed " + entry.bed;
  if (!entry.crop.empty()) words += ", " + entry.crop;
  if (is_known(entry.minutes)) words += ", " + minutes_said(entry.minutes);
  if (is_known(entry.litres)) words += ", " + litres_said(entry.litres, garden.site.units);
  if (is_known(entry.rain_mm)) words += ", " + text.depth(entry.rain_mm);
  if (entry.recovered) words += *entry.recovered ? ", stood up again" : ", did not stand up again";
  if (entry.feel) words += ", " + std::string(label(*entry.feel));
  if (is_known(entry.water_pct)) words += fmt::format(", {} % water by volume", number_text(entry.water_pct));
  if (is_known(entry.tension_kpa)) words += fmt::format(", {} kPa", number_text(entry.tension_kpa));
  if (is_known(entry.organic_pct))
    words += fmt::format(", organic matter now {} %", number_text(entry.organic_pct));
  if (is_known(entry.field_capacity_pct))
    words += fmt::format(", field capacity {} %, wilting point {} %", number_text(entry.field_capacity_pct),
                         number_text(entry.wilting_point_pct));
  if (entry.mulch) words += mulch_said(entry);
  words += ", " + iso_date(entry.date);
  return entry.time_of_day ? words + " at " + clock_text(*entry.time_of_day) : words;
}

std::string sheet_text(const BroughtIn& brought, const Garden& garden) {
  std::string text =
      wrapped(fmt::format("{} {} written, {} {} left out.", brought.added.size(),
                          brought.added.size() == 1 ? "entry" : "entries", brought.sheet.left_out.size(),
                          brought.sheet.left_out.size() == 1 ? "row" : "rows"),
              0);
  for (std::size_t index = 0; index < brought.added.size(); ++index) {
    const std::string& id = brought.added[index].id;
    const JournalEntry& entry = brought.sheet.entries[index];
    text += wrapped(fmt::format("Entry {}: {}.", id, said_back(entry, "water", garden)), 2);
    const std::string doubt = much_longer_words(brought.sheet.rows[index], garden);
    if (!doubt.empty())
      text += wrapped(doubt + fmt::format(" If that is wrong: noonleaf log DIR undo {}", id), 4);
  }
  for (const LeftRow& left : brought.sheet.left_out) {
    const std::string entry = left.entry_id.empty() ? "" : fmt::format(" (entry {})", left.entry_id);
    text += wrapped(fmt::format("Line {}, bed {}, {}: {}{}.", left.row.line, left.row.bed,
                                iso_date(left.row.date), reason_words(left.reason), entry),
                    2);
  }
  return text;
}

std::string sheet_json(const BroughtIn& brought, const std::string& shown_name) {
  using Json = nlohmann::ordered_json;
  Json entries = Json::array(), left_out = Json::array();
  for (const AppendedEntry& added : brought.added)
    entries.push_back({{"id", added.id}, {"line", added.line}});
  for (const LeftRow& left : brought.sheet.left_out) {
    left_out.push_back({{"line", left.row.line},
                        {"bed", left.row.bed},
                        {"date", iso_date(left.row.date)},
                        {"reason", code(left.reason)},
                        {"entry", left.entry_id.empty() ? Json(nullptr) : Json(left.entry_id)}});
  }
  return Json{{"shape", "noonleaf.log_sheet"},
              {"version", 1},
              {"file", shown_name},
              {"entries", std::move(entries)},
              {"left_out", std::move(left_out)}}
             .dump(2) +
         "\n";
}

}  // namespace noonleaf::cli
