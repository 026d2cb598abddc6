// Files of a size that no garden has: 1 to 100 years of hourly weather through `noonleaf et0`, and a garden with 1,000 to
// 1,000,000 journal entries (8 beds, 16 runs a day each, as many days of weather) through `noonleaf today`. Processor time
// and memory of the whole process. Fails where the last tenfold takes more than twice as much for each row as the one
// before it: the growth is linear.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <numbers>
#include <random>
#include <string>
#include <unistd.h>
#include <vector>

#include "noonleaf/calendar_text.hpp"

#include "bench/child_process.hpp"
#include "bench/invented_folder.hpp"
#include "bench/ratios.hpp"

namespace {

namespace fs = std::filesystem;
using namespace std::chrono_literals;

constexpr int hours_a_year = 8766;

/// Invented weather by the hour, of a logger that counts in standard time.
void write_hours(const fs::path& file, int years) {
  std::mt19937 random(2);
  std::normal_distribution<double> off(0, 1);
  std::ofstream out(file, std::ios::binary);
  out << "time_begin,t_c,rh_pct,wind_m_s,rs_w_m2,rain_mm\n";
  const std::chrono::sys_days first = 1925y / 1 / 1;
  for (int row = 0; row < years * hours_a_year; ++row) {
    const int hour = row % 24;
    const double year = 2 * std::numbers::pi * (row / 24 - 20) / 365.25;
    const double day = 2 * std::numbers::pi * (hour - 9) / 24;
    const double t_c = 12 - 10 * std::cos(year) + 6 * std::sin(day) + off(random);
    const double high = std::sin(std::numbers::pi * (hour - 9) / 6);
    const double rs_w_m2 = hour > 9 && hour < 15 ? (525 - 275 * std::cos(year)) * high : 0;
    std::array<char, 96> text{};
    std::snprintf(text.data(), text.size(), "T%02d:00-08:00,%.1f,%.0f,%.1f,%.0f,0\n", hour, t_c,
                  std::clamp(70 - 2 * (t_c - 12), 20.0, 95.0), 2 + std::sin(day), rs_w_m2);
    out << noonleaf::iso_date(first + std::chrono::days(row / 24)) << text.data();
  }
}

struct Load {
  const char* of;
  std::vector<int> rows;
};

/// Prints one line for each size; the last tenfold has to cost no more than twenty times the time.
template <typename Run>
bool grows_as_its_rows(const Load& load, Run run) {
  std::printf("%s\n%12s %14s %14s %10s\n", load.of, "rows", "processor s", "us a row", "peak MB");
  double before_s = 0, last_s = 0;
  for (const int rows : load.rows) {
    const bench::ChildUsage used = run(rows);
    before_s = last_s;
    last_s = used.processor_s;
    std::printf("%12d %14.3f %14.2f %10.1f\n", rows, last_s, 1e6 * last_s / rows,
                static_cast<double>(used.peak_kb) / 1024);
  }
  if (last_s <= 20 * before_s) return true;
  std::printf("FAILED: ten times as many rows took %.1f times as long\n", last_s / before_s);
  return false;
}

}  // namespace

int main() {
  const fs::path all = fs::temp_directory_path() / ("noonleaf-load-" + std::to_string(getpid()));
  fs::create_directories(all);
  std::printf("%s\n", bench::machine().c_str());
  const bool hours = grows_as_its_rows(
      {"noonleaf et0, 1, 10 and 100 years of hourly weather",
       {hours_a_year, 10 * hours_a_year, 100 * hours_a_year}},
      [&](int rows) {
        const fs::path file = all / "hours.csv";
        write_hours(file, rows / hours_a_year);
        return bench::run_child(NOONLEAF_COMMAND,
                                {"et0", file.string(), "--latitude", "46.07", "--longitude", "-118.33",
                                 "--elevation", "290", "--zone", "America/Los_Angeles"});
      });
  const bool entries = grows_as_its_rows(
      {"noonleaf today, so many journal entries", {1'000, 10'000, 100'000, 1'000'000}}, [&](int rows) {
        constexpr int beds = 8, runs_a_day = 16;
        const fs::path folder = all / std::to_string(rows);
        bench::write_invented_folder(folder,
                                     {.beds = beds,
                                      .days_before = (rows + beds * runs_a_day - 1) / (beds * runs_a_day),
                                      .forecast_days = 7,
                                      .water_every_days = 1,
                                      .runs_a_day = runs_a_day});
        return bench::run_child(NOONLEAF_COMMAND, {"today", folder.string(), "--date", bench::question_date});
      });
  fs::remove_all(all);
  return hours && entries ? 0 : 1;
}
