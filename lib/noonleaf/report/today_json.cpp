#include "noonleaf/report/today_json.hpp"

#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/plan/account_doubt.hpp"
#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/json_parts.hpp"
#include "noonleaf/report/likelihood_json.hpp"
#include "noonleaf/report/soil_check_words.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;

std::string_view code(BedAction action) {
  switch (action) {
    case BedAction::open:
      return "open";
    case BedAction::leave_alone:
      return "leave_alone";
    case BedAction::blocked:
      return "blocked";
  }
  return {};
}

std::string_view code(BedReason reason) {
  switch (reason) {
    case BedReason::seed_zone_dry:
      return "seed_zone_dry";
    case BedReason::beyond_limit:
      return "beyond_limit";
    case BedReason::limit_before_chance:
      return "limit_before_chance";
    case BedReason::rest_of_run:
      return "rest_of_run";
    case BedReason::lasts:
      return "lasts";
    case BedReason::look_first:
      return "look_first";
    case BedReason::ground_closed:
      return "ground_closed";
    case BedReason::nothing_grows:
      return "nothing_grows";
  }
  return {};
}

std::string_view code(RunObstacle obstacle) {
  switch (obstacle) {
    case RunObstacle::nobody_on_site:
      return "nobody_on_site";
    case RunObstacle::allowed_hours:
      return "allowed_hours";
    case RunObstacle::quiet_hours:
      return "quiet_hours";
    case RunObstacle::tap_taken:
      return "tap_taken";
    case RunObstacle::frost:
      return "frost";
    case RunObstacle::restriction:
      return "restriction";
    case RunObstacle::wind:
      return "wind";
    case RunObstacle::tap_flow:
      return "tap_flow";
    case RunObstacle::clock_change:
      return "clock_change";
    case RunObstacle::reclaimed:
      return "reclaimed_water";
    case RunObstacle::no_time_left:
      return "no_time_left";
  }
  return {};
}

std::string_view code(WiltVerdict verdict) {
  switch (verdict) {
    case WiltVerdict::comfortable:
      return "comfortable";
    case WiltVerdict::droop:
      return "droop";
    case WiltVerdict::stress:
      return "stress";
    case WiltVerdict::dry_soil_wilt:
      return "dry_soil_wilt";
    case WiltVerdict::wet_soil_droop:
      return "wet_soil_droop";
    case WiltVerdict::unknown:
      return "unknown";
  }
  return {};
}

Json wilt_json(const WiltDay& wilt) {
  return {{"verdict", code(wilt.verdict)},
          {"droop_from_h", number_or_null(wilt.droop_from_h)},
          {"droop_until_h", number_or_null(wilt.droop_until_h)},
          {"look_again_h", number_or_null(wilt.look_again_h)},
          {"peak_demand_mm_h", number_or_null(wilt.peak_demand_mm_h)},
          {"peak_supply_mm_h", number_or_null(wilt.peak_supply_mm_h)}};
}

Json check_json_of(const SoilCheck& check) {
  const auto both = [](const FoundDepletion& value) {
    return Json{{"depletion_mm", number_or_null(value.dr_mm)}, {"sd_mm", number_or_null(value.sd_mm)}};
  };
  return {{"entry", check.entry_id},
          {"date", iso_date(check.date)},
          {"method", check.method == JournalEvent::feel ? "feel" : "probe"},
          {"before", both(check.before)},
          {"found", both(check.found)},
          {"after", both(check.after)}};
}

Json doubt_json(const PlantingToday& planting, RateBasis basis) {
  const auto doubt = account_doubt(planting.soil_checks, basis);
  if (!doubt) return nullptr;
  Json suspects = Json::array();
  for (const Suspect& suspect : doubt->suspects) {
    suspects.push_back({{"culprit", code(suspect.culprit)},
                        {"share", number_or_null(suspect.share)},
                        {"explained_frac", number_or_null(suspect.explained_frac)}});
  }
  return {{"entries", doubt->entry_ids},
          {"first", iso_date(doubt->first)},
          {"last", iso_date(doubt->last)},
          {"suspects", std::move(suspects)}};
}

