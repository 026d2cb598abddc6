#include <array>
#include <string_view>

#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/report/estimate_words.hpp"
#include "noonleaf/report/json_parts.hpp"
#include "noonleaf/report/likelihood_json.hpp"
#include "noonleaf/report/week_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;

Json id_or_null(const Garden& garden, const std::optional<std::size_t>& caretaker) {
  return caretaker ? Json(garden.caretakers[*caretaker].id) : Json(nullptr);
}

constexpr std::array<std::string_view, 15> limit_codes{
    "nobody_on_site",    "allowed_hours",      "quiet_hours",  "restriction",  "tap_taken",
    "longest_run",       "tap_flow",           "wind",         "frost",        "ground_closed",
    "reclaimed_on_food", "reclaimed_children", "no_time_left", "clock_change", "already_dry"};
static_assert(limit_codes.size() == static_cast<std::size_t>(WeekLimit::already_dry) + 1);

constexpr std::array<std::string_view, 12> relaxation_codes{
    "none",         "come_then",  "allow_hours", "move_quiet_time",   "allow_weekday",  "water_by_hand",
    "move_to_drip", "longer_run", "second_tap",  "smaller_sprinkler", "drinking_water", "say_children_hours"};
static_assert(relaxation_codes.size() == static_cast<std::size_t>(RelaxationKind::say_children_hours) + 1);

constexpr std::array<std::string_view, 5> risk_codes{"comfortable", "droops", "dry", "wilts", "not_known"};
static_assert(risk_codes.size() == static_cast<std::size_t>(DayRisk::not_known) + 1);

constexpr std::array<std::string_view, 3> size_codes{"refill", "part", "cut_to_limits"};
static_assert(size_codes.size() == static_cast<std::size_t>(RunSize::cut_to_limits) + 1);

constexpr std::array<std::string_view, 5> change_codes{"added", "dropped", "time", "minutes", "closer"};

template <class Code, std::size_t Count>
std::string_view code_of(const std::array<std::string_view, Count>& codes, Code value) {
  return codes[static_cast<std::size_t>(value)];
}

std::string_view crop_of(const Garden& garden, std::size_t bed, std::size_t planting) {
  const auto& plantings = garden.beds[bed].plantings;
  return planting < plantings.size() ? std::string_view(plantings[planting].crop) : std::string_view{};
}

Json unclosed_json(const Garden& garden, const UnclosedRun& unclosed) {
  return {{"until_date", date_or_null(unclosed.until_date)},
          {"until", clock_text(unclosed.until)},
          {"finder", id_or_null(garden, unclosed.finder)},
          {"extra_hours", number_or_null(unclosed.extra_hours)},
          {"extra_l", number_or_null(unclosed.extra_l)},
          {"extra_depth_mm", number_or_null(unclosed.extra_depth_mm)},
          {"percolation_mm", number_or_null(unclosed.percolation_mm)}};
}

Json run_json(const WeekView& view, const WeekRun& run, const PlannedRun& planned) {
  const Garden& garden = view.garden;
  Json cycles = Json::array();
  for (const WeekCycle& cycle : run.cycles)
    cycles.push_back({{"open_at", clock_text(cycle.begin)}, {"close_at", clock_text(cycle.end)}});
  const double by_hand_l = noonleaf::by_hand_l(view, run);
  return {{"run", run.number},
          {"date", iso_date(run.date)},
          {"bed", garden.beds[run.bed].id},
          {"letter", bed_letter(view, run.bed)},
          {"run_of_day", planned.run_of_day},
          {"sprinkler", garden.sprinklers[run.sprinkler].id},
          {"tap", garden.taps[run.tap].id},
          {"open_at", clock_text(planned.begin)},
          {"close_at", clock_text(planned.end)},
          {"cycles", std::move(cycles)},
          {"minutes", number_or_null(run.minutes)},
          {"opens", garden.caretakers[run.opener].id},
          {"closes", planned.closer},
          {"backup", id_or_null(garden, run.backup)},
          {"net_depth_mm", number_or_null(run.net_depth_mm)},
          {"depth_in_bed_mm", number_or_null(run.depth_mm)},
          {"litres_in_bed", number_or_null(run.plan.litres_in_bed)},
          {"litres_from_tap", number_or_null(run.plan.litres_from_tap)},
          {"by_hand_l", number_or_null(by_hand_l)},
          {"cans", number_or_null(whole_cans(by_hand_l, garden.sprinklers[run.sprinkler].can_l))},
          {"skip_rain_mm", number_or_null(run.skip_rain_mm)},
          {"size", code_of(size_codes, run.size)},
          {"crop", crop_of(garden, run.bed, run.planting)},
          {"evening_on_leaves", run.evening_on_leaves},
          {"depletion_before_mm", number_or_null(run.depletion_before_mm)},
          {"depletion_after_mm", number_or_null(run.depletion_after_mm)},
          {"if_nobody_closes", unclosed_json(garden, run.unclosed)}};
}

