// Reading weather tables: the whole reader (names, units, missing values, every check) against plainer ways,
// on the same files in the same run. Prints ratios.
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <unistd.h>
#include <vector>

#include <benchmark/benchmark.h>
#include <date/date.h>

#include "noonleaf/weather/calendar_stamp.hpp"
#include "noonleaf/weather/weather_reader.hpp"

#include "bench/ratios.hpp"
#include "bench/weather_plain.hpp"

namespace {

/// Days from 1800 on: as many as there are years that the reader takes.
constexpr int first_day = -62'000, day_rows = 146'000;
constexpr int hour_rows = 300'000, stamp_count = 10'000;

const noonleaf::WeatherOptions options{
    .zone = "Etc/UTC",
    .site = {.latitude_deg = 45.0, .longitude_deg = 8.0, .elevation_m = 250.0},
};

/// Two tables in the page cache, plausible so that the checks find little, and a list of stamps.
class Tables {
 public:
  Tables()
      : folder_(std::filesystem::temp_directory_path() / ("noonleaf_bench_" + std::to_string(::getpid()))) {
    std::filesystem::create_directories(folder_);
    write_days();
    write_hours();
    for (int index = 0; index < stamp_count; ++index) stamps_.push_back(stamp(index) + "Z");
  }
  ~Tables() { std::filesystem::remove_all(folder_); }
  Tables(const Tables&) = delete;
  Tables& operator=(const Tables&) = delete;

  std::string days() const { return folder_ / "days.csv"; }
  std::string hours() const { return folder_ / "hours.csv"; }
  const std::vector<std::string>& stamps() const { return stamps_; }

 private:
  static std::string stamp(int hour) {
    char text[40];
    const std::string date = noonleaf::date_text(std::int32_t{hour / 24});
    std::snprintf(text, sizeof text, "%sT%02d:00", date.c_str(), hour % 24);
    return text;
  }

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }

  void write_days() {
    std::ofstream file(days());
    file << "date,tmin_c,tmax_c,rhmin_pct,rhmax_pct,wind_m_s,rs_mj_m2,rain_mm\n";
    char row[160];
    for (int index = 0; index < day_rows; ++index) {
      const double low = between(2, 14), rain = between(0, 1) < 0.3 ? between(0.2, 20) : 0.0;
      std::snprintf(row, sizeof row, "%s,%.1f,%.1f,%.1f,%.1f,%.2f,%.2f,%.1f\n",
                    noonleaf::date_text(std::int32_t{first_day + index}).c_str(), low, low + between(4, 14),
                    between(25, 60), between(70, 100), between(0.5, 5), between(2, 7), rain);
      file << row;
    }
  }

  void write_hours() {
    std::ofstream file(hours());
    file << "time_begin,t_c,rh_pct,wind_m_s,rs_w_m2,pressure_kpa\n";
    char row[160];
    for (int index = 0; index < hour_rows; ++index) {
      const int hour = index % 24;
      const double sun = hour > 8 && hour < 15 ? between(50, 150) : 0.0;
      std::snprintf(row, sizeof row, "%sZ,%.2f,%.2f,%.2f,%.1f,%.3f\n", stamp(index).c_str(),
                    12 + between(-4, 4), between(40, 95), between(0.5, 5), sun, between(97, 99));
      file << row;
    }
  }

  std::filesystem::path folder_;
  std::mt19937_64 random_{20240706};
  std::vector<std::string> stamps_;
};

Tables& tables() {
  static Tables made;
  return made;
}

using Way = plain::Read (*)(const std::string&);

void read_by(benchmark::State& state, Way way, const std::string& path, int rows) {
  for (auto _ : state) {
    const plain::Read read = way(path);
    benchmark::DoNotOptimize(read.sum);
  }
  state.SetItemsProcessed(state.iterations() * rows);
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(std::filesystem::file_size(path)));
}

plain::Read days_by_reader(const std::string& path) {
  plain::Read read;
  noonleaf::WeatherReader reader(path, path, options);
  for (auto days = reader.next_days(); !days.empty(); days = reader.next_days()) {
    read.rows += days.size();
    read.sum += days.front().t_max_c;
  }
  return read;
}

plain::Read hours_by_reader(const std::string& path) {
  plain::Read read;
  noonleaf::WeatherReader reader(path, path, options);
  for (auto hours = reader.next_hours(); !hours.empty(); hours = reader.next_hours()) {
    read.rows += hours.size();
    read.sum += hours.front().t_c;
  }
  return read;
}

void stamps_by_noonleaf(benchmark::State& state) {
  for (auto _ : state) {
    std::int64_t sum = 0;
    for (const std::string& text : tables().stamps()) {
      char padded[48] = {};
      text.copy(padded, sizeof padded - 1);
      noonleaf::LocalStamp stamp;
      if (noonleaf::plain_iso_stamp(padded, stamp) == nullptr) state.SkipWithError("a stamp was not read");
      sum += stamp.seconds;
    }
    benchmark::DoNotOptimize(sum);
  }
  state.SetItemsProcessed(state.iterations() * stamp_count);
}

void stamps_by_from_stream(benchmark::State& state) {
  std::istringstream stream;
  for (auto _ : state) {
    std::int64_t sum = 0;
    for (const std::string& text : tables().stamps()) {
      stream.clear();
      stream.str(text);
      date::sys_seconds moment;
      date::from_stream(stream, "%FT%RZ", moment);
      if (stream.fail()) state.SkipWithError("a stamp was not read");
      sum += moment.time_since_epoch().count();
    }
    benchmark::DoNotOptimize(sum);
  }
  state.SetItemsProcessed(state.iterations() * stamp_count);
}

void print_ratio(const char* what, double baseline_ns, double ours_ns) {
  std::printf("%-58s %6.2f\n", what, ours_ns > 0.0 ? baseline_ns / ours_ns : 0.0);
}

}  // namespace

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  std::printf("%s\n", bench::machine().c_str());
  const std::string days = tables().days(), hours = tables().hours();
  const std::pair<const char*, Way> ways[] = {{"stringstream", plain::getline_stringstream},
                                              {"strtod", plain::getline_strtod},
                                              {"from_chars", plain::mapped_from_chars},
                                              {"bytes", plain::bytes_alone}};
  for (const auto& [name, way] : ways) {
    benchmark::RegisterBenchmark((std::string("days_") + name).c_str(), read_by, way, days, day_rows);
    benchmark::RegisterBenchmark((std::string("hours_") + name).c_str(), read_by, way, hours, hour_rows);
  }
  benchmark::RegisterBenchmark("days_reader", read_by, days_by_reader, days, day_rows);
  benchmark::RegisterBenchmark("hours_reader", read_by, hours_by_reader, hours, hour_rows);
  benchmark::RegisterBenchmark("stamps_noonleaf", stamps_by_noonleaf);
  benchmark::RegisterBenchmark("stamps_from_stream", stamps_by_from_stream);
  bench::Keeper keeper(bench::names_rows_only(argc, argv));
  keeper.run();
  const auto ns = [&](const std::string& name) { return keeper.median_ns(name); };

  std::printf("\nspeed of the whole reader as a multiple of (medians of processor time per row)\n");
  for (const std::string table : {"days_", "hours_"}) {
    for (const auto& [name, way] : ways)
      print_ratio((table + name).c_str(), ns(table + name), ns(table + "reader"));
  }
  print_ratio("ISO time, validated, against date::from_stream", ns("stamps_from_stream"),
              ns("stamps_noonleaf"));
  return 0;
}
