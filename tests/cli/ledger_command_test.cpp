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
