#include "bench/invented_folder.hpp"

#include <array>
#include <chrono>
#include <cstdio>
#include <fstream>
#include <random>
#include <string>

#include "noonleaf/calendar_text.hpp"

namespace bench {
namespace {

using namespace std::chrono_literals;
using std::chrono::days;
using std::chrono::sys_days;

constexpr sys_days today{2025y / 7 / 16};

struct Row {
  const char *crop, *start, *soil;
};
constexpr std::array<Row, 8> kinds{{
    {"tomato", "transplanted = 2025-05-17", "loam"},
    {"squash_zucchini", "sown = 2025-05-24", "loam"},
    {"bean_green", "sown = 2025-05-28", "sandy_loam"},
    {"strawberry", "established = 2023-04-15", "sandy_loam"},
    {"lettuce", "transplanted = 2025-06-20", "loam"},
    {"maize_sweet", "sown = 2025-05-10", "silt_loam"},
    {"chard", "transplanted = 2025-07-01", "loam"},
    {"potato", "sown = 2025-04-20", "sandy_loam"},
}};

const char* head(bool restricted) {
  return restricted ? R"([rules]
allowed_hours = ["daily 05:00-10:00", "daily 19:00-22:00"]
quiet_hours = ["mon-fri 08:30-09:00"]
[[rules.restriction]]
name = "invented stage 1"
weekdays = ["mon", "tue", "thu", "fri", "sat"]
)"
                    : R"([rules]
allowed_hours = ["daily 05:00-10:00", "daily 19:00-22:00"]
)";
}

std::string number(double value) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.2f", value);
  return text.data();
}

std::string garden_text(const FolderKind& kind, std::mt19937& random) {
  std::uniform_real_distribution<double> area(3, 9), flow(7, 11);
  std::string text = R"([site]
name = "Invented garden"
latitude_deg = 46.07
longitude_deg = -118.33
elevation_m = 290
zone = "America/Los_Angeles"
units = "metric"
[[caretaker]]
id = "educator"
role = "garden educator"
hours = ["mon,wed 07:30-10:00"]
[[caretaker]]
id = "custodian"
role = "day custodian"
hours = ["mon-fri 06:00-14:30"]
[[caretaker]]
id = "weekend"
role = "weekend custodian"
hours = ["sat,sun 07:00-10:00"]
)" + std::string(head(kind.restricted));
  for (int tap = 0; tap < kind.taps; ++tap) {
    const std::string id = std::to_string(tap);
    text += "[[tap]]\nid = \"t" + id + "\"\nflow_l_min = 20\n[[sprinkler]]\nid = \"s" + id + "\"\ntap = \"t" +
            id + "\"\nflow_l_min = " + number(flow(random)) +
            "\nwetted_area_m2 = 14\noff_target_pct = 15\nuniformity_pct = 65\n";
  }
  for (int bed = 0; bed < kind.beds; ++bed) {
    const Row& row = kinds[static_cast<std::size_t>(bed) % kinds.size()];
    text += "[[bed]]\nid = \"b" + std::to_string(bed) + "\"\narea_m2 = " + number(area(random)) +
            "\nsprinkler = \"s" + std::to_string(bed % kind.taps) + "\"\nsoil = \"" + row.soil +
            "\"\nframed = true\n[[bed.planting]]\ncrop = \"" + row.crop + "\"\n" + row.start + "\n";
  }
  return text;
}

std::string weather_text(int from_day, int to_day, std::mt19937& random) {
  std::normal_distribution<double> off(0, 2);
  std::string text = "date,tmin_c,tmax_c,rhmin_pct,rhmax_pct,wind_m_s,rs_mj_m2,rain_mm\n";
  for (int day = from_day; day < to_day; ++day) {
    const double t = off(random);
    text += noonleaf::iso_date(today + days(day)) + "," + number(14 + t) + "," + number(30 + t) + ",30,80," +
            number(1.5 + 0.2 * t) + "," + number(25 + 0.5 * t) + ",0\n";
  }
  return text;
}

/// 07:00, and two minutes later for each run more.
std::string run_time(int run) {
  std::array<char, 8> text{};
  std::snprintf(text.data(), text.size(), "%02d:%02d", 7 + run / 30, run % 30 * 2);
  return text.data();
}

std::string journal_text(const FolderKind& kind) {
  std::string text = "id,date,time,event,bed,minutes\n";
  if (kind.water_every_days == 0) return text;
  int id = 0;
  for (int day = -kind.days_before; day < 0; ++day)
    for (int bed = 0; bed < kind.beds; ++bed)
      for (int run = 0; (day + kind.days_before + bed) % kind.water_every_days == 0 && run < kind.runs_a_day;
           ++run)
        text += std::to_string(++id) + "," + noonleaf::iso_date(today + days(day)) + "," + run_time(run) +
                ",water,b" + std::to_string(bed) + "," + number(25.0 / kind.runs_a_day) + "\n";
  return text;
}

void write(const std::filesystem::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

}  // namespace

void write_invented_folder(const std::filesystem::path& folder, const FolderKind& kind) {
  std::mt19937 random(kind.seed);
  std::filesystem::create_directories(folder / "weather");
  write(folder / "garden.toml", garden_text(kind, random));
  write(folder / "journal.csv", journal_text(kind));
  write(folder / "weather" / "station.csv", weather_text(-kind.days_before, 0, random));
  if (kind.forecast_days > 0)
    write(folder / "weather" / (std::string("forecast_") + question_date + ".csv"),
          weather_text(0, kind.forecast_days, random));
}

}  // namespace bench
