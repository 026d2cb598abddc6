#pragma once

#include "noonleaf/balance/balance_formula.hpp"

namespace noonleaf {
inline namespace v1 {

/// The day of one planting on plain numbers: the only place where its equations are put together. Serves the
/// detail of one day and the batch of many members; no NaN may come in, no branch depends on a number.
namespace step_formula {

using balance_formula::least;
using balance_formula::most;

/// Parts of the exposed ground that are kept apart.
enum class Parts {
  one,  ///< all wetted alike
  two   ///< wetted by irrigation and rain; by rain only
};

/// Whether roots draw on the top layer (Tew).
enum class TopRoots { ignored, drawn };

/// Whether the roots reach to the bottom of the top layer, or evaporation draws on the layer below them too.
enum class Reach { whole_top_layer, part_of_it };

/// How De follows Dr at the close of the day.
enum class Tie { none, to_root_zone };

/// A soil, with the water per metre that follows from it.
struct Soil {
  double rew, tew;            ///< [mm]
  double available_mm_m;      ///< 1000 (FC - WP)
  double below_wilting_mm_m;  ///< 1000 0.5 WP
  double ze;                  ///< [m]
  double per_drying;          ///< 1 / (TEW - REW) [1/mm]
};

/// What is known before the day is reckoned. Water has passed runoff; zr is today's.
struct Day {
  double et0;              ///< [mm]
  double zr, lower_depth;  ///< [m]
  double kcb, kc_max;      ///< single: kcb is the Kc
  double few, few_rain;
  double per_few, per_few_rain;  ///< 1 / few, 1 / few_rain; the latter 0 where few_rain is 0
  double p, salt, evaporation_factor;
  double top_depth;                             ///< (Ze / Zr)^0.6 where roots draw on the top layer, else 0
  double morning, evening;                      ///< water into the ground [mm]
  double surface_morning, surface_evening;      ///< on the part that irrigation wets [mm of it]
  double rain_part_morning, rain_part_evening;  ///< on the part that rain alone wets [mm of it]
};

struct State {
  double de, de_rain, dr, lower;  ///< [mm]
};

/// Every number of the day, by the names of BalanceDetail.
struct Flows {
  double taw, raw, p, etc, ks, dr_open, dr_wet;
  double de_wet, de_rain_wet, kr, kr_rain, energy_share, ke_irrigated, ke_rain;
  double transpiration, evaporation, lower_evaporation, top_draw, rain_part_top_draw;
  double evaporation_irrigated, evaporation_rain_part;
  double dpe, dpe_rain, dp, drainage, de_untied;
};

/// FAO-56 eq. 82 to 84 and the demand's effect on p.
template <class Fraction>
[[gnu::always_inline]] inline void stress(const Soil& soil, const Day& day, const State& before,
                                          Fraction p_of_day, Flows& f) {
  f.taw = soil.available_mm_m * day.zr;
  f.p = p_of_day(day.p, f.etc);
  f.raw = f.p * f.taw;
  f.dr_open = before.dr - day.morning;
  f.dr_wet = most(0, f.dr_open);
  f.ks = day.salt * balance_formula::ks(f.dr_wet, f.taw, f.raw);
}

/// Eq. 71, 74 for each part, never more than its top layer holds. Energy is shared by the exposed areas and
/// the water left in them (Allen et al. 2005).
template <Parts parts>
[[gnu::always_inline]] inline void evaporation_demand(const Soil& soil, const Day& day, const State& before,
                                                      Flows& f) {
  f.de_wet = most(0, before.de - day.surface_morning);  // eq. 77, water early in the day
  f.dpe = most(0, day.surface_morning - before.de);     // eq. 79
  f.kr = balance_formula::kr(f.de_wet, soil.tew, soil.per_drying);
  const double open = day.kc_max - day.kcb;
  const double factor = day.evaporation_factor * day.et0;
  f.energy_share = 1;
  f.evaporation_rain_part = f.ke_rain = 0;
  f.de_rain_wet = most(0, before.de_rain - day.rain_part_morning);
  f.dpe_rain = most(0, day.rain_part_morning - before.de_rain);
  f.kr_rain = balance_formula::kr(f.de_rain_wet, soil.tew, soil.per_drying);
  if constexpr (parts == Parts::two) {
    const double left = most(0.001, soil.tew - f.de_wet) * day.few;
    const double left_rain = most(0.001, soil.tew - f.de_rain_wet) * day.few_rain;
    f.energy_share = left / (left + left_rain);
    f.ke_rain = least(f.kr_rain * (1 - f.energy_share) * open, day.few_rain * day.kc_max);
    f.evaporation_rain_part = least(f.ke_rain * factor, day.few_rain * most(0, soil.tew - f.de_rain_wet));
  }
  f.ke_irrigated = least(f.kr * f.energy_share * open, day.few * day.kc_max);
  f.evaporation_irrigated = least(f.ke_irrigated * factor, day.few * most(0, soil.tew - f.de_wet));
  f.evaporation = f.evaporation_irrigated + f.evaporation_rain_part;
}

/// What is left of the evaporation asked for where its ground holds less than that.
template <Reach reach>
[[gnu::always_inline]] inline double share_given(const Soil& soil, const Day& day, const State& before,
                                                 double roots_hold, double evaporation) {
  const double root_share = reach == Reach::whole_top_layer ? 1 : day.zr / soil.ze;
  const double from_roots = evaporation * root_share;
  const double by_roots = from_roots > roots_hold ? roots_hold / from_roots : 1;
  if constexpr (reach == Reach::whole_top_layer) return by_roots;
  const double lower_holds = most(
      0, soil.available_mm_m * day.lower_depth + soil.below_wilting_mm_m * (soil.ze - day.zr) - before.lower);
  const double from_lower = evaporation - from_roots;
  const double by_lower = from_lower > lower_holds ? lower_holds / from_lower : 1;
  return least(by_roots, by_lower);
}

/// Transpiration stops at TAW, evaporation where the ground it draws on is at half the wilting point.
template <Parts parts, Reach reach>
[[gnu::always_inline]] inline void limit_flows(const Soil& soil, const Day& day, const State& before,
                                               Flows& f) {
  f.transpiration = least(f.transpiration, most(0, f.taw - f.dr_open));
  const double shallow = reach == Reach::whole_top_layer ? soil.ze : day.zr;
  const double roots_hold = most(0, f.taw + soil.below_wilting_mm_m * shallow - f.dr_open - f.transpiration);
  if constexpr (parts == Parts::one && reach == Reach::whole_top_layer) {
    f.evaporation_irrigated = least(f.evaporation_irrigated, roots_hold);  // the same, without a division
  } else {
    const double scale = share_given<reach>(soil, day, before, roots_hold, f.evaporation);
    f.evaporation_irrigated *= scale;
    f.evaporation_rain_part *= scale;
  }
  f.evaporation = f.evaporation_irrigated + f.evaporation_rain_part;
  f.lower_evaporation = reach == Reach::whole_top_layer ? 0 : f.evaporation * (1 - day.zr / soil.ze);
}

/// Tew of one part: Allen et al. 2005, Kt = (1 - De/TEW) / (1 - Dr/TAW) (Ze/Zr)^0.6 <= 1; roots take no water
/// below the wilting point.
[[gnu::always_inline]] inline double top_draw(const Soil& soil, const Day& day, const Flows& f, double de,
                                              double evaporated) {
  const double wet = most(0, 1 - de / soil.tew);
  const double root_wet = most(0.001, 1 - f.dr_wet / f.taw);
  const double kt = least(1, wet / root_wet * day.top_depth);
  return least(kt * f.transpiration, most(0, soil.available_mm_m * soil.ze - de - evaporated));
}

/// Eq. 77 and 79 to the close of the day.
template <Parts parts, TopRoots top_roots>
[[gnu::always_inline]] inline void close_surface(const Soil& soil, const Day& day, Flows& f, State& after) {
  const double evaporated = f.evaporation_irrigated * day.per_few;
  const double rain_evaporated = f.evaporation_rain_part * day.per_few_rain;
  f.top_draw = f.rain_part_top_draw = 0;
  if constexpr (top_roots == TopRoots::drawn) {
    f.top_draw = top_draw(soil, day, f, f.de_wet, evaporated);
    f.rain_part_top_draw = top_draw(soil, day, f, f.de_rain_wet, rain_evaporated);
  }
  const double de = f.de_wet + evaporated + f.top_draw;
  after.de = most(0, de - day.surface_evening);
  f.dpe += most(0, day.surface_evening - de);
  const double de_rain = f.de_rain_wet + rain_evaporated + f.rain_part_top_draw;
  after.de_rain = most(0, de_rain - day.rain_part_evening);
  f.dpe_rain += most(0, day.rain_part_evening - de_rain);
}

/// Eq. 85 and 88; what passes the roots fills the layer below before it is lost.
[[gnu::always_inline]] inline void close_layers(const Day& day, const State& before, Flows& f, State& after) {
  const double from_roots = f.transpiration + f.evaporation - f.lower_evaporation;
  const double dr = f.dr_open + from_roots - day.evening;
  f.dp = most(0, -dr);
  after.dr = dr + f.dp;
  const double lower = before.lower + f.lower_evaporation - f.dp;
  f.drainage = most(0, -lower);
  after.lower = lower + f.drainage;
}

/// Makes De agree with Dr at the close of the day. The exposed top layer is a part of the root zone (and,
/// under roots shallower than it, of the layer below): it cannot lack more water than the whole lacks, nor
/// hold more than the whole holds. FAO-56 keeps both accounts apart: eq. 88 lets the day's ET use water in
/// excess of field capacity before it drains, eq. 79 does not.
template <Parts parts, Tie tie, Reach reach>
[[gnu::always_inline]] inline void tie_surface(const Soil& soil, const Day& day, Flows& f, State& after) {
  f.de_untied = after.de;
  if constexpr (tie == Tie::none) return;
  const double shallow = reach == Reach::whole_top_layer ? soil.ze : day.zr;
  const double root_held = most(0, f.taw + soil.below_wilting_mm_m * shallow - after.dr);
  if constexpr (parts == Parts::one && reach == Reach::whole_top_layer) {
    after.de = least(most(after.de, soil.tew - root_held * day.per_few), after.dr * day.per_few);
    return;
  }
  const double root_share = shallow / soil.ze;
  const double lacking = root_share * (day.few * after.de + day.few_rain * after.de_rain);
  const double held = (day.few + day.few_rain) * root_share * soil.tew - lacking;
  const bool too_dry = lacking > after.dr, too_wet = held > root_held;
  const double scale = (too_dry ? after.dr : root_held) / (too_dry ? lacking : held);
  const auto tied = [&](double de) {
    const double wetter = de * scale, drier = soil.tew - (soil.tew - de) * scale;
    return too_dry ? wetter : too_wet ? drier : de;
  };
  after.de = tied(after.de);
  after.de_rain = tied(after.de_rain);
}

/// Dual coefficient, first half: what the day asks for. Eq. 69, 71-75, 80, 82-84.
template <Parts parts, class Fraction>
[[gnu::always_inline]] inline void demand(const Soil& soil, const Day& day, const State& before,
                                          Fraction p_of_day, Flows& f) {
  evaporation_demand<parts>(soil, day, before, f);
  f.etc = day.kcb * day.et0 + f.evaporation;  // eq. 69
  stress(soil, day, before, p_of_day, f);
  f.transpiration = f.ks * day.kcb * day.et0;  // eq. 80
}

/// Second half: what the ground gives, and how it is left. Eq. 77, 79, 85-88.
template <Parts parts, Tie tie, TopRoots top_roots, Reach reach>
[[gnu::always_inline]] inline State settle(const Soil& soil, const Day& day, const State& before, Flows& f) {
  State after{};
  limit_flows<parts, reach>(soil, day, before, f);
  close_surface<parts, top_roots>(soil, day, f, after);
  close_layers(day, before, f, after);
  tie_surface<parts, tie, reach>(soil, day, f, after);
  return after;
}

/// Both halves.
template <Parts parts, Tie tie, TopRoots top_roots, Reach reach, class Fraction>
[[gnu::always_inline]] inline State dual(const Soil& soil, const Day& day, const State& before,
                                         Fraction p_of_day, Flows& f) {
  demand<parts>(soil, day, before, p_of_day, f);
  return settle<parts, tie, top_roots, reach>(soil, day, before, f);
}

/// Single coefficient: eq. 58, 81-88. It tells nothing of the surface.
template <class Fraction>
[[gnu::always_inline]] inline State single(const Soil& soil, const Day& day, const State& before,
                                           Fraction p_of_day, Flows& f) {
  State after = before;
  f.etc = day.kcb * day.et0;
  stress(soil, day, before, p_of_day, f);
  f.transpiration = least(f.ks * f.etc, most(0, f.taw - f.dr_open));
  f.evaporation = f.lower_evaporation = 0;
  close_layers(day, before, f, after);
  return after;
}

/// Root boundary from one depth to a deeper one: how much depletion comes with the new soil. What lies below
/// the wilting point lies in the top layer.
[[gnu::always_inline]] inline double gain_by_growth(const Soil& soil, double lower_mm, double from, double to,
                                                    double profile) {
  const double available = soil.available_mm_m * (profile - from);
  const double dry = most(0, lower_mm - available);
  const double dry_share = from < soil.ze ? (least(to, soil.ze) - from) / (soil.ze - from) : 1;
  return least(lower_mm, available) * ((to - from) / (profile - from)) + dry * dry_share;
}

/// The same to a shallower one: how much depletion the lower layer gets.
[[gnu::always_inline]] inline double loss_by_pulling(const Soil& soil, double dr_mm, double from, double to) {
  const double available = soil.available_mm_m * from;
  const double dry = most(0, dr_mm - available);
  const double dry_depth = least(soil.ze, from);
  const double dry_share = (dry_depth - least(dry_depth, to)) / dry_depth;
  return least(dr_mm, available) * ((from - to) / from) + dry * dry_share;
}

}  // namespace step_formula
}  // namespace v1
}  // namespace noonleaf
