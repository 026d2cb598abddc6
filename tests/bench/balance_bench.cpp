// The water balance of 10,000 members x 8 plantings x 365 days: batch against a plain loop and against the
// scalar door that explains every number. Prints ratios inside this one run; fails when batch and plain do
// not agree.
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <random>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>

#include "noonleaf/atmosphere/instruction_set.hpp"
#include "noonleaf/balance/ensemble.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/crop/crop_table.hpp"

#include "bench/balance_plain.hpp"
#include "bench/ratios.hpp"

namespace {

using namespace std::chrono_literals;

constexpr std::size_t member_count = 10000, day_count = 365;
constexpr double profile_m = 1.5;
constexpr auto first_day = 2023y / 1 / 1;

/// Weather by member, one day after the other.
struct Data {
  std::vector<double> fc, wp, rew, depleted;
  std::vector<double> by_member[4];
  std::vector<std::vector<noonleaf::GrowthDay>> plantings;
  std::vector<std::vector<plain::Plant>> plants;

  Data() {
    std::mt19937_64 random(7);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (std::size_t m = 0; m < member_count; ++m) {
      wp.push_back(0.05 + 0.15 * unit(random));
      fc.push_back(wp.back() + 0.08 + 0.1 * unit(random));
      rew.push_back(2 + 2 * unit(random));
      depleted.push_back(unit(random));
    }
    for (auto& series : by_member) series.resize(member_count * day_count);
    for (std::size_t m = 0; m < member_count; ++m)
      for (std::size_t day = 0; day < day_count; ++day) {
        const double values[4] = {9 * unit(random), unit(random) < 0.15 ? 30 * unit(random) : 0.0,
                                  0.5 + 5 * unit(random), 15 + 70 * unit(random)};
        for (int series = 0; series < 4; ++series) by_member[series][m * day_count + day] = values[series];
      }
    for (const char* crop :
         {"tomato", "lettuce", "carrot", "maize_sweet", "strawberry", "bean_green", "potato", "turf_cool"})
      add(crop);
  }

  void add(const char* crop) {
    const noonleaf::Planting planting{.start = 2023y / 4 / 1};
    plantings.push_back(growth_days(noonleaf::find_crop(crop), planting, first_day, day_count, {}));
    std::vector<plain::Plant> days;
    for (const auto& day : plantings.back())
      days.push_back({day.root_depth_m, day.kcb, day.height_m, std::pow(day.height_m / 3, 0.3),
                      day.cover_frac, day.p_frac});
    plants.push_back(std::move(days));
  }

  std::vector<noonleaf::EnsembleResult> batch() const {
    const auto series = [&](int one) {
      return noonleaf::MemberSeries{by_member[one].data(), 1, static_cast<std::ptrdiff_t>(day_count)};
    };
    noonleaf::EnsembleWatering rule;
    rule.refill_beyond_raw_frac = 1;
    std::vector<noonleaf::EnsemblePlanting> all;
    for (const auto& growth : plantings) all.push_back({growth, {}, rule, {}});
    return noonleaf::run_ensemble({fc, wp, rew, depleted, 0.1, profile_m},
                                  {series(0), series(1), series(2), series(3)}, all);
  }

  plain::Totals plain_member(std::size_t planting, std::size_t m, plain::HeightPower power) const {
    const std::size_t at = m * day_count;
    return plain::run({fc[m], wp[m], rew[m], depleted[m], &by_member[0][at], &by_member[1][at],
                       &by_member[2][at], &by_member[3][at]},
                      plants[planting], profile_m, power);
  }
};

const Data& data() {
  static const Data all;
  return all;
}

void count(benchmark::State& state, std::size_t members) {
  state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations() * members * 8 * day_count));
}

template <plain::HeightPower power>
void plain_members(benchmark::State& state) {
  const Data& all = data();
  for (auto _ : state)
    for (std::size_t planting = 0; planting < 8; ++planting)
      for (std::size_t m = 0; m < member_count; ++m)
        benchmark::DoNotOptimize(all.plain_member(planting, m, power));
  count(state, member_count);
}

