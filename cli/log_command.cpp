#include <chrono>
#include <cstdio>
#include <filesystem>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/garden/journal_append.hpp"
#include "noonleaf/garden/week_sheet.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/report/quantity_text.hpp"
#include "noonleaf/units.hpp"

#include "commands.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

namespace fs = std::filesystem;

/// What the free word of the command line is, by event: a text, an id, or a bed.
void place_word(const LogArguments& arguments, JournalEntry& entry) {
  entry.bed = arguments.bed;
  if (arguments.word.empty()) return;
  switch (entry.event) {
    case JournalEvent::note:
      entry.note = arguments.word;
      break;
    case JournalEvent::undo:
      entry.undoes = arguments.word;
      break;
    default:
      entry.bed = arguments.word;
      break;
  }
}

double minutes_of(const LogArguments& arguments, const JournalEntry& entry, const std::string& zone) {
  if (!arguments.until) return arguments.minutes;
  const auto length = elapsed(zone, {entry.date, *entry.time_of_day}, {entry.date, *arguments.until});
  if (length > std::chrono::minutes(0)) return static_cast<double>(length.count());
  Problem problem;
  problem.field = "until";
  problem.text = clock_text(*arguments.until);
  problem.message = "the end " + problem.text + " is not after the begin " + clock_text(*entry.time_of_day);
  problem.fix = "for a run over midnight say --at and --minutes";
  throw Error(std::move(problem));
}

/// Litres as given, or by the cans of the bed's hand watering.
double litres_of(const LogArguments& arguments, const Garden& garden, const std::string& bed_id) {
  if (is_missing(arguments.cans)) return arguments.litres;
  const Bed* bed = find_bed(garden, bed_id);
  const double can_l = bed == nullptr ? missing : garden.sprinklers[bed->sprinkler].can_l;
  if (is_known(can_l)) return arguments.cans * can_l;
  Problem problem;
  problem.field = "cans";
  problem.text = number_text(arguments.cans);
  problem.message = "how much a can holds is not known for bed \"" + bed_id + "\"";
  problem.fix =
      "give --litres or --gallons; or in garden.toml a [[sprinkler]] of kind \"hand\" its can_l or can_gal";
  throw Error(std::move(problem));
}

/// "bed c" as people say it, beside the id that garden.toml has.
std::string bed_id(const Garden& garden, const std::string& typed) {
  if (find_bed(garden, typed) == nullptr && typed.starts_with("bed-") &&
      find_bed(garden, typed.substr(4)) != nullptr) {
    return typed.substr(4);
  }
  return typed;
}

JournalEntry entry_of(const LogArguments& arguments, const Garden& garden) {
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  const LocalTime local = local_time(garden.site.zone, now);
  JournalEntry entry;
  entry.event = arguments.event;
  entry.date = arguments.date.value_or(local.date);
  if (arguments.time_of_day) {
    entry.time_of_day = arguments.time_of_day;
  } else if (!arguments.date) {
    entry.time_of_day = local.time_of_day;  // of another day we know no time
  }
  entry.crop = arguments.crop;
  entry.stage = arguments.stage;
  entry.who = arguments.who;
  entry.note = arguments.note;
  entry.minutes = minutes_of(arguments, entry, garden.site.zone);
  entry.rain_mm = is_known(arguments.rain_in) ? mm_from_inches(arguments.rain_in) : arguments.rain_mm;
  entry.share_pct = arguments.share_pct;
  entry.feel = arguments.feel;
  entry.recovered = arguments.recovered;
  entry.water_pct = arguments.water_pct;
  entry.tension_kpa = arguments.tension_kpa;
  entry.mulch = arguments.mulch;
  entry.covered_pct = arguments.covered_pct;
  entry.organic_pct = arguments.organic_pct;
  entry.field_capacity_pct = arguments.field_capacity_pct;
  entry.wilting_point_pct = arguments.wilting_point_pct;
  place_word(arguments, entry);
  entry.bed = bed_id(garden, entry.bed);
  entry.litres = litres_of(arguments, garden, entry.bed);
  return entry;
}

std::string mulch_said(const JournalEntry& entry) {
  if (*entry.mulch == MulchKind::none) return ", taken off";
  const std::string kind = *entry.mulch == MulchKind::organic ? ", organic" : ", plastic";
  return is_known(entry.covered_pct)
             ? kind + fmt::format(" on {} % of the ground", number_text(entry.covered_pct))
             : kind;
}

