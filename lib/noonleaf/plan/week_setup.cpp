#include "noonleaf/plan/week_setup.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/error.hpp"
#include "noonleaf/plan/bed_cycles.hpp"
#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/planting_wilt.hpp"
#include "noonleaf/plan/required_weather.hpp"
#include "noonleaf/plan/unlogged_runs.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::minutes;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr int longest_look_d = 7;                                        // for the next chance after the plan
constexpr std::size_t evening_leaves_slot = 17 * 60 / minutes_per_slot;  // leaves no longer dry before night
constexpr int wet_leaves_discomfort = 1000;                              // more than any heat or wind
constexpr double wind_weight = 4;  // 1 m/s is as unwelcome as 4 °C: drift against evaporation (ours)

void require_question(const Sky& sky, const WeekQuestion& question) {
  if (question.days >= 1 && question.days <= 14) return require_weather(sky, question.first);
  Problem problem;
  problem.field = "days";
  problem.text = std::to_string(question.days);
  problem.message = "a plan is for 1 to 14 days";
  problem.fix = "ask for 7 days";
  throw Error(std::move(problem));
}

/// The bed as a day's run finds it, for bed_cycles: how wet and how covered it is on the first morning.
BedToday bed_for_intake(const Garden& garden, std::size_t bed, const std::vector<PlantingAccount>& accounts) {
  BedToday result;
  result.bed = bed;
  for (const PlantingAccount& account : accounts) {
    const BalanceDetail& morning = account.dry_ahead.days.front();
    PlantingToday planting;
    planting.planting = account.planting;
    planting.share_frac = garden.beds[bed].plantings[account.planting].share_frac;
    planting.cover_frac = is_known(morning.growth.cover_frac) ? morning.growth.cover_frac : 0;
    planting.dr_mm = morning.dr_wet_mm;
    planting.root_depth_m = morning.end.root_depth_m;
    planting.field_capacity_m3_m3 = account.soil.field_capacity_m3_m3;
    result.plantings.push_back(planting);
    const auto& driest = result.plantings[result.driver.value_or(0)];
    if (!result.driver || planting.dr_mm > driest.dr_mm) result.driver = result.plantings.size() - 1;
  }
  return result;
}

/// Nothing where even two cycles would run off.
RunShape shape_of(const Garden& garden, const BedToday& bed, int run_minutes) {
  RunShape shape;
  shape.minutes = run_minutes;
  shape.openings[0] = {0, run_minutes};
  const auto plan = bed_cycles(garden, bed, run_minutes);
  if (!plan) return shape;
  if (plan->reason == CycleReason::too_many_cycles) return {};
  const std::vector<RunOpening> openings = openings_of_run(plan, run_minutes);
  shape.n_openings = static_cast<int>(openings.size());
  for (std::size_t index = 0; index < openings.size(); ++index)
    shape.openings[index] = {static_cast<int>(openings[index].begin.count()),
                             static_cast<int>(openings[index].end.count())};
  return shape;
}

/// The lengths that rounded_run_min and the limits can lead to.
bool is_a_length(int run_minutes, const RunLimits& limits) {
  if (run_minutes > limits.longest_min) return false;
  return run_minutes < 15 || run_minutes % minutes_per_slot == 0 ||
         run_minutes == static_cast<int>(limits.longest_min);
}

std::vector<RunShape> shapes_of(const Garden& garden, const BedToday& bed, const RunLimits& limits) {
  std::vector<RunShape> shapes(static_cast<std::size_t>(limits.longest_min) + 1);
  for (std::size_t length = 1; length < shapes.size(); ++length) {
    if (is_a_length(static_cast<int>(length), limits))
      shapes[length] = shape_of(garden, bed, static_cast<int>(length));
  }
  return shapes;
}

RunLimits limits_of(const Sprinkler& sprinkler) {
  RunLimits limits;
  if (is_known(sprinkler.longest_run_min)) limits.longest_min = std::floor(sprinkler.longest_run_min);
  limits.shortest_min = std::min(limits.shortest_min, limits.longest_min);
  return limits;
}

