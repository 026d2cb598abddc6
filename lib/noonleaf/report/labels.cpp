#include "noonleaf/report/labels.hpp"

#include <algorithm>
#include <array>

namespace noonleaf {
inline namespace v1 {
namespace {

/// The Spanish names of an enumeration, in its order.
template <class Enum, Enum last>
using SpanishNames = std::array<std::string_view, static_cast<std::size_t>(last) + 1>;

template <std::size_t count>
constexpr bool none_empty(const std::array<std::string_view, count>& names) {
  return std::none_of(names.begin(), names.end(), [](std::string_view name) { return name.empty(); });
}

constexpr SpanishNames<Stage, Stage::no_stages> stages{"sin empezar",     "inicio",    "desarrollo",
                                                       "plena temporada", "final",     "temporada pasada",
                                                       "en descanso",     "sin etapas"};
constexpr SpanishNames<SoilFeel, SoilFeel::field_capacity> feels{"seca", "apenas húmeda", "húmeda", "mojada",
                                                                 "llena de agua"};
constexpr SpanishNames<HeatHarm, HeatHarm::bitterness> harms{
    "caída de flores", "polen débil",       "pocos frutos cuajados", "maduración lenta",
    "mal color",       "puntas sin granos", "que se espigue",        "sabor amargo"};

// The classes as the Spanish charts of the National Weather Service have them; from memory.
constexpr SpanishNames<HeatCategory, HeatCategory::extreme_danger> categories{
    "menos que Precaución", "Precaución", "Precaución extrema", "Peligro", "Peligro extremo"};
constexpr SpanishNames<HeatCategory, HeatCategory::extreme_danger> effects_es{
    "sin aviso", "puede haber cansancio con mucho rato al sol o con esfuerzo",
    "puede haber golpe de calor, calambres o agotamiento con mucho rato al sol o con esfuerzo",
    "son probables los calambres o el agotamiento, y puede haber golpe de calor, con mucho rato al sol o con "
    "esfuerzo",
    "el golpe de calor es muy probable"};

constexpr std::string_view flowers_again =
    "La malla sombra por la tarde y la tierra siempre húmeda ayudan a las flores que vienen; mojar las hojas "
    "o regar de más no devuelve las que se cayeron. Vuelve a cuajar fruta cuando refresca.";
constexpr std::string_view ripen_indoors = "Corte al primer color y deje madurar adentro; el agua no ayuda.";
constexpr SpanishNames<HeatHarm, HeatHarm::bitterness> helps{
    flowers_again,
    flowers_again,
    flowers_again,
    ripen_indoors,
    ripen_indoors,
    "Ayuda la tierra siempre húmeda mientras los pelos del elote están frescos; después nada llena la "
    "mazorca.",
    "Ayudan la malla sombra y cosechar temprano; cuando el tallo ya se estiró, el agua no lo regresa.",
    "Ayudan la tierra siempre húmeda y la malla sombra a la próxima cosecha; corte temprano en el día."};

static_assert(none_empty(stages) && none_empty(feels) && none_empty(harms) && none_empty(categories) &&
              none_empty(effects_es) && none_empty(helps));

template <class Enum, std::size_t count>
std::string_view named(const std::array<std::string_view, count>& names, Enum which) {
  return names[static_cast<std::size_t>(which)];
}

}  // namespace

std::string_view label(Language language, Stage stage) {
  return language == Language::en ? label(stage) : named(stages, stage);
}

std::string_view label(Language language, SoilFeel feel) {
  return language == Language::en ? label(feel) : named(feels, feel);
}

std::string_view label(Language language, HeatHarm harm) {
  return language == Language::en ? label(harm) : named(harms, harm);
}

std::string_view label(Language language, HeatCategory category) {
  return language == Language::en ? label(category) : named(categories, category);
}

std::string_view effects(Language language, HeatCategory category) {
  if (language == Language::en || category == HeatCategory::below_caution) return effects(category);
  return named(effects_es, category);
}

std::string_view what_helps(Language language, HeatHarm harm) {
  return language == Language::en ? what_helps(harm) : named(helps, harm);
}

std::string_view crop_name(Language language, const Crop& crop) {
  return language == Language::en ? crop.name_en : crop.name_es;
}

}  // namespace v1
}  // namespace noonleaf
