#include "noonleaf/heat/wilt.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/guard.hpp"
#include "noonleaf/heat/hydraulics.hpp"
#include "noonleaf/heat/tender.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// Ours: where roots have no depth to draw on, and for how long a transplant's cut roots count.
constexpr double shallow_root_m = 0.15, deep_root_m = 0.30;
constexpr double shallow_raw_frac = 0.5;
constexpr double transplant_days = 10.0;
constexpr double transplant_extra = 1.0;  // added to the plant resistance on the first day, in units of it
constexpr double grace_h = 1.0;           // between the modelled recovery and the second look

void require_ranges(const WiltPlanting& planting, const std::array<double, 24>& demand_mm_h) {
  require_within("sunlit_factor", planting.sunlit_factor, 1, 2, "");
  require_within("taw_mm", planting.taw_mm, 0.01, 1000, "mm");
  require_within("raw_mm", planting.raw_mm, 0, planting.taw_mm, "mm");
  require_within("dr_mm", planting.dr_mm, 0, 2000, "mm");
  require_within("root_depth_m", planting.root_depth_m, 0, 5, "m");
  require_within("days_since_transplant", planting.days_since_transplant, 0, 40'000, "d");
  require_within("leaf_deficit_mm", planting.leaf_deficit_mm, 0, leaf_refill_mm, "mm");
  for (const double demand : demand_mm_h) require_within("demand_mm_h", demand, 0, 5, "mm/h");
}

bool complete(const WiltPlanting& planting, const std::array<double, 24>& demand_mm_h) {
  const double numbers[] = {planting.p_frac,        planting.turgor_loss_mpa, planting.taw_mm,
                            planting.raw_mm,        planting.dr_mm,           planting.leaf_deficit_mm,
                            planting.soil.theta_33, planting.soil.theta_1500};
  return std::none_of(std::begin(numbers), std::end(numbers), is_missing) &&
         std::none_of(demand_mm_h.begin(), demand_mm_h.end(), is_missing);
}

TenderRule rule_of(const WiltPlanting& planting) {
  if (transplant_factor(planting.days_since_transplant) > 1) return TenderRule::fresh_transplant;
  return tender_raw_frac(planting.root_depth_m) < 1 ? TenderRule::shallow_roots : TenderRule::none;
}

// Hour of the clock that holds the sunrise, by the radiation; 6 on a day without any.
int dawn_hour(const WeatherHours& hours) {
  const auto lit =
      std::find_if(hours.begin(), hours.end(), [](const WeatherHour& hour) { return hour.rs_mj_m2_h > 0; });
  return lit == hours.end() ? 6 : static_cast<int>(lit - hours.begin());
}

// Depletion after an hour whose transpiration is Ks times its demand, Ks by FAO-56 eq. 84; solved within the
// hour, so that a drier soil never ends the hour wetter.
double dried_mm(double dr_mm, double demand_mm, const WiltPlanting& planting) {
  if (dr_mm >= planting.taw_mm) return dr_mm;
  const double unstressed = std::min(demand_mm, std::max(planting.raw_mm - dr_mm, 0.0));
  if (unstressed == demand_mm) return dr_mm + demand_mm;
  const double left = planting.taw_mm - std::max(dr_mm, planting.raw_mm);
  const double span = planting.taw_mm - planting.raw_mm;
  if (span <= 0) return planting.taw_mm;
  return planting.taw_mm - left * std::exp(-(demand_mm - unstressed) / span);
}

struct Plant {
  WaterPath path{};
  RetentionCurve soil{};
};

WiltHour pass_hour(const Plant& plant, const WiltPlanting& planting, WiltHour hour,
                   double deficit_before_mm) {
  const double frac = hour.depletion_mm / planting.taw_mm;
  hour.supply_mm_h = supply_mm_h(plant.path, plant.soil, frac);
  hour.soil_potential_mpa = leaf_potential_mpa(plant.path, plant.soil, frac, 0);
  hour.leaf_deficit_mm =
      hour.supply_mm_h > 0
          ? std::clamp(deficit_before_mm + hour.demand_mm_h - hour.supply_mm_h, 0.0, leaf_refill_mm)
          : leaf_refill_mm;
  hour.hangs = hour.leaf_deficit_mm > 0;
  // Leaves that hang have no turgor, whatever flows; others meet the demand.
  hour.leaf_potential_mpa = hour.hangs ? std::min(hour.soil_potential_mpa, plant.path.turgor_loss_mpa)
                                       : leaf_potential_mpa(plant.path, plant.soil, frac,
                                                            std::min(hour.demand_mm_h, hour.supply_mm_h));
  return hour;
}

void run_hours(WiltDay& day, const WiltPlanting& planting, const WeatherHours& hours,
               const std::array<double, 24>& demand_mm_h) {
  Plant plant{.path = water_path({.p_frac = planting.p_frac, .turgor_loss_mpa = planting.turgor_loss_mpa}),
              .soil = retention_curve(planting.soil)};
  plant.path.plant_mpa_h_mm *= transplant_factor(planting.days_since_transplant);
  double dr_mm = planting.dr_mm;
  double deficit_mm = planting.dawn_look == DawnLook::upright ? 0 : planting.leaf_deficit_mm;
  const int dawn = dawn_hour(hours);
  for (int step = 0; step < 24; ++step) {
    WiltHour& hour = day.hours[static_cast<std::size_t>(step)];
    hour.clock_h = dawn + step;
    const std::size_t clock = static_cast<std::size_t>((dawn + step) % 24);
    hour.demand_mm_h = demand_mm_h[clock] * (hours[clock].rs_mj_m2_h > 0 ? planting.sunlit_factor : 1);
    hour.depletion_mm = dr_mm;
    hour = pass_hour(plant, planting, hour, deficit_mm);
    deficit_mm = hour.leaf_deficit_mm;
    dr_mm = dried_mm(dr_mm, demand_mm_h[clock], planting);
    if (is_missing(day.raw_passed_h) && hour.depletion_mm > planting.raw_mm) day.raw_passed_h = hour.clock_h;
  }
  day.depletion_mm = dr_mm;
  day.leaf_deficit_mm = deficit_mm;
  day.soil_potential_mpa = day.hours.front().soil_potential_mpa;
}

void sum_up_hours(WiltDay& day) {
  double demand = 0, unmet = 0;
  const WiltHour* worst = &day.hours.front();
  const WiltHour* last_hanging = nullptr;
  for (const WiltHour& hour : day.hours) {
    demand += hour.demand_mm_h;
    unmet += std::max(0.0, hour.demand_mm_h - hour.supply_mm_h);
    if (hour.demand_mm_h - hour.supply_mm_h > worst->demand_mm_h - worst->supply_mm_h) worst = &hour;
    if (!hour.hangs) continue;
    ++day.droop_hours;
    if (last_hanging == nullptr) day.droop_from_h = hour.clock_h;
    last_hanging = &hour;
  }
  day.unmet_frac = demand > 0 ? unmet / demand : 0;
  day.peak_hour_h = worst->clock_h;
  day.peak_demand_mm_h = worst->demand_mm_h;
  day.peak_supply_mm_h = worst->supply_mm_h;
  if (last_hanging == nullptr || last_hanging == &day.hours.back()) return;
  const WiltHour& recovery = *(last_hanging + 1);
  day.droop_until_h =
      recovery.clock_h + last_hanging->leaf_deficit_mm / (recovery.supply_mm_h - recovery.demand_mm_h);
  day.look_again_h = std::ceil(day.droop_until_h) + grace_h;
}

WiltVerdict verdict_of(const WiltDay& day, const WiltPlanting& planting) {
  if (planting.dawn_look == DawnLook::hanging)
    return planting.dr_mm <= planting.raw_mm && planting.leaf_deficit_mm == 0 ? WiltVerdict::wet_soil_droop
                                                                              : WiltVerdict::dry_soil_wilt;
  if (day.leaf_deficit_mm > 0) return WiltVerdict::dry_soil_wilt;
  const double bearable_mm = tender_raw_frac(planting.root_depth_m) * planting.raw_mm;
  const bool hangs_beyond = std::any_of(day.hours.begin(), day.hours.end(), [&](const WiltHour& hour) {
    return hour.hangs && hour.depletion_mm > bearable_mm;
  });
  if (planting.dr_mm > planting.raw_mm || hangs_beyond) return WiltVerdict::stress;
  return day.droop_hours > 0 ? WiltVerdict::droop : WiltVerdict::comfortable;
}

WaterAdvice advice_for(WiltVerdict verdict) {
  switch (verdict) {
    case WiltVerdict::comfortable:
      return WaterAdvice::leave_alone;
    case WiltVerdict::droop:
      return WaterAdvice::wait_and_look;
    case WiltVerdict::stress:
      return WaterAdvice::water_next_run;
    case WiltVerdict::dry_soil_wilt:
      return WaterAdvice::water_at_once;
    case WiltVerdict::wet_soil_droop:
      return WaterAdvice::look_at_the_roots;
    case WiltVerdict::unknown:
      break;
  }
  return WaterAdvice::unknown;
}

int rank(WiltVerdict verdict) {
  switch (verdict) {
    case WiltVerdict::wet_soil_droop:
      return 0;
    case WiltVerdict::dry_soil_wilt:
      return 1;
    case WiltVerdict::stress:
      return 2;
    case WiltVerdict::droop:
      return 3;
    case WiltVerdict::comfortable:
      return 4;
    case WiltVerdict::unknown:
      break;
  }
  return 5;
}

}  // namespace

