#include "noonleaf/sprinkler/catch_cans.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <string>

#include "noonleaf/guard.hpp"
#include "noonleaf/sprinkler/can_areas.hpp"
#include "noonleaf/sprinkler/fault_list.hpp"
#include "noonleaf/sprinkler/student_t.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t most_cans = 1000;       // ours; keeps the cost of hostile input small
constexpr double same_place_m = 0.01;         // two cans cannot stand this close
constexpr double whole_can_tolerance = 1e-9;  // rounding left over when shares are added up

bool has_position(const CatchCan& can) { return is_known(can.x_m) && is_known(can.y_m); }
bool has_any_position(const CatchCan& can) { return is_known(can.x_m) || is_known(can.y_m); }

void check_depths(const std::vector<CatchCan>& cans, FaultList& faults) {
  bool any_water = false;
  for (std::size_t i = 0; i < cans.size(); ++i) {
    const double depth = cans[i].depth_mm;
    any_water = any_water || depth > 0.0;
    if (depth >= 0.0 && depth <= 1000.0) continue;
    const std::string what = is_missing(depth) ? "missing" : number_text(depth) + " is outside 0 to 1000 mm";
    faults.add("depth_mm", i, what, "read the can again, or leave its row out");
  }
  if (!any_water && !cans.empty())
    faults.add("depth_mm", 0, "no can caught any water", "check that the sprinkler reached the cans");
}

void check_positions(const std::vector<CatchCan>& cans, FaultList& faults) {
  if (std::none_of(cans.begin(), cans.end(), has_any_position)) return;
  for (std::size_t i = 0; i < cans.size(); ++i) {
    if (!has_position(cans[i])) {
      faults.add("x_m, y_m", i, "position missing while other cans have one",
                 "give x and y for every can, or for none");
    } else if (!(std::abs(cans[i].x_m) <= 10000.0 && std::abs(cans[i].y_m) <= 10000.0)) {
      faults.add("x_m, y_m", i, "position is outside -10000 to 10000 m",
                 "measure from a corner of the bed, in metres");
    } else {
      for (std::size_t j = 0; j < i; ++j)
        if (std::hypot(cans[i].x_m - cans[j].x_m, cans[i].y_m - cans[j].y_m) < same_place_m)
          faults.add("x_m, y_m", i, "stands in the same place as can " + std::to_string(j + 1),
                     "correct one of the two positions");
    }
  }
}

void check(const CatchCanTest& test) {
  FaultList faults;
  faults.positive("minutes", test.minutes, 1440.0, "min");
  if (test.cans.size() < fewest_cans)
    faults.add("cans", 0, std::to_string(test.cans.size()) + " cans are too few; 3 is the least",
               "set out at least 3 cans, better 8 or more");
  if (test.cans.size() > most_cans) {
    faults.add("cans", 0, std::to_string(test.cans.size()) + " cans are too many; 1000 is the most",
               "check that the file is a catch-can test");
  } else {
    check_depths(test.cans, faults);
    check_positions(test.cans, faults);
  }
  faults.throw_if_any();
}

// Depths in rising order with the ground each stands for. Shares need not sum to 1.
struct Catch {
  double depth_mm, share;
};

struct Uniformity {
  double mean_mm, low_quarter_mm, du_frac, cu_frac;
  bool can_was_split;
};

Uniformity uniformity(const std::vector<Catch>& rising) {
  double ground = 0.0;
  double water = 0.0;
  for (const Catch& can : rising) {
    ground += can.share;
    water += can.share * can.depth_mm;
  }
  const double mean = water / ground;
  const double quarter = 0.25 * ground;
  double taken = 0.0;
  double low_water = 0.0;
  double deviation = 0.0;
  bool split = false;
  for (const Catch& can : rising) {
    deviation += can.share * std::abs(can.depth_mm - mean);
    const double part = std::min(can.share, quarter - taken);
    if (part <= whole_can_tolerance * ground) continue;
    split = split || part < can.share - whole_can_tolerance * ground;
    taken += part;
    low_water += part * can.depth_mm;
  }
  const double low_quarter = low_water / taken;
  return {.mean_mm = mean,
          .low_quarter_mm = low_quarter,
          .du_frac = low_quarter / mean,
          .cu_frac = 1.0 - deviation / water,
          .can_was_split = split};
}

struct JackknifeErrors {
  double mean_mm, du_frac, cu_frac;
};

double jackknife_error(const std::vector<double>& values) {
  const double n = static_cast<double>(values.size());
  const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
  double sum = 0.0;
  for (const double value : values) sum += (value - mean) * (value - mean);
  return std::sqrt((n - 1.0) / n * sum);
}

