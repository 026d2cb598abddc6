#include "noonleaf/report/today_words.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/report/labels.hpp"
#include "noonleaf/report/today_phrases.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::year_month_day;

constexpr double overflow_worth_a_word_mm = 3.0;

std::string say(const TodayView& view, TodayPhrase id, std::initializer_list<Filling> fillings = {}) {
  return fill(view.language, id, fillings);
}

/// The crop within a sentence.
std::string crop_words(const TodayView& view, const PlantingToday& planting) {
  return std::string(crop_name(view.language, *planting.crop));
}

/// The crop at the head of a sentence.
std::string crop_first(const TodayView& view, const PlantingToday& planting) {
  return sentence_start(crop_words(view, planting));
}

const Sprinkler& sprinkler_of(const TodayView& view, const BedToday& bed) {
  return view.garden.sprinklers[view.garden.beds[bed.bed].sprinkler];
}

std::string sprinkler_name(const TodayView& view, const BedToday& bed) {
  const Sprinkler& sprinkler = sprinkler_of(view, bed);
  return local_name(view.language, sprinkler.name, sprinkler.name_es);
}

std::string role_name(const TodayView& view, std::size_t caretaker) {
  const Caretaker& who = view.garden.caretakers[caretaker];
  return local_name(view.language, who.role, who.role_es);
}

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
  const QuantityText text = view.text();
  const double zone_mm = planting.seedbed->zone.depth_m * 1000;
  return say(view, TodayPhrase::seed_used,
             {{"crop", crop_first(view, planting)},
              {"zone", text.depth(zone_mm)},
              {"now", text.depth(planting.seedbed->depletion_mm)},
              {"spare", text.depth(planting.seedbed->zone.damp_mm)}});
}

bool all_over(const BedToday& bed) {
  return std::all_of(bed.plantings.begin(), bed.plantings.end(),
                     [](const PlantingToday& planting) { return planting.stage == Stage::over; });
}

/// "Tomato is down 0.55 in (0.80 in by tonight) and can spare 0.87 in"; with or without its stage.
std::string used_words(const TodayView& view, const PlantingToday& planting, TodayPhrase id) {
  const QuantityText text = view.text();
  return say(view, id,
             {{"crop", crop_first(view, planting)},
              {"stage", label(view.language, planting.stage)},
              {"now", text.depth(planting.dr_mm)},
              {"tonight", text.depth(planting.dr_close_mm)},
              {"spare", text.depth(planting.raw_mm)}});
}

/// "today", "tomorrow", and a further day as `further` has it.
std::string near_day(const TodayView& view, year_month_day date, TodayPhrase further) {
  const auto days_ahead = std::chrono::sys_days(date) - std::chrono::sys_days(view.today.date);
  if (days_ahead == std::chrono::days(0)) return say(view, TodayPhrase::today);
  if (days_ahead == std::chrono::days(1)) return say(view, TodayPhrase::tomorrow);
  return say(view, further, {{"day", view.text().day(date)}});
}

/// "tomorrow", "on Friday 18 July"
std::string when_words(const TodayView& view, year_month_day date) {
  return near_day(view, date, TodayPhrase::on_day);
}

/// "tomorrow", "Friday 18 July"
std::string day_words(const TodayView& view, year_month_day date) {
  return near_day(view, date, TodayPhrase::day);
}

std::string chance_words(const TodayView& view, const BedToday& bed) {
  if (!bed.next_chance) return say(view, TodayPhrase::no_chance);
  return say(view, TodayPhrase::next_chance, {{"day", day_words(view, *bed.next_chance)}});
}

std::string lasts_words(const TodayView& view, const BedToday& bed) {
  const PlantingToday* planting = first_to_limit(bed);
  if (planting == nullptr) return say(view, TodayPhrase::nothing_grows);
  if (bed.reason == BedReason::look_first)
    return say(view, TodayPhrase::look_first, {{"crop", crop_first(view, *planting)}});
  if (bed.reason == BedReason::ground_closed) return say(view, TodayPhrase::ground_closed);
  if (all_over(bed)) return say(view, TodayPhrase::season_over);
  const std::string used = planting->in_seed_zone ? seed_words(view, *planting)
                                                  : used_words(view, *planting, TodayPhrase::crop_used);
  if (!planting->limit_day) return say(view, TodayPhrase::lasts_ten_days, {{"used", used}});
  if (!bed.next_chance)
    return say(view, TodayPhrase::lasts_until,
               {{"used", used}, {"day", day_words(view, *planting->limit_day)}});
  if (*planting->limit_day < *bed.next_chance) {
    // A run of less than a millimetre is none; with runs in doubt the account may look dry and be full.
    const bool full = planting->dr_mm < 1.0 && !bed.open_question;
    return say(view, full ? TodayPhrase::full_but_short : TodayPhrase::no_run_but_short, {{"used", used}});
  }
  return say(view, TodayPhrase::lasts_to_chance,
             {{"used", used}, {"day", day_words(view, *bed.next_chance)}});
}

