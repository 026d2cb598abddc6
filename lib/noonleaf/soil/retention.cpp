#include "noonleaf/soil/retention.hpp"

#include <cmath>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double field_capacity_kpa = 33.0;
constexpr double wilting_point_kpa = 1500.0;

[[noreturn]] void refuse(const char* field, double value, const std::string& range) {
  Problem problem;
  problem.field = field;
  problem.text = number_text(value);
  problem.message = problem.text + " is " + range;
  problem.fix = "check the soil: wilting point below field capacity below saturation";
  throw Error(std::move(problem));
}

void require_order(const RetentionPoints& points) {
  require_within("theta_33", points.theta_33, 0, 1, "m³/m³");
  require_within("theta_1500", points.theta_1500, 0, 1, "m³/m³");
  require_within("theta_s", points.theta_s, 0, 1, "m³/m³");
  require_within("air_entry_kpa", points.air_entry_kpa, 0, field_capacity_kpa, "kPa");
  if (points.theta_1500 <= 0) refuse("theta_1500", points.theta_1500, "not above 0");
  if (points.theta_1500 >= points.theta_33)
    refuse("theta_1500", points.theta_1500, "not below the field capacity " + number_text(points.theta_33));
  if (points.theta_s <= points.theta_33)
    refuse("theta_s", points.theta_s, "not above the field capacity " + number_text(points.theta_33));
}

void require_water(const RetentionCurve& curve, double theta) {
  if (theta <= 0) refuse("theta", theta, "not above 0");
  if (theta > curve.points.theta_s)
    refuse("theta", theta, "above saturation, " + number_text(curve.points.theta_s));
  require_within("theta", theta, 0, 1, "m³/m³");
}

}  // namespace

RetentionCurve retention_curve(const RetentionPoints& points) {
  require_order(points);
  RetentionCurve curve{.points = points};
  curve.b = (std::log(wilting_point_kpa) - std::log(field_capacity_kpa)) /
            (std::log(points.theta_33) - std::log(points.theta_1500));                     // eq. 15
  curve.a = std::exp(std::log(field_capacity_kpa) + curve.b * std::log(points.theta_33));  // eq. 14
  return curve;
}

double soil_tension_kpa(const RetentionCurve& curve, double theta) {
  require_water(curve, theta);
  const auto& [theta_33, theta_1500, theta_s, air_entry] = curve.points;
  if (theta > theta_33)
    return field_capacity_kpa -
           (theta - theta_33) * (field_capacity_kpa - air_entry) / (theta_s - theta_33);  // eq. 12
  return curve.a * std::pow(theta, -curve.b);                                             // eq. 11
}

double soil_water_at_tension_m3_m3(const RetentionCurve& curve, double tension_kpa) {
  require_within("tension_kpa", tension_kpa, 0, 100'000, "kPa");
  const auto& [theta_33, theta_1500, theta_s, air_entry] = curve.points;
  if (tension_kpa < air_entry) return theta_s;  // eq. 13
  if (tension_kpa < field_capacity_kpa)
    return theta_33 + (field_capacity_kpa - tension_kpa) * (theta_s - theta_33) /
                          (field_capacity_kpa - air_entry);  // eq. 12
  return std::pow(curve.a / tension_kpa, 1 / curve.b);       // eq. 11
}

}  // namespace v1
}  // namespace noonleaf
