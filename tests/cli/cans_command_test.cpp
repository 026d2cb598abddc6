#include <cmath>
#include <cstdlib>

#include <boost/test/unit_test.hpp>

#include "command_run.hpp"
#include "json_number.hpp"

namespace {

std::string column(const std::string& header, const std::vector<double>& values) {
  std::ostringstream text;
  text << header << "\n";
  for (const double value : values) text << value << "\n";
  return text.str();
}

constexpr const char* north_is_dry =
    "x_ft,y_ft,depth_in\n0,0,0.30\n4,0,0.34\n8,0,0.31\n12,0,0.28\n0,4,0.24\n4,4,0.27\n8,4,0.26\n12,4,0.22\n"
    "0,8,0.14\n4,8,0.15\n8,8,0.11\n12,8,0.12\n";

}  // namespace

BOOST_AUTO_TEST_SUITE(cans_command)

// Worked by hand from the definitions (low quarter: Merriam & Keller 1978; CU: Christiansen 1942).
BOOST_AUTO_TEST_CASE(rate_and_evenness_of_known_cans) {
  const Workplace place;
  place.write("ten.csv", column("depth_mm", {4, 5, 6, 7, 8, 8, 9, 10, 11, 12}));
  const std::string ten = run_noonleaf(place, "cans ten.csv --minutes 30 --format json").out;
  BOOST_TEST(std::abs(number_of(ten, "rate_mm_h") - 16.0) < 1e-9);
  BOOST_TEST(std::abs(number_of(ten, "du_lq_frac") - 0.6) < 1e-9);
  BOOST_TEST(std::abs(number_of(ten, "cu_frac") - 0.75) < 1e-9);
  BOOST_TEST(ten.find("\"quarter_rule\": \"fractional_quarter\"") != std::string::npos);
  place.write("ml.csv", column("caught_ml", {18, 22, 25, 20, 16, 24, 30, 28, 21, 19, 23, 27,
                                             26, 24, 20, 17, 15, 22, 29, 31, 25, 21, 18, 19}));
  const std::string ml = run_noonleaf(place, "cans ml.csv --minutes 15 --can-diameter 83 --format json").out;
  BOOST_TEST(std::abs(number_of(ml, "du_lq_frac") - 0.763) < 0.0005);
  BOOST_TEST(std::abs(number_of(ml, "cu_frac") - 0.8352) < 0.0005);
  // 22.5 ml in a can of 83 mm: 4 x 22500 / (pi 83^2) = 4.1585 mm in 15 minutes
  BOOST_TEST(std::abs(number_of(ml, "rate_mm_h") - 4 * 4.1585) < 0.001);
  BOOST_TEST(run_noonleaf(place, "cans ml.csv --minutes 15 --can-diameter 8.3cm --format json").out == ml);
}

BOOST_AUTO_TEST_CASE(inches_and_millimetres_agree) {
  const Workplace place;
  place.write("in.csv", column("depth_in", {0.2, 0.25, 0.3, 0.3, 0.35, 0.25, 0.2, 0.15}));
  place.write("mm.csv", column("depth_mm", {5.08, 6.35, 7.62, 7.62, 8.89, 6.35, 5.08, 3.81}));
  const std::string inches = run_noonleaf(place, "cans in.csv --minutes 15 --format json").out;
  const std::string metric = run_noonleaf(place, "cans mm.csv --minutes 15 --format json").out;
  for (const char* key : {"rate_mm_h", "du_lq_frac", "cu_frac"}) {
    BOOST_TEST(std::abs(number_of(inches, key) - number_of(metric, key)) < 1e-9, key);
  }
  BOOST_TEST(std::abs(number_of(inches, "cu_frac") - 0.8) < 1e-9);
}

BOOST_AUTO_TEST_CASE(a_dry_edge_is_drawn_and_named) {
  const Workplace place;
  place.write("cans.csv", north_is_dry);
  const CommandRun cans = run_noonleaf(place, "cans cans.csv --minutes 15");
  BOOST_TEST(cans.exit_code == 0, cans.err);
  check_golden("cans.txt", cans.out);
  BOOST_TEST(cans.out.find("the north edge gets about half") != std::string::npos);
  const std::string svg = run_noonleaf(place, "cans cans.csv --minutes 15 --format svg").out;
  check_golden("cans.svg", svg);
}

BOOST_AUTO_TEST_CASE(a_sheet_from_elsewhere_reads_too) {
  const Workplace place;
  place.write("semi.csv", "\"can\";\"depth_mm\"\r\n\"1\";\"4,5\"\r\n2;5\r\n3;6,25\r\n");
  const std::string json = run_noonleaf(place, "cans semi.csv --minutes 60 --format json").out;
  BOOST_TEST(std::abs(number_of(json, "rate_mm_h") - 5.25) < 1e-9);
}

BOOST_AUTO_TEST_CASE(what_is_no_can_test_is_refused) {
  const Workplace place;
  place.write("typo.csv", "depht_mm\n4\n5\n6\n");
  place.write("text.csv", "depth_mm\n4\n5x\n6\n");
  place.write("ml.csv", "caught_ml\n20\n21\n22\n");
  place.write("both.csv", "depth_mm,depth_in\n4,5\n");
  place.write("half.csv", "depth_mm,x_m\n4,1\n5,2\n6,3\n");
  place.write("gap.csv", "depth_mm,x_m,y_m\n4,0,0\n-5,1,0\n6,,0\n");
  place.write("few.csv", "depth_mm\n4\n5\n");
  place.write("empty.csv", "");
  std::string complaints;
  for (const char* file : {"typo.csv", "text.csv", "ml.csv", "both.csv", "half.csv", "gap.csv", "few.csv",
                           "empty.csv", "nowhere.csv"}) {
    const CommandRun refused = run_noonleaf(place, std::string("cans ") + file + " --minutes 15");
    BOOST_TEST(refused.exit_code == 1, file);
    BOOST_TEST(refused.out == "");
    complaints += refused.err;
  }
  place.write("good.csv", "depth_mm\n4\n5\n6\n");
  const CommandRun no_places = run_noonleaf(place, "cans good.csv --minutes 15 --format svg");
  BOOST_TEST(no_places.exit_code == 1);
  BOOST_TEST(run_noonleaf(place, "cans good.csv").exit_code == 2);
  check_golden("refused/cans.txt", complaints + no_places.err);
}

BOOST_AUTO_TEST_SUITE_END()
