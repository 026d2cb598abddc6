#include "noonleaf/heat/hydraulics.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <numbers>
#include <ostream>
#include <sstream>
#include <string>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "number_in.hpp"
#include "refusal.hpp"

using noonleaf::calibration_soil;
using noonleaf::depletion_frac_at_shortage;
using noonleaf::missing;
using noonleaf::retention_curve;
using noonleaf::RetentionCurve;
using noonleaf::supply_mm_h;
using noonleaf::water_path;
using noonleaf::WaterPath;

namespace {

struct Crop {
  const char* name;
  double p_frac, turgor_loss_mpa;
};
std::ostream& operator<<(std::ostream& out, const Crop& crop) { return out << crop.name; }

// p of FAO-56 Table 22; turgor loss of the group table.
const std::vector<Crop> crops = {{"spinach", 0.20, -0.9}, {"lettuce", 0.30, -0.9},     {"pepper", 0.30, -1.0},
                                 {"tomato", 0.40, -1.0},  {"green bean", 0.45, -1.0},  {"squash", 0.50, -0.9},
                                 {"maize", 0.55, -1.4},   {"sweet potato", 0.65, -1.0}};

RetentionCurve silt_loam() { return retention_curve(calibration_soil()); }

WaterPath path_of(const Crop& crop) {
  return water_path({.p_frac = crop.p_frac, .turgor_loss_mpa = crop.turgor_loss_mpa});
}

// FAO-56 Table 22, footnote 2, within its 0.1 to 0.8.
double corrected_p(double p, double etc_mm_d) { return std::clamp(p + 0.04 * (5 - etc_mm_d), 0.1, 0.8); }

/// The numbers of a row in the table of docs/heat.md: p, then the errors at 2 to 8 mm/d.
std::vector<double> row_of_the_page(const std::string& name) {
  std::ifstream page(NOONLEAF_SOURCE_DIR "/docs/heat.md");
  for (std::string line; std::getline(page, line);) {
    if (line.rfind("| " + name + " |", 0) != 0) continue;
    std::vector<double> numbers;
    std::istringstream cells(line.substr(name.size() + 4));
    for (std::string cell; std::getline(cells, cell, '|');) {
      cell.erase(std::remove(cell.begin(), cell.end(), '+'), cell.end());  // from_chars knows no plus
      numbers.push_back(number_in(cell));
    }
    return numbers;
  }
  return {};
}

}  // namespace

BOOST_AUTO_TEST_SUITE(hydraulics)

BOOST_DATA_TEST_CASE(reproduces_table_22_at_five_mm, boost::unit_test::data::make(crops), crop) {
  const double p = depletion_frac_at_shortage(path_of(crop), silt_loam(), {.etc_mm_d = 5});
  BOOST_CHECK_SMALL(p - crop.p_frac, 1e-9);
}

// An independent count of what "loses 10 %" means: the day cut into seconds, the flow held at the supply.
BOOST_DATA_TEST_CASE(a_tenth_of_the_day_is_lost_at_p, boost::unit_test::data::make(crops), crop) {
  const double supply = supply_mm_h(path_of(crop), silt_loam(), crop.p_frac);
  double flow = 0;
  const int steps = 43'200;
  for (int i = 0; i < steps; ++i) {
    const double demand = 5 * std::numbers::pi / 24 * std::sin(std::numbers::pi * (i + 0.5) / steps);
    flow += std::min(demand, supply) * 12 / steps;
  }
  BOOST_CHECK_SMALL(flow - 4.5, 1e-6);
}

// The page says what the code gives: its table, at half of its last digit.
void check_row_of_the_page(const std::string& name, const WaterPath& path, double p_frac) {
  const std::vector<double> printed = row_of_the_page(name);
  BOOST_TEST_REQUIRE(printed.size() == 8U, name);
  BOOST_TEST(printed[0] == p_frac);
  for (int etc = 2; etc <= 8; ++etc) {
    const double p = depletion_frac_at_shortage(path, silt_loam(), {.etc_mm_d = static_cast<double>(etc)});
    BOOST_TEST_CONTEXT(name << " at " << etc << " mm/d")
    BOOST_CHECK_SMALL(p - corrected_p(p_frac, etc) - printed[static_cast<std::size_t>(etc - 1)], 0.00501);
  }
}

BOOST_DATA_TEST_CASE(error_against_the_corrected_p, boost::unit_test::data::make(crops), crop) {
  check_row_of_the_page(crop.name, path_of(crop), crop.p_frac);
}

// The reason for the soil's part: one constant resistance, calibrated alike.
BOOST_AUTO_TEST_CASE(a_constant_resistance_would_be_worse) {
  const WaterPath tomato = water_path({.p_frac = 0.4, .turgor_loss_mpa = -1.0});
  const RetentionCurve soil = silt_loam();
  WaterPath constant = tomato;
  constant.plant_mpa_h_mm =
      (soil_tension_kpa(soil, 0.23) / -1000 + 1.0) / supply_mm_h(tomato, soil, 0.4);  // theta at 0.4 TAW
  constant.soil_mpa_h_mm = 0;
  BOOST_CHECK_SMALL(depletion_frac_at_shortage(constant, soil, {.etc_mm_d = 5}) - 0.4, 1e-9);
  check_row_of_the_page("*tomato, constant R*", constant, 0.4);
  BOOST_TEST(depletion_frac_at_shortage(constant, soil, {.etc_mm_d = 2}) > corrected_p(0.4, 2) + 0.3);
  BOOST_TEST(depletion_frac_at_shortage(constant, soil, {.etc_mm_d = 6}) == 0.0);
}

