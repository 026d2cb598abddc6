#include "noonleaf/report/explain_steps.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string_view>

#include <fmt/format.h>

#include "noonleaf/balance/quantities.hpp"
#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/growth_quantities.hpp"
#include "noonleaf/report/quantity_text.hpp"
#include "noonleaf/report/today_words.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// Steps in a row: each is worked out from the symbols that the ones before have set.
class StepWriter {
 public:
  explicit StepWriter(SymbolValues known = {}) : known_(std::move(known)) {}

  void add(ExplainStep step) {
    if (is_missing(step.value)) return;
    const SymbolValue* const before = told_before_.find(step.symbol);
    if (before != nullptr && before->value == step.value) return;
    const Working working = step.equation.empty() ? Working{} : work_out(step.equation, known_);
    const double apart = std::abs(working.value - step.value);
    if (apart <= 1e-9 * std::max(1.0, std::abs(step.value))) {  // never numbers that lead somewhere else
      step.numbers = working.numbers;
      step.inputs = working.inputs;
    }
    known_.set(step.symbol, step.value, step.unit);
    steps_.push_back(std::move(step));
  }

  /// Ends the part: its steps, and what it set is told for the next.
  std::vector<ExplainStep> take() {
    told_before_ = known_;
    return std::move(steps_);
  }
  const SymbolValues& known() const { return known_; }
  /// For the next part: only what the names say goes on, so that P is pressure in one part and rain in
  /// another.
  void keep_only(std::initializer_list<std::string_view> symbols) {
    SymbolValues kept;
    for (const std::string_view symbol : symbols) {
      if (const SymbolValue* const value = known_.find(symbol)) kept.set(symbol, value->value, value->unit);
    }
    known_ = kept;
    told_before_ = kept;
    steps_.clear();
  }

 private:
  SymbolValues known_, told_before_;
  std::vector<ExplainStep> steps_;
};

void add_input(StepWriter& writer, std::string_view symbol, std::string_view meaning, double value,
               std::string_view unit, std::string_view source) {
  writer.add({.symbol = std::string(symbol),
              .meaning = std::string(meaning),
              .unit = std::string(unit),
              .value = value,
              .source = std::string(source)});
}

/// Where an input of ET0 comes from on this day.
std::string_view origin_of(const DailyEt0Column& column, const DailyEstimate& day) {
  if (column.header == "ea_kpa") return phrase(day.humidity);
  if (column.header == "rs_mj_m2_d") return phrase(day.radiation);
  if (column.header == "u2_m_s") return phrase(day.wind);
  return column.equation;
}

ExplainPart sky_part(const ExplainView& view, StepWriter& writer) {
  const SkyDay& day = view.explanation.sky;
  const double sun_frac = view.garden.beds[view.explanation.bed].sun_frac;
  const Location& place = view.garden.site.location;
  ExplainPart part{.title = "THE SKY: what short grass would use (ET0)"};
  part.sentences.push_back(day.origin == DayOrigin::forecast
                               ? "The weather of this day is a forecast."
                               : "The weather of this day comes from the station file.");
  if (day.et0_from != Et0From::weather) {
    part.sentences.push_back(
        "It has no temperature of its own: ET0 is the mean of the days around it (ours), not an equation.");
    add_input(writer, "ET0", "reference evapotranspiration", day.et0_mm_d, "mm/d", "mean of the days around");
    part.steps = writer.take();
    return part;
  }
  part.sentences.push_back(
      "Sun and wind dry a lawn of even grass that has all the water it wants; the equation of Penman and "
      "Monteith says how much. Everything after is measured against that grass.");
  if (sun_frac < 1) {
    part.sentences.push_back(fmt::format(
        "This bed stands in shade: it gets {:.0f} % of the sun, and its own ET0 follows from that (ours).",
        100 * sun_frac));
  }
  add_input(writer, "Tmax", "highest temperature", day.estimate.t_max_c, "°C", "weather file");
  add_input(writer, "Tmin", "lowest temperature", day.estimate.t_min_c, "°C", "weather file");
  add_input(writer, "z", "height above the sea", place.elevation_m, "m", "garden.toml");
  add_input(writer, "latitude", "north of the equator, as an angle",
            place.latitude_deg * std::numbers::pi / 180, "rad", "garden.toml");
  for (const DailyEt0Column& column : daily_et0_columns()) {
    writer.add({.symbol = std::string(column.symbol),
                .meaning = std::string(column.name),
                .unit = std::string(column.unit),
                .value = view.explanation.et0.*column.value,
                .equation = std::string(column.formula),
                .source = std::string(origin_of(column, day.estimate))});
  }
  part.steps = writer.take();
  return part;
}

std::string stage_sentence(const PlantingExplanation& planting) {
  const GrowthDay& day = planting.growth.day;
  if (day.stage == Stage::no_stages) return "It has no stages: the same coefficient on every day.";
  std::string text = fmt::format("Stage: {}, day {} of the season", label(day.stage), day.day_of_season);
  const SeasonCalendar& season = planting.growth.calendar;
  if (season.lengths != nullptr) {
    text += fmt::format("; stage lengths: FAO-56 Table 11, planted {} ({})", season.lengths->planted,
                        season.lengths->region);
    if (season.initial_is_halved) text += ", the initial stage halved for a transplant (ours)";
    if (season.stages_were_seen) text += ", stretched to stages that were seen (ours)";
  }
  return text + ".";
}

