// Reference evapotranspiration, batch against plain. Prints ratios inside this one run and fails when the
// batch did not run as vector code.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <random>
#include <vector>

#include <benchmark/benchmark.h>

#include "noonleaf/atmosphere/instruction_set.hpp"
#include "noonleaf/atmosphere/vapour_batch.hpp"
#include "noonleaf/reference/daily_batch.hpp"
#include "noonleaf/reference/hourly_batch.hpp"

#include "bench/ratios.hpp"
#include "bench/reference_plain.hpp"
#include "bench/reference_probe.hpp"

namespace {

using namespace std::chrono;

constexpr std::size_t site_count = 100;
constexpr sys_days first_day{2000y / January / 1};
constexpr std::size_t day_count =
    static_cast<std::size_t>((sys_days{2027y / January / 1} - first_day).count());

/// 100 sites with 27 years of plausible days, column by column in memory, one site after the other.
struct DailyData {
  std::vector<noonleaf::Location> sites;
  std::vector<double> t_max_c, t_min_c, ea_kpa, rs_mj_m2_d, u2_m_s, et0_mm_d;
  std::vector<std::int16_t> day_of_year;
  std::vector<sys_days> days;

  DailyData() {
    std::mt19937_64 random(20240706);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (std::size_t i = 0; i < day_count; ++i) {
      days.push_back(first_day + std::chrono::days{i});
      const year_month_day date{days.back()};
      day_of_year.push_back(
          static_cast<std::int16_t>((days.back() - sys_days{date.year() / January / 1}).count() + 1));
    }
    for (std::size_t s = 0; s < site_count; ++s) {
      sites.push_back({-60.0 + 120.0 * unit(random), 0.0, 2500.0 * unit(random)});
      for (std::size_t i = 0; i < day_count; ++i) {
        const double t_min = -10.0 + 30.0 * unit(random);
        t_min_c.push_back(t_min);
        t_max_c.push_back(t_min + 2.0 + 18.0 * unit(random));
        ea_kpa.push_back(0.2 + 2.5 * unit(random));
        rs_mj_m2_d.push_back(1.0 + 29.0 * unit(random));
        u2_m_s.push_back(0.2 + 6.0 * unit(random));
      }
    }
    et0_mm_d.resize(site_count * day_count);
  }

  plain::Days plain_site(std::size_t s) const {
    const std::size_t at = s * day_count;
    return {&t_max_c[at], &t_min_c[at], &ea_kpa[at], &rs_mj_m2_d[at], &u2_m_s[at], day_of_year.data()};
  }

  noonleaf::DailyColumns columns(std::size_t s) const {
    const std::size_t at = s * day_count;
    return {.day = {.first = first_day},
            .t_max_c = {&t_max_c[at]},
            .t_min_c = {&t_min_c[at]},
            .ea_kpa = {&ea_kpa[at]},
            .rs_mj_m2_d = {&rs_mj_m2_d[at]},
            .u2_m_s = {&u2_m_s[at]}};
  }
};

DailyData& daily_data() {
  static DailyData data;
  return data;
}

void count_items(benchmark::State& state, std::size_t items_per_iteration) {
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(items_per_iteration));
}

void count_days(benchmark::State& state) { count_items(state, site_count * day_count); }

void plain_daily(benchmark::State& state) {
  DailyData& data = daily_data();
  for (auto _ : state) {
    for (std::size_t s = 0; s < site_count; ++s) {
      plain::daily_et0(data.sites[s].latitude_deg, data.sites[s].elevation_m, data.plain_site(s), day_count,
                       &data.et0_mm_d[s * day_count]);
    }
    benchmark::ClobberMemory();
  }
  count_days(state);
}

void plain_daily_tables_ready(benchmark::State& state) {
  DailyData& data = daily_data();
  std::vector<double> tables(site_count * 366);
  for (std::size_t s = 0; s < site_count; ++s) {
    plain::radiation_table(data.sites[s].latitude_deg, &tables[s * 366]);
  }
  for (auto _ : state) {
    for (std::size_t s = 0; s < site_count; ++s) {
      plain::daily_et0_with_table(&tables[s * 366], data.sites[s].elevation_m, data.plain_site(s), day_count,
                                  &data.et0_mm_d[s * day_count]);
    }
    benchmark::ClobberMemory();
  }
  count_days(state);
}

