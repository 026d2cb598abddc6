#pragma once

#include <array>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

/// What an away answer says, in one language. Every member has to be given: a missing one is empty, and the
/// check below makes that a build error.
struct AwayPhrases {
  std::string_view title, not_watered, help_deep, help_mulch, help_visit, comfortable, dry_from, wilts,
      wilts_between, lasts_under_some, never_wilts, seeds_dry, seeds_lost, with_rain, do_nothing, do_look,
      do_deep, do_mulch, do_visit, do_visit_before, do_more, do_daily, bare, skies_note, years_note,
      as_done_note, no_probability, sheet_title, sheet_when, sheet_none, column_bed, column_tap,
      column_minutes, column_done, sheet_close, sheet_rain, sheet_droop, sheet_found_open, sheet_tell,
      sheet_hot_hose, sheet_heat, sheet_signed;
};

inline constexpr AwayPhrases away_english{
    .title = "{}: nobody waters from {} to {}",
    .not_watered = "Nothing done",
    .help_deep = "Watered deep on the morning of {}",
    .help_mulch = "5 cm (2 in) of straw or leaves",
    .help_visit = "One visit on {}",
    .comfortable = "stays moist to the end.",
    .dry_from = "short of water from {}",
    .wilts = ", wilts about {}",
    .wilts_between = " ({} to {})",
    .lasts_under_some = " (wilts in {} of {} skies)",
    .never_wilts = ", does not wilt.",
    .seeds_dry = "seeds dry from {}",
    .seeds_lost = ", lost about {}",
    .with_rain = "With the rain that is forecast",
    .do_nothing = "Do nothing: it gets through.",
    .do_look =
        "It gets through if all is as reckoned, which is not sure: water it deep before you leave, and have "
        "somebody look at it.",
    .do_deep = "Water it deep on the morning of {}. Then it gets through.",
    .do_mulch = "Mulch it, off the stems. Then it gets through.",
    .do_visit = "Find somebody who waters it on {}.",
    .do_visit_before = "Find somebody who waters it on {} at the latest: it may wilt before.",
    .do_more = "One visit is not enough: somebody has to come every {} days.",
    .do_daily = "One visit is not enough: somebody has to come every day.",
    .bare = "nothing grows here that asks for water.",
    .skies_note =
        "Weather is known to {}. Behind it three skies: as in the last three days, a quarter hotter, a "
        "quarter cooler.",
    .years_note = "{} earlier years in the weather files are further skies.",
    .as_done_note = "Runs that nobody wrote down are taken as done: {}. Feel the soil before you leave.",
    .no_probability =
        "No rain is counted on. Dates between brackets are the earliest and the latest of the skies, "
        "not a probability.",
    .sheet_title = "{}: for whoever comes once",
    .sheet_when = "Come on {}, early in the morning. Water these beds, one after the other at each tap:",
    .sheet_none = "No bed needs a visit from {} to {}.",
    .column_bed = "Bed",
    .column_tap = "Tap",
    .column_minutes = "Minutes",
    .column_done = "Done",
    .sheet_close = "Stay until the last tap is closed. Nobody comes after you.",
    .sheet_rain = "If it has rained and the soil is dark and moist a finger deep, leave the bed alone.",
    .sheet_droop = "If leaves hang at noon and the soil is moist, it is the heat: look again in the evening.",
    .sheet_found_open = "If you find water running: close it, write down the time, tell somebody.",
    .sheet_tell = "Whom to tell: {}",
    .sheet_hot_hose = "Water in a hose in the sun is hot: let it run to waste until it is cool.",
    .sheet_heat = "On a hot day drink, rest in the shade, and go home when you feel unwell.",
    .sheet_signed = "Date, time, initials:",
};

