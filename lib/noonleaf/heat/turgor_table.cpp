#include "noonleaf/heat/turgor_table.hpp"

#include <algorithm>
#include <array>

#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// Surrogates, all from memory: the range of pressure-volume studies of the group's better known species,
// rounded to 0.1 MPa on the side of hanging early. Orientation: Bartlett, Scoffoni & Sack (2012), Ecol. Lett.
// 15:393-405 (turgor loss of crops and herbs mostly -0.8 to -1.7, of temperate woody plants about -2).
// When measured values for a crop are at hand: give them to WiltPlanting directly, do not edit a group for
// it.
constexpr std::string_view herbaceous =
    "surrogate for soft-leaved herbs, from memory; order of Bartlett et al. 2012";
constexpr std::array<TurgorLoss, 15> table{{
    {CropGroup::small_vegetable, -0.9, 1, "surrogate, lettuce and cabbage kinds -0.8 to -1.2, from memory"},
    {CropGroup::solanum, -1.0, 1, "surrogate, tomato -0.9 to -1.2, from memory"},
    {CropGroup::cucumber, -0.9, 1.3, "surrogate, cucumber and squash -0.8 to -1.1, from memory"},
    {CropGroup::root_tuber, -1.0, 1, "surrogate, potato -0.9 to -1.1, beet to -1.4, from memory"},
    {CropGroup::legume, -1.0, 1, "surrogate, bean -0.8 to -1.1, soybean to -1.6, from memory"},
    {CropGroup::perennial_vegetable, -1.2, 1, herbaceous},
    {CropGroup::herb, -1.2, 1, herbaceous},
    {CropGroup::fibre, -1.6, 1, "surrogate, cotton -1.4 to -1.8, from memory"},
    {CropGroup::oil, -1.3, 1.3, "surrogate, sunflower -1.1 to -1.5, from memory"},
    {CropGroup::cereal, -1.4, 1, "surrogate, maize -1.2 to -1.6, from memory"},
    {CropGroup::turf, -1.6, 1, "surrogate, cool and warm season grasses -1.3 to -2, from memory"},
    {CropGroup::berry, -1.5, 1, "surrogate, strawberry to blueberry -1.3 to -2, from memory"},
    {CropGroup::fruit_tree, -2.0, 1,
     "surrogate for temperate woody plants, from memory; Bartlett et al. 2012"},
    {CropGroup::ornamental, -1.4, 1, "surrogate between herbs and shrubs, from memory"},
    {CropGroup::cover_crop, -1.2, 1, herbaceous},
}};

}  // namespace

std::span<const TurgorLoss> turgor_loss_table() { return table; }

const TurgorLoss& turgor_loss(CropGroup group) {
  const auto row = std::find_if(table.begin(), table.end(),
                                [group](const TurgorLoss& entry) { return entry.group == group; });
  if (row != table.end()) return *row;
  Problem problem;
  problem.field = "crop";
  problem.message = "bare soil has no leaves that could wilt";
  problem.fix = "ask only for beds with a planting";
  throw Error(std::move(problem));
}

}  // namespace v1
}  // namespace noonleaf
