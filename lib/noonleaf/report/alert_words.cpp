#include "noonleaf/report/alert_words.hpp"

#include <algorithm>
#include <utility>

#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/report/alert_phrases.hpp"
#include "noonleaf/report/labels.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// What an alert is about: where the sprinkler brings least, unless the whole bed hung over moist soil.
const WiltDay& leading_wilt(const PlantingToday& planting) {
  const bool whole = planting.wilt.verdict == WiltVerdict::wet_soil_droop ||
                     planting.low_quarter_wilt.verdict == WiltVerdict::unknown;
  return whole ? planting.wilt : planting.low_quarter_wilt;
}

/// Plantings of one bed that the day treats alike: one alert for all of them.
struct Hanging {
  const BedToday* bed;
  std::vector<const PlantingToday*> plantings;  ///< the one that wilts first first

  const PlantingToday& worst() const { return *plantings.front(); }
  const WiltDay& wilt() const { return leading_wilt(worst()); }
  bool only_low_quarter() const { return wilt().verdict != worst().wilt.verdict; }
};

std::string say(const TodayView& view, AlertPhrase id, std::initializer_list<Filling> fillings = {}) {
  return fill(view.language, id, fillings);
}

std::string crop_words(const TodayView& view, const PlantingToday& planting) {
  return std::string(crop_name(view.language, *planting.crop));
}

/// The bed as its reader finds it: by the id that the commands take, or by the sheet's letter.
std::string bed_word(const TodayView& view, std::size_t bed) {
  return view.read_on == ReadOn::screen ? view.garden.beds[bed].id
                                        : plain_text(bed_letters(view.garden)[bed]);
}

/// "Tomato in bed a"
std::string one_in_bed(const TodayView& view, const BedToday& bed, const PlantingToday& planting) {
  return sentence_start(say(view, AlertPhrase::in_bed,
                            {{"crops", crop_words(view, planting)}, {"bed", bed_word(view, bed.bed)}}));
}

std::string subject(const TodayView& view, const Hanging& hanging) {
  std::vector<std::string> crops;
  for (const PlantingToday* planting : hanging.plantings) crops.push_back(crop_words(view, *planting));
  const AlertPhrase where = hanging.only_low_quarter() ? AlertPhrase::in_driest_quarter : AlertPhrase::in_bed;
  return sentence_start(
      say(view, where, {{"crops", view.text().list(crops)}, {"bed", bed_word(view, hanging.bed->bed)}}));
}

std::string depletion_words(const TodayView& view, const Hanging& hanging) {
  const QuantityText text = view.text();
  const PlantingToday& planting = hanging.worst();
  const std::string crop = sentence_start(crop_words(view, planting)), now = text.depth(planting.dr_mm),
                    spare = text.depth(planting.raw_mm);
  if (!hanging.only_low_quarter())
    return say(view, AlertPhrase::depletion, {{"crop", crop}, {"now", now}, {"spare", spare}});
  const Sprinkler& sprinkler = view.garden.sprinklers[view.garden.beds[hanging.bed->bed].sprinkler];
  return say(view, AlertPhrase::depletion_driest,
             {{"crop", crop},
              {"now", now},
              {"spare", spare},
              {"driest", text.depth(planting.low_quarter_dr_mm)},
              {"sprinkler", local_name(view.language, sprinkler.name, sprinkler.name_es)},
              {"share", text.number(100 * sprinkler.rate.du_lq_frac, 0)},
              {"guess", sprinkler.evenness_is_guess ? say(view, AlertPhrase::evenness_is_guess) : ""}});
}

std::string evidence(const TodayView& view, const Hanging& hanging) {
  const QuantityText text = view.text();
  std::string words = depletion_words(view, hanging);
  if (hanging.bed->open_question) words += say(view, AlertPhrase::if_nothing_was_done);
  const WiltDay& wilt = hanging.wilt();
  if (wilt.peak_demand_mm_h > wilt.peak_supply_mm_h) {
    const double share_pct = 100 * wilt.peak_supply_mm_h / wilt.peak_demand_mm_h;
    words += say(view, AlertPhrase::worst_hour,
                 {{"hour", text.hour(wilt.peak_hour_h)}, {"share", text.number(share_pct, 0)}});
  }
  return words;
}

std::string hours(const TodayView& view, const WiltDay& wilt) {
  if (is_missing(wilt.droop_from_h)) return {};
  const std::string from = view.text().the_hour(wilt.droop_from_h);
  if (is_missing(wilt.droop_until_h)) return say(view, AlertPhrase::hours_from, {{"from", from}});
  const AlertPhrase span =
      wilt.droop_until_h >= 24 ? AlertPhrase::hours_into_night : AlertPhrase::hours_between;
  return say(view, span, {{"from", from}, {"until", view.text().the_hour(wilt.droop_until_h)}});
}