void batch_daily(benchmark::State& state) {
  DailyData& data = daily_data();
  const noonleaf::StationColumns columns{data.columns(0), day_count, day_count};
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        noonleaf::daily_et0_mm_d(data.sites, columns, day_count, {data.et0_mm_d.data()}));
    benchmark::ClobberMemory();
  }
  count_days(state);
}

void batch_daily_tables_ready(benchmark::State& state) {
  DailyData& data = daily_data();
  const noonleaf::SunYear sun = noonleaf::sun_year();
  std::vector<noonleaf::DailySite> sites;
  for (const noonleaf::Location& site : data.sites) sites.push_back(noonleaf::daily_site(site, sun));
  for (auto _ : state) {
    for (std::size_t s = 0; s < site_count; ++s) {
      benchmark::DoNotOptimize(
          noonleaf::daily_et0_mm_d(sites[s], data.columns(s), day_count, {&data.et0_mm_d[s * day_count]}));
    }
    benchmark::ClobberMemory();
  }
  count_days(state);
}

/// One site over and over: 27 years that stay in the second cache, so that the arithmetic alone is seen.
void batch_daily_one_site(benchmark::State& state) {
  DailyData& data = daily_data();
  const noonleaf::DailySite site = noonleaf::daily_site(data.sites[0]);
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        noonleaf::daily_et0_mm_d(site, data.columns(0), day_count, {data.et0_mm_d.data()}));
    benchmark::ClobberMemory();
  }
  count_items(state, day_count);
}

void batch_daily_date_column(benchmark::State& state) {
  DailyData& data = daily_data();
  const noonleaf::DailySite site = noonleaf::daily_site(data.sites[0]);
  for (auto _ : state) {
    for (std::size_t s = 0; s < site_count; ++s) {
      noonleaf::DailyColumns columns = data.columns(s);
      columns.day.column = data.days.data();
      benchmark::DoNotOptimize(
          noonleaf::daily_et0_mm_d(site, columns, day_count, {&data.et0_mm_d[s * day_count]}));
    }
    benchmark::ClobberMemory();
  }
  count_days(state);
}

void batch_tables(benchmark::State& state) {
  DailyData& data = daily_data();
  for (auto _ : state) {
    const noonleaf::SunYear sun = noonleaf::sun_year();
    for (const noonleaf::Location& site : data.sites) {
      benchmark::DoNotOptimize(noonleaf::daily_site(site, sun));
    }
  }
  count_days(state);
}

constexpr std::size_t hourly_site_count = 10;
constexpr std::size_t hour_count = 24 * day_count;

/// 10 sites with 27 years of plausible hours.
struct HourlyData {
  std::vector<noonleaf::Location> sites;
  std::vector<double> t_c, ea_kpa, rs_mj_m2_h, u2_m_s, et0_mm_h, middle_h;
  std::vector<std::int16_t> day_of_year;

  HourlyData() {
    std::mt19937_64 random(20240707);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (std::size_t i = 0; i < hour_count; ++i) {
      day_of_year.push_back(daily_data().day_of_year[i / 24]);
      middle_h.push_back(static_cast<double>(i % 24) + 0.5);
    }
    for (std::size_t s = 0; s < hourly_site_count; ++s) {
      sites.push_back({-60.0 + 120.0 * unit(random), 0.0, 2500.0 * unit(random)});
      for (std::size_t i = 0; i < hour_count; ++i) {
        t_c.push_back(-10.0 + 45.0 * unit(random));
        ea_kpa.push_back(0.2 + 2.5 * unit(random));
        rs_mj_m2_h.push_back(i % 24 > 6 && i % 24 < 18 ? 3.5 * unit(random) : 0.0);
        u2_m_s.push_back(0.2 + 6.0 * unit(random));
      }
    }
    et0_mm_h.resize(hourly_site_count * hour_count);
  }
};

HourlyData& hourly_data() {
  static HourlyData data;
  return data;
}

void count_hours(benchmark::State& state) { count_items(state, hourly_site_count * hour_count); }