double tender_raw_frac(double root_depth_m) {
  if (is_missing(root_depth_m)) return 1;
  const double depth = std::clamp(root_depth_m, shallow_root_m, deep_root_m);
  return shallow_raw_frac +
         (1 - shallow_raw_frac) * (depth - shallow_root_m) / (deep_root_m - shallow_root_m);
}

double transplant_factor(double days_since_transplant) {
  if (is_missing(days_since_transplant)) return 1;
  return 1 + transplant_extra * std::max(0.0, 1 - days_since_transplant / transplant_days);
}

WiltDay wilt_day(const WiltPlanting& planting, const WeatherHours& hours,
                 const std::array<double, 24>& demand_mm_h) {
  require_ranges(planting, demand_mm_h);
  WiltDay day;
  day.rule = rule_of(planting);
  if (!complete(planting, demand_mm_h)) return day;
  run_hours(day, planting, hours, demand_mm_h);
  sum_up_hours(day);
  day.verdict = verdict_of(day, planting);
  day.advice = advice_for(day.verdict);
  return day;
}

bool wilts_before(const WiltDay& first, const WiltDay& second) {
  if (rank(first.verdict) != rank(second.verdict)) return rank(first.verdict) < rank(second.verdict);
  const auto begins = [](const WiltDay& day) {
    return is_missing(day.droop_from_h) ? 99.0 : day.droop_from_h;
  };
  if (begins(first) != begins(second)) return begins(first) < begins(second);
  return first.peak_demand_mm_h * second.peak_supply_mm_h > second.peak_demand_mm_h * first.peak_supply_mm_h;
}

std::string_view label(WiltVerdict verdict) {
  switch (verdict) {
    case WiltVerdict::comfortable:
      return "comfortable";
    case WiltVerdict::droop:
      return "droop";
    case WiltVerdict::stress:
      return "stress";
    case WiltVerdict::dry_soil_wilt:
      return "dry-soil wilt";
    case WiltVerdict::wet_soil_droop:
      return "droop over wet soil";
    case WiltVerdict::unknown:
      break;
  }
  return "unknown";
}

}  // namespace v1
}  // namespace noonleaf