/// Cool and calm hours are welcome, wet leaves at night are not.
std::array<int, slots_per_day> discomfort_on(const Garden& garden, const Bed& bed, const Sky& sky,
                                             year_month_day date) {
  const bool overhead = is_overhead(garden.sprinklers[bed.sprinkler].kind);
  const bool suffers = overhead && leaves_suffer_at_night(bed, date);
  const WeatherHours hours = hours_over(garden.site, sky, date);
  double coolest_c = missing;
  for (const WeatherHour& hour : hours) coolest_c = std::fmin(coolest_c, hour.t_c);
  std::array<int, slots_per_day> discomfort{};
  for (std::size_t slot = 0; slot < slots_per_day; ++slot) {
    const std::size_t hour = slot * minutes_per_slot / 60;
    double unwelcome = std::abs(static_cast<double>(hour) - 6);  // without weather: about sunrise
    if (is_known(hours[hour].t_c)) {
      unwelcome = hours[hour].t_c - coolest_c;
      if (overhead && is_known(hours[hour].u2_m_s)) unwelcome += wind_weight * hours[hour].u2_m_s;
    }
    discomfort[slot] = static_cast<int>(std::lround(10 * unwelcome));
    if (suffers && slot >= evening_leaves_slot) discomfort[slot] += wet_leaves_discomfort;
  }
  return discomfort;
}

/// Whether some sprinkler needs more than its tap gives while another tap is open.
bool some_run_alone(const Garden& garden) {
  return std::any_of(garden.sprinklers.begin(), garden.sprinklers.end(), [&](const Sprinkler& sprinkler) {
    return sprinkler.rate.flow_l_min > garden.taps[sprinkler.tap].shared_flow_l_min;
  });
}

/// Today's run of a bed as the planner has it.
std::optional<RunChoice> choice_of(const BedToday& bed) {
  if (bed.action != BedAction::open) return std::nullopt;
  RunChoice choice;
  choice.part = bed.slot->begin >= evening_begins ? DayPart::evening : DayPart::before_demand;
  choice.planting = *bed.driver;  // both lists hold what is in the ground, in the order of the file
  choice.net_mm = bed.run.net_depth_mm;
  choice.depth_mm = bed.run.mean_depth_mm;
  choice.minutes = static_cast<int>(std::lround(bed.run.minutes));
  choice.cut = bed.run.left_over_net_mm > 0;
  return choice;
}

/// What `today` says of the first day, and what it takes as done.
FirstDay first_day_of(const Garden& garden, const Journal& journal, const Sky& sky,
                      const WeekQuestion& question) {
  FirstDay first;
  first.unlogged = unlogged_runs(garden, journal, sky, question.first);
  first.today = plan_today(garden, journal, sky,
                           {question.first, question.from, TodayQuestion::Wilt::left_out}, first.unlogged);
  for (const BedToday& bed : first.today.beds) first.runs.push_back(choice_of(bed));
  return first;
}

/// The first day of a bed is decided: its water is in the account, no other run may begin. Where something
/// stood in the way of its run, the limits of that day stay, to be blamed.
void decide_first_day(const FirstDay& first, std::size_t bed, BedProblem& problem,
                      std::vector<std::vector<LimitSlots>>& limits) {
  problem.water_may_run.front().reset();
  if (first.today.beds[bed].action != BedAction::blocked)
    limits.front().push_back({WeekLimit::already_dry, {}, {}});
  const auto& run = first.runs[bed];
  if (!run) return;
  for (PlantingProblem& planting : problem.plantings) {
    BalanceDay& day = planting.days.front();
    (run->part == DayPart::evening ? day.evening_irrigation_mm : day.irrigation_mm) += run->depth_mm;
  }
}

/// Days from the plan's last day to the first later one on which some bed could be watered.
int days_to_chance(const Garden& garden, const Sky& sky, sys_days last) {
  for (int ahead = 1; ahead <= longest_look_d; ++ahead) {
    const year_month_day date{last + days(ahead)};
    DaySlots anybody;
    for (const Caretaker& caretaker : garden.caretakers) anybody |= presence_on(garden, caretaker, date);
    for (const Bed& bed : garden.beds) {
      if ((open_slots(limits_on(garden, bed, sky, date, minutes{0})) & anybody).any()) return ahead;
    }
  }
  return longest_look_d;
}

}  // namespace

