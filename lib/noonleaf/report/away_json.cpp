#include <array>
#include <string>
#include <string_view>
#include <utility>

#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/report/away_parts.hpp"
#include "noonleaf/report/away_words.hpp"
#include "noonleaf/report/json_parts.hpp"
#include "noonleaf/report/likelihood_json.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;

Json outlook_json(const AwayOutlook& outlook) {
  constexpr std::array<std::string_view, 4> helps{"nothing", "deep_watering", "mulch", "one_visit"};
  return {{"help", helps[static_cast<std::size_t>(outlook.help)]},
          {"leaves_comfort", date_or_null(outlook.middle.leaves_comfort)},
          {"wilts", date_or_null(outlook.middle.wilts)},
          {"lost_mm", outlook.middle.lost_mm},
          {"earliest_wilt", date_or_null(outlook.earliest_wilt)},
          {"latest_wilt", date_or_null(outlook.latest_wilt)},
          {"skies", outlook.skies},
          {"skies_beyond_limit", outlook.skies_beyond},
          {"skies_wilting", outlook.skies_wilting}};
}

Json bed_json(const AwayView& view, const AwayBed& bed, const std::string& letter) {
  const Bed& where = view.garden.beds[bed.bed];
  Json entry{{"bed", where.id}, {"letter", letter}, {"nothing_grows", bed.nothing_grows}};
  if (bed.nothing_grows) return entry;
  const auto& likelihood = view.away.likelihood;
  entry["crop"] = where.plantings[bed.planting].crop;
  entry["seedbed"] = bed.seedbed;
  entry["deep_watering_mm"] = bed.deep_net_mm;
  entry["visit_mm"] = bed.visit_net_mm;
  entry["with_rain"] = {{"leaves_comfort", date_or_null(bed.with_rain.leaves_comfort)},
                        {"wilts", date_or_null(bed.with_rain.wilts)}};
  entry["likelihood"] =
      likelihood ? planting_likelihood_json(*likelihood, bed.bed, bed.planting) : Json(nullptr);
  entry["outlooks"] = Json::array();
  for (const AwayOutlook& outlook : bed.outlooks) entry["outlooks"].push_back(outlook_json(outlook));
  return entry;
}

}  // namespace

std::string away_json(const AwayView& view) {
  const Away& away = view.away;
  const auto letters = bed_letters(view.garden);
  Json beds = Json::array();
  for (const AwayBed& bed : away.beds) beds.push_back(bed_json(view, bed, letters[bed.bed]));
  return json_text(
      {{"shape", "noonleaf.away"},
       {"version", 1},
       {"today", iso_date(away.question.today)},
       {"from", iso_date(away.question.from)},
       {"to", iso_date(away.question.to)},
       {"weather_known_to", iso_date(away.known_to)},
       {"past_years", away.past_years},
       {"runs_taken_as_done", away.taken_as_done},
       {"best_visit", date_or_null(away.best_visit)},
       {"likelihood", away.likelihood ? likelihood_json(tried_in(view, Language::en)) : Json(nullptr)},
       {"beds", std::move(beds)}});
}

}  // namespace v1
}  // namespace noonleaf
