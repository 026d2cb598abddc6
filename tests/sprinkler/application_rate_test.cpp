#include "noonleaf/sprinkler/application_rate.hpp"

#include <ostream>
#include <set>
#include <string>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/units.hpp"

#include "refusal.hpp"

using namespace noonleaf;

namespace {

double rate_in_h(double gpm, double square_feet) {
  return inches_from_mm(rate_from_flow_mm_h(
      {.flow_l_min = litres_from_gallons(gpm), .area_m2 = m2_from_square_feet(square_feet)}));
}

double drip_in_h(double gph, double emitter_ft, double line_ft) {
  return inches_from_mm(drip_rate_mm_h({.emitter_flow_l_h = litres_from_gallons(gph),
                                        .emitter_spacing_m = m_from_feet(emitter_ft),
                                        .line_spacing_m = m_from_feet(line_ft)}));
}

double bucket_gpm(double gallons, double seconds) {
  return gallons_from_litres(
      bucket_flow_l_min({.bucket_l = litres_from_gallons(gallons), .seconds = seconds}));
}

struct Row {
  double ours, expected, tolerance;
  const char* source;
};
std::ostream& operator<<(std::ostream& out, const Row& row) { return out << row.source; }

const std::vector<Row> rows = {
    // Identities, exact by definition of the units.
    {rate_in_h(1, 1), 96.25, 1e-9, "60 x 231 / 144: exact; some texts print 96.3"},
    {drip_in_h(1, 1, 1), 1.60417, 5e-6, "231 / 144: printed 1.604 for spacing in feet"},
    {drip_in_h(1, 4.0 / 12, 4.0 / 12), 231.0 / 16, 1e-9, "231 gph / in2; one catalogue prints 231.1"},
    // Published.
    {rate_in_h(6, 25 * 30 * 0.866), 0.89, 0.005,
     "teaching slides, triangular spacing, read to 577.8 / 649.5 (with 96.3); 0.866 belongs to equal head "
     "spacing only"},
    {drip_in_h(2 * 0.48, 7, 11), 0.02, 0.0003,
     "Univ. of California: 0.96 gph a vine at 7 x 11 ft (rate derived)"},
    // Derived from the equation.
    {rate_in_h(3, 200), 1.44375, 1e-9, "3 gpm on 200 ft2, derived; listed as 1.4438"},
    {rate_in_h(4, 314), 1.2261, 5e-5, "4 gpm on 314 ft2, derived"},
    {rate_in_h(2.5, 128), 1.8799, 5e-5, "2.5 gpm on 128 ft2, derived"},
    {rate_in_h(5, 400), 1.2031, 5e-5, "5 gpm on 400 ft2, derived"},
    {rate_from_flow_mm_h({10, 20}), 30.0, 1e-9, "10 L/min on 20 m2, derived"},
    {rate_from_flow_mm_h({12, 29.2}), 24.6575, 5e-5, "12 L/min on 29.2 m2, derived"},
    {rate_from_flow_mm_h({15, 37.2}), 24.1935, 5e-5, "15 L/min on 37.2 m2, derived"},
    {rate_from_flow_mm_h({8, 9}), 53.3333, 5e-5, "8 L/min on 9 m2, derived"},
    {rate_from_flow_mm_h({20, 116.7}), 10.2828, 5e-5, "20 L/min on 116.7 m2, derived"},
    {drip_in_h(0.5, 1, 1), 0.8021, 5e-5, "derived"},
    {drip_in_h(0.6, 1, 1.5), 0.6417, 5e-5, "derived"},
    {drip_in_h(0.9, 1, 1), 1.44375, 1e-9, "derived; listed as 1.4438"},
    {drip_rate_mm_h({2, 0.3, 0.3}), 22.2222, 5e-5, "derived"},
    {drip_rate_mm_h({1.6, 0.3, 0.45}), 11.8519, 5e-5, "derived"},
    {drip_rate_mm_h({4, 0.5, 1}), 8.0, 1e-9, "derived"},
    {bucket_gpm(5, 30), 10.0, 1e-9, "5 gal in 30 s, derived"},
    {bucket_gpm(5, 25), 12.0, 1e-9, "5 gal in 25 s, derived"},
    {bucket_gpm(5, 40), 7.5, 1e-9, "5 gal in 40 s, derived"},
    {bucket_gpm(1, 8), 7.5, 1e-9, "1 gal in 8 s, derived"},
    {bucket_gpm(2, 15), 8.0, 1e-9, "2 gal in 15 s, derived"},
    {bucket_flow_l_min({10, 35}), 17.1429, 5e-5, "10 L in 35 s, derived"},
    {gallons_from_litres(
         meter_flow_l_min({litres_from_cubic_feet(1234.5), litres_from_cubic_feet(1237.3), 4})),
     5.2364, 5e-5, "meter 1234.5 to 1237.3 ft3 in 4 min, derived"},
};

ApplicationRate lossy(RateBasis basis) {
  return {.basis = basis, .rate_mm_h = 20, .off_target_frac = 0.2, .spray_loss_frac = 0.1, .du_lq_frac = 0.7};
}

}  // namespace

