// The balance against measured soil moisture, with published parameters and nothing fitted (docs/balance.md).
// The file of measurements stays beside the project; without it this test says so and checks nothing.
#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/run.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/soil/texture.hpp"

#include "balance/grassland_2015.hpp"

using namespace std::chrono_literals;
using noonleaf::SoilWater;

namespace {

struct Lines {
  std::vector<double> measured, top_layer, root_zone, bucket;
};

/// A bucket of 200 mm that loses 0.6 ET0 while it holds water, read as moisture between WP and FC of the same
/// soil.
std::vector<double> plain_bucket(const std::vector<GrasslandDay>& days, const SoilWater& soil) {
  std::vector<double> out;
  double held = 200;
  for (int year = 0; year < 2; ++year) {
    out.clear();
    for (const GrasslandDay& day : days) {
      held = std::clamp(held + day.weather.rain_mm - 0.6 * day.et0_mm_d, 0.0, 200.0);
      out.push_back(soil.wilting_point_m3_m3 +
                    held / 200 * (soil.field_capacity_m3_m3 - soil.wilting_point_m3_m3));
    }
  }
  return out;
}

/// The year twice, the first time to find the state in which it starts.
noonleaf::BalanceRun grassland_run(const std::vector<GrasslandDay>& days, const SoilWater& soil,
                                   double curve_number) {
  const noonleaf::Planting meadow{.start = 2010y / 1 / 1, .rooting = noonleaf::RootingDepth::rainfed};
  std::vector<noonleaf::BalanceDay> weather;
  std::vector<noonleaf::GrowthDay> growth;
  for (const GrasslandDay& day : days) {
    weather.push_back({.date = day.weather.date,
                       .et0_mm_d = day.et0_mm_d,
                       .u2_m_s = day.u2_m_s,
                       .rh_min_pct = day.rh_min_pct,
                       .rain_mm = day.weather.rain_mm});
    growth.push_back(
        noonleaf::growth_day(noonleaf::find_crop("pasture_extensive"), meadow, day.weather.date, {}));
  }
  noonleaf::BalanceSettings settings;
  settings.top_roots = noonleaf::TopLayerRoots::drawn;
  settings.curve_number = curve_number;
  const auto start = noonleaf::initial_state(soil, growth.front().root_depth_m, 1.5, 0.5);
  const auto spin_up = noonleaf::run_balance(start, weather, growth, soil, settings);
  return noonleaf::run_balance(spin_up.days.back().end, weather, growth, soil, settings);
}

Lines lines_of(const std::vector<GrasslandDay>& days, const char* texture, double curve_number) {
  const SoilWater soil = soil_of(noonleaf::find_texture(texture));
  Lines lines;
  lines.bucket = plain_bucket(days, soil);
  const auto run = grassland_run(days, soil, curve_number);
  for (std::size_t i = 0; i < days.size(); ++i) {
    const auto& end = run.days[i].end;
    lines.measured.push_back(days[i].moisture_m3_m3);
    lines.top_layer.push_back(soil.field_capacity_m3_m3 - end.de_mm / (1000 * soil.evaporation_depth_m));
    lines.root_zone.push_back(soil.field_capacity_m3_m3 - end.dr_mm / (1000 * end.root_depth_m));
  }
  return lines;
}

std::string path_of(const std::vector<double>& line) {
  std::string path;
  bool pen_down = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (noonleaf::is_missing(line[i])) {
      pen_down = false;
      continue;
    }
    const double x = 60 + 2 * static_cast<double>(i), y = 320 - 450 * line[i];
    path += (pen_down ? " L" : " M") + std::to_string(x) + " " + std::to_string(y);
    pen_down = true;
  }
  return path;
}

