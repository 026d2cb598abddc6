#include "bench/heat_plain.hpp"

#include <algorithm>
#include <cmath>

namespace plain {
namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double lag = 1.86, decay = 2.20, minimum_after = -0.17;

double svp(double t) { return 0.6108 * std::exp(17.27 * t / (t + 237.3)); }

double held_level(const std::array<double, 24>& es, double ea) {
  double level = ea;
  for (int step = 0; step < 24; ++step) {
    double sum = 0;
    int above = 0;
    for (const double e : es) {
      sum += std::min(e, level);
      above += e > level;
    }
    if (above == 0 || 24 * ea - sum < 1e-13) break;
    level += (24 * ea - sum) / above;
  }
  return level;
}

}  // namespace

SunDay sun_day(const HeatPlace& place, int j) {
  SunDay out{};
  const double declination = 0.409 * std::sin(2 * pi / 365 * j - 1.39);
  const double dr = 1 + 0.033 * std::cos(2 * pi / 365 * j);
  const double sunset_angle = std::acos(-std::tan(place.latitude_rad) * std::tan(declination));
  const double b = 2 * pi * (j - 81) / 364;
  const double sc = 0.1645 * std::sin(2 * b) - 0.1255 * std::cos(b) - 0.025 * std::sin(b);
  const double shift = place.longitude_deg / 15 - place.utc_offset_h + sc;
  const double half = sunset_angle * 12 / pi;
  out.sunrise = 12 - shift - half;
  out.sunset = 12 - shift + half;
  const double daylight = 2 * half, minimum = out.sunrise + minimum_after, dusk = daylight - minimum_after;
  for (int h = 0; h < 24; ++h) {
    const double angle = pi / 12 * (h + 0.5 + shift - 12);
    const double from = std::clamp(angle - pi / 24, -sunset_angle, sunset_angle);
    const double to = std::clamp(angle + pi / 24, -sunset_angle, sunset_angle);
    out.ra[h] = 12 * 60 / pi * 0.0820 * dr *
                ((to - from) * std::sin(place.latitude_rad) * std::sin(declination) +
                 std::cos(place.latitude_rad) * std::cos(declination) * (std::sin(to) - std::sin(from)));
    out.ra_total += out.ra[h];
    const double since = h + 0.5 - minimum >= 0 ? h + 0.5 - minimum : h + 24.5 - minimum;
    if (since <= dusk)
      out.rise[h] = std::sin(pi * since / (daylight + 2 * lag));
    else
      out.left[h] =
          (std::exp(-decay * (since - dusk) / (24 - dusk)) - std::exp(-decay)) / (1 - std::exp(-decay));
  }
  return out;
}

