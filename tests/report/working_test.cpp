#include "noonleaf/report/working.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

using noonleaf::SymbolValues;
using noonleaf::work_out;

namespace {

SymbolValues some() {
  SymbolValues known;
  known.set("De", 7, "mm");
  known.set("De,i-1", 9, "mm");
  known.set("Kc", 0.5, "");
  known.set("Kc max", 1.2, "");
  known.set("p", 0.4, "");
  known.set("p(Tab)", 0.3, "");
  known.set("dDr", -2, "mm");
  known.set("e°(Tmax)", 4, "kPa");
  return known;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(working)

BOOST_AUTO_TEST_CASE(arithmetic_as_the_tables_write_it) {
  const SymbolValues known = some();
  const std::pair<const char*, double> cases[] = {
      {"1 + 2 3", 7},
      {"8 / 2 3", 12},  // left to right, as on paper with a solidus
      {"2 3^2", 18},
      {"-2 + 5", 3},
      {"min(3, max(1, 2))", 2},
      {"(1 + 1)^(1 + 0.5 2)", 4},
      {"exp(0) + sqrt(9) + cos(0)", 5},
      {"2 pi", 2 * 3.14159265358979},
      {"De,i-1 - De", 2},
      {"Kc max - Kc", 0.7},
      {"p(Tab) + p", 0.7},
      {"De + dDr", 5},
      {"e°(Tmax) / 2", 2}};
  for (const auto& [equation, value] : cases) BOOST_TEST_CONTEXT(equation)
  BOOST_CHECK_SMALL(work_out(equation, known).value - value, 1e-12);
}

BOOST_AUTO_TEST_CASE(numbers_are_put_in_with_their_units) {
  const auto working = work_out("max(0, De,i-1 + dDr - 2 De)", some());
  BOOST_TEST(working.numbers == "max(0, 9 mm + (-2 mm) - 2 × 7 mm)");
  BOOST_TEST(working.value == 0);
  BOOST_REQUIRE(working.inputs.size() == 3U);
  BOOST_TEST(working.inputs[0].symbol == "De,i-1");
  BOOST_TEST(working.inputs[2].unit == "mm");
}

BOOST_AUTO_TEST_CASE(what_is_no_formula_has_no_numbers) {
  for (const char* words : {"by texture", "De and more", "Zr - De", "1 / ", "min(1)", "2)", "", "De,i-2"}) {
    BOOST_TEST(noonleaf::is_missing(work_out(words, some()).value), words);
    BOOST_TEST(work_out(words, some()).numbers.empty());
  }
}

BOOST_AUTO_TEST_CASE(a_symbol_set_again_has_its_latest_value) {
  SymbolValues known = some();
  known.set("De", 3, "mm");
  BOOST_TEST(work_out("De", known).value == 3);
  known.set("De", noonleaf::missing, "mm");  // what is missing changes nothing
  BOOST_TEST(work_out("De", known).value == 3);
}

BOOST_AUTO_TEST_CASE(four_significant_digits) {
  const std::pair<double, const char*> cases[] = {
      {39.0349, "39.03"}, {0.003722, "0.003722"}, {1e-15, "0"}, {2, "2"},
      {-0.5, "-0.5"},     {12345.6, "12346"},     {100, "100"}, {0.000665, "0.000665"}};
  for (const auto& [value, text] : cases) BOOST_TEST(noonleaf::significant_text(value) == text);
}

BOOST_AUTO_TEST_SUITE_END()
