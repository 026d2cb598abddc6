#include "noonleaf/garden/watering_rules.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_file.hpp"

#include "invented_site.hpp"

using namespace std::chrono_literals;
using noonleaf::allows_date;
using noonleaf::in_force;
using noonleaf::parse_garden;
using noonleaf::WateringRestriction;

namespace {

const std::string head = invented_site + R"([[caretaker]]
id = "c"
role = "custodian"
hours = ["mon-fri 06:00-14:00"]
away = ["2025-07-21/2025-07-25 leave"]
[[tap]]
id = "t"
reclaimed = true
[[sprinkler]]
id = "s"
tap = "t"
[[bed]]
id = "a"
area_m2 = 10
sprinkler = "s"
soil = "loam"
letter = "K"
slope_pct = 4
place = { x_ft = 0, y_ft = 10, width_ft = 10, length_ft = 4 }
[[landmark]]
name = "gate"
place = { x_m = -1, y_m = 0 }
)";

}  // namespace

BOOST_AUTO_TEST_SUITE(watering_rules)

BOOST_AUTO_TEST_CASE(all_keys_are_read) {
  const auto garden = parse_garden(head + R"([rules]
holidays = ["2025-07-04 Independence Day", "2025-12-22/2026-01-02 winter break"]
quiet_calendars = ["school.ics"]
drought_level = 2
frost_lockout_f = 36
wind_limit_mph = 8
[[rules.restriction]]
name = "city stage 2"
weekdays = ["tue", "sat"]
dates = "even"
hours = ["daily 05:00-09:00"]
season = "05-01/09-30"
drought_level = 2
until = 2025-10-31
exempt = ["hand", "drip"]
)",
                                   "garden.toml");
  BOOST_TEST(garden.taps[0].reclaimed);
  BOOST_TEST(garden.beds[0].letter == "K");
  BOOST_TEST(garden.beds[0].slope_pct == 4.0);
  BOOST_TEST(garden.beds[0].place->y_m == 3.048, boost::test_tools::tolerance(1e-12));
  BOOST_TEST(garden.landmarks[0].name == "gate");
  BOOST_TEST(garden.rules.frost_lockout_c == 20.0 / 9, boost::test_tools::tolerance(1e-12));
  BOOST_TEST(garden.rules.wind_limit_m_s == 8 * 0.44704, boost::test_tools::tolerance(1e-12));
  BOOST_TEST(garden.rules.holidays[1].name == "winter break");
  BOOST_TEST(holiday_on(garden.rules, 2026y / 1 / 2) != nullptr);
  BOOST_TEST(holiday_on(garden.rules, 2026y / 1 / 3) == nullptr);
  const WateringRestriction& rule = garden.rules.restrictions.at(0);
  BOOST_TEST(rule.weekdays.count() == 2U);
  BOOST_TEST((rule.exempt_hand && rule.exempt_drip));
  BOOST_TEST(in_force(rule, 2025y / 9 / 30, 2));
  BOOST_TEST(!in_force(rule, 2025y / 10 / 1, 2));
  BOOST_TEST(!in_force(rule, 2025y / 9 / 30, 1));
  BOOST_TEST(allows_date(rule, 2025y / 7 / 12));   // a Saturday, even
  BOOST_TEST(!allows_date(rule, 2025y / 7 / 15));  // a Tuesday, odd
  BOOST_TEST(!allows_date(rule, 2025y / 7 / 14));  // even, a Monday
}

BOOST_AUTO_TEST_CASE(a_season_may_run_over_the_turn_of_the_year) {
  WateringRestriction rule;
  rule.season = noonleaf::YearlySeason{std::chrono::November / 15, std::chrono::March / 1};
  BOOST_TEST(in_force(rule, 2025y / 12 / 31, 0));
  BOOST_TEST(in_force(rule, 2026y / 3 / 1, 0));
  BOOST_TEST(!in_force(rule, 2026y / 3 / 2, 0));
}

BOOST_AUTO_TEST_CASE(on_site_knows_leave_and_holidays) {
  auto garden = parse_garden(head, "garden.toml");
  BOOST_TEST(on_site(garden, garden.caretakers[0], 2025y / 7 / 18, 6h, 7h));
  BOOST_TEST(!on_site(garden, garden.caretakers[0], 2025y / 7 / 21, 6h, 7h));
  garden.rules.holidays = {{.name = "x", .first = 2025y / 7 / 18, .last = 2025y / 7 / 18}};
  BOOST_TEST(!on_site(garden, garden.caretakers[0], 2025y / 7 / 18, 6h, 7h));
  garden.caretakers[0].works_on_holidays = true;
  BOOST_TEST(on_site(garden, garden.caretakers[0], 2025y / 7 / 18, 6h, 7h));
}

BOOST_AUTO_TEST_CASE(slips_are_refused_with_their_line) {
  for (const std::string wrong :
       {"weekdays = [\"tues\"]", "season = \"summer\"", "exempt = [\"hose\"]", "hours = [\"5-9\"]"}) {
    BOOST_CHECK_EXCEPTION(
        parse_garden(head + "[rules]\n[[rules.restriction]]\nname = \"r\"\n" + wrong + "\n", "g"),
        noonleaf::Error, [](const noonleaf::Error& error) {
          return error.problems().size() == 1 && error.problems()[0].line > 30 &&
                 !error.problems()[0].fix.empty();
        });
  }
  BOOST_CHECK_THROW(parse_garden(head + "[rules]\nholidays = [\"4 July\"]\n", "g"), noonleaf::Error);
}

BOOST_AUTO_TEST_SUITE_END()
