#include "noonleaf/calendar_text.hpp"

#include "command_line.hpp"

namespace noonleaf::cli {
namespace {

struct LogTexts {
  std::string date, time_of_day, until;
  std::string feel, recovered;
};

const std::map<std::string, JournalEvent>& event_choices() {
  static const std::map<std::string, JournalEvent> choices{
      {"water", JournalEvent::water}, {"rain", JournalEvent::rain},
      {"sow", JournalEvent::sow},     {"transplant", JournalEvent::transplant},
      {"pull", JournalEvent::pull},   {"stage", JournalEvent::stage},
      {"amend", JournalEvent::amend}, {"mulch", JournalEvent::mulch},
      {"feel", JournalEvent::feel},   {"probe", JournalEvent::probe},
      {"droop", JournalEvent::droop}, {"note", JournalEvent::note},
      {"undo", JournalEvent::undo}};
  return choices;
}

const std::map<std::string, SoilFeel>& feel_choices() {
  static const std::map<std::string, SoilFeel> choices{{"dry", SoilFeel::dry},
                                                       {"slightly_moist", SoilFeel::slightly_moist},
                                                       {"moist", SoilFeel::moist},
                                                       {"wet", SoilFeel::wet},
                                                       {"field_capacity", SoilFeel::field_capacity}};
  return choices;
}

void add_log_ground(CLI::App& command, LogArguments& arguments) {
  command
      .add_option("--organic-pct", arguments.organic_pct,
                  "amend: organic matter after digging in, % by weight")
      ->check(within(0, 8));
  CLI::Option* wilting = command
                             .add_option("--wilting-point-pct", arguments.wilting_point_pct,
                                         "amend: measured after it, % by volume")
                             ->check(within(0.1, 90));
  CLI::Option* capacity =
      command
          .add_option("--field-capacity-pct", arguments.field_capacity_pct, "amend: measured, with the next")
          ->check(within(1, 90))
          ->needs(wilting);
  wilting->needs(capacity);
  command.add_option("--mulch", arguments.mulch, "mulch: organic, plastic, or none where it was taken off")
      ->transform(CLI::CheckedTransformer(std::map<std::string, MulchKind>{{"organic", MulchKind::organic},
                                                                           {"plastic", MulchKind::plastic},
                                                                           {"none", MulchKind::none}})
                      .description("organic|plastic|none"));
  command.add_option("--covered-pct", arguments.covered_pct, "mulch: share of the ground; default all of it")
      ->check(within(0, 100));
}

void add_log_quantities(CLI::App& command, LogArguments& arguments) {
  command.add_option("--minutes", arguments.minutes, "water: how long it ran; 0 = it did not run")
      ->check(within(0, 2880));
  const auto litres =
      command.add_option("--litres", arguments.litres, "water: what the meter or the cans counted")
          ->check(within(0, 1e6));
  const auto gallons =
      command
          .add_option_function<double>(
              "--gallons", [&arguments](double value) { arguments.litres = litres_from_gallons(value); },
              "water: the same in US gallons")
          ->check(within(0, 264172))
          ->excludes(litres);
  command.add_option("--cans", arguments.cans, "water: how many watering cans")
      ->check(within(0, 1000))
      ->excludes(litres)
      ->excludes(gallons);
  const auto inches = command.add_option("--rain-in", arguments.rain_in, "rain: what the gauge held, inches")
                          ->check(within(0, 40));
  command.add_option("--rain-mm", arguments.rain_mm, "rain: the same in mm")
      ->check(within(0, 1000))
      ->excludes(inches);
  command.add_option("--crop", arguments.crop, "sow, transplant, pull, stage: which crop");
  command.add_option("--share-pct", arguments.share_pct, "sow, transplant: share of the bed")
      ->check(within(0, 100));
  command.add_option("--stage", arguments.stage, "stage: development, mid_season, late_season or over");
  const auto volumetric = command.add_option("--water-pct", arguments.water_pct, "probe: water by volume, %")
                              ->check(within(0, 100));
  command.add_option("--tension-kpa", arguments.tension_kpa, "probe: soil water tension, kPa (centibar)")
      ->check(within(0, 100000))
      ->excludes(volumetric);
}

/// An event, or a sheet and nothing beside it: its rows say all the rest.
void require_event_or_sheet(const CLI::App& command, const LogArguments& arguments) {
  if (arguments.event_word.empty() && arguments.sheet.empty()) throw CLI::RequiredError("EVENT");
  if (arguments.sheet.empty()) return;
  for (const CLI::Option* option : command.get_options()) {
    const std::string name = option->get_name();
    if (option->count() > 0 && name != "DIR" && name != "--from" && name != "--format")
      throw CLI::ExcludesError("--from", name);
  }
}

CLI::App* add_log(CLI::App& app, LogArguments& arguments, LogTexts& texts) {
  CLI::App* command = app.add_subcommand("log", "Write down what happened: water, rain, sowing, a look");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_option("EVENT", arguments.event_word, "what happened")
      ->check(one_of(event_choices(), "an event"), words_of(event_choices()));
  command->add_option("--from", arguments.sheet, "bring in a filled-in week sheet (CSV) in place of an EVENT")
      ->type_name("SHEET.csv")
      ->excludes("EVENT");
  command->add_option("WHAT", arguments.word, "the bed; for note its text; for undo the id of the entry");
  command->add_option("--bed", arguments.bed, "note: the bed it is about");
  add_log_quantities(*command, arguments);
  add_log_ground(*command, arguments);
  command->add_option("--feel", texts.feel, "feel: how the soil feels")
      ->check(one_of(feel_choices(), "a class of soil feel"), words_of(feel_choices()));
  command->add_option("--recovered", texts.recovered, "droop: yes or no, whether it stood up again by night")
      ->check(CLI::IsMember({"yes", "no"}));
  command
      ->add_option("--at", texts.time_of_day,
                   "when, like 07:30; for water the begin; now where no --date is given")
      ->check(check_clock);
  const auto minutes = command->get_option("--minutes");
  command->add_option("--until", texts.until, "water: the end, like 07:55, instead of --minutes")
      ->check(check_clock)
      ->excludes(minutes)
      ->needs(command->get_option("--at"));
  command->add_option("--date", texts.date, "the day, like 2025-07-16; without it, today on the site's clock")
      ->check(check_date);
  command->add_option("--who", arguments.who, "a role, not a name: custodian");
  command->add_option("--note", arguments.note, "a remark beside the entry");
  add_format(*command, arguments.format);
  command->callback([&arguments, command] { require_event_or_sheet(*command, arguments); });
  return command->footer("Example: noonleaf log my-garden water c --minutes 25 --at 06:00 --who custodian");
}

LogArguments log_arguments(LogArguments arguments, const LogTexts& texts) {
  if (!arguments.sheet.empty()) return arguments;
  arguments.event = event_choices().at(arguments.event_word);
  if (!texts.recovered.empty()) arguments.recovered = texts.recovered == "yes";
  if (!texts.feel.empty()) arguments.feel = feel_choices().at(texts.feel);
  if (!texts.date.empty()) arguments.date = parse_iso_date(texts.date);
  if (!texts.time_of_day.empty()) arguments.time_of_day = parse_clock_text(texts.time_of_day);
  if (!texts.until.empty()) arguments.until = parse_clock_text(texts.until);
  return arguments;
}

}  // namespace

void add_log_command(CommandLine& line) { line.add(add_log, log_arguments); }

}  // namespace noonleaf::cli
