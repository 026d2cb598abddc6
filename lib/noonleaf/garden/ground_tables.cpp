#include "noonleaf/garden/ground_tables.hpp"

#include <array>

#include "noonleaf/crop/landscape.hpp"
#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::array<std::string_view, 2> balance_words{"dual", "single"};
constexpr std::array<std::string_view, 2> start_words{"full", "unknown"};
constexpr std::array<std::string_view, 3> mulch_words{"organic", "plastic", "none"};
constexpr std::array<MulchKind, 3> mulch_kinds{MulchKind::organic, MulchKind::plastic, MulchKind::none};
constexpr AcceptedRange sun_range{1, 100, "% of the sun"};
constexpr AcceptedRange rain_catch_range{0, 300, "% of the rain"};
constexpr AcceptedRange covered_range{0, 100, "% of the ground"};
constexpr AcceptedRange salinity_range{0, 40, "dS/m"};

BedMulch read_mulch(TomlTable& bed) {
  if (bed.is_text("mulch")) {
    return {.kind = mulch_kinds[bed.choice("mulch", mulch_words)], .covered_frac = 1};
  }
  auto table = bed.table("mulch");
  if (!table) return {};
  BedMulch mulch{.kind = mulch_kinds[table->choice("kind", mulch_words)]};
  mulch.covered_frac = table->number("covered_pct", covered_range).value_or(100.0) / 100.0;
  mulch.from = table->date("from");
  table->refuse_unknown_keys();
  return mulch;
}

}  // namespace

AccountOptions read_account_options(TomlTable& table) {
  AccountOptions options;
  options.method =
      table.choice("balance", balance_words) == 0 ? CoefficientMethod::dual : CoefficientMethod::single;
  options.start = table.choice("soil_at_start", start_words) == 0 ? SoilAtStart::full : SoilAtStart::unknown;
  table.refuse_unknown_keys();
  return options;
}

double read_landscape(TomlTable& planting) {
  auto table = planting.table("landscape");
  if (!table) return missing;
  const auto level = [&table](std::string_view key, LandscapeFactor factor) {
    const std::string id = table->required_text(key, "average");
    try {
      return id.empty() ? missing : find_landscape_level(factor, id).value;
    } catch (const Error& refused) {
      table->refuse(key, refused.problems().front().message, refused.problems().front().fix);
      return missing;
    }
  };
  const double species = level("species", LandscapeFactor::species);
  const double density = level("density", LandscapeFactor::density);
  const double microclimate = level("microclimate", LandscapeFactor::microclimate);
  table->refuse_unknown_keys();
  return is_missing(species * density * microclimate) ? missing
                                                      : landscape_coefficient(species, density, microclimate);
}

double read_salinity_ds_m(TomlTable& table, std::string_view key) {
  return table.number(key, salinity_range).value_or(missing);
}

void read_bed_ground(TomlTable& table, Bed& bed) {
  bed.sun_frac = table.number("sun_pct", sun_range).value_or(100.0) / 100.0;
  bed.rain_catch_frac = table.number("rain_catch_pct", rain_catch_range).value_or(100.0) / 100.0;
  bed.mulch = read_mulch(table);
  bed.soil_salinity_ds_m = read_salinity_ds_m(table, "soil_salinity_ds_m");
  bed.known_wet = table.date("known_wet");
}

}  // namespace v1
}  // namespace noonleaf
