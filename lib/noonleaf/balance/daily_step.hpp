#pragma once

#include <chrono>
#include <memory>

#include "noonleaf/balance/evaporation.hpp"
#include "noonleaf/balance/ground_state.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/soil/soil_water.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Water in the ground under one planting, as depths below field capacity. Two layers that meet at the
/// bottom of the root zone, and inside them the surface that evaporation dries.
struct BalanceState {
  double de_mm = missing;            ///< De, top layer where exposed and wetted by irrigation and rain
  double de_rain_mm = missing;       ///< De, top layer where exposed and wetted by rain only (drip, furrow)
  double dr_mm = missing;            ///< Dr, root zone
  double lower_mm = missing;         ///< from the root zone down to profile_depth_m
  double root_depth_m = missing;     ///< Zr, the boundary between both
  double profile_depth_m = missing;  ///< bottom of the account; water leaving it is lost
  double wetted_frac = 1;            ///< fw of the last wetting
};

/// What the day brings. Morning: before the day's demand, as FAO-56 reckons; evening: after it, so that it
/// wets tomorrow's surface.
struct BalanceDay {
  std::chrono::year_month_day date{};  ///< the day, a local calendar day
  double et0_mm_d = missing;           ///< reference ET of the day
  double u2_m_s = missing;             ///< wind at 2 m of this day, for Kc max; missing = GrowthDay's Kc max
  double rh_min_pct = missing;         ///< lowest relative humidity of this day, likewise
  double rain_mm = 0;                  ///< on the bed, after rain catch
  double irrigation_mm = 0;            ///< mean infiltrated depth over the whole planting
  double evening_rain_mm = 0;          ///< fallen after the day's demand
  double evening_irrigation_mm = 0;    ///< mean infiltrated depth given after it
  double irrigation_fw =
      missing;  ///< share of the ground that this irrigation wets; missing = irrigated_frac
  GroundState ground = GroundState::open;  ///< snow, frozen: the account stands still on this day
  double evaporation_factor = missing;     ///< mulch on this day; missing = that of the settings
  /// Where something was dug in: the soil from that day on (null = the soil given), and on the day of the
  /// digging itself what it was before (run_balance then tells the state anew: state_in_other_soil).
  std::shared_ptr<const SoilWater> soil{};         ///< from this day on; null = the soil given
  std::shared_ptr<const SoilWater> soil_before{};  ///< on the day of the digging alone: what it was before
};

/// Which coefficient.
enum class CoefficientMethod {
  dual,   ///< Kcb + Ke, FAO-56 ch. 7
  single  ///< Kc, FAO-56 ch. 6
};

/// Which depletion fraction.
enum class DepletionFraction {
  adjusted_daily,  ///< p = p(Tab) + 0.04 (5 - ETc), FAO-56 Table 22 footnote 2
  fixed            ///< p(Tab)
};

/// How the account of the top layer is kept.
enum class SurfaceAccount {
  /// The part that irrigation wets and the part that only rain wets each have their De (Allen et al. 2005);
  /// and De agrees with Dr (ours): a root zone at field capacity has no dry surface, an exhausted one no wet
  /// surface.
  coupled,
  /// One De for the part last wetted, kept apart from Dr: FAO-56 ch. 7 as printed in 1998. De and Dr can then
  /// contradict each other by a day's ET after every heavy wetting, so that water on a full soil costs water.
  as_printed
};

/// Whether roots draw water from the top layer in the evaporation account.
enum class TopLayerRoots {
  ignored,  ///< FAO-56 eq. 77 with Tew = 0: fits crops rooted deeper than 0.5 m
  drawn     ///< Tew by Allen et al. 2005, for shallow-rooted crops
};

/// What stays the same from day to day.
struct BalanceSettings {
  CoefficientMethod method = CoefficientMethod::dual;               ///< Kcb + Ke or one Kc
  DepletionFraction depletion = DepletionFraction::adjusted_daily;  ///< whether p follows the day's ETc
  SurfaceAccount surface = SurfaceAccount::coupled;                 ///< how De and Dr go together
  TopLayerRoots top_roots = TopLayerRoots::ignored;                 ///< whether roots empty the top layer too
  EmitterPlace emitters = EmitterPlace::open;  ///< under_canopy: few = min(1 - fc, (1 - 0.67 fc) fw)
  double irrigated_frac = 1;                   ///< fw of the planting's sprinkler, FAO-56 Table 20
  double curve_number = missing;               ///< average wetness; missing = no runoff (framed bed)
  double salt_stress = 1;                      ///< factor on Ks, eq. 92: salt_stress_coefficient
  double evaporation_factor = 1;               ///< mulch: what it leaves of Ke
};