// Denmead & Shaw (1962), Agron. J. 54:385-390, corn: transpiration fell behind near field capacity on days of
// 6.4 mm, at about 0.2 MPa on days of 3 to 4 mm, and only near wilting on days of 1.4 mm (from memory). The
// ordering is theirs; their corn stood in pots and the depths are not ours to match.
BOOST_AUTO_TEST_CASE(the_higher_the_demand_the_wetter_the_soil) {
  for (const Crop& crop : crops) {
    double wetter = 2;
    for (const double etc : {1.4, 3.5, 6.4}) {
      const double p = depletion_frac_at_shortage(path_of(crop), silt_loam(), {.etc_mm_d = etc});
      BOOST_TEST(p < wetter);
      wetter = p;
    }
  }
}

BOOST_AUTO_TEST_CASE(supply_falls_as_the_soil_dries) {
  for (const Crop& crop : crops) {
    double last = 1e9;
    for (double frac = 0; frac <= 1.0; frac += 0.01) {
      const double supply = supply_mm_h(path_of(crop), silt_loam(), frac);
      BOOST_TEST((supply < last || supply == 0));
      last = supply;
    }
    BOOST_TEST(supply_mm_h(path_of(crop), silt_loam(), 1.0) ==
               0.0);  // -1.5 MPa is below all turgor losses here
  }
}

BOOST_AUTO_TEST_CASE(supply_brings_the_leaf_to_its_turgor_loss) {
  const WaterPath path = path_of(crops[3]);
  for (const double frac : {0.0, 0.2, 0.4, 0.8})
    BOOST_CHECK_CLOSE(leaf_potential_mpa(path, silt_loam(), frac, supply_mm_h(path, silt_loam(), frac)), -1.0,
                      1e-9);
  BOOST_CHECK_CLOSE(leaf_potential_mpa(path, silt_loam(), 0, 0), -0.033, 1e-9);
}

// Texture moves the answer little, as Table 22 has one p for all soils. FAO-56 ch. 8 suggests 5 to 10 % less
// on fine and as much more on coarse soils; the retention curves say the first and not the second.
BOOST_AUTO_TEST_CASE(other_soils) {
  const WaterPath path = water_path({.p_frac = 0.4, .turgor_loss_mpa = -1.0});
  const auto p = [&](double theta_1500, double theta_33) {
    return depletion_frac_at_shortage(path, retention_curve({.theta_33 = theta_33, .theta_1500 = theta_1500}),
                                      {.etc_mm_d = 5});
  };
  // Worked out by this code, and rounded in docs/heat.md: they catch a change, not an error.
  BOOST_CHECK_SMALL(p(.05, .10) - 0.362, 0.0005);  // sand
  BOOST_CHECK_SMALL(p(.08, .18) - 0.375, 0.0005);  // sandy loam
  BOOST_CHECK_SMALL(p(.14, .28) - 0.362, 0.0005);  // loam
  BOOST_CHECK_SMALL(p(.30, .42) - 0.323, 0.0005);  // clay
}

BOOST_AUTO_TEST_CASE(the_first_minute_at_noon) {
  const WaterPath path = path_of(crops[3]);
  const double frac = depletion_frac_at_shortage(path, silt_loam(), {.etc_mm_d = 5, .loss_frac = 0});
  BOOST_CHECK_CLOSE(supply_mm_h(path, silt_loam(), frac), 5 * std::numbers::pi / 24, 1e-6);
  BOOST_TEST(frac < 0.4);
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(std::isnan(water_path({}).plant_mpa_h_mm));
  BOOST_TEST(std::isnan(supply_mm_h(water_path({}), silt_loam(), 0.2)));
  BOOST_TEST(std::isnan(supply_mm_h(path_of(crops[0]), silt_loam(), missing)));
  BOOST_TEST(std::isnan(supply_mm_h(path_of(crops[0]), retention_curve({}), 0.2)));
  BOOST_TEST(std::isnan(depletion_frac_at_shortage(water_path({}), silt_loam(), {})));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  const auto refused = [](double p, double turgor, const char* field) {
    BOOST_CHECK_EXCEPTION(water_path({.p_frac = p, .turgor_loss_mpa = turgor}), noonleaf::Error,
                          NamesField{field});
  };
  refused(0.9, -1, "p_frac");
  refused(0.05, -1, "p_frac");
  refused(0.4, 0.5, "turgor_loss_mpa");
  BOOST_CHECK_EXCEPTION(supply_mm_h(path_of(crops[0]), silt_loam(), -0.1), noonleaf::Error,
                        NamesField{"depletion_frac"});
  BOOST_CHECK_EXCEPTION(supply_mm_h(path_of(crops[0]), silt_loam(), 1.6), noonleaf::Error,
                        NamesField{"depletion_frac"});
}

BOOST_AUTO_TEST_SUITE_END()
