#pragma once

#include <string>
#include <vector>

#include "noonleaf/heat/people.hpp"
#include "noonleaf/heat/wbgt.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/report/phrases.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The air of one hour outside, as somebody reads it off a thermometer, a web page or a sensor.
struct OutdoorReading {
  double t_c = missing;       ///< air temperature in the shade
  double rh_pct = missing;    ///< relative humidity, 0 to 100
  double wind_m_s = missing;  ///< at 2 m; missing = no globe temperature
  double rs_w_m2 = missing;   ///< solar radiation on the level; missing = no globe temperature
  double sun_height_deg =
      missing;                   ///< above the horizon; missing = worked out from rs_w_m2, sky taken as clear
  double elevation_m = missing;  ///< missing = sea level
};

/// What the hour means for people outside.
struct OutdoorAnswer {
  OutdoorReading reading{};       ///< as given
  double heat_index_c = missing;  ///< of the shade
  OutdoorWbgt wbgt{};             ///< missing without wind and sun
};

/// Heat index, and outdoor wet-bulb globe temperature where wind and sun are known.
///
/// Method    heat_index_c; outdoor_wbgt with pressure from the elevation (FAO-56 eq. 7) and, where the sun's
///           height is not given, the height at which a clear sky brings that radiation
///           (clear_sky_cos_zenith)
/// Throws    Error as heat_index_c and outdoor_wbgt; field "sun_height_deg" outside 0 to 90
OutdoorAnswer outdoor_answer(const OutdoorReading& reading);

/// "OUTSIDE": what stands over the sentences below.
std::string outdoor_title(Language language);

/// The numbers in sentences: what was worked out and what was not measured for it.
std::vector<std::string> outdoor_words(const OutdoorAnswer& answer, Language language = Language::en);

/// What follows a heat index that no chart has (beyond_heat_index_chart), with a space before it; else empty.
std::string beyond_chart_words(Language language, double t_c, double heat_index_c);

/// "TAKE CARE": what stands over the cautions.
std::string outdoor_cautions_title(Language language);

/// What helps, and who decides. Public guidance; never a medical decision.
std::vector<std::string> outdoor_cautions(const OutdoorAnswer& answer, Language language = Language::en);

/// Shape "noonleaf.outdoors": heat_index_c, heat_index_f, wbgt_c and what they rest on; its cautions in
/// `language`.
std::string outdoor_json(const OutdoorAnswer& answer, Language language = Language::en);

}  // namespace v1
}  // namespace noonleaf
