#include "noonleaf/report/today_words.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/report/quantity_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::year_month_day;

constexpr double overflow_worth_a_word_mm = 3.0;
constexpr double start_worth_a_word_mm = 1.0;
constexpr double hot_hose_c = 27.0;  // common practice, no source: a hose in the sun scalds on such a day
constexpr double rain_worth_a_look_mm = 2.0;

QuantityText quantities(const TodayView& view) { return QuantityText(view.garden.site.units); }

std::string crop_name(const PlantingToday& planting) { return std::string(planting.crop->name_en); }

/// The planting that passes its limit first; of equals the one furthest on the way.
const PlantingToday* first_to_limit(const BedToday& bed) {
  const auto day = [](const PlantingToday& planting) {
    return planting.limit_day ? std::chrono::sys_days(*planting.limit_day) : std::chrono::sys_days::max();
  };
  const auto later = [&day](const PlantingToday& a, const PlantingToday& b) {
    return day(a) != day(b) ? day(a) > day(b) : a.dr_mm / a.raw_mm < b.dr_mm / b.raw_mm;
  };
  const auto found = std::max_element(bed.plantings.begin(), bed.plantings.end(), later);
  return found == bed.plantings.end() ? nullptr : &*found;
}

std::string seed_words(const TodayView& view, const PlantingToday& planting) {
  const double zone_mm = planting.seedbed->zone.depth_m * 1000;
  return fmt::format("{} (seed): the top {} is down {} and can spare {}", crop_name(planting),
                     quantities(view).depth(zone_mm), quantities(view).depth(planting.seedbed->depletion_mm),
                     quantities(view).depth(planting.seedbed->zone.damp_mm));
}

bool all_over(const BedToday& bed) {
  return std::all_of(bed.plantings.begin(), bed.plantings.end(),
                     [](const PlantingToday& planting) { return planting.stage == Stage::over; });
}

std::string used_words(const TodayView& view, const PlantingToday& planting) {
  const QuantityText text = quantities(view);
  return fmt::format("is down {} ({} by tonight) and can spare {}", text.depth(planting.dr_mm),
                     text.depth(planting.dr_close_mm), text.depth(planting.raw_mm));
}

std::string when_words(const TodayView& view, year_month_day date) {
  const auto days_ahead = std::chrono::sys_days(date) - std::chrono::sys_days(view.today.date);
  if (days_ahead == std::chrono::days(0)) return "today";
  return days_ahead == std::chrono::days(1) ? "tomorrow" : "on " + day_name(date);
}

/// "tomorrow", "Friday 18 July"
std::string day_words(const TodayView& view, year_month_day date) {
  const std::string when = when_words(view, date);
  return when.starts_with("on ") ? when.substr(3) : when;
}

std::string chance_words(const TodayView& view, const BedToday& bed) {
  if (!bed.next_chance) return "nobody can water within a week";
  return "the next chance to water is " + day_words(view, *bed.next_chance);
}

std::string lasts_words(const TodayView& view, const BedToday& bed) {
  const PlantingToday* planting = first_to_limit(bed);
  if (planting == nullptr) return "Nothing grows here now.";
  if (bed.reason == BedReason::look_first)
    return crop_name(*planting) + " may be short of water, or it has had it: look first.";
  if (bed.reason == BedReason::ground_closed) return "Snow or frozen ground: the water account stands still.";
  if (all_over(bed)) {
    return "Its season is over by the table. Pulled? Write it into the journal. Still growing? Write down "
           "the stage.";
  }
  const std::string used = planting->in_seed_zone ? seed_words(view, *planting)
                                                  : crop_name(*planting) + " " + used_words(view, *planting);
  if (!planting->limit_day) return used + "; it lasts ten days and more without rain.";
  if (!bed.next_chance)
    return fmt::format("{}; it lasts until {}.", used, day_words(view, *planting->limit_day));
  if (*planting->limit_day < *bed.next_chance) {
    // A run of less than a millimetre is none; with runs in doubt the account may look dry and be full.
    const bool full = planting->dr_mm < 1.0 && !bed.open_question;
    return used +
           (full ? ": full, nothing more fits in. It will be short before the next chance to water."
                 : ": no run today, but it will be short before the next chance to water. Feel the soil.");
  }
  return fmt::format("{}: it lasts until the next chance to water, {}.", used,
                     day_words(view, *bed.next_chance));
}