Json seedbed_json(const PlantingToday& planting) {
  if (!planting.seedbed) return nullptr;
  const Seedbed& seedbed = *planting.seedbed;
  return {{"emergence", date_or_null(seedbed.emergence)},
          {"by_table", seedbed.by_table},
          {"soil_c", number_or_null(seedbed.soil_c)},
          {"depth_m", number_or_null(seedbed.zone.depth_m)},
          {"depletion_mm", number_or_null(seedbed.depletion_mm)},
          {"depletion_at_close_mm", number_or_null(seedbed.close_mm)},
          {"limit_mm", number_or_null(seedbed.zone.damp_mm)},
          {"light_depth_mm", number_or_null(seedbed.light.depth_mm)},
          {"light_min", number_or_null(planting.light_min)},
          {"light_per_day", number_or_null(seedbed.light.per_day)}};
}

Json salt_json(const SaltOfPlanting& salt) {
  return {{"ece_ds_m", number_or_null(salt.ece_ds_m)},
          {"ece_is_guess", salt.ece_is_guess},
          {"stress", number_or_null(salt.stress)},
          {"leaching_frac", number_or_null(salt.leaching_frac)},
          {"too_salty", salt.too_salty}};
}

Json planting_json(const PlantingToday& planting, RateBasis basis, double percolation_mm) {
  return {{"crop", planting.crop->id},
          {"share_frac", number_or_null(planting.share_frac)},
          {"stage", label(planting.stage)},
          {"in_seed_zone", planting.in_seed_zone},
          {"depletion_mm", number_or_null(planting.dr_mm)},
          {"raw_mm", number_or_null(planting.raw_mm)},
          {"taw_mm", number_or_null(planting.taw_mm)},
          {"top_layer_depletion_mm", number_or_null(planting.top_layer_mm)},
          {"top_layer_limit_mm", number_or_null(planting.top_layer_limit_mm)},
          {"root_depth_m", number_or_null(planting.root_depth_m)},
          {"etc_mm_d", number_or_null(planting.etc_mm_d)},
          {"depletion_at_close_mm", number_or_null(planting.dr_close_mm)},
          {"net_need_mm", number_or_null(planting.net_need_mm)},
          {"percolation_mm", number_or_null(percolation_mm)},
          {"start_doubt_mm", number_or_null(planting.start_doubt_mm)},
          {"seedbed", seedbed_json(planting)},
          {"salt", salt_json(planting.salt)},
          {"limit_day", date_or_null(planting.limit_day)},
          {"soil_check",
           planting.soil_checks.empty() ? Json(nullptr) : check_json_of(planting.soil_checks.back())},
          {"wilt", wilt_json(planting.wilt)},
          {"low_quarter_depletion_mm", number_or_null(planting.low_quarter_dr_mm)},
          {"low_quarter_wilt", wilt_json(planting.low_quarter_wilt)},
          {"doubt", doubt_json(planting, basis)}};
}

Json run_json(const TodayView& view, const BedToday& bed) {
  if (!bed.driver) return nullptr;
  Json run{{"minutes", number_or_null(bed.run.minutes)},
           {"net_depth_mm", number_or_null(bed.run.net_depth_mm)},
           {"depth_in_bed_mm", number_or_null(bed.run.mean_depth_mm)},
           {"litres_in_bed", number_or_null(bed.run.litres_in_bed)},
           {"litres_from_tap", number_or_null(bed.run.litres_from_tap)},
           {"left_over_net_mm", number_or_null(bed.run.left_over_net_mm)},
           {"rate_mm_h", number_or_null(bed.run.rate_mm_h)},
           {"rate_basis", rate_basis_text(bed.run.basis)}};
  if (bed.cycles) {
    Json minutes = Json::array();
    for (const RunOpening& opening : bed.openings) minutes.push_back((opening.end - opening.begin).count());
    run["cycles_min"] = std::move(minutes);
    run["soak_min"] = bed.openings.size() < 2 ? 0 : (bed.openings[1].begin - bed.openings[0].end).count();
    run["left_out_min"] = number_or_null(bed.cycles->left_out_min);
  }
  const Sprinkler& sprinkler = view.garden.sprinklers[view.garden.beds[bed.bed].sprinkler];
  if (is_known(sprinkler.can_l))
    run["cans"] = number_or_null(whole_cans(bed.run.litres_in_bed, sprinkler.can_l));
  if (bed.slot) {
    run["begin"] = clock_text(bed.slot->begin);
    run["end"] = clock_text(bed.slot->end);
    run["opens"] = view.garden.caretakers[bed.slot->opener].id;
    run["closes"] = view.garden.caretakers[bed.slot->closer].id;
  } else {
    run["obstacle"] = code(bed.obstacle);
  }
  return run;
}

