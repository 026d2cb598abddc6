#include "noonleaf/report/phrases.hpp"

#include <string>

#include <boost/test/unit_test.hpp>

#include "noonleaf/report/local_text.hpp"

using namespace noonleaf;
using namespace std::chrono_literals;
using std::chrono::minutes;

BOOST_AUTO_TEST_SUITE(phrases)

BOOST_AUTO_TEST_CASE(no_phrase_promises_that_something_is_without_danger) {
  for (std::size_t index = 0; index < phrase_count; ++index) {
    std::string both = " " + std::string(phrase(Language::en, static_cast<Phrase>(index))) + " " +
                       std::string(phrase(Language::es, static_cast<Phrase>(index))) + " ";
    for (const char* word : {"safe", "Safe", "seguro", "segura", "Seguro", "Segura"})
      BOOST_TEST(both.find(word) == std::string::npos, both);
  }
}

BOOST_AUTO_TEST_CASE(what_is_filled_in_is_not_filled_again) {
  BOOST_TEST(fill(Language::en, Phrase::page_of, {{"page", "{pages}"}, {"pages", "2"}}) ==
             "Page {pages} of 2");
  BOOST_TEST(fill(Language::es, Phrase::page_of, {{"page", "1"}, {"pages", "2"}}) == "Página 1 de 2");
}

BOOST_AUTO_TEST_CASE(dates_times_and_numbers_by_language) {
  const LocalText en(Language::en, UnitSystem::us), es(Language::es, UnitSystem::us),
      metric(Language::es, UnitSystem::metric);
  const auto day = 2025y / std::chrono::July / 16;
  BOOST_TEST(en.day(day) == "Wednesday, July 16");
  BOOST_TEST(es.day(day) == "miércoles 16 de julio");
  BOOST_TEST(es.day_heading(day) == "Miércoles 16 de julio");
  BOOST_TEST(es.short_day(day) == "mié 16");
  BOOST_TEST(en.clock(6h + 5min) == "6:05 am");
  BOOST_TEST(es.clock(18h + 5min) == "6:05 p.m.");
  BOOST_TEST(es.the_clock(minutes(13h)) == "la 1:00 p.m.");
  BOOST_TEST(es.the_clock(minutes(7h)) == "las 7:00 a.m.");
  BOOST_TEST(en.clock(minutes(12h)) == "12:00 noon");
  BOOST_TEST(es.clock(minutes(12h)) == "12:00 del día");
  BOOST_TEST(en.clock(minutes(0)) == "12:00 am");
  BOOST_TEST(metric.clock(6h + 5min) == "06:05");
  BOOST_TEST(es.number(0.25, 2) == "0,25");
  BOOST_TEST(metric.depth(6.5) == "6,5 mm");
}

BOOST_AUTO_TEST_CASE(rain_is_rounded_up_to_what_a_gauge_shows) {
  const LocalText en(Language::en, UnitSystem::us), es(Language::es, UnitSystem::us),
      metric(Language::en, UnitSystem::metric);
  BOOST_TEST(en.gauge_mark(1.0) == "1/4");
  BOOST_TEST(en.gauge_mark(6.35) == "1/4");  // 0.25 in exactly
  BOOST_TEST(en.gauge_mark(6.4) == "1/2");
  BOOST_TEST(en.gauge_mark(25.4) == "1");
  BOOST_TEST(en.gauge_mark(30.0) == "1 1/4");
  BOOST_TEST(metric.gauge_mark(4.1) == "5");
}

BOOST_AUTO_TEST_CASE(lists_join_as_they_are_spoken) {
  const LocalText en(Language::en, UnitSystem::us), es(Language::es, UnitSystem::us);
  BOOST_TEST(en.list({"A", "B", "C"}) == "A, B and C");
  BOOST_TEST(es.list({"A", "B"}) == "A y B");
  BOOST_TEST(es.list({"A", "I"}) == "A e I");
  BOOST_TEST(es.list({"A", "hierbas"}) == "A y hierbas");
}

BOOST_AUTO_TEST_CASE(control_characters_do_not_reach_the_sheet) {
  BOOST_TEST(plain_text("a\x1b[31m\nb\xC2\x9B"
                        "c") == "a [31m b c");
  BOOST_TEST(plain_text("mañana é") == "mañana é");
}

BOOST_AUTO_TEST_SUITE_END()