void batch_members(benchmark::State& state) {
  const Data& all = data();
  for (auto _ : state) benchmark::DoNotOptimize(all.batch());
  count(state, member_count);
}

/// A few members only: every day with all its numbers, guards and sums.
void explained_members(benchmark::State& state) {
  const Data& all = data();
  constexpr std::size_t few = 20;
  for (auto _ : state)
    for (std::size_t planting = 0; planting < 8; ++planting)
      for (std::size_t m = 0; m < few; ++m) {
        const noonleaf::SoilWater soil{
            .field_capacity_m3_m3 = all.fc[m], .wilting_point_m3_m3 = all.wp[m], .rew_mm = all.rew[m]};
        const auto& growth = all.plantings[planting];
        auto now = noonleaf::initial_state(soil, growth[0].root_depth_m, profile_m, all.depleted[m]);
        for (std::size_t day = 0; day < day_count; ++day) {
          const std::size_t at = m * day_count + day;
          const noonleaf::BalanceDay weather{.et0_mm_d = all.by_member[0][at],
                                             .u2_m_s = all.by_member[2][at],
                                             .rh_min_pct = all.by_member[3][at],
                                             .rain_mm = all.by_member[1][at]};
          now = noonleaf::daily_step(now, weather, growth[day], soil, {}).end;
        }
        benchmark::DoNotOptimize(now);
      }
  count(state, few);
}

BENCHMARK_TEMPLATE(plain_members, plain::HeightPower::each_day)->Name("plain")->Unit(benchmark::kMillisecond);
BENCHMARK_TEMPLATE(plain_members, plain::HeightPower::beforehand)
    ->Name("plain_power_beforehand")
    ->Unit(benchmark::kMillisecond);
BENCHMARK(batch_members)->Unit(benchmark::kMillisecond);
BENCHMARK(explained_members)->Unit(benchmark::kMillisecond);

/// Greatest difference over all members of all plantings, and whether every member was watered equally often.
bool agree() {
  double worst = 0;
  bool same_days = true;
  const auto batches = data().batch();
  for (std::size_t planting = 0; planting < 8; ++planting) {
    const auto& batch = batches[planting];
    for (std::size_t m = 0; m < member_count; ++m) {
      const auto one = data().plain_member(planting, m, plain::HeightPower::beforehand);
      worst = std::max({worst, std::abs(one.dr - batch.dr_mm[m]), std::abs(one.stress - batch.stress_mm[m]),
                        std::abs(one.drainage - batch.drainage_mm[m])});
      same_days = same_days && batch.refills[m] == one.refills;
    }
  }
  std::printf("greatest difference of Dr, stress, drainage: %.1e mm; waterings the same: %s\n", worst,
              same_days ? "yes" : "no");
  return worst < 1e-9 && same_days;
}

}  // namespace

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  std::printf("%s\nbatch kernels: %s\n", bench::machine().c_str(),
              std::string(noonleaf::batch_instruction_set()).c_str());
  const bool rows_only = bench::names_rows_only(argc, argv);
  bench::Keeper keeper(rows_only);
  keeper.run();
  const double as_it_stands = keeper.median_ns("plain"),
               beforehand = keeper.median_ns("plain_power_beforehand"),
               batch = keeper.median_ns("batch_members"), explained = keeper.median_ns("explained_members");
  std::printf("\nns per member, planting and day: batch %.2f\n", batch);
  const auto ratio = [&](const char* what, double ns) {
    if (batch > 0 && ns > 0) std::printf("batch against %-62s %6.1f ns %6.1f\n", what, ns, ns / batch);
  };
  ratio("the scalar door (daily_step), member by member", explained);
  ratio("a plain loop, equations as they stand", as_it_stands);
  ratio("a plain loop with the power of the height worked out beforehand", beforehand);
  return rows_only || agree() ? 0 : 1;
}
