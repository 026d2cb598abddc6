#include "noonleaf/soil/saxton_rawls.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/soil/retention.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double particle_density_g_cm3 = 2.65;  // Saxton & Rawls 2006, eq. 6

void require_limit(const char* field, double value, double limit) {
  require_within(field, value, 0, 100, "% by weight");
  if (!(value > limit)) return;
  Problem problem;
  problem.field = field;
  problem.text = number_text(value);
  problem.message = number_text(value) + " % is beyond the " + number_text(limit) +
                    " % up to which the texture equations hold (Saxton & Rawls 2006)";
  problem.fix =
      "give measured field capacity and wilting point instead, or weigh a pot of the soil soaked, drained "
      "and "
      "wilted (noonleaf soils --pot)";
  throw Error(std::move(problem));
}

void require_particles(const SoilParticles& p) {
  for (const double value : {p.sand_pct, p.clay_pct, p.organic_pct, p.gravel_pct, p.density_factor})
    if (is_missing(value)) {
      Problem problem;
      problem.field = "sand_pct, clay_pct";
      problem.message = "sand and clay must both be given";
      problem.fix = "a jar test or a soil laboratory tells them; or name a texture class";
      throw Error(std::move(problem));
    }
  require_within("sand_pct", p.sand_pct, 0, 100, "% by weight");
  require_limit("clay_pct", p.clay_pct, 60);
  require_limit("organic_pct", p.organic_pct, 8);
  require_within("gravel_pct", p.gravel_pct, 0, 90, "% by weight");
  require_within("density_factor", p.density_factor, 0.9, 1.3, "");
  require_within("salinity_ds_m", p.salinity_ds_m, 0, 60, "dS/m");
  require_within("sand_pct + clay_pct", p.sand_pct + p.clay_pct, 0, 100, "% by weight");
}

/// Eq. 1 to 3, 5: water contents of the fine earth at normal density; sand, clay as fractions, OM in %.
void normal_density(SaxtonRawls& out, double s, double c, double om) {
  const double t1500 =
      -0.024 * s + 0.487 * c + 0.006 * om + 0.005 * s * om - 0.013 * c * om + 0.068 * s * c + 0.031;
  out.theta_1500 = t1500 + (0.14 * t1500 - 0.02);  // eq. 1
  const double t33 =
      -0.251 * s + 0.195 * c + 0.011 * om + 0.006 * s * om - 0.027 * c * om + 0.452 * s * c + 0.299;
  out.theta_33 = t33 + (1.283 * t33 * t33 - 0.374 * t33 - 0.015);  // eq. 2
  const double ts33 =
      0.278 * s + 0.034 * c + 0.022 * om - 0.018 * s * om - 0.027 * c * om - 0.584 * s * c + 0.078;
  const double theta_s33 = ts33 + (0.636 * ts33 - 0.107);          // eq. 3
  out.theta_s = out.theta_33 + theta_s33 - 0.097 * s + 0.043;      // eq. 5
  out.density_g_cm3 = (1 - out.theta_s) * particle_density_g_cm3;  // eq. 6
  const double et = -21.67 * s - 27.93 * c - 81.97 * theta_s33 + 71.12 * s * theta_s33 +
                    8.29 * c * theta_s33 + 14.05 * s * c + 27.16;
  out.air_entry_kpa = et + (0.02 * et * et - 0.113 * et - 0.70);  // eq. 4
}

/// Eq. 7 to 9: loosened or compacted.
void adjust_density(SaxtonRawls& out, double density_factor) {
  const double normal_theta_s = out.theta_s;
  out.density_g_cm3 *= density_factor;                           // eq. 7
  out.theta_s = 1 - out.density_g_cm3 / particle_density_g_cm3;  // eq. 8
  out.theta_33 -= 0.2 * (normal_theta_s - out.theta_s);          // eq. 9
}

void require_plausible(const SaxtonRawls& out) {
  if (out.theta_1500 > 0 && out.theta_33 > out.theta_1500 && out.theta_s > out.theta_33) return;
  Problem problem;
  problem.field = "sand_pct";
  problem.message = "these particles give no plausible soil: wilting point " + number_text(out.theta_1500) +
                    ", field capacity " + number_text(out.theta_33) + ", saturation " +
                    number_text(out.theta_s);
  problem.fix = "check sand, clay and density factor, or give measured values";
  throw Error(std::move(problem));
}

}  // namespace

SaxtonRawls saxton_rawls(const SoilParticles& particles) {
  require_particles(particles);
  SaxtonRawls out;
  normal_density(out, particles.sand_pct / 100, particles.clay_pct / 100, particles.organic_pct);
  adjust_density(out, particles.density_factor);
  require_plausible(out);
  const RetentionCurve curve = retention_curve({.theta_33 = out.theta_33, .theta_1500 = out.theta_1500});
  out.a = curve.a;                                                                      // eq. 14
  out.b = curve.b;                                                                      // eq. 15
  out.lambda = 1 / out.b;                                                               // eq. 18
  out.conductivity_mm_h = 1930 * std::pow(out.theta_s - out.theta_33, 3 - out.lambda);  // eq. 16
  const double rw = particles.gravel_pct / 100;
  const double alpha = out.density_g_cm3 / particle_density_g_cm3;
  out.gravel_volume_frac = alpha * rw / (1 - rw * (1 - alpha));  // eq. 19
  out.bulk_density_g_cm3 =
      out.density_g_cm3 * (1 - out.gravel_volume_frac) + particle_density_g_cm3 * out.gravel_volume_frac;
  out.bulk_available_m3_m3 = (out.theta_33 - out.theta_1500) * (1 - out.gravel_volume_frac);       // eq. 21
  out.bulk_conductivity_mm_h = out.conductivity_mm_h * (1 - rw) / (1 - rw * (1 - 3 * alpha / 2));  // eq. 22
  out.osmotic_kpa = 36 * particles.salinity_ds_m;                                                  // eq. 23
  return out;
}

SoilWater soil_of(const SoilParticles& particles) {
  const SaxtonRawls full = saxton_rawls(particles);
  const double fine_earth = 1 - full.gravel_volume_frac;
  SoilWater soil;
  soil.field_capacity_m3_m3 = full.theta_33 * fine_earth;
  soil.wilting_point_m3_m3 = full.theta_1500 * fine_earth;
  soil.saturation_m3_m3 = full.theta_s * fine_earth;
  soil.conductivity_mm_h = full.bulk_conductivity_mm_h;
  soil.rew_mm = std::min(rew_by_texture_mm(particles.sand_pct, particles.clay_pct), 0.6 * tew_mm(soil));
  soil.source = "Saxton & Rawls (2006) from sand " + number_text(particles.sand_pct) + " %, clay " +
                number_text(particles.clay_pct) + " %, organic matter " + number_text(particles.organic_pct) +
                " %, gravel " + number_text(particles.gravel_pct) + " %";
  return soil;
}

double osmotic_tension_kpa(double theta, double theta_s, double salinity_ds_m) {
  require_within("theta", theta, 0.001, 1, "m3/m3");
  return theta_s / theta * 36 * salinity_ds_m;  // eq. 24
}

double rew_by_texture_mm(double sand_pct, double clay_pct) {
  require_within("sand_pct", sand_pct, 0, 100, "% by weight");
  require_within("clay_pct", clay_pct, 0, 100, "% by weight");
  if (sand_pct > 80) return 20 - 0.15 * sand_pct;
  if (clay_pct > 50) return 11 - 0.06 * clay_pct;
  return 8 + 0.08 * clay_pct;
}

}  // namespace v1
}  // namespace noonleaf