BOOST_AUTO_TEST_SUITE(application_rate)

BOOST_DATA_TEST_CASE(rates_and_flows, boost::unit_test::data::make(rows), row) {
  BOOST_CHECK_SMALL(row.ours - row.expected, row.tolerance);
}

BOOST_AUTO_TEST_CASE(each_loss_counts_once_and_only_where_the_rate_has_not_seen_it) {
  BOOST_CHECK_SMALL(delivered_frac(lossy(RateBasis::cans_in_bed)) - 1.0, 1e-15);
  BOOST_CHECK_SMALL(delivered_frac(lossy(RateBasis::guess)) - 1.0, 1e-15);
  BOOST_CHECK_SMALL(delivered_frac(lossy(RateBasis::drip_spacing)) - 0.8, 1e-15);
  BOOST_CHECK_SMALL(delivered_frac(lossy(RateBasis::flow_and_area)) - 0.72, 1e-15);
  BOOST_CHECK_SMALL(delivered_frac(lossy(RateBasis::bucket)) - 0.72, 1e-15);
}

BOOST_AUTO_TEST_CASE(the_same_sprinkler_by_bed_area_or_by_all_wetted_area) {
  // 12 L/min wets 40 m2 evenly, a fifth of it paving: 32 m2 of beds.
  ApplicationRate by_beds = lossy(RateBasis::flow_and_area);
  by_beds.rate_mm_h = rate_from_flow_mm_h({.flow_l_min = 12, .area_m2 = 32});
  ApplicationRate by_all = by_beds;
  by_all.area = WateredArea::all_wetted;
  by_all.rate_mm_h = rate_from_flow_mm_h({.flow_l_min = 12, .area_m2 = 40});
  BOOST_CHECK_SMALL(by_beds.rate_mm_h * delivered_frac(by_beds) - by_all.rate_mm_h * delivered_frac(by_all),
                    1e-12);
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(is_missing(rate_from_flow_mm_h({.flow_l_min = 10})));
  BOOST_TEST(is_missing(bucket_flow_l_min({.bucket_l = 10})));
  BOOST_TEST(is_missing(meter_flow_l_min({.start_l = 10, .minutes = 3})));
  BOOST_TEST(is_missing(drip_rate_mm_h({.emitter_flow_l_h = 2, .emitter_spacing_m = 0.3})));
}

BOOST_AUTO_TEST_CASE(refuses_what_cannot_be) {
  const auto per_element = boost::test_tools::per_element();
  using Fields = std::vector<std::string>;
  BOOST_TEST(refused_fields([] {
               rate_from_flow_mm_h({0, 0});
             }) == (Fields{"flow_l_min", "area_m2"}),
             per_element);
  BOOST_TEST(refused_fields([] { bucket_flow_l_min({10, 0}); }) == Fields{"seconds"}, per_element);
  BOOST_TEST(refused_fields([] { meter_flow_l_min({10, 9, 3}); }) == Fields{"end_l"}, per_element);
  BOOST_TEST(refused_fields([] { drip_rate_mm_h({2, 0.3, 0}); }) == Fields{"line_spacing_m"}, per_element);
  BOOST_TEST(refused_fields([] {
               require_usable({.rate_mm_h = missing,
                               .off_target_frac = 1.0,
                               .spray_loss_frac = -0.1,
                               .du_lq_frac = missing,
                               .flow_l_min = -1});
             }) == (Fields{"rate_mm_h", "off_target_frac", "spray_loss_frac", "du_lq_frac", "flow_l_min"}),
             per_element);
  BOOST_CHECK_NO_THROW(require_usable({.rate_mm_h = 10}));
}

BOOST_AUTO_TEST_CASE(a_guess_is_called_one) {
  const ApplicationRate guess = guessed_application_rate();
  BOOST_CHECK_NO_THROW(require_usable(guess));
  BOOST_TEST(rate_basis_text(guess.basis) == "guess");
  BOOST_TEST(guess.du_lq_frac == 0.60);
  BOOST_TEST(guessed_du_lq_frac(RateBasis::drip_spacing) == 0.80);
  std::set<std::string_view> texts;
  for (const RateBasis basis : {RateBasis::cans_in_bed, RateBasis::flow_and_area, RateBasis::bucket,
                                RateBasis::drip_spacing, RateBasis::guess})
    texts.insert(rate_basis_text(basis));
  BOOST_TEST(texts.size() == 5U);
}

BOOST_AUTO_TEST_SUITE_END()
