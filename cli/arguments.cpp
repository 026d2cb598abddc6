// The only file that includes CLI11: it costs seconds to compile.
#include "arguments.hpp"

#include <algorithm>
#include <charconv>
#include <cstdio>
#include <functional>
#include <map>
#include <string_view>

#include <CLI/CLI.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/units.hpp"

#include "version.hpp"

namespace noonleaf::cli {
namespace {

constexpr int wrong_usage = 2;

std::string check_date(const std::string& text) {
  return parse_iso_date(text) ? std::string{} : "\"" + text + "\" is not a date; write it like 2025-07-16";
}

std::string check_clock(const std::string& text) {
  return parse_clock_text(text) ? std::string{}
                                : "\"" + text + "\" is not a time of day; write it like 07:30";
}

std::string check_pair(const std::string& text) {
  const std::size_t equals = text.find('=');
  const bool good = equals != std::string::npos && equals > 0 && equals + 1 < text.size();
  return good ? std::string{} : "\"" + text + "\" is not NAME=VALUE";
}

/// A check that the number lies within a range, in words that name it.
std::function<std::string(const std::string&)> within(double low, double high) {
  return [low, high](const std::string& text) {
    double value = missing;
    const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool is_number = code == std::errc{} && end == text.data() + text.size();
    if (is_number && value >= low && value <= high) return std::string{};
    return "\"" + text + "\" is not a number from " + number_text(low) + " to " + number_text(high);
  };
}

std::vector<std::pair<std::string, std::string>> split_pairs(const std::vector<std::string>& texts) {
  std::vector<std::pair<std::string, std::string>> pairs;
  for (const std::string& text : texts) {
    const std::size_t equals = text.find('=');
    pairs.emplace_back(text.substr(0, equals), text.substr(equals + 1));
  }
  return pairs;
}

template <class Choice>
CLI::Option* add_choice(CLI::App& command, const std::string& name, Choice& choice,
                        const std::map<std::string, Choice>& words, const std::string& help) {
  std::string list;
  for (const auto& [word, value] : words) list += (list.empty() ? "" : "|") + word;
  return command.add_option(name, choice, help)->transform(CLI::CheckedTransformer(words).description(list));
}

void add_format(CLI::App& command, OutputFormat& format) {
  add_choice(command, "--format", format, {{"text", OutputFormat::text}, {"json", OutputFormat::json}},
             "how to print the answer");
}

/// A part of the garden that may be given several times, its fields between semicolons.
void add_part(CLI::App& command, const std::string& name, std::vector<std::string>& parts, const std::string& help,
              const std::string& fields) {
  command.add_option(name, parts, help)->type_name(fields)->allow_extra_args(false);
}

void add_new(CLI::App& app, NewArguments& arguments) {
  CLI::App* command = app.add_subcommand("new", "Start a garden folder: by questions, by options, or --demo");
  command->add_option("DIR", arguments.folder, "the folder to make; it must not exist yet")->required();
  command->add_flag("--demo", arguments.demo, "a complete invented garden to try things on");
  command->add_option("--name", arguments.name, "what the garden is called");
  add_choice(*command, "--units", arguments.units, {{"us", UnitSystem::us}, {"metric", UnitSystem::metric}},
             "of every number that follows, and of what is printed");
  command->add_option("--latitude", arguments.latitude_deg, "degrees, north positive")->check(within(-90, 90));
  command->add_option("--longitude", arguments.longitude_deg, "degrees, east positive")->check(within(-180, 180));
  command->add_option("--elevation", arguments.elevation, "above the sea, feet or metres")
      ->check(within(-1400, 16400));
  command->add_option("--zone", arguments.zone, "IANA time zone, America/Los_Angeles");
  add_part(*command, "--caretaker", arguments.caretakers, "who opens and closes; again for each",
           "ROLE;en|es;HOURS");
  add_part(*command, "--allowed", arguments.allowed_hours, "the town's watering hours", "HOURS");
  add_part(*command, "--tap", arguments.taps, "again for each", "NAME[;BUCKET;SECONDS]");
  add_part(*command, "--sprinkler", arguments.sprinklers, "again for each", "NAME;TAP[;MINUTES;CANS]");
  add_part(*command, "--bed", arguments.beds, "again for each",
           "NAME;LxW;SPRINKLER;SOIL[;CROP;BEGIN]");
  command->footer("Example: noonleaf new my-garden --demo");
}

void add_check(CLI::App& app, CheckArguments& arguments) {
  CLI::App* command = app.add_subcommand("check", "List every problem with its place and its fix");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_flag("--strict", arguments.strict, "refuse what is doubtful or set aside as missing, too");
  add_format(*command, arguments.format);
  command->footer("Example: noonleaf check my-garden");
}

struct DayTexts {
  std::string date, time_of_day;
};

void add_today(CLI::App& app, TodayArguments& arguments, DayTexts& texts) {
  CLI::App* command = app.add_subcommand("today", "What to open, for how long, who closes it; alerts");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_option("--date", texts.date, "the day, like 2025-07-16; without it, today on the site's clock")
      ->check(check_date);
  command->add_option("--at", texts.time_of_day, "the time of day, like 07:30; no run starts earlier")
      ->check(check_clock);
  add_format(*command, arguments.format);
  command->add_flag("--alert-exit", arguments.alert_exit, "end with exit code 3 when there are alerts");
  command->footer("Example: noonleaf today my-garden --date 2025-07-16 --at 07:30");
}

void add_week(CLI::App& app, WeekArguments& arguments, std::string& from) {
  CLI::App* command = app.add_subcommand("week", "The plan of the week, as a sheet for whoever opens and closes");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_option("--from", from, "first day, like 2025-07-16; without it, today on the site's clock")
      ->check(check_date);
  command->add_option("--days", arguments.days, "how many days, 1 to 14")->check(within(1, 14))->capture_default_str();
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
  command->add_option("--out", arguments.out, "write it to this file instead of the screen")->type_name("FILE");
  command
      ->add_option("--since", arguments.since,
                   "an earlier plan (week --format json): the sheet says what is new")
      ->type_name("PLAN.json");
  command->footer("Example: noonleaf week my-garden --format html --lang es --out week.html");
}

struct AwayTexts {
  std::string from, to, date;
};

void add_away(CLI::App& app, AwayArguments& arguments, AwayTexts& texts) {
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
  add_choice(*command, "--lang", arguments.language, {{"en", Language::en}, {"es", Language::es}},
             "in which language");
  command->footer("Example: noonleaf away my-garden --from 2025-07-19 --to 2025-07-30");
}

AwayArguments away_arguments(AwayArguments arguments, const AwayTexts& texts) {
  arguments.from = *parse_iso_date(texts.from);
  arguments.to = *parse_iso_date(texts.to);
  if (!texts.date.empty()) arguments.date = parse_iso_date(texts.date);
  return arguments;
}

void add_round(CLI::App& app, RoundArguments& arguments, std::string& date) {
  CLI::App* command = app.add_subcommand("round", "Which of many gardens needs a person first");
  command->add_option("DIR", arguments.folders, "the garden folders")->required();
  command->add_option("--date", date, "the day, like 2025-07-16; without it, today on each site's clock")
      ->check(check_date);
  command->add_option("--top", arguments.top, "how many gardens the table shows")->check(within(1, 1000));
  add_format(*command, arguments.format);
  command->footer("Example: noonleaf round gardens/*");
}

struct Et0Texts {
  std::vector<std::string> columns, where;
};

void add_et0(CLI::App& app, Et0Arguments& arguments, Et0Texts& texts) {
  CLI::App* command = app.add_subcommand("et0", "Reference ET from a bare weather file");
  command->add_option("WEATHER.csv", arguments.file, "the weather file")->required();
  command->add_option("--latitude", arguments.latitude_deg, "degrees, north positive")
      ->required()
      ->check(within(-90, 90));
  command
      ->add_option("--longitude", arguments.longitude_deg,
                   "degrees, east positive (daily ET0 does not need it)")
      ->check(within(-180, 180));
  command->add_option("--elevation", arguments.elevation_m, "metres above the sea")
      ->required()
      ->check(within(-430, 5000));
  command->add_option("--wind-height", arguments.wind_height_m, "height of the anemometer, metres")
      ->check(within(0.5, 100))
      ->capture_default_str();
  using Arguments = Et0Arguments;
  add_choice(*command, "--equation", arguments.equation,
             {{"fao56", Arguments::Equation::fao56}, {"asce", Arguments::Equation::asce}}, "which equation");
  add_choice(*command, "--surface", arguments.surface,
             {{"short", Arguments::Surface::short_grass}, {"tall", Arguments::Surface::tall}},
             "reference surface; tall needs --equation asce");
  command
      ->add_option("--column", texts.columns,
                   "a header of the file for a known name: rain_mm=\"Precip (mm)\"")
      ->check(check_pair)
      ->type_name("NAME=HEADER")
      ->allow_extra_args(false);
  command->add_option("--ignore", arguments.ignored, "leave out this column of the file")
      ->type_name("HEADER")
      ->allow_extra_args(false);
  command->add_option("--where", texts.where, "keep the rows with this value: station=Seattle")
      ->check(check_pair)
      ->type_name("COLUMN=VALUE")
      ->allow_extra_args(false);
  command->add_option("--zone", arguments.zone, "IANA time zone of the site, for hourly files")
      ->type_name("ZONE");
  add_choice(*command, "--stamps", arguments.stamps,
             {{"begin", StampMark::period_begin}, {"end", StampMark::period_end}},
             "which end of its period a time marks, for hourly files");
  add_choice(
      *command, "--dates", arguments.date_order,
      {{"iso", DateOrder::iso}, {"month-first", DateOrder::month_first}, {"day-first", DateOrder::day_first}},
      "how dates with slashes are ordered");
  command->add_flag("--arid", arguments.arid,
                    "dry site: dew point 2 °C under the night's low where humidity is missing");
  command->add_flag("--coast", arguments.coast,
                    "near the sea: kRs 0.19 instead of 0.16 where sun is missing");
  command->add_flag("--strict", arguments.strict, "refuse the file for any doubtful value");
  command->add_option("--accept", arguments.accepted_checks, "use what this quality check would set aside")
      ->type_name("CHECK")
      ->allow_extra_args(false);
  command->add_flag("--detail", arguments.detail, "add every intermediate quantity");
  using Days = Arguments::DaysOfHours;
  const auto days_of_hours = [&](const char* name, Days days, const char* what) {
    return command->add_flag_callback(
        name, [&arguments, days] { arguments.days_of_hours = days; }, what);
  };
  days_of_hours("--daily-sum", Days::summed, "hourly files: add the hours' ET0 up to days of --zone")
      ->excludes(
          days_of_hours("--daily-equation", Days::daily_equation,
                        "hourly files: make days of --zone from the hours, and use the daily equation"));
  command->add_option("--precision", arguments.precision, "digits after the point")
      ->check(within(0, 15))
      ->capture_default_str();
  add_choice(*command, "--format", arguments.format,
             {{"csv", Arguments::Format::csv}, {"json", Arguments::Format::json}}, "how to print the answer");
  command->footer("Example: noonleaf et0 june.csv --latitude 46.07 --elevation 290 --wind-height 10");
}

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

/// A check that the text is one of the words, with the nearest of them.
template <class Choice>
std::function<std::string(const std::string&)> one_of(const std::map<std::string, Choice>& choices,
                                                      const std::string& what) {
  return [&choices, what](const std::string& text) {
    if (choices.contains(text)) return std::string{};
    std::vector<std::string> words;
    std::string list;
    for (const auto& [word, choice] : choices) {
      words.push_back(word);
      list += (list.empty() ? "" : ", ") + word;
    }
    const std::string nearest = nearest_name(text, words);
    return "\"" + text + "\" is not " + what + "; " +
           (nearest.empty() ? "use " + list : "did you mean " + nearest + "?");
  };
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

void add_log(CLI::App& app, LogArguments& arguments, LogTexts& texts) {
  CLI::App* command = app.add_subcommand("log", "Write down what happened: water, rain, sowing, a look");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command
      ->add_option("EVENT", arguments.event_word,
                   "water, rain, sow, transplant, pull, stage, amend, mulch, feel, probe, droop, note, undo")
      ->check(one_of(event_choices(), "an event"));
  command->add_option("--from", arguments.sheet, "bring in a filled-in week sheet (CSV) in place of an EVENT")
      ->excludes("EVENT");
  command->add_option("WHAT", arguments.word, "the bed; for note its text; for undo the id of the entry");
  command->add_option("--bed", arguments.bed, "note: the bed it is about");
  add_log_quantities(*command, arguments);
  add_log_ground(*command, arguments);
  command->add_option("--feel", texts.feel, "feel: dry, slightly_moist, moist, wet or field_capacity")
      ->check(one_of(feel_choices(), "a class of soil feel"));
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
  command->footer("Example: noonleaf log my-garden water c --minutes 25 --at 06:00 --who custodian");
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

/// A unit that may follow a number, and what it is worth in the first of its kind.
struct NumberUnit {
  std::string_view word;
  double factor;
};
using NumberUnits = std::vector<NumberUnit>;

constexpr double kilograms_per_pound = 0.45359237;  // by definition, NIST SP 811 appendix B.8

const NumberUnits can_diameter_units{{"mm", 1}, {"cm", 10}, {"in", mm_per_inch}};
const NumberUnits weight_units{
    {"kg", 1}, {"g", 0.001}, {"lb", kilograms_per_pound}, {"oz", kilograms_per_pound / 16}};
const NumberUnits volume_units{
    {"l", 1}, {"L", 1}, {"ml", 0.001}, {"gal", litres_per_gallon}, {"qt", litres_per_gallon / 4}};

/// A number above 0 with one of the units behind it, or none for the first; nothing when it is not that.
std::optional<double> number_with_unit(const std::string& text, const NumberUnits& units) {
  double value = missing;
  const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (code != std::errc{} || !(value > 0)) return std::nullopt;
  const std::string_view word(end, static_cast<std::size_t>(text.data() + text.size() - end));
  if (word.empty()) return value;
  for (const NumberUnit& unit : units)
    if (unit.word == word) return value * unit.factor;
  return std::nullopt;
}

/// A check for number_with_unit: `example` shows how it is written.
std::function<std::string(const std::string&)> with_unit(const NumberUnits& units, std::string what,
                                                         std::string example) {
  return [&units, what = std::move(what), example = std::move(example)](const std::string& text) {
    return number_with_unit(text, units) ? std::string{}
                                         : "\"" + text + "\" is not " + what + "; write it like " + example;
  };
}

void add_cans(CLI::App& app, CansArguments& arguments, std::string& diameter) {
  CLI::App* command = app.add_subcommand("cans", "A catch-can test: rate, evenness, where it is dry");
  command
      ->add_option("FILE", arguments.file,
                   "the sheet: depth_mm, depth_in or caught_ml; x_m, y_m or x_ft, y_ft")
      ->required();
  command->add_option("--minutes", arguments.minutes, "how long the sprinkler ran")
      ->required()
      ->check(within(0, 1440));
  command
      ->add_option("--can-diameter", diameter,
                   "for caught_ml: inner diameter at the rim, 83mm, 8.3cm or 3.25in")
      ->check(with_unit(can_diameter_units, "a diameter", "83mm, 8.3cm or 3.25in"));
  using Format = CansArguments::Format;
  add_choice(*command, "--format", arguments.format,
             {{"text", Format::text}, {"json", Format::json}, {"svg", Format::svg}},
             "how to print the answer");
  command->footer("Example: noonleaf cans lawn.csv --minutes 15");
}

void add_explain(CLI::App& app, ExplainArguments& arguments, std::string& date) {
  CLI::App* command = app.add_subcommand("explain", "A day's whole calculation for one bed, step by step");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_option("BED", arguments.bed, "id of the bed")->required();
  command->add_option("DATE", date, "the day, like 2025-07-16")->required()->check(check_date);
  add_format(*command, arguments.format);
  command->footer("Example: noonleaf explain my-garden a 2025-07-16");
}

void add_crops(CLI::App& app, CropsArguments& arguments) {
  CLI::App* command = app.add_subcommand("crops", "The crop table; one crop with its curve");
  command->add_option("CROP", arguments.crop, "a crop of the table, like tomato; without it, the table");
  command->add_option("--region", arguments.region, "the stage lengths to draw: words of their region");
  using Format = CropsArguments::Format;
  add_choice(*command, "--format", arguments.format,
             {{"text", Format::text}, {"json", Format::json}, {"svg", Format::svg}},
             "how to print the answer; svg for one crop");
  command->footer("Example: noonleaf crops tomato");
}

void add_outdoors(CLI::App& app, OutdoorsArguments& arguments) {
  CLI::App* command = app.add_subcommand("outdoors", "Heat for people outside: heat index, wet-bulb globe");
  OutdoorReading& reading = arguments.reading;
  CLI::Option* celsius =
      command->add_option("--t-c", reading.t_c, "air temperature, °C")->check(within(-20, 55));
  CLI::Option* fahrenheit =
      command
          ->add_option_function<double>(
              "--t-f", [&reading](double t_f) { reading.t_c = (t_f - 32) / 1.8; }, "air temperature, °F")
          ->check(within(-4, 131))
          ->excludes(celsius);
  CLI::Option_group* air = command->add_option_group("air temperature", "one of the two");
  air->add_options(celsius, fahrenheit);
  air->require_option(1);
  command->add_option("--rh", reading.rh_pct, "relative humidity, %")->required()->check(within(0, 100));
  CLI::Option* wind =
      command->add_option("--wind-m-s", reading.wind_m_s, "wind at 2 m, m/s; for the globe temperature")
          ->check(within(0, 30));
  CLI::Option* sun =
      command
          ->add_option("--sun-w-m2", reading.rs_w_m2, "solar radiation, W/m2; full summer noon is about 900")
          ->check(within(0, 1400))
          ->needs(wind);
  wind->needs(sun);
  command->add_option("--sun-height-deg", reading.sun_height_deg, "sun above the horizon, degrees")
      ->check(within(0, 90))
      ->needs(sun);
  command->add_option("--elevation", reading.elevation_m, "metres above the sea")->check(within(-430, 5000));
  add_format(*command, arguments.format);
  command->footer("Example: noonleaf outdoors --t-f 96 --rh 65 --wind-m-s 1.5 --sun-w-m2 850");
}

struct PotTexts {
  std::string volume, soaked, drained, wilted, dry;
};

void add_pot(CLI::App& command, SoilsArguments& arguments, PotTexts& texts) {
  CLI::Option* pot = command.add_flag("--pot", arguments.by_pot,
                                      "weigh a pot of the mix: the steps, and the form worked out");
  const auto add = [&](const char* name, std::string& text, const char* help, const NumberUnits& units,
                       const char* what, const char* example) {
    command.add_option(name, text, help)->check(with_unit(units, what, example))->needs(pot);
  };
  add("--volume", texts.volume, "volume of the soil in the pot: 5l, 1.3gal", volume_units, "a volume",
      "5l or 1.3gal");
  const char* const weights = "4.35kg, 4350g or 9.6lb";
  add("--soaked", texts.soaked, "weight of the soaked pot, may be left out: 5.1kg, 5100g, 11.2lb",
      weight_units, "a weight", weights);
  add("--drained", texts.drained, "after a day of draining", weight_units, "a weight", weights);
  add("--wilted", texts.wilted, "when the leaves hang at dawn", weight_units, "a weight", weights);
  add("--dry", texts.dry, "oven-dry with its pot, may be left out", weight_units, "a weight", weights);
}

void add_soils(CLI::App& app, SoilsArguments& arguments, PotTexts& texts) {
  CLI::App* command = app.add_subcommand("soils", "The soil table; one soil from its particles or a pot");
  CLI::Option* texture =
      command->add_option("TEXTURE", arguments.texture, "a texture class, like loam; without it, the table");
  CLI::Option* sand =
      command->add_option("--sand", arguments.particles.sand_pct, "sand, % of the fine earth by weight")
          ->check(within(0, 100))
          ->excludes(texture);
  CLI::Option* clay = command->add_option("--clay", arguments.particles.clay_pct, "clay, likewise; to 60")
                          ->check(within(0, 100))
                          ->needs(sand);
  sand->needs(clay);
  command->add_option("--organic", arguments.particles.organic_pct, "organic matter, %; to 8")
      ->check(within(0, 100))
      ->capture_default_str()
      ->needs(sand);
  command->add_option("--gravel", arguments.particles.gravel_pct, "above 2 mm, % of the whole soil by weight")
      ->check(within(0, 100))
      ->capture_default_str()
      ->needs(sand);
  command
      ->add_option("--density", arguments.particles.density_factor,
                   "bulk density over normal: 0.9 loosened, 1.3 compacted")
      ->check(within(0.9, 1.3))
      ->capture_default_str()
      ->needs(sand);
  add_pot(*command, arguments, texts);
  command->get_option("--pot")->excludes(texture)->excludes(sand);
  add_format(*command, arguments.format);
  command->footer("Example: noonleaf soils --sand 55 --clay 15 --organic 4");
}

SoilsArguments soils_arguments(SoilsArguments arguments, const PotTexts& texts) {
  arguments.by_particles = is_known(arguments.particles.sand_pct);
  arguments.pot.soil_volume_l = number_with_unit(texts.volume, volume_units).value_or(missing);
  arguments.pot.soaked_kg = number_with_unit(texts.soaked, weight_units).value_or(missing);
  arguments.pot.drained_kg = number_with_unit(texts.drained, weight_units).value_or(missing);
  arguments.pot.wilted_kg = number_with_unit(texts.wilted, weight_units).value_or(missing);
  arguments.pot.dry_kg = number_with_unit(texts.dry, weight_units).value_or(missing);
  return arguments;
}

struct PeriodTexts {
  std::string from, to;
};

void add_ledger(CLI::App& app, LedgerArguments& arguments, PeriodTexts& texts) {
  CLI::App* command = app.add_subcommand("ledger", "The water used, by bed and month, and its cost");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
  command->add_option("--from", texts.from, "the first day, like 2025-06-01")->required()->check(check_date);
  command->add_option("--to", texts.to, "the last day, like 2025-07-15")->required()->check(check_date);
  using Format = LedgerArguments::Format;
  add_choice(*command, "--format", arguments.format,
             {{"text", Format::text}, {"csv", Format::csv}, {"json", Format::json}, {"html", Format::html}},
             "how to print the answer");
  command->footer("Example: noonleaf ledger my-garden --from 2025-06-01 --to 2025-07-15");
}

std::vector<std::string> option_names(const CLI::App& command) {
  std::vector<std::string> names;
  for (const CLI::Option* option : command.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  }
  return names;
}

std::vector<std::string> command_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::App* command : app.get_subcommands({})) names.push_back(command->get_name());
  return names;
}

/// The command that was being parsed when the line turned out wrong; null = it has none.
const CLI::App* parsed_command(const CLI::App& app) {
  for (const CLI::App* command : app.get_subcommands({})) {
    if (command->count() > 0) return command;
  }
  return nullptr;
}

int print_usage_problem(std::string message, std::string fix) {
  Problem problem;
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  std::fputs(describe(problem).c_str(), stderr);
  return wrong_usage;
}

int complain_without_command(const CLI::App& app, std::string_view first_word) {
  if (first_word.empty()) {
    return print_usage_problem("noonleaf: name a command",
                               "for example: noonleaf today DIR; `noonleaf --help` lists them");
  }
  const std::string nearest = nearest_name(first_word, command_names(app));
  return print_usage_problem(
      "noonleaf: \"" + std::string(first_word) + "\" is not a command",
      nearest.empty() ? "`noonleaf --help` lists them" : "did you mean " + nearest + "?");
}

int complain(const CLI::App& app, const CLI::ParseError& refused, std::string_view first_word) {
  const CLI::App* command = parsed_command(app);
  if (command == nullptr) return complain_without_command(app, first_word);
  const std::string name = "noonleaf " + command->get_name();
  const auto unknown = command->remaining();
  if (!unknown.empty()) {
    const auto option = std::find_if(unknown.begin(), unknown.end(),
                                     [](const std::string& word) { return word.starts_with("-"); });
    const std::string& word = option == unknown.end() ? unknown.front() : *option;
    const std::string nearest = nearest_name(word, option_names(*command));
    return print_usage_problem(
        name + ": \"" + word + "\" does not belong here",
        nearest.empty() ? "`" + name + " --help` shows what it takes" : "did you mean " + nearest + "?");
  }
  std::string example = command->get_footer();
  if (!example.empty()) example[0] = 'e';
  return print_usage_problem(name + ": " + refused.what(), example);
}

}  // namespace

std::variant<Arguments, int> parse_arguments(int count, const char* const* words) {
  CLI::App app{"What to open, for how long, and whether a droop is thirst or heat.", "noonleaf"};
  app.require_subcommand(1);
  app.get_formatter()->label("SUBCOMMAND", "COMMAND");
  app.get_formatter()->column_width(26);
  app.set_version_flag("--version", std::string(version_line));
  app.footer("It advises; it opens no valve. Local watering rules and school policy come\nfirst.");
  NewArguments start;
  CheckArguments check;
  TodayArguments today;
  DayTexts day_texts;
  WeekArguments week;
  std::string week_from;
  Et0Arguments et0;
  Et0Texts et0_texts;
  LogArguments log;
  LogTexts log_texts;
  CansArguments cans;
  std::string can_diameter;
  LedgerArguments ledger;
  PeriodTexts ledger_texts;
  add_new(app, start);
  add_check(app, check);
  add_today(app, today, day_texts);
  add_week(app, week, week_from);
  add_et0(app, et0, et0_texts);
  add_log(app, log, log_texts);
  add_cans(app, cans, can_diameter);
  CropsArguments crops;
  SoilsArguments soils;
  PotTexts pot_texts;
  ExplainArguments explain;
  std::string explained_date;
  add_explain(app, explain, explained_date);
  add_crops(app, crops);
  add_soils(app, soils, pot_texts);
  add_ledger(app, ledger, ledger_texts);
  OutdoorsArguments outdoors;
  add_outdoors(app, outdoors);
  AwayArguments away;
  AwayTexts away_texts;
  RoundArguments round;
  std::string round_date;
  add_away(app, away, away_texts);
  add_round(app, round, round_date);
  for (CLI::App* command : app.get_subcommands({})) command->group("Commands");
  try {
    app.parse(count, words);
    if (app.got_subcommand("log") && log.event_word.empty() && log.sheet.empty())
      throw CLI::RequiredError("EVENT");
  } catch (const CLI::Success& answer) {
    return app.exit(answer);
  } catch (const CLI::ParseError& refused) {
    return complain(app, refused, count > 1 ? words[1] : "");
  }
  if (const CLI::App* command = app.get_subcommand("new"); app.got_subcommand("new")) {
    for (const CLI::Option* option : command->get_options())
      start.by_options |= option->count() > 0 && option->get_name() != "DIR" && option->get_name() != "--demo";
    return Arguments(start);
  }
  if (app.got_subcommand("check")) return Arguments(check);
  if (app.got_subcommand("week")) {
    if (!week_from.empty()) week.from = parse_iso_date(week_from);
    return Arguments(week);
  }
  if (app.got_subcommand("log")) return Arguments(log_arguments(log, log_texts));
  if (app.got_subcommand("explain")) {
    explain.date = parse_iso_date(explained_date).value_or(explain.date);
    return Arguments(explain);
  }
  if (app.got_subcommand("outdoors")) return Arguments(outdoors);
  if (app.got_subcommand("crops")) return Arguments(crops);
  if (app.got_subcommand("soils")) return Arguments(soils_arguments(soils, pot_texts));
  if (app.got_subcommand("cans")) {
    cans.can_diameter_mm = number_with_unit(can_diameter, can_diameter_units).value_or(missing);
    return Arguments(cans);
  }
  if (app.got_subcommand("ledger")) {
    ledger.from = *parse_iso_date(ledger_texts.from);
    ledger.to = *parse_iso_date(ledger_texts.to);
    return Arguments(ledger);
  }
  if (app.got_subcommand("away")) return Arguments(away_arguments(away, away_texts));
  if (app.got_subcommand("round")) {
    if (!round_date.empty()) round.date = parse_iso_date(round_date);
    return Arguments(round);
  }
  if (app.got_subcommand("today")) {
    if (!day_texts.date.empty()) today.date = parse_iso_date(day_texts.date);
    if (!day_texts.time_of_day.empty()) today.time_of_day = parse_clock_text(day_texts.time_of_day);
    return Arguments(today);
  }
  et0.columns = split_pairs(et0_texts.columns);
  et0.where = split_pairs(et0_texts.where);
  return Arguments(et0);
}

}  // namespace noonleaf::cli