std::string open_words(const TodayView& view, const BedToday& bed) {
  const PlantingToday& driver = bed.plantings[*bed.urgent];
  switch (bed.reason) {
    case BedReason::seed_zone_dry:
      return fmt::format("{} seed is not up yet: the top of the soil would dry out {}.", crop_name(driver),
                         when_words(view, driver.limit_day.value_or(view.today.date)));
    case BedReason::beyond_limit:
      return fmt::format("{} {}: it is short of water already.", crop_name(driver), used_words(view, driver));
    default:
      return fmt::format(
          "{} {}; without water it passes that {}, and {}.", crop_name(driver), used_words(view, driver),
          when_words(view, driver.limit_day.value_or(view.today.date)), chance_words(view, bed));
  }
}

bool any_run(const TodayView& view) { return !view.today.opening_order.empty(); }

void add_heat_caution(const TodayView& view, std::vector<std::string>& cautions) {
  const auto category = view.today.people.peak_category;
  if (!category || *category == HeatCategory::below_caution) return;
  std::string text = fmt::format(
      "People: heat index up to {} in the shade at about {:02}:00 (\"{}\"); full sun feels hotter.",
      quantities(view).temperature(view.today.people.peak_c), view.today.people.peak_hour, label(*category));
  if (const auto hour = coolest_hours(view.today.people))
    text += fmt::format(" Work is coolest from {:02}:00.", *hour);
  cautions.push_back(text + " Your district's heat policy and medical advice come first.");
}

bool wets_beside_the_bed(const TodayView& view) {
  return std::any_of(view.today.opening_order.begin(), view.today.opening_order.end(),
                     [&](std::size_t index) {
                       const Bed& bed = view.garden.beds[view.today.beds[index].bed];
                       return view.garden.sprinklers[bed.sprinkler].rate.off_target_frac > 0;
                     });
}

bool has_flowers_for_bees(const TodayView& view) {
  return std::any_of(view.today.beds.begin(), view.today.beds.end(), [](const BedToday& bed) {
    return std::any_of(bed.plantings.begin(), bed.plantings.end(), [](const PlantingToday& planting) {
      const CropGroup group = planting.crop->group;
      const bool flowers =
          group == CropGroup::ornamental || group == CropGroup::cucumber || group == CropGroup::berry;
      return flowers && (planting.stage == Stage::mid_season || planting.stage == Stage::no_stages);
    });
  });
}

/// Beds that stand apart from what was taken for the start, and how much that start still matters.
std::string start_words(const TodayView& view) {
  double doubt_mm = 0;
  std::string bed_id, known;
  for (const BedToday& bed : view.today.beds) {
    const Bed& where = view.garden.beds[bed.bed];
    if (where.known_wet && *where.known_wet <= view.today.date)
      known += fmt::format("; bed {} was known to be full on {}", where.id, iso_date(*where.known_wet));
    for (const PlantingToday& planting : bed.plantings) {
      if (!(planting.start_doubt_mm > doubt_mm)) continue;
      doubt_mm = planting.start_doubt_mm;
      bed_id = where.id;
    }
  }
  if (doubt_mm < start_worth_a_word_mm) return known + "; it no longer matters";
  return known + fmt::format("; had it been dry, bed {} would be {} drier now: feel the soil", bed_id,
                             quantities(view).depth(doubt_mm));
}

}  // namespace

std::string sprinkler_words(const TodayView& view, const BedToday& bed) {
  const Sprinkler& sprinkler = view.garden.sprinklers[view.garden.beds[bed.bed].sprinkler];
  std::string text = sprinkler.name + ", " + view.garden.taps[sprinkler.tap].name;
  if (sprinkler.rate.basis == RateBasis::guess) text += " (its rate is a guess)";
  return text;
}

std::string people_words(const TodayView& view, const BedToday& bed) {
  if (!bed.slot) return {};
  return fmt::format("Opens: {}. Closes: {}.", view.garden.caretakers[bed.slot->opener].role,
                     view.garden.caretakers[bed.slot->closer].role);
}

std::string why_words(const TodayView& view, const BedToday& bed) {
  return bed.driver ? open_words(view, bed) : lasts_words(view, bed);
}

std::string obstacle_words(const TodayView&, const BedToday& bed) {
  switch (bed.obstacle) {
    case RunObstacle::nobody_on_site:
      return "nobody is on site to open and to close it. Find a person for both, or leave it.";
    case RunObstacle::allowed_hours:
      return "nobody is on site in the allowed hours. Ask for a person then, or water by hand.";
    case RunObstacle::quiet_hours:
      return "it would run in the quiet hours. Find another hour for the children or the tap.";
    case RunObstacle::tap_taken:
      return "more urgent beds need the tap. Use a second tap, or water by hand.";
    case RunObstacle::frost:
      return "a night of frost is no time for water: leave the tap closed and the hose drained.";
    case RunObstacle::no_time_left:
      return "no time is left today. Water at the next chance.";
    case RunObstacle::restriction:
      return "a watering rule forbids it today. Wait for a day that the rule allows.";
    case RunObstacle::wind:
      return "it is too windy for a sprinkler in the hours left. Water low by hand, or wait.";
    case RunObstacle::tap_flow:
      return "the sprinkler draws more than the tap gives. Use a smaller one.";
    case RunObstacle::clock_change:
      return "the clocks change in the hours that are left. Water at the next chance.";
    case RunObstacle::reclaimed:
      return "reclaimed water is not sprayed on food or near children. Use drip, or drinking water.";
  }
  return {};
}

