#pragma once

#include <chrono>
#include <span>
#include <string_view>
#include <vector>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What heat does to a crop.
enum class HeatHarm {
  blossom_drop,
  poor_pollen,
  poor_fruit_set,
  slow_ripening,
  poor_colour,
  poor_tip_fill,
  bolting,
  bitterness
};

/// On which parts of the season it bears.
enum class HeatStage { flowering, fruiting, leaf_growth };

/// What is compared.
enum class HeatLimitKind {
  day_above,           ///< Tmax above day_c
  night_above,         ///< Tmin above night_c
  day_and_night_above  ///< both
};

/// One published threshold. Guidance of extension services, not physics: sources differ by 5 °F and more.
struct CropHeatLimit {
  std::string_view crop;                          ///< crop table id
  HeatHarm harm = HeatHarm::blossom_drop;         ///< what goes wrong
  HeatStage stage = HeatStage::flowering;         ///< when the crop is open to it
  HeatLimitKind kind = HeatLimitKind::day_above;  ///< which extremes have to pass
  double day_f = missing;                         ///< as printed; missing where only the night counts
  double night_f = missing;                       ///< as printed; missing where only the day counts
  std::string_view source;                        ///< publication and whether it was read or is from memory
};

/// All thresholds, in the order of the table.
std::span<const CropHeatLimit> crop_heat_limits();

/// Extremes of one day, measured or forecast.
struct HeatDay {
  std::chrono::year_month_day date{};  ///< the day
  double t_max_c = missing;            ///< highest of the day
  double t_min_c = missing;            ///< lowest of the day
};

/// A threshold that some of the days pass.
struct CropHeatFinding {
  const CropHeatLimit* limit = nullptr;                ///< into crop_heat_limits
  std::vector<std::chrono::year_month_day> days_over;  ///< in the order given
};

/// Thresholds of a crop that the days pass.
///
/// Input     crop  id of the crop table; a crop without thresholds has no findings. Temperatures are
///           compared as read, in °F unrounded; "above" means above
/// Missing   A day with a missing extreme counts as not over
std::vector<CropHeatFinding> crop_heat_findings(std::string_view crop, std::span<const HeatDay> days);

/// What helps, what does not: one sentence for a harm.
std::string_view what_helps(HeatHarm harm);

/// "blossom drop"
std::string_view label(HeatHarm harm);

}  // namespace v1
}  // namespace noonleaf