Json open_question_json(const TodayView& view, const BedToday& bed) {
  if (!bed.open_question) return nullptr;
  Json runs = Json::array();
  for (const UnloggedRun& run : bed.open_question->runs)
    runs.push_back({{"date", iso_date(run.date)}, {"minutes", number_or_null(run.minutes)}});
  return {{"unlogged_runs", std::move(runs)},
          {"crop", bed.plantings[bed.open_question->planting].crop->id},
          {"depletion_if_done_mm", number_or_null(bed.open_question->dr_if_done_mm)},
          {"depletion_if_not_done_mm", number_or_null(bed.open_question->dr_if_not_done_mm)},
          {"minutes_if_not_done", number_or_null(bed.open_question->run_if_not_done.minutes)},
          {"sentence", open_question_words(view, bed)}};
}

Json bed_json(const TodayView& view, const BedToday& bed) {
  const Bed& where = view.garden.beds[bed.bed];
  const Sprinkler& sprinkler = view.garden.sprinklers[where.sprinkler];
  Json plantings = Json::array();
  const std::vector<ShareOutcome> outcomes = outcomes_of_run(bed);
  for (std::size_t index = 0; index < bed.plantings.size(); ++index) {
    plantings.push_back(planting_json(bed.plantings[index], sprinkler.rate.basis,
                                      outcomes.empty() ? missing : outcomes[index].percolation_mm));
    if (view.today.likelihood)
      plantings.back()["likelihood"] =
          planting_likelihood_json(*view.today.likelihood, bed.bed, bed.plantings[index].planting);
  }
  return {{"bed", where.id},
          {"name", where.name},
          {"area_m2", number_or_null(where.area_m2)},
          {"action", code(bed.action)},
          {"reason", code(bed.reason)},
          {"why", why_words(view, bed)},
          {"sprinkler", sprinkler.id},
          {"tap", view.garden.taps[sprinkler.tap].id},
          {"driver", bed.driver ? Json(bed.plantings[*bed.driver].crop->id) : Json(nullptr)},
          {"next_chance", date_or_null(bed.next_chance)},
          {"minutes_run_today", number_or_null(bed.minutes_run_today)},
          {"planned_minutes", number_or_null(bed.planned_minutes)},
          {"litres_run_today", number_or_null(bed.litres_run_today)},
          {"planned_litres", number_or_null(bed.planned_litres)},
          {"run", run_json(view, bed)},
          {"open_question", open_question_json(view, bed)},
          {"plantings", std::move(plantings)}};
}

Json weather_json(const Today& today) {
  return {{"t_max_c", number_or_null(today.sky.estimate.t_max_c)},
          {"t_min_c", number_or_null(today.sky.estimate.t_min_c)},
          {"rain_mm", number_or_null(today.sky.weather.rain_mm)},
          {"et0_mm_d", number_or_null(today.sky.et0_mm_d)},
          {"is_forecast", today.sky.origin == DayOrigin::forecast},
          {"estimated", estimated_codes(today.sky.estimate)},
          {"heat_index_peak_c", number_or_null(today.people.peak_c)}};
}

}  // namespace

std::string today_json(const TodayView& view) {
  Json beds = Json::array();
  for (const BedToday& bed : view.today.beds) beds.push_back(bed_json(view, bed));
  Json alerts = Json::array();
  for (const Alert& alert : alerts_of(view)) {
    alerts.push_back({{"kind", code(alert.kind)},
                      {"bed", view.garden.beds[alert.bed].id},
                      {"sentence", alert.sentence},
                      {"evidence", alert.evidence},
                      {"action", alert.action},
                      {"likelihood", number_or_null(alert.likelihood)}});
  }
  const Json answer{{"shape", "noonleaf.today"},
                    {"version", 1},
                    {"site", view.garden.site.name},
                    {"date", iso_date(view.today.date)},
                    {"is_demo", view.garden.site.demo_date.has_value()},
                    {"language", code(view.language)},
                    {"weather", weather_json(view.today)},
                    {"beds", std::move(beds)},
                    {"alerts", std::move(alerts)},
                    {"likelihood", view.today.likelihood
                                       ? likelihood_json({view.garden, *view.today.likelihood, view.language})
                                       : Json(nullptr)},
                    {"estimated", estimate_words(view)},
                    {"cautions", caution_words(view)}};
  return json_text(answer);
}

}  // namespace v1
}  // namespace noonleaf
