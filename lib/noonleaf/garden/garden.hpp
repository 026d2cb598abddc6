#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/balance/daily_step.hpp"
#include "noonleaf/balance/mulch.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/garden/watering_rules.hpp"
#include "noonleaf/garden/weekly_hours.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/soil/wetted_fraction.hpp"
#include "noonleaf/sprinkler/application_rate.hpp"
#include "noonleaf/sprinkler/catch_cans.hpp"
#include "noonleaf/weather/options.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// In which units a person reads depths, volumes and temperatures. Everything inside stays SI.
enum class UnitSystem { metric, us };

/// Where something stands on the sketch of the garden, seen from above; x to the right, y up the page.
struct SketchPlace {
  double x_m = missing;       ///< the lower left corner, or the point itself
  double y_m = missing;       ///< likewise
  double width_m = missing;   ///< along x; missing for a point
  double length_m = missing;  ///< along y; missing for a point
};

/// Something that helps a stranger to find the beds: a gate, a shed, a tree.
struct Landmark {
  std::string name{};     ///< for people: "gate to the playground"
  std::string name_es{};  ///< on a Spanish sheet; empty = `name` there too, as with every other `_es`
  SketchPlace place{};    ///< on the sketch
};

/// One garden.
struct Site {
  std::string name{};                     ///< for people, on every sheet
  Location location{};                    ///< all three numbers are needed
  std::string zone{};                     ///< IANA name
  UnitSystem units = UnitSystem::metric;  ///< in which people read; the files may use either
  Dryness air = Dryness::humid;           ///< dew point offset where humidity is missing
  Setting setting = Setting::interior;    ///< kRs where sunshine is missing
  double wind_height_m = 2.0;             ///< of the anemometer behind the weather files
  std::optional<std::chrono::year_month_day>
      demo_date{};           ///< an invented garden shows this day instead of today
  std::string contact{};     ///< whom to tell when something goes wrong: "front office, extension 12"
  std::string contact_es{};  ///< on a Spanish sheet
};

/// A role that can turn water on and off, with the hours it is on site.
struct Caretaker {
  std::string id{};                  ///< as the file and the answers name it
  std::string role{};                ///< for people: "day custodian"; no person's name is needed
  std::string role_es{};             ///< on a Spanish sheet
  std::string language = "en";       ///< of their sheet: "en" or "es"
  std::vector<WeeklyHours> hours{};  ///< weekly, on site; empty = never
  std::vector<DatedSpan> away{};     ///< on leave: not on site whatever the hours say
  bool works_on_holidays = false;    ///< whether the hours hold on the holidays of the rules too
};

/// The supply that one or more sprinklers share.
struct Tap {
  std::string id{};                    ///< as sprinklers name it
  std::string name{};                  ///< for people
  std::string name_es{};               ///< on a Spanish sheet
  double flow_l_min = missing;         ///< wide open; missing = nobody measured it
  double salinity_ds_m = missing;      ///< ECw of its water
  bool reclaimed = false;              ///< water that must not touch what is eaten, nor children
  std::optional<SketchPlace> place{};  ///< on the sketch
  double shared_flow_l_min =
      missing;  ///< while another tap of the site is open; missing = nobody measured it
};

/// Whatever applies the water.
struct Sprinkler {
  std::string id{};                           ///< as beds name it
  std::string name{};                         ///< for people
  std::string name_es{};                      ///< on a Spanish sheet
  WettingKind kind = WettingKind::sprinkler;  ///< decides the wetted share and the losses in the air
  std::size_t tap = 0;                        ///< index into Garden::taps
  ApplicationRate rate{};                     ///< what it delivers, and how that is known
  std::optional<CanResult> cans{};            ///< the catch-can test behind the rate, if there was one
  bool evenness_is_guess = false;             ///< nobody measured or stated the uniformity
  double longest_run_min = missing;           ///< missing = the library's own limit
  double can_l = missing;                     ///< hand watering: what the can holds
};

/// The soil of a bed, as the gardener knows it: one of texture, fractions, or measured water contents.
struct BedSoil {
  std::string texture{};                  ///< USDA class id, "loam"
  double sand_pct = missing;              ///< of the fine earth, by weight; missing = by texture
  double clay_pct = missing;              ///< likewise
  double organic_pct = missing;           ///< by weight; missing = not stated
  double gravel_pct = missing;            ///< of the whole soil, by weight; missing = not stated
  double density_factor = missing;        ///< bulk density over normal: 0.9 loosened to 1.3 compacted
  double field_capacity_m3_m3 = missing;  ///< measured; missing = by texture or fractions
  double wilting_point_m3_m3 = missing;   ///< likewise
  double saturation_m3_m3 = missing;      ///< likewise
};

