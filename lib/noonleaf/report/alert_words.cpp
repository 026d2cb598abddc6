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

struct Hanging {
  const BedToday* bed;
  const PlantingToday* planting;
};

std::string subject(const TodayView& view, const Hanging& hanging) {
  return fmt::format("{} in bed {}", hanging.planting->crop->name_en, view.garden.beds[hanging.bed->bed].id);
}

std::string evidence(const TodayView& view, const PlantingToday& planting) {
  const QuantityText text(view.garden.site.units);
  std::string words = fmt::format("it is down {} and can spare {}", text.depth(planting.dr_mm), text.depth(planting.raw_mm));
  const WiltDay& wilt = planting.wilt;
  if (wilt.peak_demand_mm_h > 0) {
    words += fmt::format("; at the worst hour ({}) the roots can bring {:.0f} % of what the leaves lose",
                         hour_text(wilt.peak_hour_h), 100 * std::min(1.0, wilt.peak_supply_mm_h / wilt.peak_demand_mm_h));
  }
  return words;
}

std::string hours(const WiltDay& wilt) {
  if (is_missing(wilt.droop_from_h)) return {};
  if (is_missing(wilt.droop_until_h)) return fmt::format(" from about {}", hour_text(wilt.droop_from_h));
  const std::string_view night = wilt.droop_until_h >= 24 ? " at night" : "";
  return fmt::format(" from about {} to {}{}", hour_text(wilt.droop_from_h), hour_text(wilt.droop_until_h), night);
}

std::string watering_action(const BedToday& bed) {
  if (bed.slot) return fmt::format("open it as listed, at {}", clock_text(bed.slot->begin));
  if (bed.driver) return "it needs the run that has no time today: find a person, or water by hand";
  return "feel the soil at finger depth; if it is dry, water at the next chance";
}

std::string droop_action(const TodayView& view, const Hanging& hanging) {
  if (hanging.bed->slot) {
    return fmt::format("no water at noon for it: the run at {} is enough; look again at {}",
                       clock_text(hanging.bed->slot->begin), hour_text(hanging.planting->wilt.look_again_h));
  }
  const Bed& bed = view.garden.beds[hanging.bed->bed];
  const double minutes = bed_run(view.garden, bed, hanging.planting->dr_mm).minutes;
  const std::string again = hour_text(hanging.planting->wilt.look_again_h);
  if (!(minutes > 0)) return fmt::format("no water: look again at {}", again);
  return fmt::format("no water now: look again at {}; if it still hangs, {:.0f} minutes", again, minutes);
}

Alert alert_of(const TodayView& view, const Hanging& hanging) {
  const WiltDay& wilt = hanging.planting->wilt;
  Alert alert{.bed = hanging.bed->bed, .evidence = evidence(view, *hanging.planting)};
  const std::string who = subject(view, hanging);
  switch (wilt.verdict) {
    case WiltVerdict::wet_soil_droop:
      alert.kind = AlertKind::look_at_the_roots;
      alert.sentence = who + " hung at dawn over moist soil: neither thirst nor heat";
      alert.action = "do not water; look at the roots and the stem (rot, disease, salt) and call the garden educator";
      break;
    case WiltVerdict::dry_soil_wilt:
      alert.kind = AlertKind::dry_soil_wilt;
      alert.sentence = fmt::format("{} wilts for want of water{} and does not recover over night", who, hours(wilt));
      alert.action = watering_action(*hanging.bed);
      break;
    case WiltVerdict::stress:
      alert.kind = AlertKind::stress;
      alert.sentence = who + " is short of water" + (wilt.droop_hours > 0 ? " and hangs" + hours(wilt) : ": it grows less");
      alert.action = watering_action(*hanging.bed);
      break;
    default:
      alert.kind = AlertKind::droop;
      alert.sentence = fmt::format("{} will hang{}: heat, not thirst; it recovers by itself", who, hours(wilt));
      alert.action = droop_action(view, hanging);
      break;
  }
  return alert;
}

std::vector<Hanging> hanging_plantings(const TodayView& view) {
  std::vector<Hanging> hanging;
  for (const BedToday& bed : view.today.beds) {
    for (const PlantingToday& planting : bed.plantings) {
      const WiltVerdict verdict = planting.wilt.verdict;
      const bool calm = verdict == WiltVerdict::comfortable || verdict == WiltVerdict::unknown;
      if (!calm && !planting.in_seed_zone) hanging.push_back({&bed, &planting});
    }
  }
  std::stable_sort(hanging.begin(), hanging.end(), [](const Hanging& a, const Hanging& b) {
    return wilts_before(a.planting->wilt, b.planting->wilt);
  });
  return hanging;
}

void add_blocked(const TodayView& view, std::vector<Alert>& alerts) {
  for (const BedToday& bed : view.today.beds) {
    if (bed.action != BedAction::blocked) continue;
    alerts.push_back({.kind = AlertKind::blocked_run,
                      .bed = bed.bed,
                      .sentence = fmt::format("bed {} needs {:.0f} minutes today and has no run", view.garden.beds[bed.bed].id,
                                              bed.run.minutes),
                      .evidence = why_words(view, bed),
                      .action = obstacle_words(view, bed)});
  }
}

/// "blossom drop (4 days), poor colour (5 days)"; each harm once, with its longest count.
std::string harms_of(const std::vector<CropHeatFinding>& findings) {
  std::vector<std::pair<HeatHarm, std::size_t>> harms;
  for (const CropHeatFinding& finding : findings) {
    const auto found = std::find_if(harms.begin(), harms.end(), [&](const auto& each) { return each.first == finding.limit->harm; });
    if (found == harms.end()) {
      harms.emplace_back(finding.limit->harm, finding.days_over.size());
    } else {
      found->second = std::max(found->second, finding.days_over.size());
    }
  }
  std::string text;
  for (const auto& [harm, days] : harms) {
    text += fmt::format("{}{} ({} {})", text.empty() ? "" : ", ", label(harm), days, days == 1 ? "day" : "days");
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
      words += (words.empty() ? "" : " and ") + ("nights above " + text.temperature(celsius_from_fahrenheit(limit.night_f)));
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
      alerts.push_back({.kind = AlertKind::crop_heat,
                        .bed = bed.bed,
                        .sentence = fmt::format("{} in bed {}: the forecast is hot enough for {}", planting.crop->name_en,
                                                view.garden.beds[bed.bed].id, harms_of(planting.heat)),
                        .evidence = "extension services name " + limits_of(text, planting.heat),
                        .action = std::string(what_helps(planting.heat.front().limit->harm))});
    }
  }
}

}  // namespace

std::string_view code(AlertKind kind) {
  switch (kind) {
    case AlertKind::look_at_the_roots: return "look_at_the_roots";
    case AlertKind::dry_soil_wilt: return "dry_soil_wilt";
    case AlertKind::stress: return "stress";
    case AlertKind::droop: return "droop";
    case AlertKind::blocked_run: return "blocked_run";
    case AlertKind::crop_heat: return "crop_heat";
  }
  return {};
}

std::vector<Alert> alerts_of(const TodayView& view) {
  std::vector<Alert> alerts;
  for (const Hanging& hanging : hanging_plantings(view)) alerts.push_back(alert_of(view, hanging));
  add_blocked(view, alerts);
  add_heat(view, alerts);
  return alerts;
}

}  // namespace v1
}  // namespace noonleaf
