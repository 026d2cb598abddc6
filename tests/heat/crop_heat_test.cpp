#include "noonleaf/heat/crop_heat.hpp"

#include <algorithm>

#include <boost/test/unit_test.hpp>

#include "noonleaf/crop/crop_table.hpp"

using noonleaf::crop_heat_findings;
using noonleaf::crop_heat_limits;
using noonleaf::CropHeatFinding;
using noonleaf::CropHeatLimit;
using noonleaf::HeatDay;
using noonleaf::HeatHarm;
using noonleaf::HeatLimitKind;
using noonleaf::missing;

namespace {

std::chrono::year_month_day july(unsigned day) {
  return std::chrono::year(2025) / std::chrono::July / std::chrono::day(day);
}

double celsius(double t_f) { return (t_f - 32) / 1.8; }

std::vector<HeatDay> one_day(double t_max_f, double t_min_f) {
  return {{.date = july(1), .t_max_c = celsius(t_max_f), .t_min_c = celsius(t_min_f)}};
}

bool finds(const std::vector<CropHeatFinding>& findings, HeatHarm harm) {
  return std::any_of(findings.begin(), findings.end(),
                     [harm](const CropHeatFinding& finding) { return finding.limit->harm == harm; });
}

}  // namespace

BOOST_AUTO_TEST_SUITE(crop_heat)

BOOST_AUTO_TEST_CASE(printed_thresholds) {
  // Iowa State: tomato, pepper, green bean drop blossoms above 90 °F by day or 75 °F by night.
  for (const char* crop : {"tomato", "pepper_sweet", "bean_green"}) {
    BOOST_TEST(finds(crop_heat_findings(crop, one_day(91, 60)), HeatHarm::blossom_drop));
    BOOST_TEST(finds(crop_heat_findings(crop, one_day(84, 76)), HeatHarm::blossom_drop));
    BOOST_TEST(!finds(crop_heat_findings(crop, one_day(84, 70)), HeatHarm::blossom_drop));
  }
  // Maryland: tomato pollen, days above 95 °F with nights above 80 °F.
  BOOST_TEST(finds(crop_heat_findings("tomato", one_day(97, 81)), HeatHarm::poor_pollen));
  BOOST_TEST(!finds(crop_heat_findings("tomato", one_day(97, 79)), HeatHarm::poor_pollen));
  // Cornell: sweet corn tips, 95 °F.
  BOOST_TEST(finds(crop_heat_findings("maize_sweet", one_day(96, 70)), HeatHarm::poor_tip_fill));
  BOOST_TEST(finds(crop_heat_findings("lettuce", one_day(82, 60)), HeatHarm::bolting));
}

BOOST_AUTO_TEST_CASE(above_means_above) {
  BOOST_TEST(!finds(crop_heat_findings("tomato", one_day(90, 60)), HeatHarm::blossom_drop));
  BOOST_TEST(finds(crop_heat_findings("tomato", one_day(90.1, 60)), HeatHarm::blossom_drop));
}

BOOST_AUTO_TEST_CASE(days_over_are_named) {
  std::vector<HeatDay> days = one_day(84, 60);
  days.push_back({.date = july(2), .t_max_c = celsius(94), .t_min_c = celsius(60)});
  days.push_back({.date = july(3), .t_max_c = missing, .t_min_c = celsius(60)});
  days.push_back({.date = july(4), .t_max_c = celsius(96), .t_min_c = celsius(60)});
  const auto findings = crop_heat_findings("maize_sweet", days);
  BOOST_TEST_REQUIRE(findings.size() == 1U);
  BOOST_TEST_REQUIRE(findings[0].days_over.size() == 1U);
  BOOST_CHECK(findings[0].days_over[0] == july(4));
  const auto tomato = crop_heat_findings("tomato", days);
  BOOST_TEST_REQUIRE(!tomato.empty());
  BOOST_TEST(tomato[0].days_over.size() == 2U);
}

BOOST_AUTO_TEST_CASE(unknown_crops_have_no_findings) {
  BOOST_TEST(crop_heat_findings("asparagus", one_day(110, 85)).empty());
  BOOST_TEST(crop_heat_findings("tomato", {}).empty());
}

BOOST_AUTO_TEST_CASE(every_row_is_a_crop_with_a_number_and_a_source) {
  for (const CropHeatLimit& limit : crop_heat_limits()) {
    BOOST_TEST_CONTEXT(limit.crop) {
      BOOST_CHECK_NO_THROW(noonleaf::find_crop(limit.crop));
      BOOST_TEST(noonleaf::is_known(limit.day_f) == (limit.kind != HeatLimitKind::night_above));
      BOOST_TEST(noonleaf::is_known(limit.night_f) == (limit.kind != HeatLimitKind::day_above));
      BOOST_TEST((limit.source.find("read") != std::string_view::npos ||
                  limit.source.find("memory") != std::string_view::npos));
      BOOST_TEST(!label(limit.harm).empty());
      BOOST_TEST(!what_helps(limit.harm).empty());
    }
  }
}

BOOST_AUTO_TEST_SUITE_END()