std::vector<PlantingNeed> needs_ahead(const BedPlanting& planting, const PlantingAccount& account) {
  std::vector<PlantingNeed> needs;
  for (std::size_t day = 0; day < account.growth_to_come.size(); ++day) {
    const sys_days date(account.days_to_come[day].date);
    const Stage stage = account.growth_to_come[day].stage;
    PlantingNeed need = PlantingNeed::root_zone;
    if (!grows_on(planting, date) || stage == Stage::over || stage == Stage::not_started)
      need = PlantingNeed::nothing;
    else if (date < account.seed_up)
      need = PlantingNeed::seed_zone;
    needs.push_back(need);
  }
  return needs;
}

BedProblem bed_problem(const Garden& garden, std::size_t bed_index,
                       const std::vector<PlantingAccount>& accounts) {
  const Bed& bed = garden.beds[bed_index];
  const Sprinkler& sprinkler = garden.sprinklers[bed.sprinkler];
  BedProblem problem;
  problem.tap = sprinkler.tap;
  problem.area_m2 = bed.area_m2;
  problem.rate = sprinkler.rate;
  problem.limits = limits_of(sprinkler);
  problem.shapes = shapes_of(garden, bed_for_intake(garden, bed_index, accounts), problem.limits);
  for (const PlantingAccount& account : accounts) {
    const BedPlanting& planting = bed.plantings[account.planting];
    problem.plantings.push_back({.area_m2 = bed.area_m2 * planting.share_frac,
                                 .dawn = account.dry_ahead.days.front().start,  // after a look into the soil
                                 .days = account.days_to_come,
                                 .growth = account.growth_to_come,
                                 .needs = needs_ahead(planting, account),
                                 .soil = account.soil,
                                 .settings = account.settings});
  }
  return problem;
}

WeekSetup set_up_week(const Garden& garden, const Journal& journal, const Sky& sky,
                      const WeekQuestion& question) {
  require_question(sky, question);
  WeekSetup setup;
  setup.first = sys_days(question.first);
  const sys_days last = setup.first + days(question.days - 1);
  setup.problem.plan_days = static_cast<std::size_t>(question.days);
  setup.problem.all_days =
      setup.problem.plan_days + static_cast<std::size_t>(days_to_chance(garden, sky, last));
  for (const Caretaker& caretaker : garden.caretakers) {
    auto& presence = setup.problem.on_site.emplace_back();
    for (int day = 0; day < question.days; ++day)
      presence.push_back(presence_on(garden, caretaker, year_month_day{setup.first + days(day)}));
  }
  // A sprinkler that needs the whole supply: then one run at a time in the whole garden (on the safe side).
  const bool one_at_a_time = some_run_alone(garden);
  setup.first_day = first_day_of(garden, journal, sky, question);
  for (std::size_t index = 0; index < garden.beds.size(); ++index) {
    const Bed& bed = garden.beds[index];
    const bool doubt = setup.first_day.today.beds[index].open_question.has_value();
    setup.accounts.push_back(accounts_of_bed(garden, index,
                                             doubt ? setup.first_day.unlogged.if_done : journal, sky,
                                             question.first, setup.problem.all_days));
    BedProblem problem = bed_problem(garden, index, setup.accounts.back());
    auto& limits = setup.limits.emplace_back();
    for (int day = 0; day < question.days; ++day) {
      const year_month_day date{setup.first + days(day)};
      limits.push_back(limits_on(garden, bed, sky, date, day == 0 ? question.from : minutes{0}));
      const bool closed = !setup.accounts.back().empty() &&
                          setup.accounts.back().front().days_to_come[static_cast<std::size_t>(day)].ground !=
                              GroundState::open;
      if (closed) limits.back().push_back({WeekLimit::ground_closed, {}, {}});
      problem.water_may_run.push_back(open_slots(limits.back()));
      problem.discomfort.push_back(discomfort_on(garden, bed, sky, date));
    }
    if (one_at_a_time) problem.tap = 0;
    decide_first_day(setup.first_day, index, problem, limits);
    setup.problem.beds.push_back(std::move(problem));
  }
  return setup;
}

}  // namespace v1
}  // namespace noonleaf
