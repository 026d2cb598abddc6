// Weather files in blocks, calendars, the journal and what begins a garden: files of their own, in a folder
// made for the run, and one journal that all threads write to.
#include <array>
#include <chrono>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <mutex>
#include <random>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/calendar_file.hpp"
#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/garden/garden_start.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/garden/journal_append.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/garden/watering_rules.hpp"
#include "noonleaf/garden/week_sheet.hpp"
#include "noonleaf/garden/weekly_hours.hpp"
#include "noonleaf/report/cans_file.hpp"
#include "noonleaf/weather/checks.hpp"
#include "noonleaf/weather/daily_file.hpp"
#include "noonleaf/weather/hours_to_days.hpp"
#include "noonleaf/weather/merge.hpp"
#include "noonleaf/weather/own_years.hpp"
#include "noonleaf/weather/quantity.hpp"
#include "noonleaf/weather/weather_reader.hpp"

#include "door.hpp"

namespace {

using namespace noonleaf;
using namespace std::chrono;
namespace fs = std::filesystem;

const std::string demo = NOONLEAF_SOURCE_DIR "/weather_samples/demo";
constexpr year_month_day date = 2025y / July / 16;

/// A folder for this run, gone at its end. Names within it are handed out one by one.
class Folder {
 public:
  Folder()
      : path_(fs::temp_directory_path() / ("noonleaf_threads_" + std::to_string(std::random_device{}()))) {
    fs::create_directories(path_);
    std::ofstream(path_ / "shared.csv") << empty_journal_text();
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    std::error_code failed;
    fs::remove_all(path_, failed);
  }
  fs::path shared() const { return path_ / "shared.csv"; }
  std::size_t next_number() {
    const std::lock_guard one_at_a_time(lock_);
    return ++last_;
  }
  fs::path write(const std::string& text) {
    fs::path file = path_ / (std::to_string(next_number()) + ".csv");
    std::ofstream(file) << text;
    return file;
  }

