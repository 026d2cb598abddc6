#pragma once

#include <array>
#include <string_view>

#include "noonleaf/heat/diurnal.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/soil/retention.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What a person saw at dawn, if anybody looked.
enum class DawnLook { not_looked, upright, hanging };

/// One planting on the morning of a day.
struct WiltPlanting {
  double p_frac = missing;                 ///< FAO-56 Table 22, before any adjustment for the day
  double turgor_loss_mpa = missing;        ///< turgor_table.hpp, or the user's own
  double sunlit_factor = 1;                ///< turgor_table.hpp
  double taw_mm = missing;                 ///< of the root zone on this day
  double raw_mm = missing;                 ///< of this day, p adjusted
  double dr_mm = missing;                  ///< depletion at dawn
  double root_depth_m = missing;           ///< for the rule of shallow roots
  RetentionPoints soil{};                  ///< theta_33 and theta_1500 of the bed's soil are enough
  double days_since_transplant = missing;  ///< missing = was sown, or stands for long
  double leaf_deficit_mm = 0;  ///< what the leaves still lack at dawn: WiltDay::leaf_deficit_mm of yesterday
  DawnLook dawn_look = DawnLook::not_looked;  ///< what somebody saw before the sun was up
};

/// What the day will look like, in the order of how bad it is; the last two stand apart.
enum class WiltVerdict {
  comfortable,     ///< supply keeps up with demand all day
  droop,           ///< hangs in the heat over soil moist enough, and recovers before dawn
  stress,          ///< depleted beyond what the crop bears without loss
  dry_soil_wilt,   ///< does not get its turgor back by the next dawn
  wet_soil_droop,  ///< seen hanging at dawn over moist soil: neither thirst nor heat
  unknown          ///< a number is missing
};

/// What water would do.
enum class WaterAdvice {
  leave_alone,        ///< nothing to gain
  wait_and_look,      ///< water now would not help: look again at look_again_h, water if it still hangs
  water_next_run,     ///< at the next permitted and cool hours
  water_at_once,      ///< at the first permitted minute
  look_at_the_roots,  ///< do not water; root rot, disease, salt: look and call
  unknown
};

/// Which rule of our own bore on the verdict.
enum class TenderRule {
  none,
  shallow_roots,    ///< seedlings and shallow beds, rooted less than 0.30 m
  fresh_transplant  ///< the first ten days
};

/// One hour of the course from dawn to dawn.
struct WiltHour {
  int clock_h = 0;                      ///< hour of the wall clock at which it begins; 24 and up = next day
  double demand_mm_h = missing;         ///< potential transpiration; in sun times the sunlit factor
  double supply_mm_h = missing;         ///< flow at which leaves keep their turgor
  double depletion_mm = missing;        ///< Dr at the start of the hour
  double soil_potential_mpa = missing;  ///< of the root zone, negative
  double leaf_potential_mpa = missing;  ///< at the turgor loss while the leaves hang: stomata hold it there
  double leaf_deficit_mm = missing;     ///< at the end of the hour
  bool hangs = false;                   ///< whether the leaves are without turgor in it
};

/// What a day does to one planting.
struct WiltDay {
  WiltVerdict verdict = WiltVerdict::unknown;  ///< of the day as a whole
  WaterAdvice advice = WaterAdvice::unknown;   ///< what follows from it
  TenderRule rule = TenderRule::none;          ///< why a tender plant gets water sooner; none for others
  int droop_hours = 0;                         ///< hours without turgor
  double droop_from_h = missing;               ///< first hour without turgor; missing = none
  double droop_until_h = missing;              ///< wall clock; missing = none, or no recovery by dawn
  double look_again_h = missing;               ///< an hour after it should stand again; 24 and up = next day
  double raw_passed_h =
      missing;  ///< hour at which Dr is beyond RAW, dawn if already; missing = not on this day
  double peak_hour_h = missing;         ///< hour at which demand stands worst against supply
  double peak_demand_mm_h = missing;    ///< in that hour
  double peak_supply_mm_h = missing;    ///< in that hour
  double unmet_frac = missing;          ///< share of the day's demand above supply
  double soil_potential_mpa = missing;  ///< at dawn
  double depletion_mm = missing;        ///< at the next dawn, without rain or watering
  double leaf_deficit_mm = missing;     ///< at the next dawn; above 0 = no turgor
  std::array<WiltHour, 24> hours{};     ///< from the hour of sunrise on
};

/// Water that leaves lack when they have just lost their turgor, per unit of ground: 13 % of the water in
/// leaves of 0.2 mm at a leaf area index of 3. Ours: order of magnitude of pressure-volume curves.
inline constexpr double leaf_refill_mm = 0.08;

/// How a planting gets through a day.
///
/// Method    Hour by hour from dawn to dawn. Supply is the flow at which leaves keep their turgor
///           (hydraulics.hpp) at the hour's depletion; demand is the hour's share of the potential
///           transpiration (demand.hpp). Leaves give water while demand is above supply and take it back
///           while it is below: deficit' = min(max(deficit + demand - supply, 0), leaf_refill_mm). They hang
///           while the deficit is above 0. The soil dries by Ks times demand (FAO-56 eq. 84), as in the
///           balance. Hours after midnight take the weather and demand of the same clock hours of this day
/// Verdict   dry_soil_wilt  the deficit is not made up by the next dawn
///           stress         Dr beyond RAW at dawn; or the leaves hang at a Dr beyond s RAW
///           droop          they hang, but neither of these
///           wet_soil_droop seen hanging at dawn with Dr within RAW; beyond RAW the look counts as
///                          dry_soil_wilt whatever the model says
/// Tender    Ours. s = 1 for roots of 0.30 m and more, falling to 0.5 at 0.15 m and less: seedlings and
///           shallow beds have no depth to draw on. A fresh transplant has twice the plant resistance,
///           falling to once over ten days. Both without a step, so that no verdict jumps at a stage boundary
/// Source    Supply and demand: Gardner (1960), Cowan (1965). Hours of the verdict and the refill: ours
/// Monotone  More demand, more depletion, less TAW or more leaf deficit at dawn never give fewer hours of
///           droop or a milder verdict
/// Input     p_frac 0.1 to 0.8; turgor_loss_mpa -4 to -0.5; sunlit_factor 1 to 2; taw_mm above 0 to 1000;
///           raw_mm 0 to taw_mm; dr_mm 0 up to where the soil would hold no water; root_depth_m 0 to 5;
///           days_since_transplant 0 up; demand_mm_h 0 to 5 each (demand.hpp)
/// Missing   Any missing but days_since_transplant, root_depth_m and theta_s: verdict and advice unknown. A
///           missing root depth is taken as deep
/// Throws    Error, naming the field, when outside the accepted range
WiltDay wilt_day(const WiltPlanting& planting, const WeatherHours& hours,
                 const std::array<double, 24>& demand_mm_h);

/// Whether the first planting wilts before the second: by verdict, then by the hour at which it begins to
/// hang, then by demand against supply. wet_soil_droop comes first of all, unknown last.
bool wilts_before(const WiltDay& first, const WiltDay& second);

/// "droop", "dry-soil wilt", for people.
std::string_view label(WiltVerdict verdict);

}  // namespace v1
}  // namespace noonleaf
