#pragma once

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/soil/saxton_rawls.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What the texture equations ask of a bed's soil that is given by its fractions.
inline SoilParticles particles_of(const BedSoil& soil) {
  SoilParticles particles;
  particles.sand_pct = soil.sand_pct;
  particles.clay_pct = soil.clay_pct;
  if (is_known(soil.organic_pct)) particles.organic_pct = soil.organic_pct;
  if (is_known(soil.gravel_pct)) particles.gravel_pct = soil.gravel_pct;
  if (is_known(soil.density_factor)) particles.density_factor = soil.density_factor;
  return particles;
}

}  // namespace v1
}  // namespace noonleaf
