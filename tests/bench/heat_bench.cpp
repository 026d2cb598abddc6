// Demand, supply and droop by the hour: 10,000 members x 8 beds x 14 days, batch against a plain loop and
// against the scalar doors that explain every hour. Prints ratios inside this one run; fails when batch and
// plain do not agree.
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>

#include "noonleaf/atmosphere/instruction_set.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/balance/draws.hpp"
#include "noonleaf/heat/demand.hpp"
#include "noonleaf/heat/hydraulics.hpp"
#include "noonleaf/heat/wilt_members.hpp"

#include "bench/heat_plain.hpp"
#include "bench/ratios.hpp"

namespace {

using namespace std::chrono_literals;

constexpr std::size_t member_count = 10000, bed_count = 8, day_count = 14;
constexpr auto first_day = 2025y / 7 / 10;

struct Columns {
  std::vector<double> t_max, t_min, ea, rs, u2;
};

/// Weather by day and member, beds by member.
struct Data {
  noonleaf::Location place{.latitude_deg = 46.07, .longitude_deg = -118.33, .elevation_m = 290};
  std::vector<Columns> days{day_count + 1};
  std::vector<double> fc, wp;
  std::vector<double> taw[bed_count], raw[bed_count], dr[bed_count], total[bed_count];
  std::vector<noonleaf::WiltPlanting> beds{bed_count};

  Data() {
    for (std::uint32_t m = 0; m < member_count; ++m) {
      const auto between = [&](std::uint32_t what, std::size_t where, double low, double high) {
        return low +
               (high - low) *
                   noonleaf::uniform_draw(
                       {.seed = 1, .member = m, .what = what, .place = static_cast<std::uint32_t>(where)});
      };
      wp.push_back(between(1, 0, 0.06, 0.16));
      fc.push_back(wp.back() + between(2, 0, 0.08, 0.18));
      for (std::size_t day = 0; day <= day_count; ++day) {
        Columns& all = days[day];
        all.t_max.push_back(between(3, day, 20, 40));
        all.t_min.push_back(all.t_max.back() - between(4, day, 6, 18));
        all.ea.push_back(between(5, day, 0.6, 1.1) * 0.6108 *
                         std::exp(17.27 * all.t_min.back() / (all.t_min.back() + 237.3)));
        all.rs.push_back(between(6, day, 12, 30));
        all.u2.push_back(between(7, day, 0.5, 5));
      }
      for (std::size_t bed = 0; bed < bed_count; ++bed) {
        taw[bed].push_back(between(8, bed, 30, 120));
        raw[bed].push_back(0.45 * taw[bed].back());
        dr[bed].push_back(between(9, bed, 0, 0.6) * taw[bed].back());
        total[bed].push_back(between(10, bed, 2, 8));
      }
    }
    for (std::size_t bed = 0; bed < bed_count; ++bed) {
      beds[bed].p_frac = 0.3 + 0.03 * static_cast<double>(bed);
      beds[bed].turgor_loss_mpa = -1.0;
      beds[bed].sunlit_factor = bed % 2 == 0 ? 1.0 : 1.2;
      beds[bed].root_depth_m = bed == 3 ? 0.2 : 0.6;
    }
  }

