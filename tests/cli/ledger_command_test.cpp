#include <sstream>
#include <string>

#include <boost/test/unit_test.hpp>

#include "command_run.hpp"

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

/// Takes the rows of 5 to 12 July out of the station's file.
void cut_a_gap(const DemoPlace& place) {
  std::istringstream rows(place.read("demo/weather/station_2025.csv"));
  std::string kept;
  for (std::string row; std::getline(rows, row);) {
    const bool in_gap = row >= "2025-07-05" && row < "2025-07-13";
    if (!in_gap) kept += row + "\n";
  }
  place.write("demo/weather/station_2025.csv", kept);
}

BOOST_FIXTURE_TEST_CASE(a_gap_in_the_weather_is_counted_and_explained, DemoPlace) {
  cut_a_gap(*this);
  const std::string words = "ledger demo --from 2025-06-01 --to 2025-07-15";
  check_golden("ledger_gap.txt", run_noonleaf(*this, words).out);
  const std::string csv = run_noonleaf(*this, words + " --format csv").out;
  BOOST_TEST(csv.find(",days,days_without_weather,days_without_account\n") != std::string::npos);
  BOOST_TEST(csv.find(",15,8,12\n") != std::string::npos);  // July: 13 to 15 are in the account
  BOOST_TEST(csv.find(",30,0,30\n") != std::string::npos);
  const std::string june = run_noonleaf(*this, "ledger demo --from 2025-06-01 --to 2025-06-30").out;
  BOOST_TEST(june.find("not known") == june.find("not known: what fell beside"));
}

BOOST_FIXTURE_TEST_CASE(check_names_of_a_gap_what_there_is, DemoPlace) {
  cut_a_gap(*this);
  check_golden("check_gap.txt", run_noonleaf(*this, "check demo").out);
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

BOOST_AUTO_TEST_SUITE_END()