std::string said_back(const JournalEntry& entry, const std::string& event, const Garden& garden) {
  const QuantityText text(garden.site.units);
  std::string words = event;
  if (!entry.undoes.empty()) words += " of entry " + entry.undoes;
  if (!entry.bed.empty()) words += ", bed " + entry.bed;
  if (!entry.crop.empty()) words += ", " + entry.crop;
  if (is_known(entry.minutes)) words += fmt::format(", {} minutes", number_text(entry.minutes));
  if (is_known(entry.litres)) words += ", " + text.volume(entry.litres);
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

std::string answer_text(const AppendedEntry& added, const JournalEntry& entry, const LogArguments& arguments,
                        const Garden& garden) {
  const bool midday_droop = entry.event == JournalEvent::droop && entry.time_of_day &&
                            entry.recovered != false && *entry.time_of_day >= std::chrono::hours(9);
  const std::string droop =
      midday_droop ? wrapped(
                         "A droop by day changes no depletion: plants hang in the heat over moist soil. "
                         "Look again in the evening and at dawn.",
                         0)
                   : std::string{};
  return wrapped(fmt::format("Entry {}: {}.", added.id, said_back(entry, arguments.event_word, garden)), 0) +
         droop +
         wrapped(fmt::format("If that is wrong: noonleaf log {} undo {}", arguments.folder, added.id), 0);
}

std::string answer_json(const AppendedEntry& added, const std::string& shown_name) {
  nlohmann::ordered_json json{{"shape", "noonleaf.log"},
                              {"version", 1},
                              {"file", shown_name},
                              {"id", added.id},
                              {"line", added.line},
                              {"cut_off_line", nullptr},
                              {"other_problems", added.other_problems}};
  if (added.cut_off) json["cut_off_line"] = added.cut_off->line;
  return json.dump(2) + "\n";
}

/// How a whole entry of that kind is written, for a person who left something out.
std::string example_of(JournalEvent event) {
  switch (event) {
    case JournalEvent::water:
      return "water BED --minutes 25; or --litres 40, --gallons 10, --cans 5";
    case JournalEvent::rain:
      return "rain --rain-in 0.4, or --rain-mm 10";
    case JournalEvent::sow:
      return "sow BED --crop carrot";
    case JournalEvent::transplant:
      return "transplant BED --crop tomato";
    case JournalEvent::pull:
      return "pull BED --crop pea_fresh";
    case JournalEvent::stage:
      return "stage BED --crop tomato --stage mid_season; or development, late_season, over";
    case JournalEvent::feel:
      return "feel BED --feel moist; or dry, slightly_moist, wet, field_capacity";
    case JournalEvent::probe:
      return "probe BED --water-pct 22, or --tension-kpa 40";
    case JournalEvent::undo:
      return "undo 207, the id of the entry";
    default:
      return {};
  }
}

/// A fault of the entry as a whole speaks of columns; here a person types options.
Error in_words_of_the_command(const Error& refused, JournalEvent event) {
  std::vector<Problem> problems = refused.problems();
  for (Problem& problem : problems) {
    const std::string example = example_of(event);
    if (problem.file.empty() && problem.field.empty() && !example.empty())
      problem.fix = "write: log DIR " + example;
  }
  return Error(std::move(problems));
}

AppendedEntry append(const LogArguments& arguments, const JournalTarget& target, const Garden& garden,
                     const JournalEntry& entry) {
  try {
    return append_to_journal(target, garden, entry);
  } catch (const Error& refused) {
    throw in_words_of_the_command(refused, arguments.event);
  }
}

/// The entry is on the disk by now: what fails here must not make anybody log it twice.
void acknowledge(const std::string& answer, const AppendedEntry& added) {
  try {
    print(answer);
  } catch (const Error& refused) {
    std::vector<Problem> problems = refused.problems();
    problems.front().message += "; but entry " + added.id + " is in the journal";
    problems.front().fix = "do not log it again; look at the last line of journal.csv";
    throw Error(std::move(problems));
  }
}

}  // namespace

namespace {

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

/// Minutes that the sheet did not ask for and that the sprinkler should not run; empty where all is usual.
std::string much_longer_words(const FilledRun& row, const Garden& garden) {
  const double longest_min = garden.sprinklers[find_bed(garden, row.bed)->sprinkler].longest_run_min;
  const bool beyond_plan =
      row.actual_minutes > 1.5 * row.planned_minutes && row.actual_minutes > row.planned_minutes + 5;
  if (row.actual_minutes > longest_min)
    return fmt::format("Longer than the longest run of its sprinkler, {} minutes.", number_text(longest_min));
  return beyond_plan ? fmt::format("The sheet asked for {} minutes.", number_text(row.planned_minutes))
                     : std::string{};
}

/// What a sheet brought: the entries with their ids, the rows that gave none with the reason.
struct BroughtIn {
  SheetEntries sheet{};
  std::vector<AppendedEntry> added{};
};

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

int bring_in(const LogArguments& arguments, const JournalTarget& target, const Garden& garden) {
  const auto rows = read_week_sheet(arguments.sheet, arguments.sheet, garden);
  BroughtIn brought;
  brought.added = append_chosen_to_journal(target, garden, [&](const Journal& journal) {
    brought.sheet = entries_of_sheet(rows, journal);
    return brought.sheet.entries;
  });
  print(arguments.format == OutputFormat::json ? sheet_json(brought, target.shown_name)
                                               : sheet_text(brought, garden));
  return 0;
}

}  // namespace

int run(const LogArguments& arguments) {
  const fs::path folder(arguments.folder);
  const auto shown = [&](const char* name) { return (folder / name).string(); };
  const Garden garden = read_garden(folder / "garden.toml", shown("garden.toml"));
  if (!arguments.sheet.empty())
    return bring_in(arguments, {folder / "journal.csv", shown("journal.csv")}, garden);
  const JournalEntry entry = entry_of(arguments, garden);
  const AppendedEntry added =
      append(arguments, {folder / "journal.csv", shown("journal.csv")}, garden, entry);
  if (added.cut_off) std::fputs(describe(*added.cut_off).c_str(), stderr);
  if (added.other_problems > 0) {
    std::fprintf(
        stderr, "The entry is written, but other lines of the journal have faults (%zu): noonleaf check %s\n",
        added.other_problems, arguments.folder.c_str());
  }
  acknowledge(arguments.format == OutputFormat::json ? answer_json(added, shown("journal.csv"))
                                                     : answer_text(added, entry, arguments, garden),
              added);
  return 0;
}

}  // namespace noonleaf::cli