std::string watering_action(const TodayView& view, const BedToday& bed) {
  if (bed.slot)
    return say(view, AlertPhrase::do_not_skip_run, {{"clock", view.text().the_clock(bed.slot->begin)}});
  return say(view, bed.driver ? AlertPhrase::find_a_person : AlertPhrase::feel_the_soil);
}

/// What to do about a bed, or its driest quarter, that is short of water.
std::string thirst_action(const TodayView& view, const Hanging& hanging) {
  if (view.today.sky.estimate.t_min_c <= view.garden.rules.frost_lockout_c)
    return say(view, AlertPhrase::after_the_frost);
  if (!hanging.only_low_quarter()) return watering_action(view, *hanging.bed);
  return say(view, hanging.bed->slot ? AlertPhrase::water_the_corner_too : AlertPhrase::water_the_corner);
}

std::string droop_action(const TodayView& view, const Hanging& hanging) {
  double look_again_h = 0, depletion_mm = 0;
  for (const PlantingToday* planting : hanging.plantings) {
    look_again_h = std::max(look_again_h, leading_wilt(*planting).look_again_h);
    depletion_mm = std::max(depletion_mm, planting->dr_mm);
  }
  const QuantityText text = view.text();
  const std::string again = text.the_hour(look_again_h);
  const BedToday& bed = *hanging.bed;
  if (bed.slot)
    return say(view, AlertPhrase::run_is_enough,
               {{"clock", text.the_clock(bed.slot->begin)}, {"again", again}});
  if (const auto& slot = bed.later_slot) {
    const Caretaker& closer = view.garden.caretakers[slot->closer];
    return say(view, AlertPhrase::look_again_then_slot,
               {{"again", again},
                {"minutes", std::to_string((slot->end - slot->begin).count())},
                {"clock", text.the_clock(slot->begin)},
                {"closer", local_name(view.language, closer.role, closer.role_es)}});
  }
  const double minutes = bed_run(view.garden, view.garden.beds[bed.bed], depletion_mm).minutes;
  if (!(minutes > 0)) return say(view, AlertPhrase::look_again, {{"again", again}});
  const std::string when = bed.next_chance
                               ? say(view, AlertPhrase::at_next_chance, {{"day", text.day(*bed.next_chance)}})
                               : say(view, AlertPhrase::when_somebody_can);
  return say(view, AlertPhrase::look_again_then_minutes,
             {{"again", again}, {"minutes", text.number(minutes, 0)}, {"when", when}});
}

Alert alert_of(const TodayView& view, const Hanging& hanging) {
  const WiltDay& wilt = hanging.wilt();
  Alert alert{.bed = hanging.bed->bed, .evidence = evidence(view, hanging)};
  const std::string who = subject(view, hanging), when = hours(view, wilt);
  const std::string without = hanging.bed->slot ? say(view, AlertPhrase::without_run) : std::string();
  switch (wilt.verdict) {
    case WiltVerdict::wet_soil_droop:
      alert.kind = AlertKind::look_at_the_roots;
      alert.sentence = say(view, AlertPhrase::hung_at_dawn, {{"who", who}});
      alert.action = say(view, AlertPhrase::look_at_roots);
      break;
    case WiltVerdict::dry_soil_wilt:
      alert.kind = AlertKind::dry_soil_wilt;
      alert.sentence =
          say(view, AlertPhrase::dry_soil_wilt, {{"who", who}, {"without", without}, {"hours", when}});
      alert.action = thirst_action(view, hanging);
      break;
    case WiltVerdict::stress:
      alert.kind = AlertKind::stress;
      alert.sentence =
          say(view, wilt.droop_hours > 0 ? AlertPhrase::short_and_hangs : AlertPhrase::short_of_growth,
              {{"who", who}, {"without", without}, {"hours", when}});
      alert.action = thirst_action(view, hanging);
      break;
    default:
      alert.kind = AlertKind::droop;
      alert.sentence = say(view, AlertPhrase::droop, {{"who", who}, {"hours", when}});
      alert.action = droop_action(view, hanging);
      break;
  }
  return alert;
}

/// Today's day of a planting over the members; nothing where it was not tried.
const DayLikelihood* tried_today(const TodayView& view, std::size_t bed, const PlantingToday& planting,
                                 std::vector<DayLikelihood> PlantingLikelihood::*days) {
  if (!view.today.likelihood) return nullptr;
  for (const BedLikelihood& each : view.today.likelihood->beds)
    for (const PlantingLikelihood& one : each.plantings)
      if (each.bed == bed && one.planting == planting.planting && !(one.*days).empty())
        return &(one.*days).front();
  return nullptr;
}

