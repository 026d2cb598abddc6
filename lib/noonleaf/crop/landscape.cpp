#include "noonleaf/crop/landscape.hpp"

#include <array>
#include <string>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/nearest_name.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::string_view guide = "Costello et al. (2000); from memory";

// The lowest species class is printed as "< 0.1": its middle is 0.05.
// clang-format off: a table
constexpr std::array<LandscapeLevel, 10> levels{{
    {LandscapeFactor::species, "very_low", 0, 0.05, 0.1, guide},
    {LandscapeFactor::species, "low", 0.1, 0.2, 0.3, guide},
    {LandscapeFactor::species, "moderate", 0.4, 0.5, 0.6, guide},
    {LandscapeFactor::species, "high", 0.7, 0.8, 0.9, guide},
    {LandscapeFactor::density, "low", 0.5, 0.7, 0.9, guide},
    {LandscapeFactor::density, "average", 1, 1, 1, guide},
    {LandscapeFactor::density, "high", 1.1, 1.2, 1.3, guide},
    {LandscapeFactor::microclimate, "low", 0.5, 0.7, 0.9, guide},
    {LandscapeFactor::microclimate, "average", 1, 1, 1, guide},
    {LandscapeFactor::microclimate, "high", 1.1, 1.25, 1.4, guide},
}};
// clang-format on

const char* field_of(LandscapeFactor factor) {
  if (factor == LandscapeFactor::species) return "species";
  return factor == LandscapeFactor::density ? "density" : "microclimate";
}

}  // namespace

std::span<const LandscapeLevel> landscape_table() { return levels; }

const LandscapeLevel& find_landscape_level(LandscapeFactor factor, std::string_view id) {
  std::vector<std::string_view> ids;
  std::string all;
  for (const LandscapeLevel& level : levels) {
    if (level.factor != factor) continue;
    if (level.id == id) return level;
    ids.push_back(level.id);
    all += (all.empty() ? "" : ", ") + std::string(level.id);
  }
  const std::string near = nearest_name(id, ids);
  Problem problem;
  problem.field = field_of(factor);
  problem.text = id;
  problem.message = "no level is called \"" + std::string(id) + "\"";
  problem.fix = near.empty() ? "choose one of: " + all : "did you mean " + near + "?";
  throw Error(std::move(problem));
}

double landscape_coefficient(double species, double density, double microclimate) {
  require_within("species", species, 0, 0.9, "");
  require_within("density", density, 0.5, 1.3, "");
  require_within("microclimate", microclimate, 0.5, 1.4, "");
  return species * density * microclimate;
}

}  // namespace v1
}  // namespace noonleaf
