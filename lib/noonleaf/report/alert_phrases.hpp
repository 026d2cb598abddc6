// What an alert says in both languages: what will be seen, why, and one thing to do.
#pragma once

#include "noonleaf/report/phrase_row.hpp"

namespace noonleaf {
inline namespace v1 {

/// Every phrase of an alert. A row that is missing, empty, out of order, not translated, or that fills
/// in other things than its English is a build error.
enum class AlertPhrase : std::size_t {
  in_bed,
  in_driest_quarter,
  depletion,
  depletion_driest,
  evenness_is_guess,
  if_nothing_was_done,
  worst_hour,
  hours_from,
  hours_between,
  hours_into_night,
  without_run,
  hung_at_dawn,
  look_at_roots,
  dry_soil_wilt,
  short_and_hangs,
  short_of_growth,
  droop,
  do_not_skip_run,
  find_a_person,
  feel_the_soil,
  water_the_corner,
  water_the_corner_too,
  run_is_enough,
  look_again,
  look_again_then_slot,
  look_again_then_minutes,
  at_next_chance,
  when_somebody_can,
  blocked_run,
  hot_enough,
  harm_days,
  harm_one_day,
  published_limits,
  days_above,
  nights_above,
  days_and_nights_above,
  frost,
  frost_evidence,
  frost_action,
  frost_to_come,
  frost_to_come_action,
  after_the_frost,
  last_phrase = after_the_frost
};

inline constexpr PhraseTable<AlertPhrase> alert_phrases_en{{
    {AlertPhrase::in_bed, "{crops} in bed {bed}"},
    {AlertPhrase::in_driest_quarter, "{crops} in the driest quarter of bed {bed}"},
    {AlertPhrase::depletion, "{crop} is down {now} and can spare {spare}"},
    {AlertPhrase::depletion_driest,
     "{crop} is down {now} and can spare {spare}, but {driest} where the {sprinkler} brings least: "
     "{share} % of the mean{guess}"},
    {AlertPhrase::evenness_is_guess, ", a guess"},
    {AlertPhrase::if_nothing_was_done, ", if none of the runs was done that nobody wrote down"},
    {AlertPhrase::worst_hour,
     "; at the worst hour ({hour}) its roots bring {share} % of what its leaves lose"},
    {AlertPhrase::hours_from, " from about {from}"},
    {AlertPhrase::hours_between, " from about {from} to {until}"},
    {AlertPhrase::hours_into_night, " from about {from} to {until} at night"},
    {AlertPhrase::without_run, "without its run, "},
    {AlertPhrase::hung_at_dawn, "{who}: hung at dawn over moist soil: neither thirst nor heat"},
    {AlertPhrase::look_at_roots,
     "do not water; feel the soil at finger depth. Moist: look at the roots and the stem (rot, disease, "
     "salt) and call the garden educator. Dry: the account is wrong; write it down: noonleaf log DIR feel"},
    {AlertPhrase::dry_soil_wilt,
     "{who}: wilting for want of water; {without}leaves hang{hours} and do not recover over night"},
    {AlertPhrase::short_and_hangs, "{who}: short of water; {without}leaves hang{hours}"},
    {AlertPhrase::short_of_growth, "{who}: short of water; {without}growth is lost"},
    {AlertPhrase::droop, "{who}: will hang{hours}. Heat, not thirst: it recovers by itself"},
    {AlertPhrase::do_not_skip_run, "do not skip its run at {clock}; no second run today"},
    {AlertPhrase::find_a_person, "it needs the run that has no time today: find a person, or water by hand"},
    {AlertPhrase::feel_the_soil, "feel the soil at finger depth; if it is dry, water at the next chance"},
    {AlertPhrase::water_the_corner,
     "water the dry corner by hand; set cans out to find it, and turn or move the sprinkler"},
    {AlertPhrase::water_the_corner_too,
     "besides its run, water the dry corner by hand; set cans out to find it, and turn or move the "
     "sprinkler"},
    {AlertPhrase::run_is_enough, "no water at noon: its run at {clock} is enough; look again at {again}"},
    {AlertPhrase::look_again, "no water: look again at {again}"},
    {AlertPhrase::look_again_then_slot,
     "no water now: look again at {again}; if it still hangs and the soil is dry at finger depth, "
     "{minutes} minutes at {clock}, closed by the {closer}"},
    {AlertPhrase::look_again_then_minutes,
     "no water now: look again at {again}; if it still hangs and the soil is dry at finger depth, "
     "{minutes} minutes {when}"},
    {AlertPhrase::at_next_chance, "at the next chance, {day}"},
    {AlertPhrase::when_somebody_can, "when somebody can"},
    {AlertPhrase::blocked_run, "bed {bed} needs {minutes} minutes today and has no run"},
    {AlertPhrase::hot_enough, "{who}: the five days from today are hot enough for {harms}"},
    {AlertPhrase::harm_days, "{harm} ({days} days)"},
    {AlertPhrase::harm_one_day, "{harm} (1 day)"},
    {AlertPhrase::published_limits, "limits that extension services publish: {limits}"},
    {AlertPhrase::days_above, "days above {day}"},
    {AlertPhrase::nights_above, "nights above {night}"},
    {AlertPhrase::days_and_nights_above, "days above {day} and nights above {night}"},
    {AlertPhrase::frost, "{who}: frost, a low of {low}"},
    {AlertPhrase::frost_evidence, "its leaves die at about freezing; a clear night is colder at the ground"},
    {AlertPhrase::frost_action,
     "leave it until it has thawed, then pick what is ripe; leaves that hang after a frost are frozen, not "
     "thirsty: no water until they have thawed"},
    {AlertPhrase::frost_to_come, "{who}: frost in the night to come, a low of {low}"},
    {AlertPhrase::frost_to_come_action, "pick what is ripe and cover it before the evening"},
    {AlertPhrase::after_the_frost,
     "no water in the frost: leave the tap closed, and see to it first when the frost is over"},
}};

inline constexpr PhraseTable<AlertPhrase> alert_phrases_es{{
    {AlertPhrase::in_bed, "{crops} en la cama {bed}"},
    {AlertPhrase::in_driest_quarter, "{crops} en la cuarta parte más seca de la cama {bed}"},
    {AlertPhrase::depletion, "{crop}: a la tierra le faltan {now} de agua; la planta aguanta hasta {spare}"},
    {AlertPhrase::depletion_driest,
     "{crop}: a la tierra le faltan {now} de agua, y {driest} donde menos moja ({sprinkler}: {share} % "
     "del promedio{guess}); la planta aguanta hasta {spare}"},
    {AlertPhrase::evenness_is_guess, ", sin medir"},
    {AlertPhrase::if_nothing_was_done, ", si no se hizo ninguno de los riegos que nadie anotó"},
    {AlertPhrase::worst_hour,
     "; a la peor hora ({hour}) las raíces dan el {share} % de lo que pierden las hojas"},
    {AlertPhrase::hours_from, " desde como {from}"},
    {AlertPhrase::hours_between, " desde como {from} hasta {until}"},
    {AlertPhrase::hours_into_night, " desde como {from} hasta {until}, ya de madrugada"},
    {AlertPhrase::without_run, "sin su riego, "},
    {AlertPhrase::hung_at_dawn,
     "{who}: amaneció con las hojas caídas y la tierra húmeda: no es sed ni calor"},
    {AlertPhrase::look_at_roots,
     "no riegue; meta el dedo en la tierra. Si está húmeda: mire las raíces y el tallo (pudrición, "
     "enfermedad, sal) y avise a la persona encargada del jardín. Si está seca: la cuenta está mal; "
     "anótelo con noonleaf log DIR feel"},
    {AlertPhrase::dry_soil_wilt,
     "{who}: se marchita por falta de agua; {without}las hojas cuelgan{hours} y no se levantan en la noche"},
    {AlertPhrase::short_and_hangs, "{who}: falta agua; {without}las hojas cuelgan{hours}"},
    {AlertPhrase::short_of_growth, "{who}: falta agua; {without}se pierde crecimiento"},
    {AlertPhrase::droop, "{who}: las hojas van a colgar{hours}. Es el calor, no la sed: se levantan solas"},
    {AlertPhrase::do_not_skip_run, "haga su riego de {clock}; hoy no riegue dos veces"},
    {AlertPhrase::find_a_person,
     "necesita el riego que hoy no tiene hora: busque quién lo haga, o riegue a mano"},
    {AlertPhrase::feel_the_soil, "meta el dedo en la tierra; si está seca, riegue en la próxima oportunidad"},
    {AlertPhrase::water_the_corner,
     "riegue a mano la parte seca; ponga latas para hallarla, y gire o mueva el aspersor"},
    {AlertPhrase::water_the_corner_too,
     "además de su riego, riegue a mano la parte seca; ponga latas para hallarla, y gire o mueva el "
     "aspersor"},
    {AlertPhrase::run_is_enough,
     "no riegue al mediodía: basta con su riego de {clock}; mire otra vez a {again}"},
    {AlertPhrase::look_again, "no riegue: mire otra vez a {again}"},
    {AlertPhrase::look_again_then_slot,
     "no riegue ahora: mire otra vez a {again}; si las hojas siguen caídas y la tierra está seca a un "
     "dedo de hondo, riegue {minutes} minutos a {clock}; cierra: {closer}"},
    {AlertPhrase::look_again_then_minutes,
     "no riegue ahora: mire otra vez a {again}; si las hojas siguen caídas y la tierra está seca a un "
     "dedo de hondo, riegue {minutes} minutos {when}"},
    {AlertPhrase::at_next_chance, "en la próxima oportunidad, el {day}"},
    {AlertPhrase::when_somebody_can, "cuando alguien pueda"},
    {AlertPhrase::blocked_run, "la cama {bed} necesita hoy {minutes} minutos y no tiene riego"},
    {AlertPhrase::hot_enough,
     "{who}: en los cinco días que empiezan hoy hace tanto calor que puede haber {harms}"},
    {AlertPhrase::harm_days, "{harm} ({days} días)"},
    {AlertPhrase::harm_one_day, "{harm} (1 día)"},
    {AlertPhrase::published_limits, "límites que publican los servicios de extensión agrícola: {limits}"},
    {AlertPhrase::days_above, "días de más de {day}"},
    {AlertPhrase::nights_above, "noches de más de {night}"},
    {AlertPhrase::days_and_nights_above, "días de más de {day} y noches de más de {night}"},
    {AlertPhrase::frost, "{who}: helada, mínima de {low}"},
    {AlertPhrase::frost_evidence,
     "sus hojas mueren cuando hiela; en noche despejada hace más frío a ras del suelo"},
    {AlertPhrase::frost_action,
     "déjela hasta que se descongele y luego coseche lo maduro; las hojas que cuelgan después de una "
     "helada están congeladas, no tienen sed: no riegue hasta que se descongelen"},
    {AlertPhrase::frost_to_come, "{who}: helada la noche que viene, mínima de {low}"},
    {AlertPhrase::frost_to_come_action, "coseche lo maduro y tape la planta antes de que anochezca"},
    {AlertPhrase::after_the_frost,
     "sin agua mientras hiele: deje la llave cerrada y atiéndala primero cuando pase la helada"},
}};

static_assert(is_complete(alert_phrases_en) && is_complete(alert_phrases_es));
static_assert(fill_the_same(alert_phrases_en, alert_phrases_es));
static_assert(all_differ(alert_phrases_en, alert_phrases_es));

/// An alert's phrase with its braces filled.
inline std::string fill(Language language, AlertPhrase id, std::initializer_list<Filling> fillings = {}) {
  return filled_row(language, alert_phrases_en, alert_phrases_es, id, fillings);
}

}  // namespace v1
}  // namespace noonleaf