/// The share of members that are as badly off as the alert says, or worse.
double likelihood_of_alert(const TodayView& view, const Hanging& hanging, AlertKind kind) {
  const bool whole = &hanging.wilt() == &hanging.worst().wilt;
  const DayLikelihood* day =
      tried_today(view, hanging.bed->bed, hanging.worst(),
                  whole ? &PlantingLikelihood::days : &PlantingLikelihood::low_quarter_days);
  if (day == nullptr || kind == AlertKind::look_at_the_roots) return missing;
  if (kind == AlertKind::dry_soil_wilt) return day->wilt_frac;
  return kind == AlertKind::stress ? day->stress_frac : day->droop_frac;
}

/// Plantings that will hang, grouped by bed and verdict, the worst group first.
std::vector<Hanging> hanging_plantings(const TodayView& view) {
  std::vector<std::pair<const BedToday*, const PlantingToday*>> single;
  for (const BedToday& bed : view.today.beds) {
    for (const PlantingToday& planting : bed.plantings) {
      const WiltVerdict verdict = leading_wilt(planting).verdict;
      const bool calm = verdict == WiltVerdict::comfortable || verdict == WiltVerdict::unknown;
      if (!calm && !planting.in_seed_zone) single.emplace_back(&bed, &planting);
    }
  }
  std::stable_sort(single.begin(), single.end(), [](const auto& a, const auto& b) {
    return wilts_before(leading_wilt(*a.second), leading_wilt(*b.second));
  });
  std::vector<Hanging> groups;
  for (const auto& [bed, planting] : single) {
    const auto alike =
        std::find_if(groups.begin(), groups.end(), [&, bed = bed, planting = planting](const Hanging& group) {
          return group.bed == bed && group.wilt().verdict == leading_wilt(*planting).verdict &&
                 group.only_low_quarter() == (leading_wilt(*planting).verdict != planting->wilt.verdict);
        });
    if (alike == groups.end()) {
      groups.push_back({bed, {planting}});
    } else {
      alike->plantings.push_back(planting);
    }
  }
  return groups;
}

void add_blocked(const TodayView& view, std::vector<Alert>& alerts) {
  for (const BedToday& bed : view.today.beds) {
    if (bed.action != BedAction::blocked) continue;
    alerts.push_back({.kind = AlertKind::blocked_run,
                      .bed = bed.bed,
                      .sentence = say(view, AlertPhrase::blocked_run,
                                      {{"bed", bed_word(view, bed.bed)},
                                       {"minutes", view.text().number(bed.run.minutes, 0)}}),
                      .evidence = why_words(view, bed),
                      .action = obstacle_words(view, bed)});
  }
}

/// "blossom drop (4 days), poor colour (5 days)"; each harm once, with its longest count.
std::string harms_of(const TodayView& view, const std::vector<CropHeatFinding>& findings) {
  std::vector<std::pair<HeatHarm, std::size_t>> harms;
  for (const CropHeatFinding& finding : findings) {
    const auto found = std::find_if(harms.begin(), harms.end(),
                                    [&](const auto& each) { return each.first == finding.limit->harm; });
    if (found == harms.end()) {
      harms.emplace_back(finding.limit->harm, finding.days_over.size());
    } else {
      found->second = std::max(found->second, finding.days_over.size());
    }
  }
  std::string text;
  for (const auto& [harm, days] : harms) {
    text += text.empty() ? "" : ", ";
    text += say(view, days == 1 ? AlertPhrase::harm_one_day : AlertPhrase::harm_days,
                {{"harm", label(view.language, harm)}, {"days", std::to_string(days)}});
  }
  return text;
}

/// "days above 90 °F", "nights above 75 °F"
std::string limit_words(const TodayView& view, const CropHeatLimit& limit) {
  const auto temperature = [&](double limit_f) {
    return view.text().temperature(celsius_from_fahrenheit(limit_f));
  };
  if (is_missing(limit.night_f))
    return say(view, AlertPhrase::days_above, {{"day", temperature(limit.day_f)}});
  if (is_missing(limit.day_f))
    return say(view, AlertPhrase::nights_above, {{"night", temperature(limit.night_f)}});
  return say(view, AlertPhrase::days_and_nights_above,
             {{"day", temperature(limit.day_f)}, {"night", temperature(limit.night_f)}});
}

