#include "noonleaf/atmosphere/wind.hpp"

#include <cmath>

#include "noonleaf/atmosphere/accepted.hpp"

namespace noonleaf {
inline namespace v1 {

double wind_speed_at_2m_m_s(const WindReading& reading) {
  require_within("wind_m_s", reading.wind_m_s, accepted::wind_m_s, "m/s");
  require_within("height_m", reading.height_m, accepted::anemometer_height_m, "m");
  if (reading.height_m == 2.0) return reading.wind_m_s;
  return reading.wind_m_s * 4.87 / std::log(67.8 * reading.height_m - 5.42);  // FAO-56 eq. 47
}

}  // namespace v1
}  // namespace noonleaf