std::vector<std::string> depletion_words(const TodayView& view, const BedToday& bed) {
  std::vector<std::string> lines;
  for (const PlantingToday& planting : bed.plantings) {
    if (planting.in_seed_zone) {
      lines.push_back(seed_words(view, planting));
    } else {
      lines.push_back(
          fmt::format("{} ({}): {}", crop_name(planting), label(planting.stage), used_words(view, planting)));
    }
  }
  return lines;
}

std::string cycle_words(const BedToday& bed) {
  if (bed.openings.size() < 2 || !bed.slot) return {};
  return fmt::format(
      "In two goes, or it runs off: close it at {}, open it again at {}. Where no water stands on the soil, "
      "run it in one.",
      clock_text(bed.slot->begin + bed.openings[0].end), clock_text(bed.slot->begin + bed.openings[1].begin));
}

std::string hand_words(const TodayView& view, const BedToday& bed) {
  const Bed& where = view.garden.beds[bed.bed];
  const Sprinkler& sprinkler = view.garden.sprinklers[where.sprinkler];
  if (sprinkler.kind != WettingKind::hand || !bed.driver) return {};
  const HandWatering hand = hand_watering(
      {.net_depth_mm = bed.run.mean_depth_mm, .bed_area_m2 = where.area_m2, .can_l = sprinkler.can_l});
  std::string text = "By hand: " + quantities(view).volume(hand.litres);
  if (is_known(hand.cans))
    text += fmt::format(", {:.0f} {} of {}", hand.cans, hand.cans == 1 ? "can" : "cans",
                        quantities(view).volume(sprinkler.can_l));
  return text + ". Slowly, so that it soaks in; the amount counts, not the minutes.";
}

std::string multiplier_words(const TodayView& view, const BedToday& bed) {
  if (!bed.driver) return {};
  std::string text;
  if (bed.run.multiplier_rule == MultiplierRule::lower_half_capped) {
    text = fmt::format(
        "The {} waters so unevenly (DU {:.2f}) that a longer run would mostly drain away: it is lengthened "
        "{:.1f} times, "
        "no more. Parts stay dry until it is moved or mended.",
        view.garden.sprinklers[view.garden.beds[bed.bed].sprinkler].name, bed.run.du_lq_frac,
        bed.run.multiplier);
  }
  if (bed.run.limit == RunLimit::raised_to_shortest) {
    text += fmt::format("{}{:.0f} minutes is the shortest run that makes sense: a little more than asked.",
                        text.empty() ? "" : " ", bed.run.minutes);
  }
  return text;
}

std::string left_over_words(const TodayView& view, const BedToday& bed) {
  if (!(bed.run.left_over_net_mm > 0)) return {};
  const double longest_min = view.garden.sprinklers[view.garden.beds[bed.bed].sprinkler].longest_run_min;
  const bool runs_off = bed.cycles && bed.cycles->left_out_min > 0;
  const std::string_view why = runs_off ? "is what the soil takes in without run-off, by the table"
                               : bed.run.minutes >= longest_min ? "is the longest run of this sprinkler"
                                                                : "is all that fits today";
  const std::string again =
      bed.next_chance ? "run it again " + when_words(view, *bed.next_chance) : "run it again when you can";
  return fmt::format("{:.0f} minutes {}. The bed stays short by {}: {}.", bed.run.minutes, why,
                     quantities(view).depth(bed.run.left_over_net_mm), again);
}

std::string seedbed_words(const TodayView& view, const BedToday& bed) {
  std::string text;
  for (const PlantingToday& planting : bed.plantings) {
    if (!planting.seedbed) continue;
    const Seedbed& seedbed = *planting.seedbed;
    if (!text.empty()) text += " ";
    if (seedbed.emergence) {
      text += fmt::format("{} seed should be up about {}", crop_name(planting), day_name(*seedbed.emergence));
      text += seedbed.by_table ? fmt::format(" (soil taken as {}, like the air).",
                                             quantities(view).temperature(seedbed.soil_c))
                               : fmt::format(" ({} days, a rule of thumb).", usual_emergence_d);
    } else {
      text += fmt::format("{} seed does not come up at {}.", crop_name(planting),
                          quantities(view).temperature(seedbed.soil_c));
    }
    const double times = std::ceil(seedbed.light.per_day);
    if (is_known(planting.light_min) && times > 1) {
      text += fmt::format(" Better still, light and often: {:.0f} minutes, {:.0f} times a day.",
                          planting.light_min, times);
    }
  }
  return text;
}