void plain_hourly(benchmark::State& state) {
  HourlyData& data = hourly_data();
  for (auto _ : state) {
    for (std::size_t s = 0; s < hourly_site_count; ++s) {
      const std::size_t at = s * hour_count;
      plain::hourly_et0(data.sites[s].latitude_deg, data.sites[s].longitude_deg, data.sites[s].elevation_m,
                        {&data.t_c[at], &data.ea_kpa[at], &data.rs_mj_m2_h[at], &data.u2_m_s[at],
                         data.day_of_year.data(), data.middle_h.data()},
                        hour_count, &data.et0_mm_h[at]);
    }
    benchmark::ClobberMemory();
  }
  count_hours(state);
}

void batch_hourly(benchmark::State& state) {
  HourlyData& data = hourly_data();
  for (auto _ : state) {
    for (std::size_t s = 0; s < hourly_site_count; ++s) {
      const std::size_t at = s * hour_count;
      const noonleaf::HourlySite site = noonleaf::hourly_site(data.sites[s], first_day);
      benchmark::DoNotOptimize(noonleaf::hourly_et0_mm_h(site,
                                                         {.first_begin = first_day,
                                                          .t_c = {&data.t_c[at]},
                                                          .ea_kpa = {&data.ea_kpa[at]},
                                                          .rs_mj_m2_h = {&data.rs_mj_m2_h[at]},
                                                          .u2_m_s = {&data.u2_m_s[at]}},
                                                         hour_count, {&data.et0_mm_h[at]}));
    }
    benchmark::ClobberMemory();
  }
  count_hours(state);
}

void batch_hourly_one_year(benchmark::State& state) {
  HourlyData& data = hourly_data();
  for (auto _ : state) {
    const noonleaf::HourlySite site = noonleaf::hourly_site(data.sites[0], first_day);
    benchmark::DoNotOptimize(noonleaf::hourly_et0_mm_h(site,
                                                       {.first_begin = first_day,
                                                        .t_c = {data.t_c.data()},
                                                        .ea_kpa = {data.ea_kpa.data()},
                                                        .rs_mj_m2_h = {data.rs_mj_m2_h.data()},
                                                        .u2_m_s = {data.u2_m_s.data()}},
                                                       8784, {data.et0_mm_h.data()}));
    benchmark::ClobberMemory();
  }
  count_items(state, 8784);
}

/// The greatest difference between the batch and the plain loop: both must have done the same work.
double greatest_difference_daily() {
  DailyData& data = daily_data();
  std::vector<double> plain_et0(day_count), batch_et0(day_count);
  double greatest = 0.0;
  for (std::size_t s = 0; s < site_count; ++s) {
    plain::daily_et0(data.sites[s].latitude_deg, data.sites[s].elevation_m, data.plain_site(s), day_count,
                     plain_et0.data());
    noonleaf::daily_et0_mm_d(noonleaf::daily_site(data.sites[s]), data.columns(s), day_count,
                             {batch_et0.data()});
    for (std::size_t i = 0; i < day_count; ++i) {
      greatest = std::max(greatest, std::abs(plain_et0[i] - batch_et0[i]));
    }
  }
  return greatest;
}

double greatest_difference_hourly() {
  HourlyData& data = hourly_data();
  std::vector<double> plain_et0(hour_count), batch_et0(hour_count);
  plain::hourly_et0(data.sites[0].latitude_deg, data.sites[0].longitude_deg, data.sites[0].elevation_m,
                    {data.t_c.data(), data.ea_kpa.data(), data.rs_mj_m2_h.data(), data.u2_m_s.data(),
                     data.day_of_year.data(), data.middle_h.data()},
                    hour_count, plain_et0.data());
  noonleaf::hourly_et0_mm_h(noonleaf::hourly_site(data.sites[0], first_day),
                            {.first_begin = first_day,
                             .t_c = {data.t_c.data()},
                             .ea_kpa = {data.ea_kpa.data()},
                             .rs_mj_m2_h = {data.rs_mj_m2_h.data()},
                             .u2_m_s = {data.u2_m_s.data()}},
                            hour_count, {batch_et0.data()});
  double greatest = 0.0;
  for (std::size_t i = 0; i < hour_count; ++i)
    greatest = std::max(greatest, std::abs(plain_et0[i] - batch_et0[i]));
  return greatest;
}