std::string open_words(const TodayView& view, const BedToday& bed) {
  const PlantingToday& driver = bed.plantings[*bed.urgent];
  if (bed.reason == BedReason::rest_of_run)
    return say(view, TodayPhrase::rest_to_come,
               {{"used", driver.in_seed_zone ? seed_words(view, driver)
                                             : used_words(view, driver, TodayPhrase::crop_used)}});
  const std::string when = when_words(view, driver.limit_day.value_or(view.today.date));
  if (bed.reason == BedReason::seed_zone_dry)
    return say(view, TodayPhrase::seed_dries, {{"crop", crop_first(view, driver)}, {"when", when}});
  const std::string used = used_words(view, driver, TodayPhrase::crop_used);
  if (bed.reason == BedReason::beyond_limit) return say(view, TodayPhrase::short_already, {{"used", used}});
  return say(view, TodayPhrase::passes_limit,
             {{"used", used}, {"when", when}, {"chance", chance_words(view, bed)}});
}

TodayPhrase obstacle_phrase(RunObstacle obstacle) {
  switch (obstacle) {
    case RunObstacle::nobody_on_site:
      return TodayPhrase::obstacle_nobody;
    case RunObstacle::allowed_hours:
      return TodayPhrase::obstacle_hours;
    case RunObstacle::quiet_hours:
      return TodayPhrase::obstacle_quiet;
    case RunObstacle::tap_taken:
      return TodayPhrase::obstacle_tap_taken;
    case RunObstacle::frost:
      return TodayPhrase::obstacle_frost;
    case RunObstacle::no_time_left:
      return TodayPhrase::obstacle_no_time;
    case RunObstacle::restriction:
      return TodayPhrase::obstacle_restriction;
    case RunObstacle::wind:
      return TodayPhrase::obstacle_wind;
    case RunObstacle::tap_flow:
      return TodayPhrase::obstacle_tap_flow;
    case RunObstacle::clock_change:
      return TodayPhrase::obstacle_clock_change;
    case RunObstacle::reclaimed:
      break;
  }
  return TodayPhrase::obstacle_reclaimed;
}

/// When the seed of one planting should be up, and the watering that suits it.
std::string seed_line(const TodayView& view, const PlantingToday& planting) {
  const QuantityText text = view.text();
  const Seedbed& seedbed = *planting.seedbed;
  const std::string crop = crop_first(view, planting), soil = text.temperature(seedbed.soil_c);
  std::string words;
  if (seedbed.emergence) {
    words = say(view, TodayPhrase::seed_up, {{"crop", crop}, {"day", text.day(*seedbed.emergence)}});
    words += seedbed.by_table
                 ? say(view, TodayPhrase::seed_by_table, {{"temperature", soil}})
                 : say(view, TodayPhrase::seed_by_rule, {{"days", std::to_string(usual_emergence_d)}});
  } else {
    words = say(view, TodayPhrase::seed_stays_down, {{"crop", crop}, {"temperature", soil}});
  }
  const double times = std::ceil(seedbed.light.per_day);
  if (is_missing(planting.light_min) || !(times > 1)) return words;
  return words + say(view, TodayPhrase::light_and_often,
                     {{"minutes", text.number(planting.light_min, 0)}, {"times", text.number(times, 0)}});
}

}  // namespace

std::string sprinkler_words(const TodayView& view, const BedToday& bed) {
  const Sprinkler& sprinkler = sprinkler_of(view, bed);
  const Tap& tap = view.garden.taps[sprinkler.tap];
  std::string text = sprinkler_name(view, bed) + ", " + local_name(view.language, tap.name, tap.name_es);
  if (sprinkler.rate.basis == RateBasis::guess) text += say(view, TodayPhrase::rate_is_guess);
  return text;
}

std::string people_words(const TodayView& view, const BedToday& bed) {
  if (!bed.slot) return {};
  return say(view, TodayPhrase::opens_closes,
             {{"opener", role_name(view, bed.slot->opener)}, {"closer", role_name(view, bed.slot->closer)}});
}

std::string why_words(const TodayView& view, const BedToday& bed) {
  return bed.driver ? open_words(view, bed) : lasts_words(view, bed);
}

std::string obstacle_words(const TodayView& view, const BedToday& bed) {
  return say(view, obstacle_phrase(bed.obstacle));
}

std::vector<std::string> depletion_words(const TodayView& view, const BedToday& bed) {
  std::vector<std::string> lines;
  for (const PlantingToday& planting : bed.plantings)
    lines.push_back(planting.in_seed_zone ? seed_words(view, planting)
                                          : used_words(view, planting, TodayPhrase::crop_stage_used));
  return lines;
}

std::string cycle_words(const TodayView& view, const BedToday& bed) {
  if (bed.openings.size() < 2 || !bed.slot) return {};
  const QuantityText text = view.text();
  return say(view, TodayPhrase::two_goes,
             {{"close", text.the_clock(bed.slot->begin + bed.openings[0].end)},
              {"open", text.the_clock(bed.slot->begin + bed.openings[1].begin)}});
}

