// What looks into the soil, and runs that nobody wrote down, make a day's page say.
#pragma once

#include "noonleaf/report/phrase_row.hpp"

namespace noonleaf {
inline namespace v1 {

/// Every such phrase. A row that is missing, empty, out of order, not translated, or that fills in other
/// things than its English is a build error.
enum class CheckPhrase : std::size_t {
  by_probe,
  by_feel,
  by_feel_found,
  soil_check,
  one_run,
  two_runs,
  many_runs,
  less,
  more,
  suspect_rate,
  suspect_crop,
  suspect_soil,
  rate,
  crop,
  soil,
  doubt_drier,
  doubt_wetter,
  no_reason,
  likeliest,
  less_likely,
  other_suspect,
  open_question,
  right_either_way,
  right_or_more,
  moist_or_dry,
  moist_or_dry_at,
  lasts_either_way,
  lasts_if_moist,
  already_ran,
  already_ran_too,
  part_ran,
  part_ran_rest,
  poured,
  poured_too,
  part_poured,
  part_poured_rest,
  last_phrase = part_poured_rest
};

inline constexpr PhraseTable<CheckPhrase> soil_check_phrases_en{{
    {CheckPhrase::by_probe, "by probe"},
    {CheckPhrase::by_feel, "by feel"},
    {CheckPhrase::by_feel_found, "by feel: {feel}"},
    {CheckPhrase::soil_check,
     "Soil check on {day}, {method}. The account had {crop} down {before} (±{before_sd}), the check says "
     "{found} (±{found_sd}); {after} is taken, each weighed by how sure it is."},
    {CheckPhrase::one_run, "the run of {day} ({minutes} minutes)"},
    {CheckPhrase::two_runs, "the runs of {first} and {last} ({minutes} and {last_minutes} minutes)"},
    {CheckPhrase::many_runs, "{count} runs from {first} to {last} ({minutes} minutes together)"},
    {CheckPhrase::less, "{share} % less"},
    {CheckPhrase::more, "{share} % more"},
    {CheckPhrase::suspect_rate,
     "the {sprinkler} brings about {share} than its rate says. Set cans out in the bed: noonleaf cans"},
    {CheckPhrase::suspect_crop,
     "the plants use about {share} than reckoned. Write down the stage you see: noonleaf log DIR stage "
     "{bed}"},
    {CheckPhrase::suspect_soil,
     "the soil holds about {share} than its class says. Measure it with a pot: noonleaf soils --pot"},
    {CheckPhrase::rate, "the rate"},
    {CheckPhrase::crop, "the crop"},
    {CheckPhrase::soil, "the soil"},
    {CheckPhrase::doubt_drier,
     "Doubt: {count} soil checks since {day} all found {crop} drier than the account, by {least} to "
     "{most}."},
    {CheckPhrase::doubt_wetter,
     "Doubt: {count} soil checks since {day} all found {crop} wetter than the account, by {least} to "
     "{most}."},
    {CheckPhrase::no_reason, " No single reason fits: look at the bed, the sprinkler and the soil."},
    {CheckPhrase::likeliest, " Likeliest: {suspect}. That explains {share} % of it"},
    {CheckPhrase::less_likely, "; less likely: {suspects}"},
    {CheckPhrase::other_suspect, "{culprit} {share} than thought, {explained} %"},
    {CheckPhrase::open_question,
     "Not in the journal, done or not: {runs}. {crop} is down {if_done} if so, {if_not} if not."},
    {CheckPhrase::right_either_way, " {minutes} minutes are right either way."},
    {CheckPhrase::right_or_more,
     " {minutes} minutes are right either way; feel the soil at finger depth: if it is dry, {all}."},
    {CheckPhrase::moist_or_dry, " Feel the soil at finger depth. Moist: leave it. Dry: {all} minutes."},
    {CheckPhrase::moist_or_dry_at,
     " Feel the soil at finger depth. Moist: leave it. Dry: {all} minutes from {clock}, closed by the "
     "{closer}."},
    {CheckPhrase::lasts_either_way, " It lasts either way."},
    {CheckPhrase::lasts_if_moist,
     " If the soil is dry it will be short before the next chance to water: {minutes} minutes when somebody "
     "can."},
    {CheckPhrase::already_ran, "{ran} minutes already ran today."},
    {CheckPhrase::already_ran_too, "{ran} minutes already ran today; this is on top of that."},
    {CheckPhrase::part_ran, "{ran} of the planned {planned} minutes ran today."},
    {CheckPhrase::part_ran_rest, "{ran} of the planned {planned} minutes ran today; this is the rest."},
    {CheckPhrase::poured, "{ran} already went on today."},
    {CheckPhrase::poured_too, "{ran} already went on today; this is on top of that."},
    {CheckPhrase::part_poured, "{ran} of the planned {planned} went on today."},
    {CheckPhrase::part_poured_rest, "{ran} of the planned {planned} went on today; this is the rest."},
}};

inline constexpr PhraseTable<CheckPhrase> soil_check_phrases_es{{
    {CheckPhrase::by_probe, "con sonda"},
    {CheckPhrase::by_feel, "con la mano"},
    {CheckPhrase::by_feel_found, "con la mano: {feel}"},
    {CheckPhrase::soil_check,
     "Revisión de la tierra del {day}, {method}. {crop}: según la cuenta faltaban {before} de agua "
     "(±{before_sd}), según la revisión {found} (±{found_sd}); se toman {after}, según cuánto se puede "
     "confiar en cada una."},
    {CheckPhrase::one_run, "el riego del {day} ({minutes} minutos)"},
    {CheckPhrase::two_runs, "los riegos del {first} y del {last} ({minutes} y {last_minutes} minutos)"},
    {CheckPhrase::many_runs, "{count} riegos del {first} al {last} ({minutes} minutos en total)"},
    {CheckPhrase::less, "{share} % menos"},
    {CheckPhrase::more, "{share} % más"},
    {CheckPhrase::suspect_rate,
     "el riego ({sprinkler}) echa cerca de {share} de lo que dice su caudal. Ponga latas en la cama: "
     "noonleaf cans"},
    {CheckPhrase::suspect_crop,
     "las plantas gastan cerca de {share} de lo calculado. Anote la etapa que ve: noonleaf log DIR stage "
     "{bed}"},
    {CheckPhrase::suspect_soil,
     "la tierra guarda cerca de {share} de lo que dice su clase. Mídala con una maceta: noonleaf soils "
     "--pot"},
    {CheckPhrase::rate, "el caudal"},
    {CheckPhrase::crop, "el cultivo"},
    {CheckPhrase::soil, "la tierra"},
    {CheckPhrase::doubt_drier,
     "Duda: {count} revisiones de la tierra desde el {day} hallaron todas la tierra de {crop} más seca "
     "que la cuenta, de {least} a {most}."},
    {CheckPhrase::doubt_wetter,
     "Duda: {count} revisiones de la tierra desde el {day} hallaron todas la tierra de {crop} más húmeda "
     "que la cuenta, de {least} a {most}."},
    {CheckPhrase::no_reason, " Ninguna causa sola lo explica: revise la cama, el aspersor y la tierra."},
    {CheckPhrase::likeliest, " Lo más probable: {suspect}. Eso explica el {share} %"},
    {CheckPhrase::less_likely, "; menos probable: {suspects}"},
    {CheckPhrase::other_suspect, "{culprit} {share} de lo pensado, {explained} %"},
    {CheckPhrase::open_question,
     "El diario no dice si se hizo o no: {runs}. {crop}: si se regó, faltan {if_done} de agua; si no, "
     "{if_not}."},
    {CheckPhrase::right_either_way, " {minutes} minutos están bien en los dos casos."},
    {CheckPhrase::right_or_more,
     " {minutes} minutos están bien en los dos casos; meta el dedo en la tierra: si está seca, {all}."},
    {CheckPhrase::moist_or_dry, " Meta el dedo en la tierra. Húmeda: no riegue. Seca: {all} minutos."},
    {CheckPhrase::moist_or_dry_at,
     " Meta el dedo en la tierra. Húmeda: no riegue. Seca: {all} minutos desde {clock}; cierra: {closer}."},
    {CheckPhrase::lasts_either_way, " Aguanta en los dos casos."},
    {CheckPhrase::lasts_if_moist,
     " Si la tierra está seca le va a faltar agua antes de que se pueda volver a regar: {minutes} minutos "
     "cuando "
     "alguien pueda."},
    {CheckPhrase::already_ran, "Hoy ya se regó {ran} minutos."},
    {CheckPhrase::already_ran_too, "Hoy ya se regó {ran} minutos; esto es aparte."},
    {CheckPhrase::part_ran, "Hoy se regó {ran} de los {planned} minutos planeados."},
    {CheckPhrase::part_ran_rest, "Hoy se regó {ran} de los {planned} minutos planeados; este es el resto."},
    {CheckPhrase::poured, "Hoy ya se regó con {ran}."},
    {CheckPhrase::poured_too, "Hoy ya se regó con {ran}; esto es aparte."},
    {CheckPhrase::part_poured, "Hoy se regó con {ran}; lo planeado: {planned}."},
    {CheckPhrase::part_poured_rest, "Hoy se regó con {ran}; lo planeado: {planned}. Este es el resto."},
}};

static_assert(is_complete(soil_check_phrases_en) && is_complete(soil_check_phrases_es));
static_assert(fill_the_same(soil_check_phrases_en, soil_check_phrases_es));
static_assert(all_differ(soil_check_phrases_en, soil_check_phrases_es));

/// A phrase about a look into the soil, or about runs in doubt, with its braces filled.
inline std::string fill(Language language, CheckPhrase id, std::initializer_list<Filling> fillings = {}) {
  return filled_row(language, soil_check_phrases_en, soil_check_phrases_es, id, fillings);
}

}  // namespace v1
}  // namespace noonleaf