/// One elementary operation over a block that stays in the innermost cache.
template <void (*operation)(const double*, std::size_t, double*)>
void elementary(benchmark::State& state) {
  std::vector<double> x(1024), y(1024);
  for (std::size_t i = 0; i < x.size(); ++i) x[i] = 0.5 + 0.002 * static_cast<double>(i);
  for (auto _ : state) {
    operation(x.data(), x.size(), y.data());
    benchmark::ClobberMemory();
  }
  count_items(state, x.size());
}

BENCHMARK(plain_daily)->Unit(benchmark::kMillisecond);
BENCHMARK(plain_daily_tables_ready)->Unit(benchmark::kMillisecond);
BENCHMARK(batch_daily)->Unit(benchmark::kMillisecond);
BENCHMARK(batch_daily_tables_ready)->Unit(benchmark::kMillisecond);
BENCHMARK(batch_daily_date_column)->Unit(benchmark::kMillisecond);
BENCHMARK(plain_hourly)->Unit(benchmark::kMillisecond);
BENCHMARK(batch_hourly)->Unit(benchmark::kMillisecond);
BENCHMARK(batch_hourly_one_year)->Unit(benchmark::kMillisecond);
BENCHMARK(batch_daily_one_site)->Unit(benchmark::kMillisecond);
BENCHMARK(batch_tables)->Unit(benchmark::kMillisecond);
BENCHMARK_TEMPLATE(elementary, probe::exponentials)->Name("vector_exp");
BENCHMARK_TEMPLATE(elementary, probe::divisions)->Name("vector_division");
BENCHMARK_TEMPLATE(elementary, probe::square_roots)->Name("vector_square_root");
BENCHMARK_TEMPLATE(elementary, probe::plain_exponentials)->Name("plain_exp");

void print_ratio(const char* what, double numerator, double denominator) {
  if (numerator > 0.0 && denominator > 0.0) std::printf("%-66s %7.2f\n", what, numerator / denominator);
}

}  // namespace

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  std::printf("%s\nbatch kernels: %s\n", bench::machine().c_str(),
              std::string(noonleaf::batch_instruction_set()).c_str());
  const bool rows_only = bench::names_rows_only(argc, argv);
  bench::Keeper keeper(rows_only);
  keeper.run();
  const auto ns = [&](const char* name) { return keeper.median_ns(name); };

  std::printf("\nratios of this run (medians of processor time per row)\n");
  print_ratio("daily, tables built, against plain", ns("plain_daily"), ns("batch_daily"));
  print_ratio("daily, tables ready, against plain", ns("plain_daily"), ns("batch_daily_tables_ready"));
  print_ratio("daily, tables ready, against plain with a table of Ra too", ns("plain_daily_tables_ready"),
              ns("batch_daily_tables_ready"));
  print_ratio("daily with a column of dates, against plain", ns("plain_daily"),
              ns("batch_daily_date_column"));
  const double bound = 3 * ns("vector_exp") + ns("vector_square_root") + 4 * ns("vector_division");
  print_ratio("daily, tables ready, over 3 exp + 1 sqrt + 4 divisions", ns("batch_daily_tables_ready"),
              bound);
  print_ratio("the same, one site's 27 years in cache", ns("batch_daily_one_site"), bound);
  print_ratio("hourly, 27 years, tables built, against plain", ns("plain_hourly"), ns("batch_hourly"));
  print_ratio("hourly, one year, tables built, against plain", ns("plain_hourly"),
              ns("batch_hourly_one_year"));
  print_ratio("exp, vector against C library", ns("plain_exp"), ns("vector_exp"));

  if (rows_only) return 0;
  const double daily_difference = greatest_difference_daily(),
               hourly_difference = greatest_difference_hourly();
  std::printf("greatest difference from plain: daily %.1e mm/d, hourly %.1e mm/h\n", daily_difference,
              hourly_difference);
  if (!(daily_difference <= 1e-12) || !(hourly_difference <= 1e-12)) {
    std::printf("FAILED: batch and plain differ by more than 1e-12\n");
    return 1;
  }
  if (noonleaf::batch_lanes() > 2 && ns("vector_exp") > 0.0 && !(ns("plain_exp") > 2.5 * ns("vector_exp"))) {
    std::printf("FAILED: the kernels did not run as vector code\n");
    return 1;
  }
  return 0;
}