 private:
  fs::path path_;
  std::mutex lock_;
  std::size_t last_ = 0;
};

Folder& folder() {
  static Folder own;
  return own;
}

std::string two_digits(int number) { return (number < 10 ? "0" : "") + std::to_string(number); }

std::string hourly_text() {
  std::string text = "time,t_c,rh_pct,wind_m_s,rs_w_m2,rain_mm\n";
  for (int day = 1; day <= 6; ++day)
    for (int hour = 0; hour < 24; ++hour)
      text += "2024-07-" + two_digits(day) + " " + two_digits(hour) + ":00," +
              std::to_string(15 + hour % 12) + ".12345678901,5" + std::to_string(hour % 10) + ",2," +
              (hour > 5 && hour < 20 ? "400" : "0") + ",0\n";
  return text;
}

std::string weather_in_blocks() {
  WeatherOptions options;
  options.zone = "America/Los_Angeles";
  options.site = {.latitude_deg = 46.07, .longitude_deg = -118.33, .elevation_m = 290};
  options.stamps = StampMark::period_begin;
  const fs::path file = folder().write(hourly_text());
  Print out;
  WeatherReader(file, "hours.csv", options).read_through();
  WeatherReader first(file, "hours.csv", options);
  WeatherReader reader(std::move(first));
  out << reader.format() << static_cast<int>(reader.step());
  std::vector<HourlyWeather> all;
  for (auto hours = reader.next_hours(); !hours.empty(); hours = reader.next_hours())
    all.insert(all.end(), hours.begin(), hours.end());
  out << all.size() << reader.progress().bytes_read << reader.notes() << reader.doubts().size()
      << reader.set_aside().size();
  for (const DailyWeather& day : days_from_hours(all, options.zone).days) out << day.t_max_c;
  out << read_hourly_weather(file, "hours.csv", options).hours.size();
  const std::string station = demo + "/weather/station_2025.csv";
  reader = WeatherReader(station, "station.csv", options);
  for (auto days = reader.next_days(); !days.empty(); days = reader.next_days()) out << days.back().t_max_c;
  return out.text();
}

std::string own_years() {
  std::string text = "date,tmin_c,tmax_c\n";
  for (int year = 2019; year <= 2024; ++year)
    for (int day = 1; day <= 28; ++day)
      text += std::to_string(year) + "-07-" + two_digits(day) + "," + std::to_string(10 + day % 5) + "," +
              (year == 2022 && day == 14 ? "" : std::to_string(25 + day % 7)) + "\n";
  const WeatherFile file = read_daily_weather(folder().write(text), "years.csv");
  DailySeries series = merge_daily_weather({&file, 1});
  Print out;
  for (const BridgedDay& day : bridge_with_own_years(series)) out << day.years;
  for (const DailyWeather& day : series.days) out << day.t_max_c;
  return out.text();
}

std::string weather_faults() {
  Print out;
  for (const std::string text :
       {"date,tmin_c,tmax_c\n2024-07-01,12,1O2\n", "date,tmin_c,tmax_c\n2024-07-01,30,12\n",
        "date,tmin_c,tmax_c\n2024-07-01,10,20,30\n"}) {
    try {
      const WeatherFile file = read_daily_weather(folder().write(text), "days.csv");
      out << describe(problems_of(file.set_aside)) << describe(problems_of(file.doubts));
    } catch (const Error& refused) {
      out << describe(refused.problems());
    }
  }
  for (const QualityCheck& check : quality_checks()) out << check.name << check.source;
  for (std::size_t i = 0; i < weather_quantity_count; ++i)
    out << canonical_name(WeatherQuantity{static_cast<int>(i)});
  return out.text();
}

std::string calendars() {
  const std::string text =
      "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//test//EN\r\nBEGIN:VEVENT\r\nUID:1\r\nSUMMARY:Class\r\n"
      "DTSTART:20251020T083000\r\nDTEND:20251020T091500\r\nRRULE:FREQ=WEEKLY;COUNT=4\r\nEND:VEVENT\r\n"
      "BEGIN:VEVENT\r\nUID:2\r\nSUMMARY:Break\r\nDTSTART;VALUE=DATE:20251103\r\nDTEND;VALUE=DATE:20251106\r\n"
      "END:VEVENT\r\nEND:VCALENDAR\r\n";
  const CalendarRange fall{sys_days{2025y / October / 20}, sys_days{2025y / November / 14},
                           "America/Chicago"};
  Print out;
  try {
    for (const DatedHours& hours : parse_calendar_hours(text, "school.ics", fall))
      out << hours.name << hours.begin.count();
  } catch (const Error& refused) {
    out << describe(refused.problems());
  }
  for (const DatedSpan& span : parse_calendar_days(text, "school.ics", fall)) out << span.name;
  WateringRestriction restriction{.name = "stage 2", .dates = DateParity::odd, .drought_level = 1};
  const std::vector<WeeklyHours> quiet(1, *parse_weekly_hours("mon-fri 08:30-09:00"));
  for (const year_month_day day : {date, 2025y / July / 17})
    out << allows_date(restriction, day) << in_force(restriction, day, 2)
        << overlaps(quiet, day, minutes{500}, minutes{520});
  return out.text();
}

std::string new_garden() {
  Print out;
  const auto place = parse_place("46.07, -118.33");
  const auto number = parse_answer_number("12", 1, 100);
  const auto when = parse_answer_hours("mon-fri 06:00-14:30");
  const auto sides = parse_sides("24 x 4");
  const auto cans = parse_can_depths("0.2 0.3 0.25 0.22");
  const auto soil = parse_soil("loam");
  const auto crop = parse_crop("tomato");
  const auto begin = parse_begin("transplanted 2025-05-17");
  out << place.refusal << number.refusal << when.refusal << sides.refusal << cans.refusal << soil.refusal
      << crop.refusal << begin.refusal << parse_crop("tomatto").refusal;
  const GardenStart start{.name = "Invented",
                          .zone = "America/Los_Angeles",
                          .latitude_deg = place.value.value().latitude_deg,
                          .longitude_deg = place.value.value().longitude_deg,
                          .elevation = 950,
                          .people = {{.role = "custodian", .hours = when.value.value()}},
                          .supplies = {{.name = "tap"}},
                          .outlets = {{.name = "sprinkler", .minutes = 15, .can_depths = cans.value.value()}},
                          .patches = {{.name = "Tomatoes",
                                       .length = sides.value.value().length,
                                       .width = sides.value.value().width,
                                       .soil = soil.value.value(),
                                       .crop = crop.value.value(),
                                       .start_word = begin.value.value().word,
                                       .start = begin.value.value().date}}};
  const std::string text = garden_start_text(start);
  out << text << parse_garden(text, "garden.toml").beds.size() << bed_letter_id(27) << empty_journal_text()
      << weather_guide_text(UnitSystem::us);
  return out.text();
}

JournalEntry note(std::string words) {
  return {.date = date, .event = JournalEvent::note, .bed = "a", .note = std::move(words)};
}

std::string own_journal() {
  const Garden garden =
      parse_garden(read_text_file(demo + "/garden.toml", "garden.toml", 1 << 20), "garden.toml");
  const JournalTarget target{.file = folder().write(empty_journal_text()), .shown_name = "journal.csv"};
  Print out;
  for (int i = 0; i < 3; ++i) out << append_to_journal(target, garden, note("looked")).id;
  for (const AppendedEntry& added : append_chosen_to_journal(
           target, garden, [](const Journal& before) { return Journal(before.size(), note("again")); }))
    out << added.id << added.line;
  out << read_journal(target.file, "journal.csv", &garden).size();
  return out.text();
}

// Every thread writes to one journal: each finds its own entry there, once, and no id twice.
std::string one_journal_of_all() {
  const Garden garden =
      parse_garden(read_text_file(demo + "/garden.toml", "garden.toml", 1 << 20), "garden.toml");
  const JournalTarget target{
      .file = folder().shared(), .shown_name = "shared.csv", .longest_wait = minutes{5}};
  const std::string words = "writer " + std::to_string(folder().next_number());
  const std::string id = append_to_journal(target, garden, note(words)).id;
  std::size_t same_words = 0, same_id = 0;
  for (const JournalEntry& entry : read_journal(target.file, "shared.csv", &garden)) {
    same_words += entry.note == words ? 1 : 0;
    same_id += entry.id == id ? 1 : 0;
  }
  Print out;
  out << same_words << same_id;
  if (same_words != 1 || same_id != 1) throw std::runtime_error("an entry is lost or doubled: " + words);
  return out.text();
}

std::string filled_sheet() {
  const Garden garden =
      parse_garden(read_text_file(demo + "/garden.toml", "garden.toml", 1 << 20), "garden.toml");
  const std::string text =
      "date,bed,run,open_at,close_at,planned_minutes,actual_minutes,who,not_done_because\n"
      "2025-07-16,a,1,06:00,06:35,35,30,MR,\n2025-07-17,b,1,06:00,06:35,35,,,rain\n";
  const auto rows = parse_week_sheet(text, "week.csv", garden);
  const auto read = read_week_sheet(folder().write(text), "week.csv", garden);
  const SheetEntries entries = entries_of_sheet(rows, {});
  Print out;
  const CanSheet cans =
      read_can_sheet(folder().write("can,depth_mm\n1,6\n2,8\n3,5\n4,9.5\n"), "cans.csv", {.minutes = 30});
  out << cans.result.rate_mm_h.value;
  out << rows.size() << read.size() << entries.entries.size() << entries.left_out.size();
  return out.text();
}

}  // namespace

std::vector<Door> file_doors() {
  return {{"weather in blocks", weather_in_blocks},
          {"own years", own_years},
          {"weather faults", weather_faults},
          {"calendars", calendars},
          {"new garden", new_garden},
          {"a journal of one's own", own_journal},
          {"one journal of all", one_journal_of_all},
          {"filled sheet", filled_sheet}};
}
