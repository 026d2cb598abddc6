#pragma once

#include <string_view>

#include "noonleaf/crop/crop.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/heat/crop_heat.hpp"
#include "noonleaf/heat/people.hpp"
#include "noonleaf/report/phrases.hpp"

namespace noonleaf {
inline namespace v1 {

// Names of things in the language of the answer; the English ones are those of their own domain.

/// "mid-season", "plena temporada"
std::string_view label(Language language, Stage stage);
/// "slightly moist", "apenas húmeda"
std::string_view label(Language language, SoilFeel feel);
/// "blossom drop", "caída de flores"
std::string_view label(Language language, HeatHarm harm);
/// "Extreme Caution", "Precaución extrema"
std::string_view label(Language language, HeatCategory category);

/// What a class of the heat index stands for; empty below caution.
std::string_view effects(Language language, HeatCategory category);

/// What helps against a harm, and what does not.
std::string_view what_helps(Language language, HeatHarm harm);

/// "Tomato", "tomate"
std::string_view crop_name(Language language, const Crop& crop);

}  // namespace v1
}  // namespace noonleaf