void draw(const Lines& lines, const std::string& file) {
  std::ofstream svg(file);
  svg << "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 820 370\" font-family=\"sans-serif\" "
         "font-size=\"12\">\n<rect width=\"820\" height=\"370\" fill=\"white\"/>\n";
  for (int percent = 0; percent <= 60; percent += 10) {
    const double y = 320 - 4.5 * percent;
    svg << "<path d=\"M60 " << y << " L790 " << y << "\" stroke=\"#ddd\"/><text x=\"52\" y=\"" << y + 4
        << "\" text-anchor=\"end\">" << percent / 100.0 << "</text>\n";
  }
  const char* months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  for (int month = 0; month < 12; ++month)
    svg << "<text x=\"" << 90 + 61 * month << "\" y=\"340\" text-anchor=\"middle\">" << months[month]
        << "</text>\n";
  const auto line = [&](const std::vector<double>& values, const char* style, const char* name, int at) {
    svg << "<path fill=\"none\" " << style << " d=\"" << path_of(values) << "\"/>\n<path d=\"M" << at
        << " 358 L" << at + 30 << " 358\" " << style << "/><text x=\"" << at + 36 << "\" y=\"362\">" << name
        << "</text>\n";
  };
  line(lines.measured, "stroke=\"#222\" stroke-width=\"2\"", "measured, 5 and 10 cm", 60);
  line(lines.top_layer, "stroke=\"#b35806\" stroke-width=\"1.2\"", "top layer (De)", 250);
  line(lines.root_zone, "stroke=\"#2166ac\" stroke-width=\"1.2\"", "root zone (Dr)", 400);
  line(lines.bucket, "stroke=\"#777\" stroke-width=\"1.2\" stroke-dasharray=\"4 3\"", "plain bucket", 550);
  svg << "<text x=\"60\" y=\"20\">Soil moisture, m3/m3: rain-fed grassland, 30.62 N 98.08 W, 2015; clay loam "
         "of FAO-56 "
         "Table 19, nothing fitted</text>\n</svg>\n";
}

struct Documented {
  const char* texture;
  double curve_number;  // TR-55, pasture in good condition, hydrologic groups B, D, D
  double top_r, top_bias, top_rmse, root_r, root_bias, root_rmse, bucket_r, bucket_rmse;
};

}  // namespace

BOOST_AUTO_TEST_SUITE(validation)

// The numbers of docs/balance.md. They are a record of how well it does, not a goal: a change of the model
// that moves them has to move the document too.
BOOST_AUTO_TEST_CASE(as_documented) {
  const auto days = grassland_2015();
  if (!days) return;
  const Documented documented[] = {
      {"loam", 61, 0.77, -0.205, 0.221, 0.87, -0.122, 0.147, 0.85, 0.137},
      {"clay_loam", 80, 0.82, -0.146, 0.163, 0.85, -0.042, 0.094, 0.85, 0.084},
      {"clay", 80, 0.84, -0.132, 0.148, 0.85, -0.022, 0.086, 0.85, 0.078},
  };
  for (const Documented& row : documented) BOOST_TEST_CONTEXT(row.texture) {
      const Lines lines = lines_of(*days, row.texture, row.curve_number);
      const Agreement top = agreement(*days, lines.top_layer), root = agreement(*days, lines.root_zone),
                      bucket = agreement(*days, lines.bucket);
      BOOST_TEST(top.n == 363);
      BOOST_CHECK_SMALL(top.correlation - row.top_r, 0.005);
      BOOST_CHECK_SMALL(top.bias - row.top_bias, 0.0005);
      BOOST_CHECK_SMALL(top.rmse - row.top_rmse, 0.0005);
      BOOST_CHECK_SMALL(root.correlation - row.root_r, 0.005);
      BOOST_CHECK_SMALL(root.bias - row.root_bias, 0.0005);
      BOOST_CHECK_SMALL(root.rmse - row.root_rmse, 0.0005);
      BOOST_CHECK_SMALL(bucket.correlation - row.bucket_r, 0.005);
      BOOST_CHECK_SMALL(bucket.rmse - row.bucket_rmse, 0.0005);
    }
  if (const char* folder = std::getenv("NOONLEAF_PLOTS"))
    draw(lines_of(*days, "clay_loam", 80), std::string(folder) + "/balance_validation.svg");
}

BOOST_AUTO_TEST_SUITE_END()