// NaN where leaving out one can leaves no water: then no interval can be told.
JackknifeErrors jackknife(const std::vector<Catch>& rising) {
  std::vector<double> means, dus, cus;
  for (std::size_t left_out = 0; left_out < rising.size(); ++left_out) {
    std::vector<Catch> rest = rising;
    rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(left_out));
    const Uniformity part = uniformity(rest);
    means.push_back(part.mean_mm);
    dus.push_back(part.du_frac);
    cus.push_back(part.cu_frac);
  }
  return {jackknife_error(means), jackknife_error(dus), jackknife_error(cus)};
}

CanEstimate interval(double value, double half_width, double floor, double ceiling) {
  if (is_missing(half_width)) return {.value = value};
  return {.value = value,
          .low = std::max(floor, value - half_width),
          .high = std::min(ceiling, value + half_width)};
}

double coefficient_of_variation(const std::vector<Catch>& cans, double mean_mm) {
  double squares = 0.0;
  double share_squares = 0.0;
  for (const Catch& can : cans) {
    squares += can.share * (can.depth_mm - mean_mm) * (can.depth_mm - mean_mm);
    share_squares += can.share * can.share;
  }
  return std::sqrt(squares / (1.0 - share_squares)) / mean_mm;  // n - 1 for equal shares
}

std::vector<double> area_shares(const std::vector<CatchCan>& cans) {
  if (!has_position(cans.front()))
    return std::vector<double>(cans.size(), 1.0 / static_cast<double>(cans.size()));
  std::vector<GroundPoint> points;
  points.reserve(cans.size());
  for (const CatchCan& can : cans) points.push_back({can.x_m, can.y_m});
  return thiessen_shares(points);
}

}  // namespace

CanResult catch_can_result(const CatchCanTest& test) {
  check(test);
  CanResult result;
  result.can_count = test.cans.size();
  result.minutes = test.minutes;
  result.weighting = has_position(test.cans.front()) ? CanWeighting::thiessen_area : CanWeighting::equal;
  result.area_share = area_shares(test.cans);

  std::vector<Catch> rising;
  for (std::size_t i = 0; i < test.cans.size(); ++i) {
    rising.push_back({test.cans[i].depth_mm, result.area_share[i]});
    if (test.cans[i].depth_mm < test.cans[result.driest_can].depth_mm) result.driest_can = i;
    if (test.cans[i].depth_mm > test.cans[result.wettest_can].depth_mm) result.wettest_can = i;
  }
  std::stable_sort(rising.begin(), rising.end(),
                   [](const Catch& a, const Catch& b) { return a.depth_mm < b.depth_mm; });

  const Uniformity whole = uniformity(rising);
  const JackknifeErrors errors = jackknife(rising);
  const double t = student_t_two_sided(can_confidence_frac, result.can_count - 1);
  const double infinite = std::numeric_limits<double>::infinity();
  const double mm_h_per_mm = 60.0 / test.minutes;
  result.mean_depth_mm = whole.mean_mm;
  result.low_quarter_depth_mm = whole.low_quarter_mm;
  result.quarter_rule = whole.can_was_split ? QuarterRule::fractional_quarter : QuarterRule::whole_cans;
  result.rate_mm_h = interval(mm_h_per_mm * whole.mean_mm, mm_h_per_mm * t * errors.mean_mm, 0.0, infinite);
  result.du_lq_frac = interval(whole.du_frac, t * errors.du_frac, 0.0, 1.0);
  result.cu_frac = interval(whole.cu_frac, t * errors.cu_frac, -infinite, 1.0);
  result.coefficient_of_variation = coefficient_of_variation(rising, whole.mean_mm);
  result.cans_for_quarter_error =
      cans_needed({.coefficient_of_variation = result.coefficient_of_variation, .relative_error_frac = 0.25});
  return result;
}

double can_depth_mm(const CanCatch& caught) {
  require_within("caught_ml", caught.caught_ml, 0.0, 100000.0, "ml");
  require_within("can_diameter_mm", caught.can_diameter_mm, 10.0, 1000.0, "mm");
  const double d = caught.can_diameter_mm;
  return 4000.0 * caught.caught_ml / (std::numbers::pi * d * d);  // 1 ml = 1000 mm3
}

std::size_t cans_needed(const CanPrecision& wanted) {
  FaultList faults;
  faults.within("coefficient_of_variation", wanted.coefficient_of_variation, 0.0, 40.0, "");
  faults.within("relative_error_frac", wanted.relative_error_frac, 0.05, 1.0, "");
  faults.throw_if_any();
  const double ratio = wanted.coefficient_of_variation / wanted.relative_error_frac;
  constexpr double z = 1.6448;  // just below the normal deviate at 90 %, where t arrives for many cans
  auto count = static_cast<std::size_t>(std::max(2.0, std::ceil(z * z * ratio * ratio)));
  while (student_t_two_sided(can_confidence_frac, count - 1) * ratio > std::sqrt(static_cast<double>(count)))
    ++count;
  return count;
}

}  // namespace v1
}  // namespace noonleaf
