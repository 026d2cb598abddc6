// Daily reference evapotranspiration from 1 to 1,000,000 station-days: time and memory of a whole process
// that holds its columns, and time of the batch alone. Fails when a station-day of the largest batch takes
// twice as long as one of the thousandth part: the growth is linear.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <string>
#include <vector>

#include "noonleaf/reference/daily_batch.hpp"

#include "bench/child_process.hpp"
#include "bench/ratios.hpp"

namespace {

/// Columns of one station, a million days at most: weather that varies, results beside it.
struct Columns {
  std::vector<double> t_max_c, t_min_c, ea_kpa, rs_mj_m2_d, u2_m_s, et0_mm_d;

  explicit Columns(std::size_t rows) : et0_mm_d(rows) {
    for (std::size_t row = 0; row < rows; ++row) {
      const double part = static_cast<double>(row % 97) / 97;
      t_max_c.push_back(18 + 14 * part);
      t_min_c.push_back(6 + 9 * part);
      ea_kpa.push_back(0.8 + 0.7 * part);
      rs_mj_m2_d.push_back(10 + 15 * part);
      u2_m_s.push_back(1 + 2 * part);
    }
  }

  void run() {
    // A station's record is a century at most; longer columns are so many stations one after the other.
    constexpr std::size_t century_d = 36524;
    static const noonleaf::DailySite site =
        noonleaf::daily_site({.latitude_deg = 46, .longitude_deg = 0, .elevation_m = 290});
    for (std::size_t at = 0; at < et0_mm_d.size(); at += century_d) {
      const noonleaf::DailyColumns columns{.day = {.first = std::chrono::year{1925} / 1 / 1},
                                           .t_max_c = {t_max_c.data() + at},
                                           .t_min_c = {t_min_c.data() + at},
                                           .ea_kpa = {ea_kpa.data() + at},
                                           .rs_mj_m2_d = {rs_mj_m2_d.data() + at},
                                           .u2_m_s = {u2_m_s.data() + at}};
      noonleaf::daily_et0_mm_d(site, columns, std::min(century_d, et0_mm_d.size() - at),
                               {et0_mm_d.data() + at});
    }
  }
};

/// The best of many runs: what the work takes when nothing else disturbs it.
double nanoseconds_per_row(std::size_t rows) {
  using Clock = std::chrono::steady_clock;
  Columns columns(rows);
  columns.run();
  double best_ns = 1e300;
  const std::size_t calls = std::max<std::size_t>(1, 100'000 / rows);
  for (int repetition = 0; repetition < 15; ++repetition) {
    const auto begin = Clock::now();
    for (std::size_t call = 0; call < calls; ++call) columns.run();
    const std::chrono::duration<double, std::nano> took = Clock::now() - begin;
    best_ns = std::min(best_ns, took.count() / static_cast<double>(calls * rows));
  }
  return best_ns;
}

}  // namespace

int main(int count, char** words) {
  if (count == 2) {  // the child whose memory is measured
    Columns columns(std::stoul(words[1]));
    columns.run();
    return columns.et0_mm_d.back() > 0 ? 0 : 1;
  }
  std::printf("%s\n%12s %18s %10s\n", bench::machine().c_str(), "station-days", "ns a station-day",
              "peak MB");
  double thousand_ns = 0, last_ns = 0;
  for (const std::size_t rows : {1U, 10U, 100U, 1'000U, 10'000U, 100'000U, 1'000'000U}) {
    const bench::ChildUsage used = bench::run_child(words[0], {std::to_string(rows)});
    last_ns = nanoseconds_per_row(rows);
    if (rows == 1000) thousand_ns = last_ns;
    std::printf("%12zu %18.1f %10.1f\n", rows, last_ns, static_cast<double>(used.peak_kb) / 1024);
  }
  if (last_ns > 2 * thousand_ns) {
    std::printf("FAILED: a station-day takes %.1f times as long in a million as in a thousand\n",
                last_ns / thousand_ns);
    return 1;
  }
  return 0;
}
