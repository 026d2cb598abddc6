// What was not measured, in both languages.
#pragma once

#include "noonleaf/plan/estimates.hpp"
#include "noonleaf/report/phrase_row.hpp"

namespace noonleaf {
inline namespace v1 {

/// What stands beside the facts below. A row that is missing, empty, out of order, not translated, or that
/// fills in other things than its English is a build error.
enum class EstimatePhrase : std::size_t {
  on_bed,
  known_full,
  start_no_matter,
  start_matters,
  days_of,
  unlogged_run,
  unlogged_runs,
  last_phrase = unlogged_runs
};

inline constexpr PhraseTable<EstimatePhrase> estimate_phrases_en{{
    {EstimatePhrase::on_bed, " on bed {bed}"},
    {EstimatePhrase::known_full, "; bed {bed} was known to be full on {date}"},
    {EstimatePhrase::start_no_matter, "; it no longer matters"},
    {EstimatePhrase::start_matters, "; had it been dry, bed {bed} would be {depth} drier now: feel the soil"},
    {EstimatePhrase::days_of, " ({days} of {of_days} days)"},
    {EstimatePhrase::unlogged_run,
     "1 planned run is not in the journal, done or not. Write down what you know: noonleaf log DIR water "
     "{bed} --date {date} --minutes {minutes} (0 if it did not run), or log DIR feel {bed} --feel moist."},
    {EstimatePhrase::unlogged_runs,
     "{count} planned runs are not in the journal, done or not. Write down what you know: noonleaf log "
     "DIR water {bed} --date {date} --minutes {minutes} (0 if it did not run), or log DIR feel {bed} "
     "--feel moist."},
}};

inline constexpr PhraseTable<EstimatePhrase> estimate_phrases_es{{
    {EstimatePhrase::on_bed, " en la cama {bed}"},
    {EstimatePhrase::known_full, "; se sabe que la cama {bed} estaba llena el {date}"},
    {EstimatePhrase::start_no_matter, "; ya no importa"},
    {EstimatePhrase::start_matters,
     "; si hubiera estado seca, a la cama {bed} le faltarían hoy {depth} más: toque la tierra"},
    {EstimatePhrase::days_of, " ({days} de {of_days} días)"},
    {EstimatePhrase::unlogged_run,
     "Hay 1 riego planeado que no está en el diario, hecho o no. Anote lo que sepa: noonleaf log DIR "
     "water {bed} --date {date} --minutes {minutes} (0 si no corrió), o log DIR feel {bed} --feel moist "
     "(tierra húmeda)."},
    {EstimatePhrase::unlogged_runs,
     "Hay {count} riegos planeados que no están en el diario, hechos o no. Anote lo que sepa: noonleaf "
     "log DIR water {bed} --date {date} --minutes {minutes} (0 si no corrió), o log DIR feel {bed} --feel "
     "moist (tierra húmeda)."},
}};

static_assert(is_complete(estimate_phrases_en) && is_complete(estimate_phrases_es));
static_assert(fill_the_same(estimate_phrases_en, estimate_phrases_es));
static_assert(all_differ(estimate_phrases_en, estimate_phrases_es));

/// A phrase beside the facts with its braces filled.
inline std::string fill(Language language, EstimatePhrase id, std::initializer_list<Filling> fillings = {}) {
  return filled_row(language, estimate_phrases_en, estimate_phrases_es, id, fillings);
}

/// A row for every fact.
template <>
inline constexpr std::size_t phrase_count_of<NotMeasured> = static_cast<std::size_t>(NotMeasured::soil_half) +
                                                            1;

inline constexpr PhraseTable<NotMeasured> not_measured_en{{
    {NotMeasured::sun_from_sunshine, "sun worked out from the hours of sunshine"},
    {NotMeasured::sun_from_temperature, "sun estimated from the day's temperature range"},
    {NotMeasured::sun_unknown, "sun unknown"},
    {NotMeasured::humidity_from_night, "humidity estimated from the night's lowest temperature"},
    {NotMeasured::humidity_unknown, "humidity unknown"},
    {NotMeasured::wind_usual, "wind taken as 2 m/s"},
    {NotMeasured::wind_unknown, "wind unknown"},
    {NotMeasured::no_temperature, "no temperature: ET0 from the days around"},
    {NotMeasured::no_rain_reading, "no rain reading: taken as none"},
    {NotMeasured::forecast_weather, "weather is a forecast, not a measurement"},
    {NotMeasured::forecast_in_part, "what the station did not measure is taken from a forecast"},
    {NotMeasured::forecast_rain, "rain that was only forecast is not counted: read the gauge"},
    {NotMeasured::weather_ends, "the weather ends on {date}: later days are taken like the last three"},
    {NotMeasured::no_temperature_today, "no temperature for today: droop and wilt cannot be told"},
    {NotMeasured::journal_empty, "nothing is in the journal: watering that nobody wrote down is not counted"},
    {NotMeasured::journal_silent,
     "the journal is silent since {date}: watering that nobody wrote down is not counted"},
    {NotMeasured::mulch_unsaid,
     "the mulch line of {date}{on_bed} does not say what was laid: it counts for nothing (column mulch)"},
    {NotMeasured::amend_unsaid,
     "the amend line of {date}{on_bed} has no numbers: the old soil is taken; weigh a pot (noonleaf soils "
     "--pot)"},
    {NotMeasured::amend_measured,
     "the amend line of {date}{on_bed} tells organic matter, but this soil was measured: the old soil is "
     "taken; weigh a pot again (noonleaf soils --pot)"},
    {NotMeasured::northern_months,
     "stage lengths of annual crops are chosen by northern planting months: name a region, or write down "
     "the stages you see"},
    {NotMeasured::spray_loss_unsaid,
     "{sprinkler}: what wind and sun take of its spray is not stated; none is taken off"},
    {NotMeasured::rate_guessed, "{sprinkler}: its rate is a guess; set cans out for 15 minutes to know it"},
    {NotMeasured::evenness_guessed, "{sprinkler}: how evenly it waters is a guess; set cans out to know it"},
    {NotMeasured::garden_doubt, "{doubt}"},
    {NotMeasured::surrogate_crop, "{crop}: no published values, those of a similar crop stand in"},
    {NotMeasured::first_year,
     "bed {bed}, {crop}: in its first year; the plant factor is that of established plants, so look at it "
     "often and water it sooner"},
    {NotMeasured::salt_guessed,
     "bed {bed}, {crop}: salt in the soil is guessed from the water (1.5 times its salinity)"},
    {NotMeasured::too_salty,
     "bed {bed}, {crop}: the water is too salty for it; no leaching is asked for, since none helps"},
    {NotMeasured::account_after_gap,
     "the account starts only on {date}: weather is missing for days before it, too many to bridge"},
    {NotMeasured::soil_full, "soil taken as full of water on {date}, where the account starts"},
    {NotMeasured::soil_half, "soil taken as half full on {date}, where the account starts"},
}};

inline constexpr PhraseTable<NotMeasured> not_measured_es{{
    {NotMeasured::sun_from_sunshine, "el sol se calculó de las horas de sol"},
    {NotMeasured::sun_from_temperature, "el sol se calculó de la temperatura mínima y máxima del día"},
    {NotMeasured::sun_unknown, "no se sabe cuánto sol hubo"},
    {NotMeasured::humidity_from_night, "la humedad se calculó de la temperatura más baja de la noche"},
    {NotMeasured::humidity_unknown, "no se sabe la humedad"},
    {NotMeasured::wind_usual, "el viento se toma como 2 m/s"},
    {NotMeasured::wind_unknown, "no se sabe el viento"},
    {NotMeasured::no_temperature, "sin temperatura: la ET0 se toma de los días vecinos"},
    {NotMeasured::no_rain_reading, "lluvia sin medir: se toma como ninguna"},
    {NotMeasured::forecast_weather, "el tiempo es de un pronóstico, no medido"},
    {NotMeasured::forecast_in_part, "lo que la estación no midió se toma de un pronóstico"},
    {NotMeasured::forecast_rain, "la lluvia que solo se pronosticó no se cuenta: mire el pluviómetro"},
    {NotMeasured::weather_ends,
     "los datos del tiempo terminan el {date}: los días siguientes se toman como los últimos tres"},
    {NotMeasured::no_temperature_today,
     "hoy no hay temperatura: no se puede decir si las hojas van a colgar o a marchitarse"},
    {NotMeasured::journal_empty, "el diario está vacío: lo que se regó sin anotar no se cuenta"},
    {NotMeasured::journal_silent,
     "en el diario no hay nada desde el {date}: lo que se regó sin anotar no se cuenta"},
    {NotMeasured::mulch_unsaid,
     "la línea de acolchado del {date}{on_bed} no dice qué se puso: no se cuenta (columna mulch)"},
    {NotMeasured::amend_unsaid,
     "la línea de abono a la tierra del {date}{on_bed} no trae números: se toma la tierra de antes; pese "
     "una maceta (noonleaf soils --pot)"},
    {NotMeasured::amend_measured,
     "la línea de abono a la tierra del {date}{on_bed} trae materia orgánica, pero esta tierra se midió: se "
     "toma la de antes; vuelva a pesar una maceta (noonleaf soils --pot)"},
    {NotMeasured::northern_months,
     "las etapas de los cultivos anuales van según los meses de siembra del norte: ponga una región, o "
     "anote las etapas que vea"},
    {NotMeasured::spray_loss_unsaid,
     "{sprinkler}: no se dice cuánta agua se llevan el viento y el sol; no se descuenta nada"},
    {NotMeasured::rate_guessed,
     "{sprinkler}: cuánta agua echa es un supuesto; ponga latas 15 minutos para saberlo"},
    {NotMeasured::evenness_guessed,
     "{sprinkler}: qué tan parejo riega es un supuesto; ponga latas para saberlo"},
    {NotMeasured::garden_doubt, "duda del archivo del jardín (en inglés): {doubt}"},
    {NotMeasured::surrogate_crop, "{crop}: no hay datos publicados, se usan los de un cultivo parecido"},
    {NotMeasured::first_year,
     "cama {bed}, {crop}: está en su primer año y el factor es el de plantas ya arraigadas; mírela "
     "seguido y riéguela antes"},
    {NotMeasured::salt_guessed,
     "cama {bed}, {crop}: la sal de la tierra se supone de la del agua (1,5 veces)"},
    {NotMeasured::too_salty,
     "cama {bed}, {crop}: el agua tiene demasiada sal para este cultivo; no se pide agua para lavarla "
     "porque no ayuda"},
    {NotMeasured::account_after_gap,
     "la cuenta empieza apenas el {date}: antes faltan datos del tiempo de demasiados días"},
    {NotMeasured::soil_full, "la tierra se toma como llena de agua el {date}, cuando empieza la cuenta"},
    {NotMeasured::soil_half, "la tierra se toma como medio llena el {date}, cuando empieza la cuenta"},
}};

static_assert(is_complete(not_measured_en) && is_complete(not_measured_es));
static_assert(fill_the_same(not_measured_en, not_measured_es));
static_assert(all_differ(not_measured_en, not_measured_es));

/// A fact that was not measured, with its braces filled.
inline std::string fill(Language language, NotMeasured id, std::initializer_list<Filling> fillings = {}) {
  return filled_row(language, not_measured_en, not_measured_es, id, fillings);
}

}  // namespace v1
}  // namespace noonleaf
