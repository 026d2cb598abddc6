#include <cmath>
#include <string>

#include <boost/test/unit_test.hpp>

#include "command_run.hpp"
#include "number_in.hpp"

namespace {

struct DemoPlace : Workplace {
  DemoPlace() { BOOST_REQUIRE(run_noonleaf(*this, "new demo --demo").exit_code == 0); }
};

}  // namespace

BOOST_AUTO_TEST_SUITE(ledger_command)

BOOST_FIXTURE_TEST_CASE(the_demo_in_text_csv_and_json, DemoPlace) {
  write("demo/garden.toml",
        read("demo/garden.toml") + "\n[water]\nprice_per_ccf = 4.20\nmonthly_allowance_ccf = 2.5\n");
  const std::string words = "ledger demo --from 2025-06-01 --to 2025-07-15";
  const CommandRun text = run_noonleaf(*this, words);
  BOOST_TEST(text.exit_code == 0, text.err);
  check_golden("ledger.txt", text.out);
  check_golden("ledger.csv", run_noonleaf(*this, words + " --format csv").out);
  BOOST_TEST(run_noonleaf(*this, words + " --format json").out.find("\"shape\": \"noonleaf.ledger\"") !=
             std::string::npos);
}

BOOST_FIXTURE_TEST_CASE(a_wrong_period_is_refused, DemoPlace) {
  const CommandRun refused = run_noonleaf(*this, "ledger demo --from 2025-07-01 --to 2025-06-01");
  BOOST_TEST(refused.exit_code == 1);
  BOOST_TEST(refused.err.find("from: the period begins on 2025-07-01") == 0U, refused.err);
  BOOST_TEST(run_noonleaf(*this, "ledger demo --from yesterday --to 2025-06-01").exit_code == 2);
}

BOOST_FIXTURE_TEST_CASE(the_page_has_two_charts_and_needs_nothing_beside_it, DemoPlace) {
  const std::string page =
      run_noonleaf(*this, "ledger demo --from 2025-06-01 --to 2025-07-15 --format html").out;
  BOOST_TEST(page.starts_with("<!DOCTYPE html>"));
  std::size_t charts = 0;
  for (std::size_t place = page.find("<svg"); place != std::string::npos;
       place = page.find("<svg", place + 1))
    ++charts;
  BOOST_TEST(charts == 2U);
  for (const char* outside : {"href=", "src=", "@import", "<script"})
    BOOST_TEST(page.find(outside) == std::string::npos, outside);
  BOOST_TEST(page.find("Carrot seedbed") != std::string::npos);
}

// "ran 10 of the planned 25 minutes": today asks for the rest, in one line.
BOOST_FIXTURE_TEST_CASE(a_run_that_was_stopped_is_asked_for_to_its_end, DemoPlace) {
  BOOST_TEST(run_noonleaf(*this, "log demo water c --minutes 10 --at 06:00 --date 2025-07-16").exit_code ==
             0);
  const std::string today = run_noonleaf(*this, "today demo").out;
  BOOST_TEST(today.find("Carrot seedbed (bed c), 15 minutes") != std::string::npos, today);
  BOOST_TEST(today.find("10 of the planned 25 minutes ran today; this is the rest.") != std::string::npos,
             today);
}

BOOST_FIXTURE_TEST_CASE(a_soil_check_is_shown_before_after_and_why, DemoPlace) {
  BOOST_TEST(run_noonleaf(*this, "log demo feel a --feel moist --date 2025-07-15 --at 08:00").exit_code == 0);
  const std::string today = run_noonleaf(*this, "today demo").out;
  BOOST_TEST(today.find("Soil check on Tuesday 15 July, by feel: moist. The account had Tomato down") !=
                 std::string::npos,
             today);
  const std::string json = run_noonleaf(*this, "today demo --format json").out;
  const std::size_t place = json.find("\"soil_check\": {");
  BOOST_REQUIRE(place != std::string::npos);
  for (const char* key : {"\"before\"", "\"found\"", "\"after\""})
    BOOST_TEST(json.find(key, place) < place + 500, key);
}

BOOST_FIXTURE_TEST_CASE(a_multiplier_at_its_cap_is_said, DemoPlace) {
  BOOST_TEST(run_noonleaf(*this, "today demo").out.find("waters so unevenly") == std::string::npos);
  replace("demo/garden.toml", "uniformity_pct = 60", "uniformity_pct = 35");
  const std::string today = run_noonleaf(*this, "today demo").out;
  BOOST_TEST(today.find("(DU 0.35)") != std::string::npos, today);
  BOOST_TEST(today.find("lengthened 1.5 times") != std::string::npos, today);
}

// 45 gallons or so on 20 ft2 of pots: as many cans of two gallons, no minutes to mind.
BOOST_FIXTURE_TEST_CASE(a_bed_watered_by_hand_gets_its_cans_counted, DemoPlace) {
  write("demo/garden.toml",
        read("demo/garden.toml") +
            "\n[[sprinkler]]\nid = \"can\"\nname = \"watering can\"\nkind = \"hand\"\ntap = "
            "\"shed\"\ncan_gal = 2\n"
            "[[bed]]\nid = \"p\"\nname = \"Pots\"\narea_ft2 = 20\nsprinkler = \"can\"\nsoil = "
            "\"sandy_loam\"\nframed = true\n"
            "rooting_depth_in = 12\n[[bed.planting]]\ncrop = \"tomato\"\ntransplanted = 2025-05-17\n");
  BOOST_TEST(run_noonleaf(*this, "log demo feel p --feel dry --date 2025-07-15 --at 08:00").exit_code == 0);
  const std::string today = run_noonleaf(*this, "today demo").out;
  const std::size_t place = today.find("By hand: ");
  BOOST_REQUIRE_MESSAGE(place != std::string::npos, today);
  const std::string line = today.substr(place, 60);
  const double gallons = number_in(line.substr(9)), cans = number_in(line.substr(line.find("gal, ") + 5));
  BOOST_TEST(line.find("cans of 2 gal") != std::string::npos, line);
  BOOST_TEST(std::abs(cans - gallons / 2) <= 0.75, line);  // whole cans; gallons are printed without decimals
  BOOST_TEST(today.find("watering can: its rate is a guess") == std::string::npos);
  BOOST_TEST(run_noonleaf(*this, "check demo").exit_code == 0);
}

// Tomatoes of Monday 14 July: 60 minutes were planned, and nobody wrote down whether they ran.
BOOST_FIXTURE_TEST_CASE(a_run_that_nobody_wrote_down_is_asked_about_until_somebody_does, DemoPlace) {
  const std::string open = run_noonleaf(*this, "today demo").out;
  BOOST_TEST(open.find("Not in the journal, done or not: the run of Monday 14 July (60 minutes).") !=
                 std::string::npos,
             open);
  for (const char* day : {"2025-07-14", "2025-07-15"}) {
    const std::string words = std::string("log demo water a --minutes 0 --note thunder --date ") + day;
    BOOST_TEST(run_noonleaf(*this, words).exit_code == 0);
  }
  BOOST_TEST(run_noonleaf(*this, "today demo").out.find("done or not") == std::string::npos);
}

BOOST_AUTO_TEST_SUITE_END()