/// Each limit that is passed once.
std::string limits_of(const TodayView& view, const std::vector<CropHeatFinding>& findings) {
  std::vector<std::string> limits;
  for (const CropHeatFinding& finding : findings) {
    const std::string words = limit_words(view, *finding.limit);
    if (std::find(limits.begin(), limits.end(), words) == limits.end()) limits.push_back(words);
  }
  std::string joined;
  for (const std::string& limit : limits) joined += (joined.empty() ? "" : "; ") + limit;
  return joined;
}

void add_heat(const TodayView& view, std::vector<Alert>& alerts) {
  for (const BedToday& bed : view.today.beds) {
    for (const PlantingToday& planting : bed.plantings) {
      if (planting.in_seed_zone || planting.heat.empty()) continue;
      alerts.push_back(
          {.kind = AlertKind::crop_heat,
           .bed = bed.bed,
           .sentence =
               say(view, AlertPhrase::hot_enough,
                   {{"who", one_in_bed(view, bed, planting)}, {"harms", harms_of(view, planting.heat)}}),
           .evidence = say(view, AlertPhrase::published_limits, {{"limits", limits_of(view, planting.heat)}}),
           .action = std::string(what_helps(view.language, planting.heat.front().limit->harm))});
    }
  }
}

/// Crops that a light frost kills, as gardeners have it (common practice, no source).
bool is_tender(const Crop& crop) {
  return crop.group == CropGroup::solanum || crop.group == CropGroup::cucumber ||
         crop.id.starts_with("bean") || crop.id.starts_with("sweet_corn");
}

bool is_frosty(double t_min_c) { return t_min_c <= 0; }

/// The lowest temperature comes at dawn: what lies a day ahead can still be covered.
enum class FrostOf { today, night_to_come };

void add_frost(const TodayView& view, FrostOf when, std::vector<Alert>& alerts) {
  const bool to_come = when == FrostOf::night_to_come;
  const std::string low =
      view.text().temperature(to_come ? view.today.t_min_next_c : view.today.sky.estimate.t_min_c);
  for (const BedToday& bed : view.today.beds) {
    for (const PlantingToday& planting : bed.plantings) {
      const bool over = planting.stage == Stage::over || planting.stage == Stage::not_started;
      if (over || planting.in_seed_zone || !is_tender(*planting.crop)) continue;
      alerts.push_back(
          {.kind = AlertKind::frost,
           .bed = bed.bed,
           .sentence = say(view, to_come ? AlertPhrase::frost_to_come : AlertPhrase::frost,
                           {{"who", one_in_bed(view, bed, planting)}, {"low", low}}),
           .evidence = say(view, AlertPhrase::frost_evidence),
           .action = say(view, to_come ? AlertPhrase::frost_to_come_action : AlertPhrase::frost_action)});
    }
  }
}

}  // namespace

std::string_view code(AlertKind kind) {
  switch (kind) {
    case AlertKind::look_at_the_roots:
      return "look_at_the_roots";
    case AlertKind::dry_soil_wilt:
      return "dry_soil_wilt";
    case AlertKind::stress:
      return "stress";
    case AlertKind::droop:
      return "droop";
    case AlertKind::blocked_run:
      return "blocked_run";
    case AlertKind::crop_heat:
      return "crop_heat";
    case AlertKind::frost:
      return "frost";
  }
  return {};
}

std::vector<Alert> alerts_of(const TodayView& view) {
  const bool frost = is_frosty(view.today.sky.estimate.t_min_c),
             frost_to_come = is_frosty(view.today.t_min_next_c);
  std::vector<Alert> alerts;
  for (const Hanging& hanging : hanging_plantings(view)) {
    if (frost && hanging.wilt().verdict == WiltVerdict::droop) continue;  // leaves hang from the frost
    alerts.push_back(alert_of(view, hanging));
    alerts.back().likelihood = likelihood_of_alert(view, hanging, alerts.back().kind);
  }
  add_blocked(view, alerts);
  if (frost) add_frost(view, FrostOf::today, alerts);
  if (frost_to_come) add_frost(view, FrostOf::night_to_come, alerts);
  if (!frost && !frost_to_come) add_heat(view, alerts);
  return alerts;
}

std::vector<Alert> alerts_beside(const WeekPlan& plan, std::chrono::year_month_day made, const Garden& garden,
                                 const Journal& journal, const Sky& sky, Language language) {
  if (plan.first != made) return {};
  Today today = plan_today(garden, journal, sky, {plan.first, plan.from}, plan.unlogged);
  today.likelihood = likelihood_of_alerts(garden, journal, sky, today);
  return alerts_of({garden, today, language, ReadOn::sheet});
}

}  // namespace v1
}  // namespace noonleaf
