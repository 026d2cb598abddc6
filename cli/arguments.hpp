#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/report/outdoors_words.hpp"
#include "noonleaf/report/phrases.hpp"
#include "noonleaf/soil/pot.hpp"
#include "noonleaf/soil/saxton_rawls.hpp"
#include "noonleaf/weather/options.hpp"

namespace noonleaf::cli {

enum class OutputFormat { text, json };

struct NewArguments {
  std::string folder;
  bool demo = false, by_options = false;
  std::string name, zone;
  UnitSystem units = UnitSystem::us;
  double latitude_deg = missing, longitude_deg = missing, elevation = missing;
  std::vector<std::string> caretakers, allowed_hours, taps, sprinklers, beds;  ///< fields between semicolons
};

struct CheckArguments {
  std::string folder;
  bool strict = false;
  OutputFormat format = OutputFormat::text;
};

struct TodayArguments {
  std::string folder;
  std::optional<std::chrono::year_month_day> date;
  std::optional<std::chrono::minutes> time_of_day;
  OutputFormat format = OutputFormat::text;
  Language language = Language::en;
  bool alert_exit = false;
};

struct Et0Arguments {
  enum class Equation { fao56, asce };
  enum class Surface { short_grass, tall };
  enum class Format { csv, json };
  enum class DaysOfHours { none, summed, daily_equation };
  std::string file, zone;
  double latitude_deg = missing, longitude_deg = missing, elevation_m = missing, wind_height_m = 2.0;
  Equation equation = Equation::fao56;
  Surface surface = Surface::short_grass;
  Format format = Format::csv;
  std::vector<std::pair<std::string, std::string>> columns;  ///< canonical name, header in the file
  std::vector<std::pair<std::string, std::string>> where;    ///< column, value to keep
  bool arid = false, coast = false, strict = false, detail = false;
  DaysOfHours days_of_hours = DaysOfHours::none;
  StampMark stamps = StampMark::unstated;
  DateOrder date_order = DateOrder::iso;
  std::vector<std::string> accepted_checks, ignored;
  int precision = 2;
};

struct LogArguments {
  std::string folder, event_word;
  JournalEvent event = JournalEvent::note;
  std::string word;  ///< what follows the event: a bed; the text of a note; the id that an undo takes back
  std::string bed, crop, stage, who, note;
  std::optional<std::chrono::year_month_day> date;
  std::optional<std::chrono::minutes> time_of_day, until;
  std::string sheet;  ///< a filled-in week sheet to bring in, in place of an event
  double litres = missing, cans = missing;
  double minutes = missing, rain_in = missing, rain_mm = missing, share_pct = missing, water_pct = missing,
         tension_kpa = missing;
  std::optional<SoilFeel> feel;
  std::optional<bool> recovered;
  std::optional<MulchKind> mulch;
  double covered_pct = missing, organic_pct = missing, field_capacity_pct = missing,
         wilting_point_pct = missing;
  OutputFormat format = OutputFormat::text;
};

struct WeekArguments {
  enum class Format { text, html, csv, json, ics };
  std::string folder, out, since;
  std::optional<std::chrono::year_month_day> from;
  int days = 7;
  Format format = Format::text;
  Language language = Language::en;
};

struct CansArguments {
  enum class Format { text, json, svg };
  std::string file;
  double minutes = missing, can_diameter_mm = missing;
  Format format = Format::text;
};

struct ExplainArguments {
  std::string folder, bed;
  std::chrono::year_month_day date{};
  OutputFormat format = OutputFormat::text;
};

struct CropsArguments {
  enum class Format { text, json, svg };
  std::string crop, region;  ///< empty = the whole table; the first of the crop's rows
  Format format = Format::text;
};

struct SoilsArguments {
  std::string texture;  ///< empty = the whole table, unless one of the two below
  SoilParticles particles{};
  bool by_particles = false, by_pot = false;
  PotWeights pot{};
  OutputFormat format = OutputFormat::text;
};

struct LedgerArguments {
  enum class Format { text, csv, json, html };
  std::string folder;
  std::chrono::year_month_day from{}, to{};
  Format format = Format::text;
};

struct OutdoorsArguments {
  OutdoorReading reading{};
  OutputFormat format = OutputFormat::text;
  Language language = Language::en;
};

struct AwayArguments {
  enum class Format { text, json, html, sheet };
  std::string folder;
  std::chrono::year_month_day from{}, to{};
  std::optional<std::chrono::year_month_day> date;
  Format format = Format::text;
  Language language = Language::en;
};

struct RoundArguments {
  std::vector<std::string> folders;
  std::optional<std::chrono::year_month_day> date;
  std::size_t top = 30;
  OutputFormat format = OutputFormat::text;
};

using Arguments = std::variant<NewArguments, CheckArguments, TodayArguments, WeekArguments, Et0Arguments,
                               LogArguments, CansArguments, CropsArguments, SoilsArguments, ExplainArguments,
                               LedgerArguments, OutdoorsArguments, AwayArguments, RoundArguments>;

/// What the command line asked for; or, when it only asked for help or was wrong, the exit code, with the
/// help or the complaint already printed.
std::variant<Arguments, int> parse_arguments(int count, const char* const* words);

}  // namespace noonleaf::cli
