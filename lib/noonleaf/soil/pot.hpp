#pragma once

#include "noonleaf/soil/soil_water.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Weights of one pot filled with the soil of a bed, on a kitchen scale. The way to field capacity and
/// wilting point of mixes that no texture equation covers.
///
/// How       Fill a pot as loosely as the bed is. Sow or set a seedling and let its roots fill the pot. Soak it
///           in a bucket until no bubbles rise, lift it out: soaked. Let it drain covered for a day: drained.
///           Then give no water: when the leaves hang at dawn and have not recovered, weigh again: wilted.
///           Last, spread the soil in an oven at 105 °C until it loses no more weight, and weigh it in the pot:
///           dry.
struct PotWeights {
  double soil_volume_l = missing;  ///< of the soil in the pot, by filling it with water to the same mark
  double soaked_kg = missing;      ///< optional
  double drained_kg = missing;     ///< after a day covered; pot included
  double wilted_kg = missing;      ///< when the leaves hang at dawn; pot included
  double dry_kg = missing;         ///< optional, pot included
};

/// The soil of a pot.
///
/// Equation  theta = (weight - dry weight) / (1 kg/l) / volume; available water = (drained - wilted) / volume
/// Method    gravimetric, the definitions of field capacity and wilting point themselves. A shallow pot holds
///           more than the same soil in a deep bed does after draining, since its bottom stays wet.
/// Missing   dry_kg missing: the wilting point is taken as half of the field capacity (ours, the middle of
///           FAO-56 Table 19's loams), which leaves TAW exact and makes only TEW an estimate; `source` says
///           so
/// Throws    Error: a weight missing; not soaked > drained > wilted > dry; more water than fits the volume
SoilWater soil_of(const PotWeights& pot);

}  // namespace v1
}  // namespace noonleaf
