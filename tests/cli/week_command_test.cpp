#include <string>

#include <boost/test/unit_test.hpp>
#include <nlohmann/json.hpp>

#include "cli/command_run.hpp"

namespace {

using Json = nlohmann::json;

/// The alerts of an answer, by kind and bed, with their likelihood.
std::string alerts_of(const Json& answer) {
  std::string all;
  for (const Json& alert : answer.at("alerts"))
    all += alert.at("kind").get<std::string>() + " " + alert.at("bed").get<std::string>() + " " +
           alert.at("likelihood").dump() + "\n";
  return all;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(week_command)

BOOST_FIXTURE_TEST_CASE(the_alerts_are_those_of_today, Workplace) {
  BOOST_REQUIRE(run_noonleaf(*this, "new demo --demo").exit_code == 0);
  const Json today = Json::parse(run_noonleaf(*this, "today demo --format json").out);
  const Json week = Json::parse(run_noonleaf(*this, "week demo --format json").out);
  BOOST_TEST(!alerts_of(today).empty());
  BOOST_TEST(alerts_of(week) == alerts_of(today));
  // A plan that begins on another day has none.
  const Json later = Json::parse(run_noonleaf(*this, "week demo --from 2025-07-18 --format json").out);
  BOOST_TEST(later.at("alerts").empty());
  BOOST_TEST(later.at("likelihood").at("members") == 1000);
}

BOOST_FIXTURE_TEST_CASE(every_tried_bed_has_shares_for_every_day, Workplace) {
  BOOST_REQUIRE(run_noonleaf(*this, "new demo --demo").exit_code == 0);
  const Json week = Json::parse(run_noonleaf(*this, "week demo --days 14 --format json").out);
  std::size_t plantings = 0;
  for (const Json& bed : week.at("beds"))
    for (const Json& planting : bed.at("likelihood")) {
      ++plantings;
      BOOST_TEST(planting.at("days").size() == 14U);
      BOOST_TEST(planting.at("low_quarter_days").size() == 14U);
    }
  BOOST_TEST(plantings == 5U);  // tomato, squash, bean, strawberry, chard; the carrots are seed
}

BOOST_FIXTURE_TEST_CASE(how_sure_is_in_text_and_page_and_not_in_table_and_calendar, Workplace) {
  BOOST_REQUIRE(run_noonleaf(*this, "new demo --demo").exit_code == 0);
  for (const std::string format : {"text", "html"}) {
    const std::string english = run_noonleaf(*this, "week demo --format " + format).out;
    const std::string spanish = run_noonleaf(*this, "week demo --lang es --format " + format).out;
    BOOST_TEST(english.find("How sure, with the runs of the sheet") != std::string::npos);
    BOOST_TEST(english.find("Alerts for Wednesday, July 16") != std::string::npos);
    BOOST_TEST(spanish.find("Qué tan probable, con los riegos de la hoja") != std::string::npos);
    BOOST_TEST(spanish.find("Avisos para el miércoles 16 de julio") != std::string::npos);
    for (const std::string word : {"bed e", "short of water", "the weathers", "Strawberry"})
      BOOST_TEST(spanish.find(word) == std::string::npos, word + " is English");
  }
  for (const std::string format : {"csv", "ics"})
    BOOST_TEST(run_noonleaf(*this, "week demo --format " + format).out.find("How sure") == std::string::npos);
}

BOOST_AUTO_TEST_SUITE_END()