Json relaxation_json(const Garden& garden, const Relaxation& help) {
  if (help.kind == RelaxationKind::none) return nullptr;
  return {{"kind", code_of(relaxation_codes, help.kind)},
          {"date", date_or_null(help.date)},
          {"begin", clock_text(help.begin)},
          {"end", clock_text(help.end)},
          {"caretaker", id_or_null(garden, help.caretaker)},
          {"restriction",
           help.restriction ? Json(garden.rules.restrictions[*help.restriction].name) : Json(nullptr)},
          {"minutes", number_or_null(help.minutes)},
          {"litres", number_or_null(help.litres)},
          {"stress_left_mm", number_or_null(help.stress_left_mm)}};
}

Json miss_json(const Garden& garden, const WeekMiss& miss, const std::string& words) {
  return {{"bed", garden.beds[miss.bed].id},
          {"crop", crop_of(garden, miss.bed, miss.planting)},
          {"first", date_or_null(miss.first)},
          {"last", date_or_null(miss.last)},
          {"seedbed", miss.seedbed},
          {"stress_mm", number_or_null(miss.stress_mm)},
          {"limit", code_of(limit_codes, miss.limit)},
          {"restriction",
           miss.restriction ? Json(garden.rules.restrictions[*miss.restriction].name) : Json(nullptr)},
          {"cheapest_help", relaxation_json(garden, miss.relaxation)},
          {"other_help", miss.or_else ? relaxation_json(garden, *miss.or_else) : Json(nullptr)},
          {"words", words}};
}

Json day_json(const Garden& garden, std::size_t bed, const BedDay& day) {
  return {{"date", iso_date(day.date)},
          {"crop", crop_of(garden, bed, day.planting)},
          {"seedbed", day.seedbed},
          {"depletion_dawn_mm", number_or_null(day.depletion_dawn_mm)},
          {"depletion_dawn_dry_mm", number_or_null(day.depletion_dawn_dry_mm)},
          {"depletion_close_mm", number_or_null(day.depletion_close_mm)},
          {"depletion_close_dry_mm", number_or_null(day.depletion_close_dry_mm)},
          {"raw_mm", number_or_null(day.raw_mm)},
          {"taw_mm", number_or_null(day.taw_mm)},
          {"rain_forecast_mm", number_or_null(day.rain_mm)},
          {"rain_counted_mm", number_or_null(day.rain_counted_mm)},
          {"et_mm", number_or_null(day.et_mm)},
          {"drained_mm", number_or_null(day.drained_mm)},
          {"irrigation_mm", number_or_null(day.irrigation_mm)},
          {"lost_mm", number_or_null(day.lost_mm)},
          {"risk", code_of(risk_codes, day.risk)},
          {"risk_without_water", code_of(risk_codes, day.risk_dry)}};
}

/// Runs that nobody wrote down, which the plan takes as done.
Json taken_as_done_json(const WeekBed& bed) {
  Json runs = Json::array();
  if (!bed.open_question) return runs;
  for (const UnloggedRun& run : bed.open_question->runs)
    runs.push_back({{"date", iso_date(run.date)}, {"minutes", number_or_null(run.minutes)}});
  return runs;
}

/// The days of every planting that took part, with the plan followed.
Json bed_likelihood_json(const WeekView& view, std::size_t bed) {
  if (!view.plan.likelihood) return nullptr;
  Json plantings = Json::array();
  for (const BedLikelihood& each : view.plan.likelihood->beds)
    for (const PlantingLikelihood& planting : each.plantings) {
      if (each.bed != bed) continue;
      Json days{{"crop", crop_of(view.garden, bed, planting.planting)}};
      days.update(planting_likelihood_json(*view.plan.likelihood, bed, planting.planting));
      plantings.push_back(std::move(days));
    }
  return plantings;
}

Json alerts_json(const WeekView& view) {
  Json alerts = Json::array();
  for (const Alert& alert : view.alerts)
    alerts.push_back({{"kind", code(alert.kind)},
                      {"bed", view.garden.beds[alert.bed].id},
                      {"likelihood", number_or_null(alert.likelihood)},
                      {"sentence", alert.sentence},
                      {"action", alert.action}});
  return alerts;
}

