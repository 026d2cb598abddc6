#include "noonleaf/heat/people.hpp"

#include <cmath>
#include <fstream>
#include <locale>
#include <sstream>
#include <string>

#include <boost/test/unit_test.hpp>

#include "heat/hot_day.hpp"
#include "refusal.hpp"

using noonleaf::coolest_hours;
using noonleaf::heat_category;
using noonleaf::heat_index_c;
using noonleaf::HeatCategory;
using noonleaf::missing;
using noonleaf::people_day;
using noonleaf::PeopleDay;

namespace {

struct Row {
  std::string kind;
  double t_f = missing, rh_pct = missing, index_f = missing;
};

std::vector<Row> rows() {
  std::ifstream file(NOONLEAF_SOURCE_DIR "/tests/heat/heat_index.csv");
  std::vector<Row> read;
  for (std::string line; std::getline(file, line);) {
    std::istringstream text(line);
    text.imbue(std::locale::classic());
    Row row;
    char comma;
    if (std::getline(text, row.kind, ',') && text >> row.t_f >> comma >> row.rh_pct >> comma >> row.index_f)
      read.push_back(row);
  }
  return read;
}

double celsius(double t_f) { return (t_f - 32) / 1.8; }

double index_f(double t_f, double rh_pct) {
  return heat_index_c({.t_c = celsius(t_f), .rh_pct = rh_pct}) * 1.8 + 32;
}

// What the page adds at 80 to 87 °F above 85 % and the printed chart leaves out.
double humid_adjustment_f(double t_f, double rh_pct) {
  return rh_pct > 85 && t_f <= 87 ? ((rh_pct - 85) / 10) * ((87 - t_f) / 5) : 0;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(people)

BOOST_AUTO_TEST_CASE(matches_the_chart) {
  int cells = 0;
  for (const Row& row : rows()) {
    if (row.kind != "chart") continue;
    ++cells;
    BOOST_TEST_CONTEXT(row.t_f << " °F, " << row.rh_pct << " %")
    BOOST_CHECK_SMALL(index_f(row.t_f, row.rh_pct) - humid_adjustment_f(row.t_f, row.rh_pct) - row.index_f,
                      0.5);
  }
  BOOST_TEST(cells == 86);
}

BOOST_AUTO_TEST_CASE(matches_the_equations_worked_apart) {
  int values = 0;
  for (const Row& row : rows()) {
    if (row.kind != "derived") continue;
    ++values;
    BOOST_TEST_CONTEXT(row.t_f << " °F, " << row.rh_pct << " %")
    BOOST_CHECK_SMALL(index_f(row.t_f, row.rh_pct) - row.index_f, 0.005);
  }
  BOOST_TEST(values == 13);
}

BOOST_AUTO_TEST_CASE(the_worked_example_of_the_weather_service) {
  // NWS heat index safety page: "if the air temperature is 96 °F and the relative humidity is 65 %, the heat
  // index ... is 121 °F"; from memory.
  BOOST_CHECK_SMALL(index_f(96, 65) - 121, 0.5);
}

BOOST_AUTO_TEST_CASE(more_heat_and_more_damp_never_feel_cooler) {
  // Inside one branch. Between the simple form and the regression the published rule itself steps.
  for (double rh = 40; rh <= 85; rh += 1)
    for (double t_f = 82; t_f < 110; t_f += 0.5) {
      BOOST_TEST(index_f(t_f + 0.5, rh) > index_f(t_f, rh));
      BOOST_TEST(index_f(t_f, rh + 1) > index_f(t_f, rh));
    }
}

BOOST_AUTO_TEST_CASE(the_chart_ends_at_110_and_137) {
  const auto beyond = [](double t_f, double index) {
    return noonleaf::beyond_heat_index_chart(celsius(t_f), celsius(index));
  };
  for (const Row& row : rows())
    if (row.kind == "chart")
      BOOST_TEST(!beyond(row.t_f, row.index_f), row.t_f << " °F, " << row.rh_pct << " %");
  BOOST_TEST(beyond(111, 110));
  BOOST_TEST(beyond(100, 138));
  BOOST_TEST(!beyond(110.4, 137.4));  // read as 110 and 137 on the screen
  BOOST_TEST(beyond(118, index_f(118, 60)));
  BOOST_TEST(!noonleaf::beyond_heat_index_chart(celsius(118), missing));
  BOOST_TEST(noonleaf::beyond_heat_index_chart(missing, celsius(138)));
  BOOST_TEST(!noonleaf::beyond_heat_index_chart(missing, celsius(120)));
}

BOOST_AUTO_TEST_CASE(categories_as_published) {
  const auto of = [](double index) { return *heat_category(celsius(index)); };
  BOOST_CHECK(of(79) == HeatCategory::below_caution);
  BOOST_CHECK(of(80) == HeatCategory::caution);
  BOOST_CHECK(of(89) == HeatCategory::caution);
  BOOST_CHECK(of(90) == HeatCategory::extreme_caution);
  BOOST_CHECK(of(102) == HeatCategory::extreme_caution);
  BOOST_CHECK(of(103) == HeatCategory::danger);
  BOOST_CHECK(of(124) == HeatCategory::danger);
  BOOST_CHECK(of(125) == HeatCategory::extreme_danger);
  BOOST_CHECK(of(102.6) == HeatCategory::danger);  // reads as 103 on the screen
  BOOST_TEST(!heat_category(missing).has_value());
  BOOST_TEST(label(HeatCategory::extreme_caution) == "Extreme Caution");
}

BOOST_AUTO_TEST_CASE(no_class_is_called_harmless) {
  for (const HeatCategory category :
       {HeatCategory::below_caution, HeatCategory::caution, HeatCategory::extreme_caution,
        HeatCategory::danger, HeatCategory::extreme_danger}) {
    const std::string words = std::string(label(category)) + std::string(effects(category));
    BOOST_TEST(words.find("safe") == std::string::npos);
    BOOST_TEST(words.find("harmless") == std::string::npos);
  }
}

BOOST_AUTO_TEST_CASE(a_day_outside) {
  const PeopleDay day = people_day(noonleaf::hours_of_day(hot_day()).hours);
  BOOST_TEST(day.peak_hour >= 14);
  BOOST_TEST(day.peak_hour <= 16);
  BOOST_TEST(day.peak_c == day.heat_index_c[static_cast<std::size_t>(day.peak_hour)]);
  BOOST_CHECK(day.peak_category == HeatCategory::danger);
  BOOST_TEST(*coolest_hours(day) == 6);  // the night's cool is still there
  BOOST_TEST(*coolest_hours(day, {.from_h = 9, .until_h = 15, .length_h = 2}) == 9);
  BOOST_TEST(*coolest_hours(day, {.from_h = 14, .until_h = 20, .length_h = 2}) == 18);
}

BOOST_AUTO_TEST_CASE(missing_hours_are_left_out) {
  noonleaf::WeatherHours hours = noonleaf::hours_of_day(hot_day()).hours;
  hours[15].ea_kpa = missing;
  const PeopleDay day = people_day(hours);
  BOOST_TEST(std::isnan(day.heat_index_c[15]));
  BOOST_TEST(day.peak_hour != 15);
  BOOST_TEST(*coolest_hours(day, {.from_h = 14, .until_h = 18, .length_h = 2}) == 16);
  BOOST_TEST(std::isnan(people_day({}).peak_c));
  BOOST_TEST(!people_day({}).peak_category.has_value());
  BOOST_TEST(!coolest_hours(people_day({})).has_value());
  BOOST_TEST(std::isnan(heat_index_c({.t_c = 30})));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  BOOST_CHECK_EXCEPTION(heat_index_c({.t_c = 96, .rh_pct = 65}), noonleaf::Error, NamesField{"t_c"});
  BOOST_CHECK_EXCEPTION(heat_index_c({.t_c = 30, .rh_pct = 101}), noonleaf::Error, NamesField{"rh_pct"});
  BOOST_CHECK_EXCEPTION(coolest_hours({}, {.from_h = 8, .until_h = 9, .length_h = 2}), noonleaf::Error,
                        NamesField{"work_window"});
}

BOOST_AUTO_TEST_SUITE_END()
