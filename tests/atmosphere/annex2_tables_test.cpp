// The annex 2 tables of FAO-56 against the equations that they tabulate.
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/atmosphere/wind.hpp"

#include "csv_rows.hpp"
#include "number_in.hpp"

namespace {

struct Printed {
  std::string table, quantity;
  double input = 0.0;
  int day_of_year = 0;
  double printed = 0.0, half_digit = 0.0;
};

std::ostream& operator<<(std::ostream& out, const Printed& row) {
  return out << "FAO-56 table " << row.table << " at " << row.input << ", J " << row.day_of_year;
}

std::vector<Printed> rows_of(const std::string& wanted) {
  std::vector<Printed> rows;
  for (const std::vector<std::string>& cell : csv_rows("atmosphere/fao56_annex2.csv")) {
    if (cell.front() != wanted) continue;
    rows.push_back({cell[0], cell[1], number_in(cell[2]), cell[3].empty() ? 0 : std::stoi(cell[3]),
                    number_in(cell[4]), number_in(cell[5])});
  }
  return rows;
}

double computed(const Printed& row) {
  if (row.table == "2.1") return noonleaf::atmospheric_pressure_kpa(row.input);
  if (row.table == "2.2") {
    return noonleaf::psychrometric_constant_kpa_c(noonleaf::atmospheric_pressure_kpa(row.input));
  }
  if (row.table == "2.3") return noonleaf::saturation_vapour_pressure_kpa(row.input);
  if (row.table == "2.4") return noonleaf::saturation_slope_kpa_c(row.input);
  if (row.table == "2.6") return noonleaf::extraterrestrial_radiation_mj_m2_d({row.input, row.day_of_year});
  if (row.table == "2.7") return noonleaf::daylight_h({row.input, row.day_of_year});
  if (row.table == "2.8") {  // in dry air under a clear sky Rnl is 0.34 sigma T⁴
    return noonleaf::net_longwave_radiation_mj_m2_d({row.input, row.input, 0.0, 20.0, 20.0}) / 0.34;
  }
  return noonleaf::wind_speed_at_2m_m_s({1.0, row.input});
}

/// Ra with 2 pi / 365 cut to 0.0172 and 24 (60) / pi Gsc to 37.6, as older printings of the equations have
/// them.
double ra_with_short_constants(double latitude_deg, int day_of_year) {
  const double latitude = latitude_deg * std::numbers::pi / 180.0;
  const double declination = 0.409 * std::sin(0.0172 * day_of_year - 1.39);
  const double cosine = -std::tan(latitude) * std::tan(declination);
  const double ws = cosine >= 1.0 ? 0.0 : cosine <= -1.0 ? std::numbers::pi : std::acos(cosine);
  return 37.6 * (1.0 + 0.033 * std::cos(0.0172 * day_of_year)) *
         (ws * std::sin(latitude) * std::sin(declination) +
          std::cos(latitude) * std::cos(declination) * std::sin(ws));
}

}  // namespace

BOOST_AUTO_TEST_SUITE(annex2_tables)

BOOST_DATA_TEST_CASE(pressure_2_1, rows_of("2.1"), row) {
  BOOST_CHECK_SMALL(computed(row) - row.printed, row.half_digit);
}
BOOST_DATA_TEST_CASE(psychrometric_constant_2_2, rows_of("2.2"), row) {
  BOOST_CHECK_SMALL(computed(row) - row.printed, row.half_digit);
}
BOOST_DATA_TEST_CASE(saturation_vapour_pressure_2_3, rows_of("2.3"), row) {
  BOOST_CHECK_SMALL(computed(row) - row.printed, row.half_digit);
}
BOOST_DATA_TEST_CASE(slope_2_4, rows_of("2.4"), row) {
  BOOST_CHECK_SMALL(computed(row) - row.printed, row.half_digit);
}
BOOST_DATA_TEST_CASE(daylight_2_7, rows_of("2.7"), row) {
  BOOST_CHECK_SMALL(computed(row) - row.printed, row.half_digit);
}
BOOST_DATA_TEST_CASE(emission_2_8, rows_of("2.8"), row) {
  BOOST_CHECK_SMALL(computed(row) - row.printed, row.half_digit);
}
BOOST_DATA_TEST_CASE(wind_factor_2_9, rows_of("2.9"), row) {
  BOOST_CHECK_SMALL(computed(row) - row.printed, row.half_digit);
}

// Table 2.6 and eq. 21 disagree: 100 of these 459 values lie more than half a digit (up to 0.134) from the
// equation as printed. They are not errors of ours: with 2 pi / 365 cut to 0.0172 and 24 (60) / pi Gsc
// to 37.6, all but the five below are met at half a digit, so the table was made with those. The equation as
// printed is what we hold right; how far its values lie from the table is counted below.
BOOST_DATA_TEST_CASE(extraterrestrial_radiation_2_6, rows_of("2.6"), row) {
  // Off by more, whatever the constants: misprints, or slips of the memory that these rows come from.
  const std::map<std::pair<double, int>, double> odd = {
      {{58, 227}, 0.09}, {{-18, 74}, 0.06}, {{-24, 349}, 0.07}, {{-28, 349}, 0.12}, {{-40, 227}, 0.12}};
  const auto known = odd.find({row.input, row.day_of_year});
  const double as_tabulated = ra_with_short_constants(row.input, row.day_of_year);
  const double tolerance = known == odd.end() ? row.half_digit : known->second;
  BOOST_CHECK_SMALL(as_tabulated - row.printed, tolerance);
}

// The numbers of docs/atmosphere.md.
BOOST_AUTO_TEST_CASE(extraterrestrial_radiation_2_6_by_the_equation_as_printed) {
  int beyond_half_a_digit = 0;
  double farthest = 0.0;
  const std::vector<Printed> rows = rows_of("2.6");
  for (const Printed& row : rows) {
    const double off = std::abs(computed(row) - row.printed);
    beyond_half_a_digit += off > row.half_digit;
    farthest = std::max(farthest, off);
  }
  BOOST_TEST(rows.size() == 459U);
  BOOST_TEST(beyond_half_a_digit == 100);
  BOOST_CHECK_SMALL(farthest - 0.134, 0.0005);
}

BOOST_AUTO_TEST_CASE(no_table_is_empty) {
  for (const char* table : {"2.1", "2.2", "2.3", "2.4", "2.6", "2.7", "2.8", "2.9"}) {
    BOOST_TEST(rows_of(table).size() >= 8U, table);
  }
}

BOOST_AUTO_TEST_SUITE_END()