Json bed_json(const WeekView& view, const WeekBed& bed) {
  Json days = Json::array();
  for (const BedDay& day : bed.days) days.push_back(day_json(view.garden, bed.bed, day));
  return {{"bed", view.garden.beds[bed.bed].id},
          {"letter", bed_letter(view, bed.bed)},
          {"name", view.garden.beds[bed.bed].name},
          {"nothing_grows", bed.nothing_grows},
          {"taken_as_done", taken_as_done_json(bed)},
          {"lasts_to", date_or_null(bed.lasts_to)},
          {"days", std::move(days)},
          {"likelihood", bed_likelihood_json(view, bed.bed)}};
}

Json changes_json(const WeekView& view) {
  if (!view.changes) return nullptr;
  const std::vector<std::string> words = changed_section(view).lines;
  Json changes = Json::array();
  for (std::size_t index = 0; index < view.changes->size(); ++index) {
    const WeekChange& change = (*view.changes)[index];
    const PlannedRun& run = change.kind == WeekChangeKind::dropped ? change.before : change.now;
    changes.push_back({{"kind", code_of(change_codes, change.kind)},
                       {"date", iso_date(run.date)},
                       {"bed", run.bed},
                       {"run_of_day", run.run_of_day},
                       {"words", words[index]}});
  }
  return changes;
}

Json estimates_json(const Garden& garden, const WeekPlan& plan) {
  Json estimates = Json::array();
  for (const Estimate& estimate : plan.estimates)
    estimates.push_back({{"what", estimate_words(garden, estimate, Language::en)},
                         {"days", estimate.days},
                         {"of_days", estimate.of_days}});
  return estimates;
}

Json words_json(const WeekView& view) {
  Json sections = Json::array();
  const auto add = [&](const SheetSection& section) {
    sections.push_back({{"title", section.title}, {"lines", section.lines}});
  };
  add(skip_section(view));
  for (const SheetSection& section : help_sections(view)) add(section);
  return sections;
}

Json skip_json(const SkipRules& skip) {
  return {{"rain_mm", number_or_null(skip.rain_mm)},
          {"wind_m_s", number_or_null(skip.wind_m_s)},
          {"frost_c", number_or_null(skip.frost_c)},
          {"rain_is_forecast", skip.forecast_rain}};
}

Json proof_json(const PlanProof& proof) {
  return {{"optimal", proof.optimal},
          {"stress_l", number_or_null(proof.stress_l)},
          {"bound_stress_l", number_or_null(proof.bound_stress_l)},
          {"visits", proof.visits},
          {"bound_visits", proof.bound_visits},
          {"water_l", number_or_null(proof.water_l)}};
}

}  // namespace

std::string week_json(const WeekView& view) {
  const WeekPlan& plan = view.plan;
  const std::vector<PlannedRun> planned = planned_runs(view.garden, plan);
  Json runs = Json::array(), misses = Json::array(), beds = Json::array();
  for (std::size_t index = 0; index < plan.runs.size(); ++index)
    runs.push_back(run_json(view, plan.runs[index], planned[index]));
  const std::vector<std::string> missed = missed_section(view).lines;
  for (std::size_t index = 0; index < plan.misses.size(); ++index)
    misses.push_back(miss_json(view.garden, plan.misses[index], missed[index]));
  for (const WeekBed& bed : plan.beds) beds.push_back(bed_json(view, bed));
  const Json answer{{"shape", "noonleaf.week"},
                    {"version", 1},
                    {"site", view.garden.site.name},
                    {"is_demo", view.garden.site.demo_date.has_value()},
                    {"language", code(view.language)},
                    {"first", iso_date(plan.first)},
                    {"last", iso_date(plan.last)},
                    {"made", iso_date(view.made.date) + "T" + clock_text(view.made.time_of_day)},
                    {"runs", std::move(runs)},
                    {"misses", std::move(misses)},
                    {"beds", std::move(beds)},
                    {"alerts", alerts_json(view)},
                    {"likelihood", plan.likelihood ? likelihood_json({.garden = view.garden,
                                                                      .likelihood = *plan.likelihood,
                                                                      .water = WaterTried::of_the_plan})
                                                   : Json(nullptr)},
                    {"skip", skip_json(plan.skip)},
                    {"proof", proof_json(plan.proof)},
                    {"changes", changes_json(view)},
                    {"estimated", estimates_json(view.garden, plan)},
                    {"words", words_json(view)}};
  return json_text(answer);
}

}  // namespace v1
}  // namespace noonleaf