std::string hand_words(const TodayView& view, const BedToday& bed) {
  const Bed& where = view.garden.beds[bed.bed];
  const Sprinkler& sprinkler = sprinkler_of(view, bed);
  if (sprinkler.kind != WettingKind::hand || !bed.driver) return {};
  const QuantityText text = view.text();
  const HandWatering hand = hand_watering(
      {.net_depth_mm = bed.run.mean_depth_mm, .bed_area_m2 = where.area_m2, .can_l = sprinkler.can_l});
  std::string words = say(view, TodayPhrase::by_hand, {{"volume", text.volume(hand.litres)}});
  if (is_known(hand.cans))
    words += say(view, hand.cans == 1 ? TodayPhrase::one_can : TodayPhrase::cans,
                 {{"cans", text.number(hand.cans, 0)}, {"can", text.volume(sprinkler.can_l)}});
  return words + say(view, TodayPhrase::by_hand_slowly);
}

std::string by_hand_words(const TodayView& view, const BedToday& bed, double litres) {
  const QuantityText text = view.text();
  const double cans = whole_cans(litres, sprinkler_of(view, bed).can_l);
  if (is_missing(cans)) return text.volume(litres);
  return say(view, cans == 1 ? TodayPhrase::in_one_can : TodayPhrase::in_cans,
             {{"volume", text.volume(litres)}, {"cans", text.number(cans, 0)}});
}

std::string multiplier_words(const TodayView& view, const BedToday& bed) {
  if (!bed.driver) return {};
  const QuantityText text = view.text();
  std::string words;
  if (bed.run.multiplier_rule == MultiplierRule::lower_half_capped)
    words = say(view, TodayPhrase::uneven,
                {{"sprinkler", sprinkler_name(view, bed)},
                 {"du", text.number(bed.run.du_lq_frac, 2)},
                 {"times", text.number(bed.run.multiplier, 1)}});
  if (bed.run.limit == RunLimit::raised_to_shortest)
    words += (words.empty() ? "" : " ") +
             say(view, TodayPhrase::shortest_run, {{"minutes", text.number(bed.run.minutes, 0)}});
  return words;
}

std::string left_over_words(const TodayView& view, const BedToday& bed) {
  if (!(bed.run.left_over_net_mm > 0)) return {};
  const QuantityText text = view.text();
  const bool runs_off = bed.cycles && bed.cycles->left_out_min > 0;
  const TodayPhrase why = runs_off ? TodayPhrase::left_runs_off
                          : bed.run.minutes >= sprinkler_of(view, bed).longest_run_min
                              ? TodayPhrase::left_longest
                              : TodayPhrase::left_no_time;
  const std::string again =
      bed.next_chance ? say(view, TodayPhrase::run_again, {{"when", when_words(view, *bed.next_chance)}})
                      : say(view, TodayPhrase::run_again_sometime);
  std::string depth = text.depth(bed.run.left_over_net_mm);
  if (bed.open_question) {  // what is left over is left where the unlogged runs were done
    const double brought_mm = bed.run.net_depth_mm - bed.run.left_over_net_mm;
    depth = say(view, TodayPhrase::depth_between,
                {{"least", depth}, {"most", text.depth(bed.open_question->dr_if_not_done_mm - brought_mm)}});
  }
  return say(view, why, {{"minutes", text.number(bed.run.minutes, 0)}, {"depth", depth}, {"again", again}});
}

std::string seedbed_words(const TodayView& view, const BedToday& bed) {
  std::string text;
  for (const PlantingToday& planting : bed.plantings)
    if (planting.seedbed) text += (text.empty() ? "" : " ") + seed_line(view, planting);
  return text;
}

std::string salt_words(const TodayView& view, const BedToday& bed) {
  double leaching_frac = 0;
  for (const PlantingToday& planting : bed.plantings)
    leaching_frac = std::max(leaching_frac, planting.salt.leaching_frac);
  if (!bed.driver || leaching_frac < 0.005) return {};
  return say(view, TodayPhrase::salt, {{"share", view.text().number(100 * leaching_frac, 0)}});
}

std::string overflow_words(const TodayView& view, const BedToday& bed) {
  if (!bed.driver) return {};
  const QuantityText text = view.text();
  const Bed& where = view.garden.beds[bed.bed];
  const std::vector<ShareOutcome> outcomes = outcomes_of_run(bed);
  std::string words;
  if (bed.plantings.size() > 1)
    words = say(view, TodayPhrase::sets_the_depth, {{"crop", crop_words(view, bed.plantings[*bed.driver])}});
  for (std::size_t index = 0; index < bed.plantings.size(); ++index) {
    const PlantingToday& planting = bed.plantings[index];
    const double beyond_mm = outcomes[index].percolation_mm;
    const bool counts = index != *bed.driver && !planting.in_seed_zone && planting.stage != Stage::over;
    if (!counts || beyond_mm < overflow_worth_a_word_mm) continue;
    words += (words.empty() ? "" : " ") +
             say(view, TodayPhrase::drains_below,
                 {{"depth", text.depth(beyond_mm)},
                  {"volume", text.volume(beyond_mm * planting.share_frac * where.area_m2)},
                  {"crop", crop_words(view, planting)}});
  }
  return words;
}

}  // namespace v1
}  // namespace noonleaf
