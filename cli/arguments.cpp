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

void add_new(CLI::App& app, NewArguments& arguments) {
  CLI::App* command = app.add_subcommand("new", "Start a garden folder");
  command->add_option("DIR", arguments.folder, "the folder to make; it must not exist yet")->required();
  command->add_flag("--demo")->description("fill it with a complete invented garden")->required();
  command->footer("Example: noonleaf new my-garden --demo");
}

void add_check(CLI::App& app, CheckArguments& arguments) {
  CLI::App* command = app.add_subcommand("check", "List every problem with its place and its fix");
  command->add_option("DIR", arguments.folder, "the garden folder")->required();
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
  command->add_option("--ignore", arguments.ignored, "leave a column alone whose name looks like a known one")
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
  command->add_flag("--daily-sum", arguments.daily_sum, "hourly files: add the hours up to days of --zone");
  command->add_option("--precision", arguments.precision, "digits after the point")
      ->check(within(0, 15))
      ->capture_default_str();
  add_choice(*command, "--format", arguments.format,
             {{"csv", Arguments::Format::csv}, {"json", Arguments::Format::json}}, "how to print the answer");
  command->footer("Example: noonleaf et0 june.csv --latitude 46.07 --elevation 290 --wind-height 10");
}

struct LogTexts {
  std::string date, time_of_day, until;
  std::string feel;
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

void add_log_quantities(CLI::App& command, LogArguments& arguments) {
  command.add_option("--minutes", arguments.minutes, "water: how long it ran")->check(within(0, 2880));
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
      ->required()
      ->check(one_of(event_choices(), "an event"));
  command->add_option("WHAT", arguments.word, "the bed; for note its text; for undo the id of the entry");
  command->add_option("--bed", arguments.bed, "note: the bed it is about");
  add_log_quantities(*command, arguments);
  command->add_option("--feel", texts.feel, "feel: dry, slightly_moist, moist, wet or field_capacity")
      ->check(one_of(feel_choices(), "a class of soil feel"));
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
  arguments.event = event_choices().at(arguments.event_word);
  if (!texts.feel.empty()) arguments.feel = feel_choices().at(texts.feel);
  if (!texts.date.empty()) arguments.date = parse_iso_date(texts.date);
  if (!texts.time_of_day.empty()) arguments.time_of_day = parse_clock_text(texts.time_of_day);
  if (!texts.until.empty()) arguments.until = parse_clock_text(texts.until);
  return arguments;
}

/// "83", "83mm", "8.3cm" or "3.25in" in mm; nothing when it is none of them.
std::optional<double> diameter_mm(const std::string& text) {
  double value = missing;
  const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (code != std::errc{} || !(value > 0)) return std::nullopt;
  const std::string_view unit(end, static_cast<std::size_t>(text.data() + text.size() - end));
  if (unit.empty() || unit == "mm") return value;
  if (unit == "cm") return value * 10;
  return unit == "in" ? std::optional(value * 25.4) : std::nullopt;
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
      ->check([](const std::string& text) {
        return diameter_mm(text) ? std::string{}
                                 : "\"" + text + "\" is not a diameter; write it like 83mm, 8.3cm or 3.25in";
      });
  using Format = CansArguments::Format;
  add_choice(*command, "--format", arguments.format,
             {{"text", Format::text}, {"json", Format::json}, {"svg", Format::svg}},
             "how to print the answer");
  command->footer("Example: noonleaf cans lawn.csv --minutes 15");
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
  Et0Arguments et0;
  Et0Texts et0_texts;
  LogArguments log;
  LogTexts log_texts;
  CansArguments cans;
  std::string can_diameter;
  add_new(app, start);
  add_check(app, check);
  add_today(app, today, day_texts);
  add_et0(app, et0, et0_texts);
  add_log(app, log, log_texts);
  add_cans(app, cans, can_diameter);
  for (CLI::App* command : app.get_subcommands({})) command->group("Commands");
  try {
    app.parse(count, words);
  } catch (const CLI::Success& answer) {
    return app.exit(answer);
  } catch (const CLI::ParseError& refused) {
    return complain(app, refused, count > 1 ? words[1] : "");
  }
  if (app.got_subcommand("new")) return Arguments(start);
  if (app.got_subcommand("check")) return Arguments(check);
  if (app.got_subcommand("log")) return Arguments(log_arguments(log, log_texts));
  if (app.got_subcommand("cans")) {
    cans.can_diameter_mm = diameter_mm(can_diameter).value_or(missing);
    return Arguments(cans);
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
