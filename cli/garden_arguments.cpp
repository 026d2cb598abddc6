#include "noonleaf/calendar_text.hpp"

#include "command_line.hpp"

namespace noonleaf::cli {
namespace {

/// A part of the garden that may be given several times, its fields between semicolons.
void add_part(CLI::App& command, const std::string& name, std::vector<std::string>& parts,
              const std::string& help, const std::string& fields) {
  command.add_option(name, parts, help)->type_name(fields)->allow_extra_args(false);
}

CLI::App* add_new(CLI::App& app, NewArguments& arguments) {
  CLI::App* command = app.add_subcommand("new", "Start a garden folder: by questions, by options, or --demo");
  command->add_option("DIR", arguments.folder, "the folder to make; it must not exist yet")->required();
  command->add_flag("--demo", arguments.demo, "a complete invented garden to try things on");
  command->add_option("--name", arguments.name, "what the garden is called");
  add_choice(*command, "--units", arguments.units, {{"us", UnitSystem::us}, {"metric", UnitSystem::metric}},
             "of every number that follows, and of what is printed");
  command->add_option("--latitude", arguments.latitude_deg, "degrees, north positive")
      ->check(within(-90, 90));
  command->add_option("--longitude", arguments.longitude_deg, "degrees, east positive")
      ->check(within(-180, 180));
  command->add_option("--elevation", arguments.elevation, "above the sea, feet or metres")
      ->check(within(-1400, 16400));
  command->add_option("--zone", arguments.zone, "IANA time zone, America/Los_Angeles");
  add_part(*command, "--caretaker", arguments.caretakers, "who opens and closes; again for each",
           "ROLE;en|es;HOURS");
  add_part(*command, "--allowed", arguments.allowed_hours, "the town's watering hours", "HOURS");
  add_part(*command, "--tap", arguments.taps, "again for each", "NAME[;BUCKET;SECONDS]");
  add_part(*command, "--sprinkler", arguments.sprinklers, "again for each", "NAME;TAP[;MINUTES;CANS]");
  add_part(*command, "--bed", arguments.beds, "again for each", "NAME;LxW;SPRINKLER;SOIL[;CROP;BEGIN]");
  command->callback([command, &arguments] {
    for (const CLI::Option* option : command->get_options())
      arguments.by_options |=
          option->count() > 0 && option->get_name() != "DIR" && option->get_name() != "--demo";
  });
  return command->footer("Example: noonleaf new my-garden --demo");
}

CLI::App* add_check(CLI::App& app, CheckArguments& arguments) {
  CLI::App* command = app.add_subcommand("check", "List every problem with its place and its fix");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_flag("--strict", arguments.strict, "refuse what is doubtful or set aside as missing, too");
  add_format(*command, arguments.format);
  return command->footer("Example: noonleaf check my-garden");
}

struct DayTexts {
  std::string date, time_of_day;
};

CLI::App* add_today(CLI::App& app, TodayArguments& arguments, DayTexts& texts) {
  CLI::App* command = app.add_subcommand("today", "What to open, for how long, who closes it; alerts");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_option("--date", texts.date, "the day, like 2025-07-16; without it, today on the site's clock")
      ->check(check_date);
  command->add_option("--at", texts.time_of_day, "the time of day, like 07:30; no run starts earlier")
      ->check(check_clock);
  add_format(*command, arguments.format);
  add_language(*command, arguments.language);
  command->add_flag("--alert-exit", arguments.alert_exit, "end with exit code 3 when there are alerts");
  return command->footer("Example: noonleaf today my-garden --date 2025-07-16 --at 07:30");
}

TodayArguments today_arguments(TodayArguments arguments, const DayTexts& texts) {
  if (!texts.date.empty()) arguments.date = parse_iso_date(texts.date);
  if (!texts.time_of_day.empty()) arguments.time_of_day = parse_clock_text(texts.time_of_day);
  return arguments;
}

CLI::App* add_week(CLI::App& app, WeekArguments& arguments, std::string& from) {
  CLI::App* command =
      app.add_subcommand("week", "The plan of the week, as a sheet for whoever opens and closes");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_option("--from", from, "first day, like 2025-07-16; without it, today on the site's clock")
      ->check(check_date);
  command->add_option("--days", arguments.days, "how many days, 1 to 14")
      ->check(within(1, 14))
      ->capture_default_str();
  using Format = WeekArguments::Format;
  add_choice(*command, "--format", arguments.format,
             {{"text", Format::text},
              {"html", Format::html},
              {"csv", Format::csv},
              {"json", Format::json},
              {"ics", Format::ics}},
             "html to print, csv to fill in, ics for a calendar");
  add_choice(*command, "--lang", arguments.language, {{"en", Language::en}, {"es", Language::es}},
             "language of the sheet");
  command->add_option("--out", arguments.out, "write it to this file instead of the screen")
      ->type_name("FILE");
  command
      ->add_option("--since", arguments.since,
                   "an earlier plan (week --format json): the sheet says what is new")
      ->type_name("PLAN.json");
  return command->footer("Example: noonleaf week my-garden --format html --lang es --out week.html");
}

WeekArguments week_arguments(WeekArguments arguments, const std::string& from) {
  if (!from.empty()) arguments.from = parse_iso_date(from);
  return arguments;
}

struct AwayTexts {
  std::string from, to, date;
};

CLI::App* add_away(CLI::App& app, AwayArguments& arguments, AwayTexts& texts) {
  using Format = AwayArguments::Format;
  CLI::App* command = app.add_subcommand("away", "Which beds get through days without anybody");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_option("--from", texts.from, "first day without anybody, like 2025-07-19")
      ->required()
      ->check(check_date);
  command->add_option("--to", texts.to, "last day without anybody")->required()->check(check_date);
  command->add_option("--date", texts.date, "the day to reckon from; without it, today on the site's clock")
      ->check(check_date);
  add_choice(
      *command, "--format", arguments.format,
      {{"text", Format::text}, {"json", Format::json}, {"html", Format::html}, {"sheet", Format::sheet}},
      "how to print the answer; html and sheet are for whoever can come once");
  add_language(*command, arguments.language);
  return command->footer("Example: noonleaf away my-garden --from 2025-07-19 --to 2025-07-30");
}

AwayArguments away_arguments(AwayArguments arguments, const AwayTexts& texts) {
  arguments.from = *parse_iso_date(texts.from);
  arguments.to = *parse_iso_date(texts.to);
  if (!texts.date.empty()) arguments.date = parse_iso_date(texts.date);
  return arguments;
}

CLI::App* add_round(CLI::App& app, RoundArguments& arguments, std::string& date) {
  CLI::App* command = app.add_subcommand("round", "Which of many gardens needs a person first");
  command->add_option("DIR", arguments.folders, "the garden folders")->required();
  command->add_option("--date", date, "the day, like 2025-07-16; without it, today on each site's clock")
      ->check(check_date);
  command->add_option("--top", arguments.top, "how many gardens the table shows")->check(within(1, 1000));
  add_format(*command, arguments.format);
  return command->footer("Example: noonleaf round gardens/*");
}

RoundArguments round_arguments(RoundArguments arguments, const std::string& date) {
  if (!date.empty()) arguments.date = parse_iso_date(date);
  return arguments;
}

CLI::App* add_explain(CLI::App& app, ExplainArguments& arguments, std::string& date) {
  CLI::App* command = app.add_subcommand("explain", "A day's whole calculation for one bed, step by step");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_option("BED", arguments.bed, "id of the bed")->required();
  command->add_option("DATE", date, "the day, like 2025-07-16")->required()->check(check_date);
  add_format(*command, arguments.format);
  return command->footer("Example: noonleaf explain my-garden a 2025-07-16");
}

ExplainArguments explain_arguments(ExplainArguments arguments, const std::string& date) {
  arguments.date = *parse_iso_date(date);
  return arguments;
}

struct PeriodTexts {
  std::string from, to;
};

CLI::App* add_ledger(CLI::App& app, LedgerArguments& arguments, PeriodTexts& texts) {
  CLI::App* command = app.add_subcommand("ledger", "The water used, by bed and month, and its cost");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_option("--from", texts.from, "the first day, like 2025-06-01")->required()->check(check_date);
  command->add_option("--to", texts.to, "the last day, like 2025-07-15")->required()->check(check_date);
  using Format = LedgerArguments::Format;
  add_choice(*command, "--format", arguments.format,
             {{"text", Format::text}, {"csv", Format::csv}, {"json", Format::json}, {"html", Format::html}},
             "how to print the answer");
  return command->footer("Example: noonleaf ledger my-garden --from 2025-06-01 --to 2025-07-15");
}

LedgerArguments ledger_arguments(LedgerArguments arguments, const PeriodTexts& texts) {
  arguments.from = *parse_iso_date(texts.from);
  arguments.to = *parse_iso_date(texts.to);
  return arguments;
}

}  // namespace

void add_garden_commands(CommandLine& line) {
  line.add(add_new);
  line.add(add_check);
  line.add(add_today, today_arguments);
  line.add(add_week, week_arguments);
  line.add(add_away, away_arguments);
  line.add(add_round, round_arguments);
  line.add(add_explain, explain_arguments);
  line.add(add_ledger, ledger_arguments);
}

}  // namespace noonleaf::cli