  noonleaf::DaySite site(std::size_t day) const {
    return {std::chrono::sys_days(first_day) + std::chrono::days(static_cast<int>(day)), place, -7};
  }
};

const Data& data() {
  static const Data all;
  return all;
}

/// Depletion and deficit of all members of all beds after the last day, and the hours of droop on the way.
struct Result {
  std::vector<double> dr[bed_count], deficit[bed_count];
  double droop_hours = 0;
};

Result batch() {
  const Data& all = data();
  Result out;
  for (std::size_t bed = 0; bed < bed_count; ++bed) {
    out.dr[bed] = all.dr[bed];
    out.deficit[bed].assign(member_count, 0);
  }
  for (std::size_t day = 0; day < day_count; ++day) {
    const Columns& now = all.days[day];
    const Columns& before = all.days[day == 0 ? 0 : day - 1];
    std::vector<noonleaf::PlantingMembers> plantings;
    for (std::size_t bed = 0; bed < bed_count; ++bed)
      plantings.push_back({all.beds[bed], all.fc, all.wp, all.taw[bed], all.raw[bed], out.dr[bed],
                           all.total[bed], out.deficit[bed]});
    auto results = noonleaf::wilt_members(
        all.site(day), {now.t_max, now.t_min, now.ea, now.rs, now.u2, before.t_max, all.days[day + 1].t_min},
        plantings);
    for (std::size_t bed = 0; bed < bed_count; ++bed) {
      for (const double hours : results[bed].droop_hours) out.droop_hours += hours;
      out.dr[bed] = std::move(results[bed].depletion_mm);
      out.deficit[bed] = std::move(results[bed].leaf_deficit_mm);
    }
  }
  return out;
}

plain::HeatDay plain_day(std::size_t day, std::size_t m) {
  const Data& all = data();
  const Columns& now = all.days[day];
  return {noonleaf::day_of_year(all.site(day).date),
          now.t_max[m],
          now.t_min[m],
          all.days[day == 0 ? 0 : day - 1].t_max[m],
          all.days[day + 1].t_min[m],
          now.ea[m],
          now.rs[m],
          now.u2[m]};
}

plain::HeatPlace plain_place() {
  return {data().place.latitude_deg * 3.14159265358979323846 / 180, data().place.longitude_deg,
          data().place.elevation_m, -7};
}

plain::HeatBed plain_bed(std::size_t bed) {
  const noonleaf::WiltPlanting& shared = data().beds[bed];
  const auto path = noonleaf::water_path({shared.p_frac, shared.turgor_loss_mpa});
  return {path.turgor_loss_mpa,
          path.plant_mpa_h_mm,
          path.soil_mpa_h_mm,
          shared.sunlit_factor,
          shared.root_depth_m < 0.3 ? 0.5 + 0.5 * (shared.root_depth_m - 0.15) / 0.15 : 1.0,
          0,
          0,
          0,
          0,
          0};
}

enum class Sun { each_member, beforehand };

template <Sun sun_when>
Result plain_loop() {
  const Data& all = data();
  const plain::HeatPlace place = plain_place();
  std::vector<plain::HeatBed> beds;
  for (std::size_t bed = 0; bed < bed_count; ++bed) beds.push_back(plain_bed(bed));
  std::vector<plain::SunDay> suns;
  for (std::size_t day = 0; day < day_count; ++day)
    suns.push_back(plain::sun_day(place, noonleaf::day_of_year(all.site(day).date)));
  Result out;
  for (std::size_t m = 0; m < member_count; ++m) {
    plain::HeatState states[bed_count];
    for (std::size_t bed = 0; bed < bed_count; ++bed) states[bed] = {all.dr[bed][m], 0, 0, false};
    for (std::size_t day = 0; day < day_count; ++day) {
      const plain::HeatDay weather = plain_day(day, m);
      const plain::SunDay sun =
          sun_when == Sun::beforehand ? suns[day] : plain::sun_day(place, weather.day_of_year);
      const auto share = plain::shares(place, sun, weather);
      for (std::size_t bed = 0; bed < bed_count; ++bed) {
        plain::HeatBed own = beds[bed];
        own.fc = all.fc[m];
        own.wp = all.wp[m];
        own.taw = all.taw[bed][m];
        own.raw = all.raw[bed][m];
        own.total = all.total[bed][m];
        plain::through_hours(share, sun, own, states[bed]);
        out.droop_hours += states[bed].droop_hours;
      }
    }
    for (std::size_t bed = 0; bed < bed_count; ++bed) {
      out.dr[bed].push_back(states[bed].dr);
      out.deficit[bed].push_back(states[bed].deficit);
    }
  }
  return out;
}

void count(benchmark::State& state, std::size_t members) {
  state.SetItemsProcessed(
      static_cast<std::int64_t>(state.iterations() * members * bed_count * day_count * 24));
}

void batch_members(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(batch());
  count(state, member_count);
}

template <Sun sun>
void plain_members(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(plain_loop<sun>());
  count(state, member_count);
}

/// A few members only, through the doors that keep every hour with its numbers.
void explained_members(benchmark::State& state) {
  const Data& all = data();
  constexpr std::size_t few = 50;
  for (auto _ : state)
    for (std::size_t m = 0; m < few; ++m)
      for (std::size_t day = 0; day < day_count; ++day) {
        const plain::HeatDay weather = plain_day(day, m);
        const noonleaf::DailyShape shape{all.site(day),        weather.t_max,      weather.t_min,
                                         weather.ea,           weather.rs,         weather.u2,
                                         weather.t_max_before, weather.t_min_after};
        const auto hours = noonleaf::hours_of_day(shape).hours;
        const auto share = noonleaf::transpiration_share(hours, shape.site);
        for (std::size_t bed = 0; bed < bed_count; ++bed) {
          noonleaf::WiltPlanting planting = all.beds[bed];
          planting.soil = {.theta_33 = all.fc[m], .theta_1500 = all.wp[m]};
          planting.taw_mm = all.taw[bed][m];
          planting.raw_mm = all.raw[bed][m];
          planting.dr_mm = all.dr[bed][m];
          auto demand = share;
          for (double& hour : demand) hour *= all.total[bed][m];
          benchmark::DoNotOptimize(noonleaf::wilt_day(planting, hours, demand));
        }
      }
  count(state, few);
}

BENCHMARK_TEMPLATE(plain_members, Sun::each_member)->Name("plain")->Unit(benchmark::kMillisecond);
BENCHMARK_TEMPLATE(plain_members, Sun::beforehand)
    ->Name("plain_sun_beforehand")
    ->Unit(benchmark::kMillisecond);
BENCHMARK(batch_members)->Unit(benchmark::kMillisecond);
BENCHMARK(explained_members)->Unit(benchmark::kMillisecond);

bool agree() {
  const Result together = batch(), one_by_one = plain_loop<Sun::beforehand>();
  double worst = 0;
  for (std::size_t bed = 0; bed < bed_count; ++bed)
    for (std::size_t m = 0; m < member_count; ++m)
      worst = std::max({worst, std::abs(together.dr[bed][m] - one_by_one.dr[bed][m]),
                        std::abs(together.deficit[bed][m] - one_by_one.deficit[bed][m])});
  std::printf("greatest difference of Dr and leaf deficit: %.1e mm; hours of droop %.0f and %.0f\n", worst,
              together.droop_hours, one_by_one.droop_hours);
  return worst < 1e-9 && together.droop_hours == one_by_one.droop_hours;
}

}  // namespace

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  std::printf("%s\nbatch kernels: %s\n", bench::machine().c_str(),
              std::string(noonleaf::batch_instruction_set()).c_str());
  const bool rows_only = bench::names_rows_only(argc, argv);
  bench::Keeper keeper(rows_only);
  keeper.run();
  const double batch_ns = keeper.median_ns("batch_members");
  std::printf("\nns per member, bed and hour: batch %.2f\n", batch_ns);
  const auto ratio = [&](const char* what, const char* name) {
    const double ns = keeper.median_ns(name);
    if (batch_ns > 0 && ns > 0) std::printf("batch against %-58s %6.1f ns %6.1f\n", what, ns, ns / batch_ns);
  };
  ratio("the scalar doors, member by member", "explained_members");
  ratio("a plain loop, all equations for every member", "plain");
  ratio("a plain loop with the sun's geometry worked out beforehand", "plain_sun_beforehand");
  return rows_only || agree() ? 0 : 1;
}