/// Every number of the day. Where two steps of one quantity exist, both are named.
struct BalanceDetail {
  std::chrono::year_month_day date{};      ///< the day
  BalanceState start{};                    ///< as the day before left it
  BalanceState end{};                      ///< at the close of the day
  GrowthDay growth{};                      ///< the crop on that day
  GroundState ground = GroundState::open;  ///< not open: nothing moved, the day's rain is not in the account
  double et0_mm_d = missing;               ///< reference ET, as given
  double field_capacity_m3_m3 = missing;   ///< of the day's soil
  double wilting_point_m3_m3 = missing;    ///< of the day's soil
  double evaporation_depth_m = missing;    ///< the soil
  double u2_m_s = missing;                 ///< of the day, behind Kc max; missing = GrowthDay's Kc max
  double rh_min_pct = missing;             ///< likewise
  double evaporation_factor = missing;     ///< of the day, else of the settings
  double salt_stress = missing;            ///< of the settings
  double root_gain_mm = missing;   ///< depletion that came with soil newly rooted (+) or given back (-)
  double rain_mm = missing;        ///< on the bed, whole day
  double runoff_mm = missing;      ///< part of the rain
  double irrigation_mm = missing;  ///< infiltrated, whole day
  double evening_irrigation_mm = missing;  ///< the part of it that came after the day's demand
  double curve_number = missing;           ///< for the day's wetness
  double tew_mm = missing;                 ///< eq. 73
  double rew_mm = missing;                 ///< of the soil, Table 19
  double taw_mm = missing;                 ///< eq. 82
  double kcb = missing;                    ///< basal coefficient of the growth day
  double kc_max = missing;                 ///< eq. 72
  double fc = missing;                     ///< eq. 76
  double fw = missing;                     ///< Table 20
  double few = missing;                    ///< eq. 75
  double few_rain = missing;               ///< exposed ground wetted by rain only
  double de_wet_mm = missing;              ///< De after the morning's water
  double de_rain_wet_mm = missing;         ///< the same where rain alone wets
  double kr = missing;                     ///< eq. 74 on the part that irrigation wets
  double kr_rain = missing;                ///< the same on the part that rain alone wets
  double energy_share = missing;           ///< W, share of the energy for the irrigated part
  double ke_irrigated = missing;  ///< eq. 71 on the part that irrigation wets, before mulch and limits
  double ke_rain = missing;       ///< the same on the part that rain alone wets; 0 where there is none
  double ke = missing;            ///< of both, as it came about
  double kc = missing;            ///< Kcb + Ke, eq. 69; or the single Kc
  double etc_mm_d = missing;      ///< without stress, eq. 69
  double p_frac = missing;        ///< as used on this day
  double raw_mm = missing;        ///< eq. 83
  double dr_open_mm = missing;    ///< Dr after the morning's water; negative = above field capacity for today
  double dr_wet_mm = missing;     ///< the same, not below 0: what the plant feels
  double ks = missing;            ///< eq. 84
  double transpiration_mm = missing;      ///< Ks Kcb ET0; the whole ET where the coefficient is single
  double evaporation_mm = missing;        ///< Ke ET0; 0 where the coefficient is single
  double lower_evaporation_mm = missing;  ///< part of it from below roots shallower than the top layer
  double top_transpiration_mm = missing;  ///< Tew
  double etc_adj_mm_d = missing;          ///< eq. 80
  double de_tied_mm = missing;            ///< change of De that makes it agree with Dr; no water moves
  double dpe_mm = missing;                ///< eq. 79, out of the top layer where irrigation wets
  double dpe_rain_mm = missing;           ///< the same where rain alone wets
  double dp_mm = missing;                 ///< eq. 88, out of the root zone
  double drainage_mm = missing;           ///< out of the profile
  double amended_mm =
      0;  ///< change of both layers' depletion as told for another soil; no water came or went
  double amended_drained_mm = 0;  ///< water that the amended soil could not hold
  double correction_mm = 0;       ///< change of Dr by an observation before this day
  double closure_mm = missing;    ///< what is left when all water is added up: 0 within 1e-9
};

/// One day of the soil-water balance of one planting.
///
/// Equations FAO-56 eq. 69, 71-79 (dual) or 58 (single), 80-88, in the order of Examples 35 and 38
/// Source    FAO-56 (Allen et al. 1998), ch. 7 and 8; two surface fractions and Tew: Allen et al. (2005),
///           J. Irrig. Drain. Eng. 131(1):2-13, from memory
/// Departs   De agrees with Dr at the close of each day (SurfaceAccount::coupled; as_printed switches it
///           off). The lower layer is ours: deep percolation fills it before it is lost, roots that grow take
///           its water, roots that are pulled give theirs back. Limits act on flows, so that every mm is
///           counted: transpiration stops at Dr = TAW, evaporation when the top layer is at half the wilting
///           point, so Dr can pass TAW by at most that half.
/// Stops     On a day of snow or frozen ground the state stays as it was, all flows are 0 and what fell is
///           left out; the detail says so. What melts later is not known: have the soil looked at.
/// Missing   ET0, rain, irrigation, growth, Dr or lower layer missing: every result of the day and its end
///           state are NaN. De missing (a start without it, or days by a single coefficient): Dr up to TEW is
///           taken (ours).
/// Note      Bare soil is always reckoned by evaporation and a plant factor always by itself, whatever
///           `method` says.
/// Throws    Error: soil incomplete, a negative depth, root depth beyond the profile; a message that begins
///           "water does not add up" when mass fails to close to 1e-9 mm (a fault of the program)
BalanceDetail daily_step(const BalanceState& start, const BalanceDay& day, const GrowthDay& growth,
                         const SoilWater& soil, const BalanceSettings& settings);

}  // namespace v1
}  // namespace noonleaf