std::string salt_words(const BedToday& bed) {
  double leaching_frac = 0;
  for (const PlantingToday& planting : bed.plantings)
    leaching_frac = std::max(leaching_frac, planting.salt.leaching_frac);
  if (!bed.driver || leaching_frac < 0.005) return {};
  return fmt::format("Salt: {:.0f} % of the water is to pass the roots and wash it down.",
                     100 * leaching_frac);
}

std::string overflow_words(const TodayView& view, const BedToday& bed) {
  if (!bed.driver) return {};
  const Bed& where = view.garden.beds[bed.bed];
  const std::vector<ShareOutcome> outcomes = outcomes_of_run(bed);
  std::string text;
  for (std::size_t index = 0; index < bed.plantings.size(); ++index) {
    const PlantingToday& planting = bed.plantings[index];
    const double beyond_mm = outcomes[index].percolation_mm;
    const bool counts = index != *bed.driver && !planting.in_seed_zone && planting.stage != Stage::over;
    if (!counts || beyond_mm < overflow_worth_a_word_mm) continue;
    text += fmt::format(" {} ({}) drains below the roots of {}.", quantities(view).depth(beyond_mm),
                        quantities(view).volume(beyond_mm * planting.share_frac * where.area_m2),
                        crop_name(planting));
  }
  if (bed.plantings.size() < 2) return text.empty() ? text : text.substr(1);
  return crop_name(bed.plantings[*bed.driver]) + " sets the depth." + text;
}

std::vector<std::string> estimate_words(const TodayView& view) {
  std::vector<std::string> lines;
  for (const Estimate& estimate : view.today.estimates) {
    std::string line = estimate.what;
    if (!line.empty()) line[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(line[0])));
    if (estimate.kind == EstimateKind::soil_start) line += start_words(view);
    if (estimate.days > 0) line += fmt::format(" ({} of {} days)", estimate.days, estimate.of_days);
    lines.push_back(line + ".");
  }
  std::vector<UnloggedRun> open_runs;
  for (const BedToday& bed : view.today.beds)
    if (bed.open_question)
      open_runs.insert(open_runs.end(), bed.open_question->runs.begin(), bed.open_question->runs.end());
  if (!open_runs.empty()) {
    const UnloggedRun& first = open_runs.front();
    const std::string& bed = view.garden.beds[first.bed].id;
    lines.push_back(fmt::format(
        "{} planned {} not in the journal, done or not. Write down what you know: noonleaf log DIR water {} "
        "--date {} --minutes {:.0f} (0 if it did not run), or log DIR feel {} --feel moist.",
        open_runs.size(), open_runs.size() == 1 ? "run is" : "runs are", bed, iso_date(first.date),
        first.minutes, bed));
  }
  return lines;
}

std::vector<std::string> caution_words(const TodayView& view) {
  std::vector<std::string> cautions;
  add_heat_caution(view, cautions);
  if (any_run(view)) {
    if (view.today.sky.estimate.t_max_c >= hot_hose_c) {
      cautions.push_back(
          "Water standing in a sunny hose scalds: let it run until it is cool before it meets hands or "
          "leaves.");
    }
    if (wets_beside_the_bed(view))
      cautions.push_back("Spray reaches the path: it is slippery; keep people off until it is dry.");
    cautions.push_back(
        "Flush the hose, do not drink from it, keep its end out of buckets and puddles (vacuum breaker at "
        "every tap), "
        "close the tap afterwards: no hose stays under pressure over night.");
    if (has_flowers_for_bees(view))
      cautions.push_back("Bees work the flowers: water early, mind stings and allergies.");
    cautions.push_back("Cords and timers stay dry. Stop and go inside when you hear thunder.");
    if (view.today.sky.weather.rain_mm >= rain_worth_a_look_mm &&
        view.today.sky.origin == DayOrigin::forecast) {
      cautions.push_back("Rain is forecast: look at the gauge first. A forecast of rain is not rain.");
    }
    cautions.push_back("Local watering rules, the water supplier's rules and school policy come first.");
  }
  return cautions;
}

}  // namespace v1
}  // namespace noonleaf
