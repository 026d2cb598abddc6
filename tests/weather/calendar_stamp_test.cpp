#include "noonleaf/weather/calendar_stamp.hpp"

#include <chrono>
#include <string>

#include <boost/test/unit_test.hpp>

using noonleaf::DateOrder;
using noonleaf::LocalStamp;

namespace {

std::string padded(const std::string& text) { return text + std::string(32, '\n'); }

bool reads_fast(const std::string& text, LocalStamp& stamp) {
  const std::string bytes = padded(text);
  return noonleaf::plain_iso_stamp(bytes.data(), stamp) == bytes.data() + text.size();
}

}  // namespace

BOOST_AUTO_TEST_SUITE(calendar_stamp)

BOOST_AUTO_TEST_CASE(day_numbers_agree_with_the_calendar_of_the_language) {
  std::int32_t expected = -719'162;  // 0001-01-01
  for (int year = 1; year <= 9999; ++year) {
    for (unsigned month = 1; month <= 12; ++month) {
      for (unsigned day = 1; day <= 32; ++day) {
        const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{month},
                                               std::chrono::day{day}};
        const auto number = noonleaf::day_number(year, month, day);
        if (number.has_value() != date.ok())
          BOOST_FAIL("existence of " << year << " " << month << " " << day);
        if (number && *number != expected++) BOOST_FAIL("number of " << year << " " << month << " " << day);
      }
    }
  }
  BOOST_TEST(expected - 1 ==
             std::chrono::sys_days(std::chrono::year{9999} / 12 / 31).time_since_epoch().count());
}

BOOST_AUTO_TEST_CASE(the_fast_date_takes_iso_dates_that_exist_only) {
  std::int32_t day = 0;
  BOOST_TEST((noonleaf::plain_iso_date(padded("2024-02-29").data(), day) != nullptr));
  BOOST_TEST(day == 19'782);
  for (const char* text : {"2023-02-29", "2024-00-01", "2024-13-01", "2024-01-00", "2024-04-31", "0000-01-01",
                           "2024/01/01", "2024-1-01", "20240101", "x024-01-01", "2024-01-0x", ""})
    BOOST_TEST((noonleaf::plain_iso_date(padded(text).data(), day) == nullptr), text);
}

BOOST_AUTO_TEST_CASE(stamps_with_and_without_offset) {
  struct Known {
    const char* text;
    std::int64_t seconds;
    int offset_s;  // -1: none
  };
  const Known stamps[] = {
      {"1970-01-02T00:00", 86'400, -1},
      {"1970-01-02 00:00", 86'400, -1},
      {"1970-01-01T13:05:09", 47'109, -1},
      {"1970-01-01T13:05:09Z", 47'109, 0},
      {"1970-01-01T13:05Z", 47'100, 0},
      {"1970-01-01T13:05+02:00", 47'100, 7200},
      {"1970-01-01T13:05:00-05:30", 47'100, -19'800},
  };
  for (const Known& known : stamps) {
    BOOST_TEST_CONTEXT(known.text) {
      LocalStamp fast;
      BOOST_REQUIRE(reads_fast(known.text, fast));
      const auto careful = noonleaf::read_stamp(known.text, DateOrder::iso);
      BOOST_REQUIRE(careful.value.has_value());
      for (const LocalStamp& stamp : {fast, *careful.value}) {
        BOOST_TEST(stamp.seconds == known.seconds);
        BOOST_TEST((stamp.offset ? static_cast<int>(stamp.offset->count()) : -1) == known.offset_s);
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(the_careful_stamp_knows_more_spellings) {
  const auto seconds = [](const char* text) {
    return noonleaf::read_stamp(text, DateOrder::iso).value->seconds;
  };
  BOOST_TEST(seconds("1970-01-01T24:00") == 86'400);
  BOOST_TEST(seconds("1970-01-01T13:05:09.250Z") == 47'109);
  BOOST_TEST(seconds("19700101T13:05") == 47'100);
  BOOST_TEST(seconds("1970-01-01 9:05") == 32'700);
  BOOST_TEST(noonleaf::read_stamp("1970-01-01T13:05+0200", DateOrder::iso).value->offset->count() == 7200);
  BOOST_TEST(noonleaf::read_stamp("1970-01-01T13:05-05", DateOrder::iso).value->offset->count() == -18'000);
}

BOOST_AUTO_TEST_CASE(stamps_that_do_not_exist_are_refused_by_both_paths) {
  for (const char* text :
       {"1970-01-01", "1970-01-01T", "1970-01-01T24:01", "1970-01-01T25:00", "1970-01-01T12:60",
        "1970-01-01T12:00:60", "1970-02-30T12:00", "1970-01-01T12:00+15:00", "1970-01-01T12:00+02:60",
        "1970-01-01T12:00X", "1970-01-01T1200", "1970-01-01T12:00:", "Tuesday", "T12:00",
        "1970-01-01T12:00:00.", "1970-01-01T12:00:00.x"}) {
    BOOST_TEST_CONTEXT(text) {
      LocalStamp stamp;
      BOOST_TEST(!reads_fast(text, stamp));
      const auto careful = noonleaf::read_stamp(text, DateOrder::iso);
      BOOST_TEST(!careful.value.has_value());
      BOOST_TEST(!careful.message.empty());
      BOOST_TEST(!careful.fix.empty());
    }
  }
}

BOOST_AUTO_TEST_SUITE_END()
