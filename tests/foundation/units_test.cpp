#include "noonleaf/units.hpp"

#include <cmath>
#include <ostream>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/missing.hpp"

using namespace noonleaf;

namespace {

struct Identity {
  double ours, expected, tolerance;
  const char* source;
};
std::ostream& operator<<(std::ostream& out, const Identity& row) { return out << row.source; }

// Definitions, worked to the last digit by hand from 1 in = 25.4 mm, 1 gal = 231 in3. Tolerance: half the
// last digit written, or rounding of a double where the definition ends.
const std::vector<Identity> identities = {
    {litres_from_gallons(1), 231 * 0.0254 * 0.0254 * 0.0254 * 1000, 1e-12, "gallon = 231 cubic inches"},
    {litres_per_cubic_foot / litres_per_gallon, 7.480519, 5e-7, "1728/231 gal per cubic foot"},
    {litres_from_ccf(1), 100 * litres_from_cubic_feet(1), 1e-9, "CCF = 100 cubic feet"},
    {gallons_from_litres(litres_from_ccf(1)), 748.0519, 5e-5, "CCF in gallons, printed 748"},
    {m2_from_square_feet(1), 0.3048 * 0.3048, 1e-16, "square foot"},
    {m2_from_acres(1), m2_from_square_feet(43560), 1e-9, "acre = 43 560 square feet"},
    {gallons_from_litres(mm_from_inches(1) * m2_from_square_feet(1)), 0.623377, 5e-7,
     "1 in on 1 ft2 = 144/231 gal; printed 0.623"},
    {gallons_from_litres(mm_from_inches(1) * m2_from_square_feet(1000)), 623.3766, 5e-5,
     "1 in on 1000 ft2; printed 623"},
    {gallons_from_litres(mm_from_inches(1) * m2_from_acres(1)), 27154.29, 5e-3, "acre-inch; printed 27 154"},
    {m_s_from_mph(1), 0.44704, 1e-16, "mile per hour, exact"},
    {m_s_from_km_h(10), 2.7778, 5e-5, "10 km/h"},
    {m_s_from_knots(1), 0.514444, 5e-7, "knot = 1852 m/h"},
    {kpa_from_psi(1), 6.894757, 5e-7, "NIST SP 811: psi 6.894 757 kPa"},
    {kpa_from_inches_mercury(29.92), 101.32, 5e-3,
     "standard atmosphere 29.92 inHg = 101.325 kPa, inHg rounded"},
    {kpa_from_hpa(1013.25), 101.325, 1e-12, "standard atmosphere"},
    {celsius_from_fahrenheit(212), 100, 1e-12, "boiling"},
    {celsius_from_fahrenheit(-40), -40, 1e-12, "where both scales meet"},
    {celsius_from_fahrenheit(103), 39.44, 5e-3, "a hot afternoon"},
    {mj_m2_d_from_w_m2(1), 0.0864, 1e-16, "FAO-56 table 3: 1 W/m2 = 0.0864 MJ/m2/d"},
};

using Conversion = double (*)(double);
struct RoundTrip {
  Conversion there, back;
  const char* name;
};
std::ostream& operator<<(std::ostream& out, const RoundTrip& row) { return out << row.name; }
const std::vector<RoundTrip> round_trips = {
    {mm_from_inches, inches_from_mm, "inch"},
    {m_from_feet, feet_from_m, "foot"},
    {m2_from_square_feet, square_feet_from_m2, "square foot"},
    {m2_from_acres, acres_from_m2, "acre"},
    {litres_from_gallons, gallons_from_litres, "gallon"},
    {litres_from_cubic_feet, cubic_feet_from_litres, "cubic foot"},
    {litres_from_ccf, ccf_from_litres, "CCF"},
    {litres_from_m3, m3_from_litres, "cubic metre"},
    {m_s_from_mph, mph_from_m_s, "mile per hour"},
    {m_s_from_km_h, km_h_from_m_s, "km/h"},
    {m_s_from_knots, knots_from_m_s, "knot"},
    {celsius_from_fahrenheit, fahrenheit_from_celsius, "Fahrenheit"},
    {kpa_from_psi, psi_from_kpa, "psi"},
    {kpa_from_inches_mercury, inches_mercury_from_kpa, "inHg"},
    {kpa_from_hpa, hpa_from_kpa, "hPa"},
    {mj_m2_d_from_w_m2, w_m2_from_mj_m2_d, "W/m2"},
};

}  // namespace

BOOST_AUTO_TEST_SUITE(units)

BOOST_DATA_TEST_CASE(definitions_hold, boost::unit_test::data::make(identities), row) {
  BOOST_CHECK_SMALL(row.ours - row.expected, row.tolerance);
}

BOOST_DATA_TEST_CASE(there_and_back_is_where_it_started, boost::unit_test::data::make(round_trips), row) {
  for (const double value : {-40.0, 0.0, 0.1, 1.0, 17.3, 1234.5})
    BOOST_CHECK_SMALL(row.back(row.there(value)) - value, 1e-12 * (40 + std::abs(value)));
}

BOOST_DATA_TEST_CASE(missing_stays_missing, boost::unit_test::data::make(round_trips), row) {
  BOOST_TEST(is_missing(row.there(missing)));
  BOOST_TEST(is_missing(row.back(missing)));
}

BOOST_AUTO_TEST_SUITE_END()
