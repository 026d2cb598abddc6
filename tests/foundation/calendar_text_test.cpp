#include "noonleaf/calendar_text.hpp"

#include <boost/test/unit_test.hpp>

using namespace std::chrono_literals;
using std::chrono::year_month_day;

BOOST_AUTO_TEST_SUITE(calendar_text)

BOOST_AUTO_TEST_CASE(dates_go_there_and_back) {
  const year_month_day day{2025y / 7 / 6};
  BOOST_TEST(noonleaf::iso_date(day) == "2025-07-06");
  BOOST_TEST((noonleaf::parse_iso_date("2025-07-06") == day));
}

BOOST_AUTO_TEST_CASE(refuses_what_is_no_date) {
  for (const char* text : {"2025-02-30", "2025-7-6", "2025-13-01", "07/06/2025",
                           "2025-07-06 ", "", "2O25-07-06", "2025-00-01"}) {
    BOOST_TEST(!noonleaf::parse_iso_date(text).has_value(), text);
  }
  BOOST_TEST(noonleaf::parse_iso_date("2024-02-29").has_value());
  BOOST_TEST(!noonleaf::parse_iso_date("2025-02-29").has_value());
}

BOOST_AUTO_TEST_CASE(clock_times) {
  BOOST_TEST(noonleaf::clock_text(390min) == "06:30");
  BOOST_TEST(noonleaf::clock_text(1440min) == "24:00");
  BOOST_TEST((noonleaf::parse_clock_text("06:30") == 390min));
  BOOST_TEST((noonleaf::parse_clock_text("24:00") == 1440min));
  for (const char* text : {"6:30", "24:01", "12:60", "12.30", "ab:cd", ""}) {
    BOOST_TEST(!noonleaf::parse_clock_text(text).has_value(), text);
  }
}

BOOST_AUTO_TEST_SUITE_END()
