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
#include "noonleaf/units.hpp"

#include "commands.hpp"
#include "log_words.hpp"
#include "site_day.hpp"
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
  const LocalTime local = clock_at(garden.site);
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
  const std::string twice =
      added.other_water.empty()
          ? std::string{}
          : wrapped(fmt::format(
                        "Entry {} is water for the same bed and day. Both count: if it is the same run, take "
                        "one back.",
                        added.other_water),
                    0);
  const std::string too_long = beyond_longest_words(garden, entry.bed, entry.minutes);
  return wrapped(fmt::format("Entry {}: {}.", added.id, said_back(entry, arguments.event_word, garden)), 0) +
         droop + (too_long.empty() ? std::string{} : wrapped(too_long, 0)) + twice +
         wrapped(fmt::format("If that is wrong: noonleaf log {} undo {}", arguments.folder, added.id), 0);
}

std::string answer_json(const AppendedEntry& added, const std::string& shown_name) {
  nlohmann::ordered_json json{{"shape", "noonleaf.log"}, {"version", 1},
                              {"file", shown_name},      {"id", added.id},
                              {"line", added.line},      {"cut_off_line", nullptr},
                              {"other_water", nullptr},  {"other_problems", added.other_problems}};
  if (added.cut_off) json["cut_off_line"] = added.cut_off->line;
  if (!added.other_water.empty()) json["other_water"] = added.other_water;
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
