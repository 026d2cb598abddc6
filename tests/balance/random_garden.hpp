#pragma once

#include <chrono>
#include <cstdint>
#include <vector>

#include "noonleaf/balance/run.hpp"

/// Deterministic numbers for invented weather: splitmix64 (Steele et al. 2014), the same on every machine.
class Draws {
 public:
  explicit Draws(std::uint64_t seed) : state_(seed) {}
  double uniform() {
    state_ += 0x9E3779B97F4A7C15U;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return static_cast<double>((z ^ (z >> 31U)) >> 11U) * 0x1.0p-53;
  }
  double between(double low, double high) { return low + (high - low) * uniform(); }

 private:
  std::uint64_t state_;
};

/// A year of invented days: dry spells, storms, light rain, morning and evening irrigation.
inline std::vector<noonleaf::BalanceDay> random_days(Draws& draws, std::chrono::year_month_day first, int n) {
  std::vector<noonleaf::BalanceDay> days;
  for (int i = 0; i < n; ++i) {
    noonleaf::BalanceDay day;
    day.date = std::chrono::sys_days{first} + std::chrono::days{i};
    day.et0_mm_d = draws.between(0, 9);
    day.u2_m_s = draws.between(0.2, 8);
    day.rh_min_pct = draws.between(5, 95);
    if (draws.uniform() < 0.15) day.rain_mm = draws.between(0, 8);
    if (draws.uniform() < 0.02) day.rain_mm = draws.between(20, 120);
    if (draws.uniform() < 0.05) day.evening_rain_mm = draws.between(0, 30);
    if (draws.uniform() < 0.12) day.irrigation_mm = draws.between(0, 30);
    if (draws.uniform() < 0.08) day.evening_irrigation_mm = draws.between(0, 30);
    days.push_back(day);
  }
  return days;
}