/// What covers the ground of a bed.
struct BedMulch {
  MulchKind kind = MulchKind::none;                   ///< none = bare ground
  double covered_frac = 1;                            ///< share of the ground, 0 to 1
  std::optional<std::chrono::year_month_day> from{};  ///< empty = always
};

/// What is taken for the soil on the first day of the account, where nobody has looked.
enum class SoilAtStart {
  full,    ///< at field capacity
  unknown  ///< half of the available water: the run over the weather then tells more and more (spin-up)
};

/// How the water account is kept.
struct AccountOptions {
  CoefficientMethod method = CoefficientMethod::dual;  ///< Kcb + Ke or one Kc
  SoilAtStart start = SoilAtStart::full;               ///< where nobody has looked
};

/// One crop in (a share of) a bed.
struct BedPlanting {
  std::string crop{};     ///< crop id of the table
  double share_frac = 1;  ///< of the bed's area
  Planting season{};      ///< start, method, observed stages, region, root limit
  std::optional<std::chrono::year_month_day> pulled{};  ///< first day on which it is gone
};

/// An area with one soil, watered by one sprinkler.
struct Bed {
  std::string id{};                    ///< as the journal and the commands name it
  std::string name{};                  ///< for people
  std::string name_es{};               ///< on a Spanish sheet
  double area_m2 = missing;            ///< of the bed alone, without paths
  std::size_t sprinkler = 0;           ///< index into Garden::sprinklers
  BedSoil soil{};                      ///< as the gardener knows it
  double rooting_depth_m = missing;    ///< raised bed or hard pan: roots go no deeper; missing = no limit
  bool framed = false;                 ///< no rain runs off a framed bed
  double intake_mm_h = missing;        ///< measured intake of the wet soil; missing = by its texture
  double slope_pct = 0;                ///< of the ground: steep beds take water in cycles
  std::string letter{};                ///< on the sketch and the sheet; the file's own, else A, B, C in order
  std::optional<SketchPlace> place{};  ///< on the sketch
  double sun_frac = 1;                 ///< share of the sun that reaches it: eaves, trees, courtyards
  double rain_catch_frac = 1;  ///< share of the rain that reaches it; above 1 where a roof drains into it
  BedMulch mulch{};            ///< the journal may say otherwise later
  double soil_salinity_ds_m = missing;                     ///< ECe of the root zone, measured
  std::optional<std::chrono::year_month_day> known_wet{};  ///< a morning on which the soil was full of water
  std::vector<BedPlanting> plantings{};                    ///< in the order of the file; past ones too
};

/// What water costs, and how much of it there may be.
struct WaterPrice {
  double price_per_m3 = missing;         ///< missing = no cost is told
  double monthly_allowance_l = missing;  ///< of the whole garden; missing = none
  std::string currency = "$";            ///< as printed before the number
};

/// What stays: the whole of garden.toml.
struct Garden {
  Site site{};               ///< place, zone, units
  WeatherOptions weather{};  ///< how the weather files are to be read; zone and place are the site's
  std::vector<Caretaker> caretakers{};  ///< in the order of the file
  std::vector<Tap> taps{};              ///< in the order of the file
  std::vector<Sprinkler> sprinklers{};  ///< in the order of the file
  std::vector<Bed> beds{};              ///< in the order of the file
  WateringRules rules{};                ///< when water may run at all
  AccountOptions account{};             ///< how the balance is kept
  std::vector<Landmark> landmarks{};    ///< on the sketch
  WaterPrice water{};                   ///< price and allowance
};

/// Whether a caretaker is on site from `begin` to `end` of a date: within the weekly hours, not on leave, and
/// not on a holiday unless they work then.
bool on_site(const Garden& garden, const Caretaker& caretaker, std::chrono::year_month_day date,
             std::chrono::minutes begin, std::chrono::minutes end);

/// The bed with this id, or nothing.
const Bed* find_bed(const Garden& garden, std::string_view id);

}  // namespace v1
}  // namespace noonleaf
