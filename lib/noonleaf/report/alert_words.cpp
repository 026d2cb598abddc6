#include "noonleaf/report/alert_words.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/report/quantity_text.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// The wilt that an alert is about: where the sprinkler brings least, unless the whole bed hung over moist
/// soil.
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

std::string subject(const TodayView& view, const Hanging& hanging) {
  std::string names;
  for (std::size_t index = 0; index < hanging.plantings.size(); ++index) {
    const bool last = index > 0 && index + 1 == hanging.plantings.size();
    names += (index == 0 ? "" : last ? " and " : ", ") + std::string(hanging.plantings[index]->crop->name_en);
  }
  return fmt::format("{} in {}bed {}", names, hanging.only_low_quarter() ? "the driest quarter of " : "",
                     view.garden.beds[hanging.bed->bed].id);
}

std::string evidence(const TodayView& view, const Hanging& hanging) {
  const QuantityText text(view.garden.site.units);
  const PlantingToday& planting = hanging.worst();
  std::string words = fmt::format("{} is down {} and can spare {}", planting.crop->name_en,
                                  text.depth(planting.dr_mm), text.depth(planting.raw_mm));
  if (hanging.only_low_quarter()) {
    const Sprinkler& sprinkler = view.garden.sprinklers[view.garden.beds[hanging.bed->bed].sprinkler];
    words += fmt::format(", but {} where the {} brings least: {:.0f} % of the mean{}",
                         text.depth(planting.low_quarter_dr_mm), sprinkler.name,
                         100 * sprinkler.rate.du_lq_frac, sprinkler.evenness_is_guess ? ", a guess" : "");
  }
  if (hanging.bed->open_question) words += ", if none of the runs was done that nobody wrote down";
  const WiltDay& wilt = hanging.wilt();
  if (wilt.peak_demand_mm_h > wilt.peak_supply_mm_h) {
    words += fmt::format("; at the worst hour ({}) its roots bring {:.0f} % of what its leaves lose",
                         hour_text(wilt.peak_hour_h), 100 * wilt.peak_supply_mm_h / wilt.peak_demand_mm_h);
  }
  return words;
}

std::string hours(const WiltDay& wilt) {
  if (is_missing(wilt.droop_from_h)) return {};
  if (is_missing(wilt.droop_until_h)) return fmt::format(" from about {}", hour_text(wilt.droop_from_h));
  const std::string_view night = wilt.droop_until_h >= 24 ? " at night" : "";
  return fmt::format(" from about {} to {}{}", hour_text(wilt.droop_from_h), hour_text(wilt.droop_until_h),
                     night);
}

std::string watering_action(const BedToday& bed) {
  if (bed.slot)
    return fmt::format("do not skip its run at {}; no second run today", clock_text(bed.slot->begin));
  if (bed.driver) return "it needs the run that has no time today: find a person, or water by hand";
  return "feel the soil at finger depth; if it is dry, water at the next chance";
}

std::string corner_action(const BedToday& bed) {
  const std::string_view run =
      bed.slot ? "besides its run, water the dry corner by hand" : "water the dry corner by hand";
  return fmt::format("{}; set cans out to find it, and turn or move the sprinkler", run);
}

std::string droop_action(const TodayView& view, const Hanging& hanging) {
  double look_again_h = 0, depletion_mm = 0;
  for (const PlantingToday* planting : hanging.plantings) {
    look_again_h = std::max(look_again_h, leading_wilt(*planting).look_again_h);
    depletion_mm = std::max(depletion_mm, planting->dr_mm);
  }
  const std::string again = hour_text(look_again_h);
  if (hanging.bed->slot) {
    return fmt::format("no water at noon: its run at {} is enough; look again at {}",
                       clock_text(hanging.bed->slot->begin), again);
  }
  if (const auto& slot = hanging.bed->later_slot) {
    return fmt::format(
        "no water now: look again at {}; if it still hangs and the soil is dry at finger depth, {} minutes "
        "at {}, "
        "closed by the {}",
        again, (slot->end - slot->begin).count(), clock_text(slot->begin),
        view.garden.caretakers[slot->closer].role);
  }
  const double minutes = bed_run(view.garden, view.garden.beds[hanging.bed->bed], depletion_mm).minutes;
  if (!(minutes > 0)) return fmt::format("no water: look again at {}", again);
  const std::string when = hanging.bed->next_chance
                               ? "at the next chance, " + day_name(*hanging.bed->next_chance)
                               : "when somebody can";
  return fmt::format(
      "no water now: look again at {}; if it still hangs and the soil is dry at finger depth, {:.0f} minutes "
      "{}",
      again, minutes, when);
}

