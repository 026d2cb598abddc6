#include "command_line.hpp"

namespace noonleaf::cli {
namespace {

std::vector<std::pair<std::string, std::string>> split_pairs(const std::vector<std::string>& texts) {
  std::vector<std::pair<std::string, std::string>> pairs;
  for (const std::string& text : texts) {
    const std::size_t equals = text.find('=');
    pairs.emplace_back(text.substr(0, equals), text.substr(equals + 1));
  }
  return pairs;
}

struct Et0Texts {
  std::vector<std::string> columns, where;
};

CLI::App* add_et0(CLI::App& app, Et0Arguments& arguments, Et0Texts& texts) {
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
  return command->footer("Example: noonleaf et0 june.csv --latitude 46.07 --elevation 290 --wind-height 10");
}

Et0Arguments et0_arguments(Et0Arguments arguments, const Et0Texts& texts) {
  arguments.columns = split_pairs(texts.columns);
  arguments.where = split_pairs(texts.where);
  return arguments;
}

constexpr double kilograms_per_pound = 0.45359237;  // by definition, NIST SP 811 appendix B.8

const NumberUnits can_diameter_units{{"mm", 1}, {"cm", 10}, {"in", mm_per_inch}};
const NumberUnits weight_units{
    {"kg", 1}, {"g", 0.001}, {"lb", kilograms_per_pound}, {"oz", kilograms_per_pound / 16}};
const NumberUnits volume_units{
    {"l", 1}, {"L", 1}, {"ml", 0.001}, {"gal", litres_per_gallon}, {"qt", litres_per_gallon / 4}};

CLI::App* add_cans(CLI::App& app, CansArguments& arguments, std::string& diameter) {
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
  return command->footer("Example: noonleaf cans lawn.csv --minutes 15");
}

CansArguments cans_arguments(CansArguments arguments, const std::string& diameter) {
  arguments.can_diameter_mm = number_with_unit(diameter, can_diameter_units).value_or(missing);
  return arguments;
}

CLI::App* add_crops(CLI::App& app, CropsArguments& arguments) {
  CLI::App* command = app.add_subcommand("crops", "The crop table; one crop with its curve");
  command->add_option("CROP", arguments.crop, "a crop of the table, like tomato; without it, the table");
  command->add_option("--region", arguments.region, "the stage lengths to draw: words of their region");
  using Format = CropsArguments::Format;
  add_choice(*command, "--format", arguments.format,
             {{"text", Format::text}, {"json", Format::json}, {"svg", Format::svg}},
             "how to print the answer; svg for one crop");
  return command->footer("Example: noonleaf crops tomato");
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

CLI::App* add_soils(CLI::App& app, SoilsArguments& arguments, PotTexts& texts) {
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
  return command->footer("Example: noonleaf soils --sand 55 --clay 15 --organic 4");
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

CLI::App* add_outdoors(CLI::App& app, OutdoorsArguments& arguments) {
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
  add_language(*command, arguments.language);
  return command->footer("Example: noonleaf outdoors --t-f 96 --rh 65 --wind-m-s 1.5 --sun-w-m2 850");
}

}  // namespace

void add_table_commands(CommandLine& line) {
  line.add(add_et0, et0_arguments);
  line.add(add_cans, cans_arguments);
  line.add(add_crops);
  line.add(add_soils, soils_arguments);
  line.add(add_outdoors);
}

}  // namespace noonleaf::cli
