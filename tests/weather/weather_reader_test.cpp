#include "noonleaf/weather/weather_reader.hpp"

#include <string>
#include <unistd.h>

#include <boost/test/unit_test.hpp>

#include "noonleaf/weather/daily_file.hpp"

#include "weather/temporary_file.hpp"

using noonleaf::Error;
using noonleaf::StampMark;
using noonleaf::WeatherOptions;
using noonleaf::WeatherReader;

namespace {

std::string many_days(int count, int first = 0, const std::string& remark = "") {
  std::string bytes = "date,tmin_c,tmax_c,rain_mm" + std::string(remark.empty() ? "" : ",remark") + "\n";
  for (int index = first; index < first + count; ++index) {
    const auto date = std::chrono::year_month_day(std::chrono::sys_days(std::chrono::days(index)));
    const auto two = [](unsigned number) { return (number < 10 ? "0" : "") + std::to_string(number); };
    bytes += std::to_string(static_cast<int>(date.year())) + "-" + two(static_cast<unsigned>(date.month())) +
             "-" + two(static_cast<unsigned>(date.day())) + "," + std::to_string(index % 17) + "," +
             std::to_string(20 + index % 13) + "," + std::to_string(index % 5 + 5) +
             (remark.empty() ? "" : "," + remark) + "\n";
  }
  return bytes;
}

[[maybe_unused]] std::size_t resident_kilobytes() {
  std::ifstream status("/proc/self/statm");
  std::size_t pages = 0, resident = 0;
  status >> pages >> resident;
  return resident * static_cast<std::size_t>(::sysconf(_SC_PAGESIZE)) / 1024;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(weather_reader)

BOOST_AUTO_TEST_CASE(blocks_hold_what_the_whole_file_holds) {
  const TemporaryFile file(many_days(5000));
  const auto whole = noonleaf::read_daily_weather(file.path(), "w.csv");
  WeatherReader reader(file.path(), "w.csv", {});
  BOOST_TEST((reader.step() == noonleaf::WeatherStep::day));
  std::size_t index = 0;
  for (auto days = reader.next_days(); !days.empty(); days = reader.next_days()) {
    for (const noonleaf::DailyWeather& day : days) {
      BOOST_REQUIRE((day.date == whole.days.at(index).date));
      BOOST_REQUIRE_EQUAL(day.t_max_c, whole.days[index].t_max_c);
      ++index;
    }
  }
  BOOST_TEST(index == 5000U);
  BOOST_TEST(reader.next_days().empty());
  BOOST_TEST(*reader.progress().bytes_in_file == reader.progress().bytes_read);
  BOOST_TEST(reader.doubts().size() == whole.doubts.size());
}

BOOST_AUTO_TEST_CASE(duplicates_meet_across_blocks) {
  std::string bytes = many_days(1024);
  const std::size_t last = bytes.rfind('\n', bytes.size() - 2) + 1;
  bytes += bytes.substr(last);
  const TemporaryFile file(bytes);
  WeatherReader reader(file.path(), "w.csv", {});
  std::size_t count = 0;
  for (auto days = reader.next_days(); !days.empty(); days = reader.next_days()) count += days.size();
  BOOST_TEST(count == 1024U);
  BOOST_REQUIRE_EQUAL(reader.doubts().size(), 1U);
  BOOST_TEST(reader.doubts()[0].check == "duplicate");
}

BOOST_AUTO_TEST_CASE(reading_through_collects_the_problems_of_all_blocks) {
  std::string bytes = many_days(3000);
  bytes.replace(bytes.find("1970-01-05"), 10, "1970-02-30");
  bytes.replace(bytes.find("1977-06-05"), 10, "1977-06-31");
  const TemporaryFile file(bytes);
  WeatherReader reader(file.path(), "w.csv", {});
  try {
    reader.read_through();
    BOOST_FAIL("should have been refused");
  } catch (const Error& refused) {
    BOOST_TEST(refused.problems().size() == 2U);
  }
  BOOST_CHECK_THROW(WeatherReader(file.path(), "w.csv", {}).next_days(), Error);
}

BOOST_AUTO_TEST_CASE(hours_come_as_hours_or_as_days) {
  std::string bytes = "time_begin,t_c\n";
  for (int hour = 0; hour < 24 * 100; ++hour) {
    const auto date = std::chrono::year_month_day(std::chrono::sys_days(std::chrono::days(hour / 24)));
    bytes += "1970-0" + std::to_string(static_cast<unsigned>(date.month())) + "-" +
             (static_cast<unsigned>(date.day()) < 10 ? "0" : "") +
             std::to_string(static_cast<unsigned>(date.day())) + "T" + (hour % 24 < 10 ? "0" : "") +
             std::to_string(hour % 24) + ":00," + std::to_string(hour % 24) + "\n";
  }
  const TemporaryFile file(bytes);
  const WeatherOptions options{.zone = "Etc/UTC"};
  WeatherReader as_hours(file.path(), "w.csv", options), as_days(file.path(), "w.csv", options);
  std::size_t hours = 0, days = 0;
  for (auto block = as_hours.next_hours(); !block.empty(); block = as_hours.next_hours())
    hours += block.size();
  for (auto block = as_days.next_days(); !block.empty(); block = as_days.next_days()) days += block.size();
  BOOST_TEST(hours == 2400U);
  BOOST_TEST(days == 100U);
  BOOST_TEST(as_days.doubts().empty());
}

BOOST_AUTO_TEST_CASE(strictness_refuses_what_is_set_aside) {
  const TemporaryFile file("date,rhmax_pct\n2015-07-06,120\n");
  WeatherReader lenient(file.path(), "w.csv", {});
  BOOST_TEST(lenient.next_days().size() == 1U);
  BOOST_TEST(lenient.set_aside().size() == 1U);
  WeatherReader strict(file.path(), "w.csv", {.strictness = noonleaf::Strictness::strict});
  BOOST_CHECK_THROW(strict.next_days(), Error);
}

#ifndef NOONLEAF_SANITIZED  // a sanitizer keeps what was given back, to see who still uses it
BOOST_AUTO_TEST_CASE(memory_does_not_grow_with_the_file) {
  const TemporaryFile file(many_days(146'000, -62'000, std::string(48, 'x')));  // 10 MB, 1800 to 2199
  const std::size_t before = resident_kilobytes();
  WeatherReader reader(file.path(), "w.csv", {});
  std::size_t count = 0, most = 0;
  for (auto days = reader.next_days(); !days.empty(); days = reader.next_days()) {
    count += days.size();
    most = std::max(most, resident_kilobytes());
  }
  BOOST_TEST(count == 146'000U);
  BOOST_TEST(most < before + 4096U);
}
#endif

BOOST_AUTO_TEST_SUITE_END()
