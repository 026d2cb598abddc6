#pragma once

#include <array>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <random>

#include "noonleaf/balance/initial_state.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/plan/week_problem.hpp"
#include "noonleaf/soil/texture.hpp"

/// How large a random problem is, and how tight.
struct RandomWeekSize {
  std::size_t beds = 2, days = 4, tail_days = 1, taps = 1, people = 2;
  std::size_t window_slots = 10;  ///< about as long as water may run on a day
};

/// Problems of invented beds: soil, crop, dryness, sprinkler, hours and presence by chance.
class RandomWeek {
 public:
  explicit RandomWeek(std::uint32_t seed) : random_(seed) {}

  noonleaf::WeekProblem problem(const RandomWeekSize& size) {
    noonleaf::WeekProblem problem;
    problem.plan_days = size.days;
    problem.all_days = size.days + size.tail_days;
    const std::size_t morning = 60 + whole(0, 30), late = noonleaf::evening_slot + whole(0, 6);
    for (std::size_t person = 0; person < size.people; ++person) {
      auto& days = problem.on_site.emplace_back();
      for (std::size_t day = 0; day < size.days; ++day) {
        noonleaf::DaySlots slots;
        if (chance(0.75)) fill(slots, morning + whole(0, 4), size.window_slots);
        if (chance(0.15)) fill(slots, late, size.window_slots / 2);
        days.push_back(slots);
      }
    }
    for (std::size_t bed = 0; bed < size.beds; ++bed)
      problem.beds.push_back(bed_problem(size, problem.all_days, morning, late));
    return problem;
  }

  double real(double low, double high) { return std::uniform_real_distribution<double>(low, high)(random_); }
  std::size_t whole(std::size_t low, std::size_t high) {
    return std::uniform_int_distribution<std::size_t>(low, high)(random_);
  }
  bool chance(double probability) { return real(0, 1) < probability; }

 private:
  static void fill(noonleaf::DaySlots& slots, std::size_t first, std::size_t count) {
    for (std::size_t slot = first; slot < first + count && slot < slots.size(); ++slot) slots.set(slot);
  }

  noonleaf::BedProblem bed_problem(const RandomWeekSize& size, std::size_t all_days, std::size_t morning,
                                   std::size_t late) {
    noonleaf::BedProblem bed;
    bed.tap = whole(0, size.taps - 1);
    bed.area_m2 = real(2, 20);
    bed.rate.rate_mm_h = real(15, 60);
    bed.rate.du_lq_frac = real(0.5, 1);
    bed.limits.longest_min = static_cast<double>(5 * whole(4, 10));
    for (std::size_t day = 0; day < size.days; ++day) {
      noonleaf::DaySlots water;
      if (chance(0.7)) fill(water, morning, size.window_slots + whole(0, 3));
      if (chance(0.2)) fill(water, late, size.window_slots / 2);
      bed.water_may_run.push_back(water);
      auto& discomfort = bed.discomfort.emplace_back();
      for (int& slot : discomfort) slot = static_cast<int>(whole(0, 50));
    }
    const bool in_cycles = chance(0.25);
    for (int minutes = 0; minutes <= static_cast<int>(bed.limits.longest_min); ++minutes) {
      noonleaf::RunShape shape;
      if (minutes > 0 && (minutes < 15 || minutes % 5 == 0)) {
        shape.minutes = minutes;
        shape.openings[0] = {0, minutes};
        if (in_cycles && minutes >= 20) {
          shape.n_openings = 2;
          const int first = (minutes + 1) / 2, again = (first + 10 + 4) / 5 * 5;
          shape.openings[0] = {0, first};
          shape.openings[1] = {again, again + minutes - first};
        }
      }
      bed.shapes.push_back(shape);
    }
    const std::size_t n_plantings = chance(0.2) ? 2 : 1;
    for (std::size_t planting = 0; planting < n_plantings; ++planting)
      bed.plantings.push_back(planting_problem(bed.area_m2 / static_cast<double>(n_plantings), all_days));
    return bed;
  }

  noonleaf::PlantingProblem planting_problem(double area_m2, std::size_t all_days) {
    constexpr std::array<std::string_view, 4> textures{"loamy_sand", "sandy_loam", "loam", "clay_loam"};
    noonleaf::PlantingProblem planting;
    planting.area_m2 = area_m2;
    planting.soil = noonleaf::soil_of(noonleaf::find_texture(textures[whole(0, 3)]));
    const bool seeds = chance(0.3);
    noonleaf::GrowthDay growth;
    growth.stage = seeds ? noonleaf::Stage::initial : noonleaf::Stage::mid_season;
    growth.basis = noonleaf::CropBasis::kc_curve;
    growth.kcb = seeds ? 0.15 : real(0.7, 1.15);
    growth.kc = growth.kcb + 0.1;
    growth.kc_max = 1.25;
    growth.height_m = seeds ? 0.05 : 0.4;
    growth.cover_frac = seeds ? 0.02 : real(0.4, 0.95);
    growth.root_depth_m = seeds ? 0.15 : real(0.2, 0.6);
    growth.p_frac = real(0.2, 0.5);
    const std::chrono::sys_days first = std::chrono::sys_days(std::chrono::year(2025) / 7 / 1);
    for (std::size_t day = 0; day < all_days; ++day) {
      noonleaf::BalanceDay weather;
      weather.date = first + std::chrono::days(static_cast<int>(day));
      weather.et0_mm_d = real(3, 9);
      growth.date = weather.date;
      planting.days.push_back(weather);
      planting.growth.push_back(growth);
      planting.needs.push_back(seeds ? noonleaf::PlantingNeed::seed_zone : noonleaf::PlantingNeed::root_zone);
    }
    planting.dawn = noonleaf::initial_state(planting.soil, growth.root_depth_m, growth.root_depth_m + 0.5,
                                            real(0.0, 0.6));
    return planting;
  }

  std::mt19937 random_;
};
