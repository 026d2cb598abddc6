#pragma once

#include <array>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

/// What an answer says about how sure it is, in one language. A missing one is empty, and the check below
/// makes that a build error.
struct LikelihoodPhrases {
  std::string_view in_tenths, hardly_any, nearly_all, all, none;
  std::string_view limit_today, limit_by, limit_also_by, limit_not, absence, how_sure, wilts_by, wilts_not,
      no_hours;
  std::string_view alert_likely;
  std::string_view tried, without_water, with_plan, until_leaving, past_years, this_year, last_days, assumed,
      low_quarter, rain_counts;
  std::string_view minutes;
  std::string_view measure, measure_gain, cans_test, bucket_test, feel_test, rain_gauge;
};

inline constexpr LikelihoodPhrases likelihood_english{
    .in_tenths = "in {} of 10",
    .hardly_any = "in hardly any",
    .nearly_all = "in nearly all",
    .all = "in all",
    .none = "in none",
    .limit_today = "{} (bed {}): short of water today {}",
    .limit_by = "{} (bed {}): short of water by {} {}",
    .limit_also_by = ", by {} {}",
    .limit_not = "{} (bed {}): short of water {} to {}",
    .absence = "short of water by {} {}",
    .how_sure = "How sure",
    .wilts_by = "; wilts for want of it by {} {}.",
    .wilts_not = "; wilts for want of it {} to {}.",
    .no_hours = ".",
    .alert_likely = "{} of the weathers and gardens tried",
    .tried = "{} weathers and gardens tried, each as wrong as forecasts, tables and guesses may be.",
    .without_water = "As if nobody watered again.",
    .with_plan = "As if the plan were followed.",
    .until_leaving = "As if the plan were followed up to the absence, and nobody watered in it.",
    .past_years =
        "Behind the forecast, which ends on {}, days of the same season in your own {} past years stand "
        "for the weather.",
    .this_year =
        "No past year in the weather folder: behind the forecast, which ends on {}, days of this year's "
        "last weeks stand for the weather.",
    .last_days =
        "Neither past years nor enough days of this one in the weather folder: behind the forecast, which "
        "ends on {}, its last day goes on with large errors.",
    .assumed =
        "Doubted: the forecast, what the soil holds, the sprinkler's rate and evenness, the rain that "
        "reaches a bed, what the crop uses. Not doubted: the journal.",
    .low_quarter = "In the driest quarter of a bed it comes earlier: the alerts are about that.",
    .rain_counts = "Rain that may come counts here.",
    .minutes = "{} minutes for bed {}: {} to {} would be right in 8 of 10.",
    .measure = "Measure next: {}.",
    .measure_gain =
        "It would take {} % of the doubt out of today's minutes: bed {} could be {} to {} now, {} to {} "
        "then.",
    .cans_test = "set out cans under the {} (bed {}) for a quarter of an hour",
    .bucket_test = "fill a bucket through the {} (bed {}) and time it",
    .feel_test = "feel the soil of bed {} at finger depth, before its run",
    .rain_gauge = "put up a rain gauge and write down what it catches"};

inline constexpr LikelihoodPhrases likelihood_spanish{
    .in_tenths = "en {} de cada 10",
    .hardly_any = "en casi ninguno",
    .nearly_all = "en casi todos",
    .all = "en todos",
    .none = "en ninguno",
    .limit_today = "{} (cama {}): hoy le falta agua {}",
    .limit_by = "{} (cama {}): para el {} le falta agua {}",
    .limit_also_by = ", para el {} {}",
    .limit_not = "{} (cama {}): le falta agua {} de aquí al {}",
    .absence = "para el {} le falta agua {}",
    .how_sure = "Qué tan probable",
    .wilts_by = "; para el {} se marchita por falta de agua {}.",
    .wilts_not = "; se marchita por falta de agua {} de aquí al {}.",
    .no_hours = ".",
    .alert_likely = "de los casos que se probaron, {}",
    .tried =
        "Se probaron {} casos con otro tiempo, otra tierra y otro aspersor, cada uno tan equivocado como "
        "pueden estarlo pronósticos, tablas y suposiciones.",
    .without_water = "Como si nadie volviera a regar.",
    .with_plan = "Como si se siguiera el plan.",
    .until_leaving = "Como si se siguiera el plan hasta la ausencia y nadie regara durante ella.",
    .past_years =
        "Después del pronóstico, que termina el {}, se usan días de la misma época de {} años pasados de "
        "sus propios archivos.",
    .this_year =
        "No hay años pasados en la carpeta del tiempo: después del pronóstico, que termina el {}, se "
        "usan días de las últimas semanas de este año.",
    .last_days =
        "No hay años pasados ni bastantes días de este en la carpeta del tiempo: después del pronóstico, que "
        "termina el {}, sigue su último día con errores grandes.",
    .assumed =
        "Puede estar mal: el pronóstico, lo que guarda la tierra, lo que echa el aspersor y si moja "
        "parejo, la lluvia que llega a la cama, lo que gasta la planta. El diario se toma como cierto.",
    .low_quarter = "En la cuarta parte más seca de la cama llega antes: de eso hablan los avisos.",
    .rain_counts = "Aquí sí cuenta la lluvia que puede venir.",
    .minutes = "{} minutos para la cama {}: de {} a {} estarían bien en 8 de cada 10.",
    .measure = "Mida ahora: {}.",
    .measure_gain =
        "Quitaría el {} % de la duda en los minutos de hoy: la cama {} puede pedir de {} a {} ahora, de "
        "{} a {} después.",
    .cans_test = "ponga latas en la cama {1} y riegue un cuarto de hora ({0})",
    .bucket_test = "llene una cubeta con el agua que llega a la cama {1} ({0}) y tome el tiempo",
    .feel_test = "antes de regar la cama {}, toque la tierra a un dedo de hondo",
    .rain_gauge = "ponga un pluviómetro y anote lo que recoge"};

constexpr bool is_complete(const LikelihoodPhrases& p) {
  const std::array all{p.in_tenths,   p.hardly_any,    p.nearly_all,    p.all,           p.none,
                       p.limit_today, p.limit_by,      p.limit_also_by, p.limit_not,     p.absence,
                       p.how_sure,    p.wilts_by,      p.wilts_not,     p.no_hours,      p.alert_likely,
                       p.tried,       p.without_water, p.with_plan,     p.until_leaving, p.past_years,
                       p.this_year,   p.last_days,     p.assumed,       p.low_quarter,   p.rain_counts,
                       p.minutes,     p.measure,       p.measure_gain,  p.cans_test,     p.bucket_test,
                       p.feel_test,   p.rain_gauge};
  for (const std::string_view phrase : all)
    if (phrase.empty()) return false;
  return true;
}
static_assert(is_complete(likelihood_english) && is_complete(likelihood_spanish));

}  // namespace v1
}  // namespace noonleaf
