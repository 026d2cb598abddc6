#include "bench/reference_plain.hpp"

#include <algorithm>
#include <cmath>

namespace plain {
namespace {

constexpr double pi = 3.14159265358979323846;

double extraterrestrial_radiation(double latitude, int j) {
  const double dr = 1 + 0.033 * std::cos(2 * pi / 365 * j);
  const double declination = 0.409 * std::sin(2 * pi / 365 * j - 1.39);
  const double ws = std::acos(std::clamp(-std::tan(latitude) * std::tan(declination), -1.0, 1.0));
  return 24 * 60 / pi * 0.0820 * dr *
         (ws * std::sin(latitude) * std::sin(declination) +
          std::cos(latitude) * std::cos(declination) * std::sin(ws));
}

double saturation(double t) { return 0.6108 * std::exp(17.27 * t / (t + 237.3)); }

double fourth(double x) { return x * x * x * x; }

double row_et0(const Days& in, std::size_t i, double gamma, double ra, double clear_share) {
  const double t_max = in.t_max_c[i], t_min = in.t_min_c[i], ea = in.ea_kpa[i], rs = in.rs_mj_m2_d[i];
  const double u2 = in.u2_m_s[i];
  const double t = (t_max + t_min) / 2;
  const double delta = 4098 * saturation(t) / ((t + 237.3) * (t + 237.3));
  const double es = (saturation(t_max) + saturation(t_min)) / 2;
  const double rso = clear_share * ra;
  const double ratio = rso > 0 ? std::min(rs / rso, 1.0) : 0.6;
  const double rnl = 4.903e-9 * (fourth(t_max + 273.16) + fourth(t_min + 273.16)) / 2 *
                     (0.34 - 0.14 * std::sqrt(ea)) * (1.35 * ratio - 0.35);
  const double rn = 0.77 * rs - rnl;
  return (0.408 * delta * rn + gamma * 900 / (t + 273) * u2 * (es - ea)) / (delta + gamma * (1 + 0.34 * u2));
}

double gamma_of(double elevation_m) {
  return 0.665e-3 * 101.3 * std::pow((293 - 0.0065 * elevation_m) / 293, 5.26);
}

}  // namespace

void daily_et0(double latitude_deg, double elevation_m, const Days& in, std::size_t count, double* et0_mm_d) {
  const double latitude = latitude_deg * pi / 180, gamma = gamma_of(elevation_m);
  for (std::size_t i = 0; i < count; ++i) {
    const double ra = extraterrestrial_radiation(latitude, in.day_of_year[i]);
    et0_mm_d[i] = row_et0(in, i, gamma, ra, 0.75 + 2e-5 * elevation_m);
  }
}

void radiation_table(double latitude_deg, double* ra_mj_m2_d) {
  for (int j = 1; j <= 366; ++j) ra_mj_m2_d[j - 1] = extraterrestrial_radiation(latitude_deg * pi / 180, j);
}

void daily_et0_with_table(const double* ra_table, double elevation_m, const Days& in, std::size_t count,
                          double* et0_mm_d) {
  const double gamma = gamma_of(elevation_m);
  for (std::size_t i = 0; i < count; ++i) {
    et0_mm_d[i] = row_et0(in, i, gamma, ra_table[in.day_of_year[i] - 1], 0.75 + 2e-5 * elevation_m);
  }
}

void hourly_et0(double latitude_deg, double longitude_deg, double elevation_m, const Hours& in,
                std::size_t count, double* et0_mm_h) {
  const double latitude = latitude_deg * pi / 180, gamma = gamma_of(elevation_m), half = pi / 24;
  const double clear_share = 0.75 + 2e-5 * elevation_m;
  double night_ratio = 0.5;
  for (std::size_t i = 0; i < count; ++i) {
    const int j = in.day_of_year[i];
    const double dr = 1 + 0.033 * std::cos(2 * pi / 365 * j);
    const double declination = 0.409 * std::sin(2 * pi / 365 * j - 1.39);
    const double ws = std::acos(std::clamp(-std::tan(latitude) * std::tan(declination), -1.0, 1.0));
    const double b = 2 * pi * (j - 81) / 364;
    const double sc = 0.1645 * std::sin(2 * b) - 0.1255 * std::cos(b) - 0.025 * std::sin(b);
    const double w = std::remainder(pi / 12 * (in.middle_h[i] + longitude_deg / 15 + sc - 12), 2 * pi);
    const double w1 = std::clamp(w - half, -ws, ws), w2 = std::clamp(w + half, -ws, ws);
    const double ra = 12 * 60 / pi * 0.0820 * dr *
                      ((w2 - w1) * std::sin(latitude) * std::sin(declination) +
                       std::cos(latitude) * std::cos(declination) * (std::sin(w2) - std::sin(w1)));
    const double t = in.t_c[i], ea = in.ea_kpa[i], rs = in.rs_mj_m2_h[i], u2 = in.u2_m_s[i];
    const double rso = clear_share * ra;
    double ratio = night_ratio;
    if (std::abs(w) + half <= ws) {
      ratio = std::min(rs / rso, 1.0);
      if (w <= std::max(ws - 0.52, 0.0)) night_ratio = ratio;
    }
    const double e = saturation(t);
    const double delta = 4098 * e / ((t + 237.3) * (t + 237.3));
    const double rnl = 2.043e-10 * fourth(t + 273.16) * (0.34 - 0.14 * std::sqrt(ea)) * (1.35 * ratio - 0.35);
    const double rn = 0.77 * rs - rnl;
    const double g = (std::abs(w) < ws ? 0.1 : 0.5) * rn;
    et0_mm_h[i] = (0.408 * delta * (rn - g) + gamma * 37 / (t + 273) * u2 * (e - ea)) /
                  (delta + gamma * (1 + 0.34 * u2));
  }
}

}  // namespace plain
