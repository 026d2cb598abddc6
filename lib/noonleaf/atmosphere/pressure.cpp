#include "noonleaf/atmosphere/pressure.hpp"

#include <cmath>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/pressure_formula.hpp"
#include "noonleaf/constants.hpp"

namespace noonleaf {
inline namespace v1 {

double atmospheric_pressure_kpa(double elevation_m) {
  require_within("elevation_m", elevation_m, accepted::elevation_m, "m");
  return 101.3 * std::pow((293.0 - 0.0065 * elevation_m) / 293.0, 5.26);  // FAO-56 eq. 7
}

double psychrometric_constant_kpa_c(double pressure_kpa) {
  require_within("pressure_kpa", pressure_kpa, accepted::pressure_kpa, "kPa");
  return formula::psychrometric_constant_kpa_c(pressure_kpa);
}

double latent_heat_mj_kg(double t_c) {
  require_within("t_c", t_c, accepted::temperature_c, "°C");
  return 2.501 - 2.361e-3 * t_c;  // FAO-56 eq. 3-1
}

double evaporation_equivalent_mm(double energy_mj_m2) { return mm_per_mj_m2 * energy_mj_m2; }

}  // namespace v1
}  // namespace noonleaf