Alert alert_of(const TodayView& view, const Hanging& hanging) {
  const WiltDay& wilt = hanging.wilt();
  Alert alert{.bed = hanging.bed->bed, .evidence = evidence(view, hanging)};
  const std::string who = subject(view, hanging);
  const std::string without = hanging.bed->slot ? "without its run, " : "";
  switch (wilt.verdict) {
    case WiltVerdict::wet_soil_droop:
      alert.kind = AlertKind::look_at_the_roots;
      alert.sentence = who + ": hung at dawn over moist soil: neither thirst nor heat";
      alert.action =
          "do not water; feel the soil at finger depth. Moist: look at the roots and the stem (rot, disease, "
          "salt) "
          "and call the garden educator. Dry: the account is wrong; write it down: noonleaf log DIR feel";
      break;
    case WiltVerdict::dry_soil_wilt:
      alert.kind = AlertKind::dry_soil_wilt;
      alert.sentence =
          fmt::format("{}: wilting for want of water; {}leaves hang{} and do not recover over night", who,
                      without, hours(wilt));
      alert.action = hanging.only_low_quarter() ? corner_action(*hanging.bed) : watering_action(*hanging.bed);
      break;
    case WiltVerdict::stress:
      alert.kind = AlertKind::stress;
      alert.sentence = fmt::format("{}: short of water; {}{}", who, without,
                                   wilt.droop_hours > 0 ? "leaves hang" + hours(wilt) : "growth is lost");
      alert.action = hanging.only_low_quarter() ? corner_action(*hanging.bed) : watering_action(*hanging.bed);
      break;
    default:
      alert.kind = AlertKind::droop;
      alert.sentence =
          fmt::format("{}: will hang{}. Heat, not thirst: it recovers by itself", who, hours(wilt));
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
                      .sentence = fmt::format("bed {} needs {:.0f} minutes today and has no run",
                                              view.garden.beds[bed.bed].id, bed.run.minutes),
                      .evidence = why_words(view, bed),
                      .action = obstacle_words(view, bed)});
  }
}

/// "blossom drop (4 days), poor colour (5 days)"; each harm once, with its longest count.
std::string harms_of(const std::vector<CropHeatFinding>& findings) {
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
    text +=
        fmt::format("{}{} ({} {})", text.empty() ? "" : ", ", label(harm), days, days == 1 ? "day" : "days");
  }
  return text;
}

/// "days above 90 °F", "nights above 75 °F": the limit that is passed most.
std::string limits_of(const QuantityText& text, const std::vector<CropHeatFinding>& findings) {
  std::vector<std::string> limits;
  for (const CropHeatFinding& finding : findings) {
    const CropHeatLimit& limit = *finding.limit;
    std::string words;
    if (is_known(limit.day_f)) words = "days above " + text.temperature(celsius_from_fahrenheit(limit.day_f));
    if (is_known(limit.night_f)) {
      words += (words.empty() ? "" : " and ") +
               ("nights above " + text.temperature(celsius_from_fahrenheit(limit.night_f)));
    }
    if (std::find(limits.begin(), limits.end(), words) == limits.end()) limits.push_back(words);
  }
  std::string joined;
  for (const std::string& limit : limits) joined += (joined.empty() ? "" : "; ") + limit;
  return joined;
}

void add_heat(const TodayView& view, std::vector<Alert>& alerts) {
  const QuantityText text(view.garden.site.units);
  for (const BedToday& bed : view.today.beds) {
    for (const PlantingToday& planting : bed.plantings) {
      if (planting.in_seed_zone || planting.heat.empty()) continue;
      alerts.push_back(
          {.kind = AlertKind::crop_heat,
           .bed = bed.bed,
           .sentence =
               fmt::format("{} in bed {}: the five days from today are hot enough for {}",
                           planting.crop->name_en, view.garden.beds[bed.bed].id, harms_of(planting.heat)),
           .evidence = "limits that extension services publish: " + limits_of(text, planting.heat),
           .action = std::string(what_helps(planting.heat.front().limit->harm))});
    }
  }
}

/// Crops that a light frost kills, as gardeners have it (common practice, no source).
bool is_tender(const Crop& crop) {
  return crop.group == CropGroup::solanum || crop.group == CropGroup::cucumber ||
         crop.id.starts_with("bean") || crop.id.starts_with("sweet_corn");
}

bool is_frosty(const TodayView& view) { return view.today.sky.estimate.t_min_c <= 0; }

void add_frost(const TodayView& view, std::vector<Alert>& alerts) {
  const std::string low = QuantityText(view.garden.site.units).temperature(view.today.sky.estimate.t_min_c);
  for (const BedToday& bed : view.today.beds) {
    for (const PlantingToday& planting : bed.plantings) {
      const bool over = planting.stage == Stage::over || planting.stage == Stage::not_started;
      if (over || planting.in_seed_zone || !is_tender(*planting.crop)) continue;
      alerts.push_back({.kind = AlertKind::frost,
                        .bed = bed.bed,
                        .sentence = fmt::format("{} in bed {}: frost, a low of {}", planting.crop->name_en,
                                                view.garden.beds[bed.bed].id, low),
                        .evidence = "its leaves die at about freezing; a clear night is colder at the ground",
                        .action =
                            "pick what is ripe and cover it before the evening; leaves that hang after a "
                            "frost are frozen, not thirsty: no water until they have thawed"});
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
  std::vector<Alert> alerts;
  for (const Hanging& hanging : hanging_plantings(view)) {
    if (is_frosty(view) && hanging.wilt().verdict == WiltVerdict::droop)
      continue;  // leaves hang from the frost
    alerts.push_back(alert_of(view, hanging));
    alerts.back().likelihood = likelihood_of_alert(view, hanging, alerts.back().kind);
  }
  add_blocked(view, alerts);
  is_frosty(view) ? add_frost(view, alerts) : add_heat(view, alerts);
  return alerts;
}

}  // namespace v1
}  // namespace noonleaf
