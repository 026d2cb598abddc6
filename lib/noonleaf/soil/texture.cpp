#include "noonleaf/soil/texture.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/plain_name.hpp"
#include "noonleaf/soil/saxton_rawls.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::string_view table_19 =
    "FAO-56 (Allen et al. 1998), Table 19; typical particles: Saxton & Rawls (2006), Table 3; from memory";

// FAO-56 Table 19 has nine classes. Sandy clay loam, clay loam and sandy clay are not among them: each takes
// the ranges of a neighbour in the texture triangle (our choice) and is marked so. A new edition: change the
// ranges here and the rows of tests/soil/texture_test.cpp.
// clang-format off: a table; field capacity, wilting point, available water, REW, TEW for Ze = 0.10 m
constexpr std::array<TextureClass, 12> classes{{
    {"sand",
     "Sand",
     "arena",
     88,
     5,
     {0.07, 0.17},
     {0.02, 0.07},
     {0.05, 0.11},
     {2, 7},
     {6, 12},
     false,
     table_19,
     ""},
    {"loamy_sand",
     "Loamy sand",
     "arena franca",
     80,
     5,
     {0.11, 0.19},
     {0.03, 0.10},
     {0.06, 0.12},
     {4, 8},
     {9, 14},
     false,
     table_19,
     ""},
    {"sandy_loam",
     "Sandy loam",
     "franco arenoso",
     65,
     10,
     {0.18, 0.28},
     {0.06, 0.16},
     {0.11, 0.15},
     {6, 10},
     {15, 20},
     false,
     table_19,
     ""},
    {"loam",
     "Loam",
     "franco",
     40,
     20,
     {0.20, 0.30},
     {0.07, 0.17},
     {0.13, 0.18},
     {8, 10},
     {16, 22},
     false,
     table_19,
     ""},
    {"silt_loam",
     "Silt loam",
     "franco limoso",
     20,
     15,
     {0.22, 0.36},
     {0.09, 0.21},
     {0.13, 0.19},
     {8, 11},
     {18, 25},
     false,
     table_19,
     ""},
    {"silt",
     "Silt",
     "limo",
     10,
     5,
     {0.28, 0.36},
     {0.12, 0.22},
     {0.16, 0.20},
     {8, 11},
     {22, 26},
     false,
     table_19,
     ""},
    {"sandy_clay_loam",
     "Sandy clay loam",
     "franco arcillo arenoso",
     60,
     25,
     {0.20, 0.30},
     {0.07, 0.17},
     {0.13, 0.18},
     {8, 10},
     {16, 22},
     true,
     table_19,
     "not in Table 19: loam taken"},
    {"clay_loam",
     "Clay loam",
     "franco arcilloso",
     30,
     35,
     {0.30, 0.37},
     {0.17, 0.24},
     {0.13, 0.18},
     {8, 11},
     {22, 27},
     true,
     table_19,
     "not in Table 19: silty clay loam taken"},
    {"silty_clay_loam",
     "Silty clay loam",
     "franco arcillo limoso",
     10,
     35,
     {0.30, 0.37},
     {0.17, 0.24},
     {0.13, 0.18},
     {8, 11},
     {22, 27},
     false,
     table_19,
     ""},
    {"silty_clay",
     "Silty clay",
     "arcillo limoso",
     10,
     45,
     {0.30, 0.42},
     {0.17, 0.29},
     {0.13, 0.19},
     {8, 12},
     {22, 28},
     false,
     table_19,
     ""},
    {"sandy_clay",
     "Sandy clay",
     "arcillo arenoso",
     50,
     40,
     {0.32, 0.40},
     {0.20, 0.24},
     {0.12, 0.20},
     {8, 12},
     {22, 29},
     true,
     table_19,
     "not in Table 19: clay taken"},
    {"clay",
     "Clay",
     "arcilla",
     25,
     50,
     {0.32, 0.40},
     {0.20, 0.24},
     {0.12, 0.20},
     {8, 12},
     {22, 29},
     false,
     table_19,
     ""},
}};
// clang-format on

/// Class limits of the USDA texture triangle, as the Soil Survey Manual words them, the finest last.
std::string_view class_id(double sand, double clay) {
  const double silt = 100 - sand - clay;
  if (silt + 1.5 * clay < 15) return "sand";
  if (silt + 2 * clay < 30) return "loamy_sand";
  if ((clay >= 7 && clay < 20 && sand > 52 && silt + 2 * clay >= 30) || (clay < 7 && silt < 50))
    return "sandy_loam";
  if (clay >= 7 && clay < 27 && silt >= 28 && silt < 50 && sand <= 52) return "loam";
  if ((silt >= 50 && clay >= 12 && clay < 27) || (silt >= 50 && silt < 80 && clay < 12)) return "silt_loam";
  if (silt >= 80 && clay < 12) return "silt";
  if (clay >= 20 && clay < 35 && silt < 28 && sand > 45) return "sandy_clay_loam";
  if (clay >= 27 && clay < 40 && sand > 20 && sand <= 45) return "clay_loam";
  if (clay >= 27 && clay < 40 && sand <= 20) return "silty_clay_loam";
  if (clay >= 35 && sand > 45) return "sandy_clay";
  if (clay >= 40 && silt >= 40) return "silty_clay";
  return "clay";
}

}  // namespace

std::span<const TextureClass> texture_table() { return classes; }

const TextureClass& find_texture(std::string_view id) {
  const std::string wanted = plain_name(id);
  const auto* const found =
      std::find_if(classes.begin(), classes.end(), [&](const TextureClass& one) { return one.id == wanted; });
  if (found != classes.end()) return *found;
  std::vector<std::string_view> ids;
  std::string all;
  for (const TextureClass& one : classes) {
    ids.push_back(one.id);
    all += (all.empty() ? "" : ", ") + std::string(one.id);
  }
  const std::string near = nearest_name(id, ids);
  Problem problem;
  problem.field = "texture";
  problem.text = id;
  problem.message = "no texture class is called \"" + std::string(id) + "\"";
  problem.fix = near.empty() ? "choose one of: " + all : "did you mean " + near + "?";
  throw Error(std::move(problem));
}

SoilWater soil_of(const TextureClass& texture) {
  const SaxtonRawls typical = saxton_rawls({.sand_pct = texture.sand_pct, .clay_pct = texture.clay_pct});
  SoilWater soil;
  soil.field_capacity_m3_m3 = texture.field_capacity_m3_m3.middle();
  soil.wilting_point_m3_m3 = texture.wilting_point_m3_m3.middle();
  soil.saturation_m3_m3 = typical.theta_s;
  soil.conductivity_mm_h = typical.conductivity_mm_h;
  soil.rew_mm = texture.rew_mm.middle();
  soil.source = "FAO-56 Table 19, middle of " + std::string(texture.name_en) +
                "; saturation and conductivity by Saxton & Rawls (2006)";
  if (texture.surrogate) soil.source += "; " + std::string(texture.note);
  return soil;
}

const TextureClass& classify_texture(double sand_pct, double clay_pct) {
  require_within("sand_pct", sand_pct, 0, 100, "% by weight");
  require_within("clay_pct", clay_pct, 0, 100, "% by weight");
  require_within("sand_pct + clay_pct", sand_pct + clay_pct, 0, 100, "% by weight");
  return find_texture(class_id(sand_pct, clay_pct));
}

}  // namespace v1
}  // namespace noonleaf
