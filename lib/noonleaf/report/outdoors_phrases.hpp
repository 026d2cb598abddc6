// What an hour outside says to people, in both languages. Never a promise that anything is without danger.
#pragma once

#include "noonleaf/report/phrase_row.hpp"

namespace noonleaf {
inline namespace v1 {

/// Every such phrase. A row that is missing, empty, out of order, not translated, or that fills in other
/// things than its English is a build error.
enum class OutdoorsPhrase : std::size_t {
  outside_title,
  take_care_title,
  air,
  heat_index,
  heat_class,
  shade_assumed,
  beyond_chart,
  no_globe,
  globe,
  from_weather,
  sun_height_assumed,
  sea_level_assumed,
  limits,
  limit,
  light_work,
  moderate_work,
  heavy_work,
  heat_policy,
  water_and_shade,
  cool_morning,
  call_911,
  last_phrase = call_911
};

inline constexpr PhraseTable<OutdoorsPhrase> outdoors_phrases_en{{
    {OutdoorsPhrase::outside_title, "OUTSIDE"},
    {OutdoorsPhrase::take_care_title, "TAKE CARE"},
    {OutdoorsPhrase::air, "Air of {temperature}, humidity {humidity} %."},
    {OutdoorsPhrase::heat_index, "Heat index: {temperature}"},
    {OutdoorsPhrase::heat_class, ", \"{category}\" by the National Weather Service: {effects}"},
    {OutdoorsPhrase::shade_assumed,
     ". It assumes shade and a light wind; full sun can add up to 15 °F (8 °C)."},
    {OutdoorsPhrase::beyond_chart,
     " It lies beyond the published chart, which ends at air of 110 °F (43 °C) and an index of 137 °F (58 "
     "°C); only the equation goes on. Read it as \"{category}\", not as a number."},
    {OutdoorsPhrase::no_globe,
     "Wet-bulb globe temperature: not worked out, it needs wind and sun (--wind-m-s, --sun-w-m2; full "
     "summer sun at noon is about 900 W/m2)."},
    {OutdoorsPhrase::globe, "Wet-bulb globe temperature: {temperature} in the open sun."},
    {OutdoorsPhrase::from_weather,
     " Worked out from weather, not read from an instrument; for open sun over level ground, wind at 2 m."},
    {OutdoorsPhrase::sun_height_assumed,
     " The sun's height is not given: it is taken as the one at which a clear sky gives this sunshine."},
    {OutdoorsPhrase::sea_level_assumed, " The place is taken to be at sea level."},
    {OutdoorsPhrase::limits,
     "Limits of NIOSH (2016-106) for the mean of an hour, for healthy adults at work; children need more "
     "margin:"},
    {OutdoorsPhrase::limit, "- {work}: {new_worker} if not used to heat, {used_to_heat} if used to it"},
    {OutdoorsPhrase::light_work, "light work, like handing out tools"},
    {OutdoorsPhrase::moderate_work, "moderate work, like weeding or raking"},
    {OutdoorsPhrase::heavy_work, "heavy work, like digging or carrying soil"},
    {OutdoorsPhrase::heat_policy, "Your district's heat policy and medical advice come first."},
    {OutdoorsPhrase::water_and_shade,
     "Water within reach and often, rest in the shade, light clothes, hats; new people start slowly."},
    {OutdoorsPhrase::cool_morning,
     "Move garden work to the cool of the morning. Children and people not used to heat need more margin "
     "than any table gives."},
    {OutdoorsPhrase::call_911,
     "Confusion, collapse or hot dry skin: call 911, move into the shade, cool first."},
}};

inline constexpr PhraseTable<OutdoorsPhrase> outdoors_phrases_es{{
    {OutdoorsPhrase::outside_title, "AFUERA"},
    {OutdoorsPhrase::take_care_title, "CUIDADO"},
    {OutdoorsPhrase::air, "Aire a {temperature}, humedad {humidity} %."},
    {OutdoorsPhrase::heat_index, "Índice de calor: {temperature}"},
    {OutdoorsPhrase::heat_class, ", «{category}» según el Servicio Nacional de Meteorología: {effects}"},
    {OutdoorsPhrase::shade_assumed,
     ". Vale a la sombra y con poco viento; a pleno sol puede subir hasta 15 °F (8 °C) más."},
    {OutdoorsPhrase::beyond_chart,
     " Queda más allá de la tabla publicada, que termina en aire a 110 °F (43 °C) y un índice de 137 °F (58 "
     "°C); solo la ecuación sigue. Tómelo como «{category}», no como número."},
    {OutdoorsPhrase::no_globe,
     "Temperatura de globo y bulbo húmedo: no se calculó, hacen falta viento y sol (--wind-m-s, "
     "--sun-w-m2; a pleno sol de verano al mediodía son unos 900 W/m2)."},
    {OutdoorsPhrase::globe, "Temperatura de globo y bulbo húmedo: {temperature} a pleno sol."},
    {OutdoorsPhrase::from_weather,
     " Calculada con datos del tiempo, no leída en un aparato; para pleno sol en terreno plano, con el "
     "viento a 2 m."},
    {OutdoorsPhrase::sun_height_assumed,
     " No se dio la altura del sol: se toma la que da este sol con cielo despejado."},
    {OutdoorsPhrase::sea_level_assumed, " El lugar se toma al nivel del mar."},
    {OutdoorsPhrase::limits,
     "Límites de NIOSH (2016-106) para el promedio de una hora, para adultos sanos que trabajan; los "
     "niños necesitan más margen:"},
    {OutdoorsPhrase::limit, "- {work}: {new_worker} sin costumbre al calor, {used_to_heat} con costumbre"},
    {OutdoorsPhrase::light_work, "trabajo ligero, como repartir herramientas"},
    {OutdoorsPhrase::moderate_work, "trabajo moderado, como deshierbar o rastrillar"},
    {OutdoorsPhrase::heavy_work, "trabajo pesado, como cavar o cargar tierra"},
    {OutdoorsPhrase::heat_policy, "Las reglas de calor de su distrito y lo que diga el médico van primero."},
    {OutdoorsPhrase::water_and_shade,
     "Agua a la mano y tomar seguido, descanso a la sombra, ropa ligera, sombrero; los nuevos empiezan "
     "poco a poco."},
    {OutdoorsPhrase::cool_morning,
     "Deje el trabajo del jardín para el fresco de la mañana. Los niños y quien no está acostumbrado al "
     "calor necesitan más margen que el de cualquier tabla."},
    {OutdoorsPhrase::call_911,
     "Si alguien se confunde, se desmaya o tiene la piel caliente y seca: llame al 911, llévelo a la "
     "sombra; lo primero es refrescarlo."},
}};

static_assert(is_complete(outdoors_phrases_en) && is_complete(outdoors_phrases_es));
static_assert(fill_the_same(outdoors_phrases_en, outdoors_phrases_es));
static_assert(all_differ(outdoors_phrases_en, outdoors_phrases_es));

/// A phrase about people outside with its braces filled.
inline std::string fill(Language language, OutdoorsPhrase id, std::initializer_list<Filling> fillings = {}) {
  return filled_row(language, outdoors_phrases_en, outdoors_phrases_es, id, fillings);
}

}  // namespace v1
}  // namespace noonleaf