inline constexpr AwayPhrases away_spanish{
    .title = "{}: nadie riega del {} al {}",
    .not_watered = "Sin hacer nada",
    .help_deep = "Con riego profundo la mañana del {}",
    .help_mulch = "Con 5 cm (2 pulg.) de paja u hojas",
    .help_visit = "Con una visita el {}",
    .comfortable = "se mantiene húmedo hasta el final.",
    .dry_from = "le falta agua desde el {}",
    .wilts = ", se marchita hacia el {}",
    .wilts_between = " (del {} al {})",
    .lasts_under_some = " (se marchita en {} de {} cielos)",
    .never_wilts = ", no se marchita.",
    .seeds_dry = "las semillas se secan desde el {}",
    .seeds_lost = ", se pierden hacia el {}",
    .with_rain = "Con la lluvia pronosticada",
    .do_nothing = "No haga nada: aguanta.",
    .do_look =
        "Aguanta si todo es como se calcula, y eso no es seguro: riegue a fondo antes de irse y que alguien "
        "la "
        "vea.",
    .do_deep = "Riegue a fondo la mañana del {}. Así aguanta.",
    .do_mulch = "Cubra la tierra, lejos de los tallos. Así aguanta.",
    .do_visit = "Busque a alguien que lo riegue el {}.",
    .do_visit_before = "Busque a alguien que lo riegue el {} a más tardar: puede marchitarse antes.",
    .do_more = "Una visita no basta: alguien debe venir cada {} días.",
    .do_daily = "Una visita no basta: alguien debe venir todos los días.",
    .bare = "aquí no crece nada que pida agua.",
    .skies_note =
        "El tiempo se conoce hasta el {}. Después, tres cielos: como los últimos tres días, una cuarta "
        "parte más calor, una cuarta parte menos.",
    .years_note = "Hay otros cielos: {} años anteriores de los archivos.",
    .as_done_note = "Los riegos que nadie anotó se toman como hechos: {}. Toque la tierra antes de irse.",
    .no_probability =
        "No se cuenta con lluvia. Las fechas entre paréntesis son la primera y la última de los "
        "cielos, no una probabilidad.",
    .sheet_title = "{}: para quien viene una sola vez",
    .sheet_when = "Venga el {}, temprano por la mañana. Riegue estas camas, una tras otra en cada llave:",
    .sheet_none = "Ninguna cama necesita una visita del {} al {}.",
    .column_bed = "Cama",
    .column_tap = "Llave",
    .column_minutes = "Minutos",
    .column_done = "Hecho",
    .sheet_close = "Quédese hasta cerrar la última llave. Después de usted no viene nadie.",
    .sheet_rain = "Si llovió y la tierra está oscura y húmeda a un dedo de hondo, no riegue esa cama.",
    .sheet_droop =
        "Si las hojas cuelgan al mediodía y la tierra está húmeda, es el calor: mire otra vez por la "
        "tarde.",
    .sheet_found_open = "Si encuentra agua corriendo: cierre la llave, anote la hora y avise.",
    .sheet_tell = "A quién avisar: {}",
    .sheet_hot_hose = "El agua de una manguera al sol quema: déjela correr hasta que salga fresca.",
    .sheet_heat = "Con calor, beba agua, descanse a la sombra y váyase a casa si se siente mal.",
    .sheet_signed = "Fecha, hora, iniciales:",
};

constexpr bool is_complete(const AwayPhrases& phrases) {
  const std::array all{
      phrases.title,          phrases.not_watered,      phrases.help_deep,      phrases.help_mulch,
      phrases.help_visit,     phrases.comfortable,      phrases.dry_from,       phrases.wilts,
      phrases.wilts_between,  phrases.lasts_under_some, phrases.never_wilts,    phrases.seeds_dry,
      phrases.seeds_lost,     phrases.with_rain,        phrases.do_nothing,     phrases.do_look,
      phrases.do_deep,        phrases.do_mulch,         phrases.do_visit,       phrases.do_visit_before,
      phrases.do_more,        phrases.do_daily,         phrases.as_done_note,   phrases.bare,
      phrases.skies_note,     phrases.years_note,       phrases.no_probability, phrases.sheet_title,
      phrases.sheet_when,     phrases.sheet_none,       phrases.column_bed,     phrases.column_tap,
      phrases.column_minutes, phrases.column_done,      phrases.sheet_close,    phrases.sheet_rain,
      phrases.sheet_droop,    phrases.sheet_found_open, phrases.sheet_tell,     phrases.sheet_hot_hose,
      phrases.sheet_heat,     phrases.sheet_signed};
  for (const std::string_view phrase : all) {
    if (phrase.empty()) return false;
  }
  return true;
}
static_assert(is_complete(away_english) && is_complete(away_spanish));

}  // namespace v1
}  // namespace noonleaf