std::array<double, 24> shares(const HeatPlace& place, const SunDay& sun, const HeatDay& day) {
  std::array<double, 24> t{}, es{}, share{}, wind{};
  const double daylight = sun.sunset - sun.sunrise, minimum = sun.sunrise + minimum_after,
               dusk = daylight - minimum_after;
  const double dusk_rise = std::sin(pi * dusk / (daylight + 2 * lag));
  double low = 1e9, high = -1e9, wind_sum = 0;
  for (int h = 0; h < 24; ++h) {
    const double since = h + 0.5 - minimum;
    if (since < 0) {
      const double lowest = std::min(day.t_min, day.t_max_before);
      const double evening = lowest + (day.t_max_before - lowest) * dusk_rise;
      t[h] = day.t_min + (evening - day.t_min) * sun.left[h];
    } else if (since <= dusk) {
      t[h] = day.t_min + (day.t_max - day.t_min) * sun.rise[h];
    } else {
      const double after = std::min(day.t_min_after, day.t_max);
      const double evening = day.t_min + (day.t_max - day.t_min) * dusk_rise;
      t[h] = after + (evening - after) * sun.left[h];
    }
    low = std::min(low, t[h]);
    high = std::max(high, t[h]);
    const double lit = std::fmod(h + 0.5 - sun.sunrise + 48, 24);
    wind[h] = 1 + (lit < daylight ? pi / 2 * std::sin(pi * lit / daylight) : 0);
    wind_sum += wind[h];
  }
  for (int h = 0; h < 24; ++h) {
    if (high > low) t[h] = day.t_min + (day.t_max - day.t_min) * (t[h] - low) / (high - low);
    es[h] = svp(t[h]);
  }
  const double level = held_level(es, day.ea);
  const double pressure = 101.3 * std::pow((293 - 0.0065 * place.elevation_m) / 293, 5.26);
  const double gamma = 0.665e-3 * pressure;
  const double rso = (0.75 + 2e-5 * place.elevation_m) * sun.ra_total;
  const double fcd = std::clamp(1.35 * std::clamp(day.rs / rso, 0.3, 1.0) - 0.35, 0.05, 1.0);
  double total = 0;
  for (int h = 0; h < 24; ++h) {
    const double rs = day.rs * sun.ra[h] / sun.ra_total, u2 = day.u2 * wind[h] * 24 / wind_sum;
    const double ea = std::min(es[h], level);
    const double rnl = 2.042e-10 * fcd * (0.34 - 0.14 * std::sqrt(ea)) * std::pow(t[h] + 273.16, 4);
    const double rn = 0.77 * rs - rnl, g = (rs > 0 ? 0.1 : 0.5) * rn, cd = rs > 0 ? 0.24 : 0.96;
    const double delta = 4098 * svp(t[h]) / ((t[h] + 237.3) * (t[h] + 237.3));
    share[h] = std::max(0.0, (0.408 * delta * (rn - g) + gamma * 37 / (t[h] + 273) * u2 * (es[h] - ea)) /
                                 (delta + gamma * (1 + cd * u2)));
    total += share[h];
  }
  for (int h = 0; h < 24; ++h)
    share[h] = total > 0 ? share[h] / total : day.rs > 0 ? sun.ra[h] / sun.ra_total : 1.0 / 24;
  return share;
}

void through_hours(const std::array<double, 24>& share, const SunDay& sun, const HeatBed& bed,
                   HeatState& state) {
  const double b = (std::log(1500.0) - std::log(33.0)) / (std::log(bed.fc) - std::log(bed.wp));
  const double a = std::exp(std::log(33.0) + b * std::log(bed.fc));
  int dawn = 0;
  while (dawn < 24 && !(sun.ra[dawn] > 0)) ++dawn;
  if (dawn == 24) dawn = 6;
  state.droop_hours = 0;
  state.hangs_beyond = false;
  for (int step = 0; step < 24; ++step) {
    const int h = (dawn + step) % 24;
    const double drawn = share[h] * bed.total, demand = drawn * (sun.ra[h] > 0 ? bed.sunlit : 1);
    const double theta = bed.fc - state.dr / bed.taw * (bed.fc - bed.wp);
    double supply = 0;
    if (theta > 0) {
      const double psi = -a * std::pow(theta, -b) / 1000;
      const double drop = psi - bed.turgor_loss;
      if (drop > 0) supply = drop / (bed.plant + bed.soil * psi / -0.033);
    }
    state.deficit = supply > 0 ? std::clamp(state.deficit + demand - supply, 0.0, 0.08) : 0.08;
    if (state.deficit > 0) {
      ++state.droop_hours;
      if (state.dr > bed.bearable * bed.raw) state.hangs_beyond = true;
    }
    if (state.dr >= bed.taw) continue;
    const double unstressed = std::min(drawn, std::max(bed.raw - state.dr, 0.0));
    if (unstressed == drawn)
      state.dr += drawn;
    else
      state.dr = bed.taw - (bed.taw - std::max(state.dr, bed.raw)) *
                               std::exp(-(drawn - unstressed) / (bed.taw - bed.raw));
  }
}

}  // namespace plain