ExplainPart plant_part(const ExplainView& view, const PlantingExplanation& planting, StepWriter& writer) {
  const BedPlanting& where = view.garden.beds[view.explanation.bed].plantings[planting.planting];
  const Crop& crop = find_crop(where.crop);
  ExplainPart part{.title = fmt::format("THE PLANT: {}", crop.name_en)};
  part.sentences.push_back(
      "How much more or less than that grass the plants would use, with all the water they want.");
  part.sentences.push_back(stage_sentence(planting));
  if (crop.surrogate)
    part.sentences.push_back("No published values of its own: those of a similar crop stand in.");
  const bool is_single = is_missing(planting.day.kcb) && planting.growth.day.basis == CropBasis::kc_curve;
  for (const GrowthQuantity& row : growth_quantities()) {
    if (row.coefficient != GrowthQuantity::Coefficient::either &&
        (row.coefficient == GrowthQuantity::Coefficient::single) != is_single)
      continue;
    writer.add({.symbol = std::string(row.symbol),
                .meaning = std::string(row.meaning),
                .unit = std::string(row.unit),
                .value = row.value(planting.growth),
                .equation = std::string(row.equation),
                .source = std::string(row.source)});
  }
  part.steps = writer.take();
  return part;
}

ExplainPart soil_part(const ExplainView& view, const PlantingExplanation& planting, StepWriter& writer) {
  const Bed& bed = view.garden.beds[view.explanation.bed];
  const Crop& crop = find_crop(bed.plantings[planting.planting].crop);
  ExplainPart part{.title =
                       fmt::format("THE SOIL under {}: what came, what went, what is left", crop.name_en)};
  part.sentences.push_back(
      "The root zone is a purse: rain and watering fill it, the plants and the bare surface take from it. Dr "
      "is what is missing to full; up to RAW the plants take no harm.");
  if (planting.day.ground != GroundState::open) {
    part.sentences.push_back("Snow or frozen ground: the account stands still on this day.");
  }
  for (const BalanceQuantity& row : balance_quantities()) {
    if (row.applies != nullptr && !row.applies(planting.day)) continue;
    writer.add({.symbol = std::string(row.symbol),
                .meaning = std::string(row.meaning),
                .unit = std::string(row.unit),
                .value = row.value(planting.day),
                .equation = std::string(row.equation),
                .source = std::string(row.source)});
  }
  part.steps = writer.take();
  return part;
}

ExplainPart run_part(const ExplainView& view) {
  const DayExplanation& explanation = view.explanation;
  const TodayView today{view.garden, explanation.today};
  const BedToday& bed = explanation.today.beds[explanation.bed];
  ExplainPart part{.title = "THE RUN: from millimetres to minutes"};
  part.sentences.push_back(why_words(today, bed));
  if (!bed.driver) {
    part.sentences.push_back("So no run is worked out for this day.");
    return part;
  }
  part.sentences.push_back(fmt::format("{} sets the depth.", bed.plantings[*bed.driver].crop->name_en));
  if (bed.open_question) {
    part.sentences.push_back(
        "Runs were asked for that nobody wrote down, done or not: the depth is the smaller one, right either "
        "way.");
  }
  const double leaching_frac = bed.plantings[*bed.driver].salt.leaching_frac;
  if (leaching_frac > 0) {
    part.sentences.push_back(
        fmt::format("Salt: the depletion is divided by 1 - LR, LR = {} (Ayers & Westcot 1985, eq. 9).",
                    significant_text(leaching_frac)));
  }
  StepWriter writer;
  add_input(writer, "area", "area of the bed", view.garden.beds[explanation.bed].area_m2, "m2",
            "garden.toml");
  const Sprinkler& sprinkler = view.garden.sprinklers[view.garden.beds[explanation.bed].sprinkler];
  add_input(writer, "flow", "flow of the sprinkler", sprinkler.rate.flow_l_min, "l/min", "garden.toml");
  for (const RunPlanTerm& term : run_plan_terms()) {
    writer.add({.symbol = std::string(term.symbol),
                .meaning = std::string(term.name),
                .unit = std::string(term.unit),
                .value = bed.run.*term.member,
                .equation = std::string(term.equation),
                .source = std::string(term.source)});
  }
  part.steps = writer.take();
  if (bed.action == BedAction::blocked) part.sentences.push_back("But " + obstacle_words(today, bed));
  return part;
}

}  // namespace

std::vector<ExplainPart> explain_parts(const ExplainView& view) {
  StepWriter writer;
  std::vector<ExplainPart> parts{sky_part(view, writer)};
  writer.keep_only({"ET0"});
  const StepWriter after_sky = writer;
  for (const PlantingExplanation& planting : view.explanation.plantings) {
    writer = after_sky;
    parts.push_back(plant_part(view, planting, writer));
    parts.push_back(soil_part(view, planting, writer));
  }
  if (view.explanation.plantings.empty())
    parts.push_back({.title = "THE PLANT", .sentences = {"Nothing grows in this bed on this day."}});
  parts.push_back(run_part(view));
  return parts;
}

std::vector<std::string> explain_estimates(const ExplainView& view) {
  return estimate_words({view.garden, view.explanation.today});
}

}  // namespace v1
}  // namespace noonleaf
