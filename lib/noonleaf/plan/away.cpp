#include "noonleaf/plan/away.hpp"

#include <algorithm>
#include <span>
#include <utility>

#include "noonleaf/balance/mulch.hpp"
#include "noonleaf/balance/potential_transpiration.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/plan/bed_sky.hpp"
#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/day_in_year.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/limit_of_day.hpp"
#include "noonleaf/plan/unlogged_runs.hpp"
#include "noonleaf/plan/water_account.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/plan/week_limits.hpp"
#include "noonleaf/plan/week_setup.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr double hotter_factor = 1.25, cooler_factor = 0.75;
constexpr double wilting_share = 0.5;  // of the demand: below it a plant is taken to wilt
constexpr int longest_absence_d = 120, longest_before_d = 14;

void require(bool holds, std::string field, year_month_day date, std::string message, std::string fix) {
  if (holds) return;
  Problem problem;
  problem.field = std::move(field);
  problem.text = iso_date(date);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

void require_question(const Sky& sky, const AwayQuestion& question) {
  const sys_days today(question.today), from(question.from), to(question.to);
  require(!sky.empty() && sky.find(today) != nullptr, "date", question.today,
          "there is no weather for " + iso_date(question.today),
          "add newer measurements to the weather folder");
  require(from <= to, "to", question.to, "the absence ends before it begins", "check --from and --to");
  require(from >= today, "from", question.from, "this day has passed: today is " + iso_date(question.today),
          "give a first day from today on");
  require(from <= today + days(longest_before_d), "from", question.from,
          "the account reaches 14 days ahead, to " + iso_date(year_month_day{today + days(longest_before_d)}),
          "ask again when the days have come nearer");
  require((to - from).count() < longest_absence_d, "to", question.to, "this is more than 120 days",
          "ask for a shorter absence; no garden lasts so long without water");
}

/// One way the weather may go on.
struct SkyChoice {
  AwaySky kind = AwaySky::as_now;
  int years_back = 0;
};

std::vector<SkyChoice> skies_for(const Sky& sky, const AwayQuestion& question) {
  std::vector<SkyChoice> skies{{AwaySky::as_now, 0}, {AwaySky::hotter, 0}, {AwaySky::cooler, 0}};
  for (int back = 1; back <= 60; ++back) {
    const auto earlier = [back](year_month_day date) {
      return sys_days(day_in_year(date, date.year() - std::chrono::years(back)));
    };
    if (sky.find(earlier(question.from)) == nullptr) break;
    if (sky.find(earlier(question.to)) != nullptr) skies.push_back({AwaySky::past_year, back});
  }
  return skies;
}

/// The planting that is asked about, with the days up to the end of the absence.
struct AwayPlanting {
  std::size_t bed;
  PlantingAccount account;
  std::vector<PlantingNeed> needs;
};

/// The days to come under one of the skies; `sky` is the one over the bed, with its shade.
std::vector<BalanceDay> days_under(const PlantingAccount& account, const Sky& sky, const SkyChoice& choice) {
  std::vector<BalanceDay> result = account.days_to_come;
  for (BalanceDay& day : result) {
    if (sys_days(day.date) <= sky.last()) continue;  // the files know this day
    if (choice.kind == AwaySky::hotter) day.et0_mm_d *= hotter_factor;
    if (choice.kind == AwaySky::cooler) day.et0_mm_d *= cooler_factor;
    if (choice.kind != AwaySky::past_year) continue;
    const auto year = day.date.year() - std::chrono::years(choice.years_back);
    const SkyDay* past = sky.find(sys_days(day_in_year(day.date, year)));
    if (past != nullptr && is_known(past->et0_mm_d)) day.et0_mm_d = past->et0_mm_d;
  }
  return result;
}

/// What the root zone still takes on a morning, beside the water that it has had or is to have.
double room_mm(const BalanceState& state, const BalanceDay& day) {
  return std::max(0.0, state.dr_mm - day.irrigation_mm);
}

/// What is done besides the plan's water, which `days` hold already.
struct Care {
  std::optional<std::size_t> fill_on{};  ///< index of the day on whose morning the root zone is full
  bool mulched = false;
};

std::vector<BalanceDetail> carried(const AwayPlanting& planting, std::span<const BalanceDay> calendar,
                                   const Care& care) {
  const BalanceSettings& settings = planting.account.settings;
  const double mulched = mulch_evaporation_factor(MulchKind::organic, 1.0);
  std::vector<BalanceDetail> trace;
  BalanceState state = planting.account.dry_ahead.days.front().start;
  for (std::size_t day = 0; day < calendar.size(); ++day) {
    BalanceDay today = calendar[day];
    const double factor =
        is_known(today.evaporation_factor) ? today.evaporation_factor : settings.evaporation_factor;
    if (care.mulched) today.evaporation_factor = std::min(factor, mulched);
    if (care.fill_on && *care.fill_on == day) today.irrigation_mm += room_mm(state, today);
    trace.push_back(
        daily_step(state, today, planting.account.growth_to_come[day], planting.account.soil, settings));
    state = trace.back().end;
  }
  return trace;
}

DryDates dates_of(const AwayPlanting& planting, const std::vector<BalanceDetail>& trace, std::size_t from) {
  DryDates dates;
  for (std::size_t day = from; day < trace.size(); ++day) {
    const BalanceDetail& here = trace[day];
    if (planting.needs[day] == PlantingNeed::nothing || is_missing(here.end.dr_mm)) continue;
    const bool seeds = planting.needs[day] == PlantingNeed::seed_zone;
    const bool wilts = seeds ? here.end.de_mm > (here.rew_mm + here.tew_mm) / 2
                             : here.transpiration_mm < wilting_share * potential_transpiration_mm(here);
    if (is_beyond_limit(here, seeds) && !dates.leaves_comfort) dates.leaves_comfort = here.date;
    if (wilts && !dates.wilts) dates.wilts = here.date;
    if (!seeds) dates.lost_mm += lost_transpiration_mm(here);
    if (seeds) dates.lost_mm += std::max(0.0, here.end.de_mm - here.rew_mm);
  }
  return dates;
}

void widen(std::optional<year_month_day>& earliest, std::optional<year_month_day>& latest,
           const std::optional<year_month_day>& found, bool all_skies) {
  if (found && (!earliest || *found < *earliest)) earliest = found;
  if (found && (!latest || *found > *latest)) latest = found;
  if (!all_skies) latest.reset();  // under some sky it lasts: there is no latest day
}

class AwayMaker {
 public:
  AwayMaker(const Garden& garden, const Journal& journal, const Sky& sky, const AwayQuestion& question)
      : garden_(garden), sky_(sky), question_(question), skies_(skies_for(sky, question)) {
    from_ = static_cast<std::size_t>((sys_days(question.from) - sys_days(question.today)).count());
    const auto n_days =
        static_cast<std::size_t>((sys_days(question.to) - sys_days(question.today)).count()) + 1;
    const UnloggedRuns unlogged = unlogged_runs(garden, journal, sky, question.today);
    taken_as_done_ = static_cast<int>(unlogged.runs.size());
    for (std::size_t bed = 0; bed < garden.beds.size(); ++bed) {
      bed_skies_.push_back(sky_over_bed(garden.site, garden.beds[bed], sky));
      auto& plantings = plantings_.emplace_back();
      for (PlantingAccount& account :
           accounts_of_bed(garden, bed, unlogged.if_done, sky, question.today, n_days)) {
        std::vector<PlantingNeed> needs = needs_ahead(garden.beds[bed].plantings[account.planting], account);
        plantings.push_back({bed, std::move(account), std::move(needs)});
      }
    }
    water_until_leaving(journal);
    if (question.members > 0) tried_ = tried(unlogged.if_done, n_days);
  }

  Away away() {
    Away away;
    away.question = question_;
    away.taken_as_done = taken_as_done_;
    away.known_to = year_month_day{sky_.last()};
    away.past_years = static_cast<int>(skies_.size()) - 3;
    away.best_visit = best_visit();
    away.likelihood = tried_;
    for (std::size_t bed = 0; bed < plantings_.size(); ++bed)
      away.beds.push_back(away_bed(bed, away.best_visit));
    for (const SkyDay& day : sky_.days) {
      const sys_days date(day.weather.date);
      away.rain_forecast = away.rain_forecast || (date >= sys_days(question_.today) &&
                                                  date <= sys_days(question_.to) && day.weather.rain_mm > 0);
    }
    return away;
  }

 private:
  /// The plan's runs up to the day of leaving go into the days of every sky.
  void water_until_leaving(const Journal& journal) {
    if (from_ == 0) return;
    const WeekPlan plan =
        plan_week(garden_, journal, sky_, {.first = question_.today, .days = static_cast<int>(from_)});
    for (const WeekRun& run : plan.runs) {
      const auto day = static_cast<std::size_t>((sys_days(run.date) - sys_days(question_.today)).count());
      const bool evening = run.cycles.front().begin >= evening_begins;
      planned_.push_back({run.bed, day, run.depth_mm, evening});
      for (AwayPlanting& planting : plantings_[run.bed]) {
        BalanceDay& here = planting.account.days_to_come[day];
        (evening ? here.evening_irrigation_mm : here.irrigation_mm) += run.depth_mm;
      }
    }
  }

  Likelihood tried(const Journal& journal, std::size_t n_days) const {
    return likelihood_of(garden_, journal, sky_,
                         {.date = question_.today,
                          .n_days = n_days,
                          .options = {.members = question_.members},
                          .runs = {},
                          .planned = planned_,
                          .count_from = from_});
  }

  DryDates under(const AwayPlanting& planting, const SkyChoice& sky, const Care& care) const {
    const auto calendar = days_under(planting.account, bed_skies_[planting.bed], sky);
    return dates_of(planting, carried(planting, calendar, care), from_);
  }

  /// The planting that passes its limit first.
  std::optional<std::size_t> first_dry(std::size_t bed) const {
    std::optional<std::size_t> found;
    std::pair<year_month_day, double> worst{};
    for (std::size_t index = 0; index < plantings_[bed].size(); ++index) {
      const AwayPlanting& planting = plantings_[bed][index];
      const bool grows =
          std::any_of(planting.needs.begin() + static_cast<std::ptrdiff_t>(from_), planting.needs.end(),
                      [](PlantingNeed need) { return need != PlantingNeed::nothing; });
      if (!grows) continue;
      const DryDates dates = under(planting, skies_.front(), {});
      const std::pair here{dates.leaves_comfort.value_or(year_month_day{sys_days(question_.to) + days(1)}),
                           -dates.lost_mm};
      if (!found || here < worst) {
        found = index;
        worst = here;
      }
    }
    return found;
  }

  std::optional<year_month_day> best_visit() const {
    const auto loss_with = [&](std::optional<std::size_t> day) {
      double loss_l = 0;
      for (std::size_t bed = 0; bed < plantings_.size(); ++bed) {
        const auto watered = day && may_water(bed, *day) ? day : std::nullopt;
        for (const AwayPlanting& planting : plantings_[bed]) {
          const BedPlanting& grown = garden_.beds[bed].plantings[planting.account.planting];
          loss_l += under(planting, skies_.front(), {watered, false}).lost_mm * garden_.beds[bed].area_m2 *
                    grown.share_frac;
        }
      }
      return loss_l;
    };
    double least = loss_with(std::nullopt);
    std::optional<std::size_t> best;
    const auto last = static_cast<std::size_t>((sys_days(question_.to) - sys_days(question_.today)).count());
    for (std::size_t day = from_; day <= last; ++day) {
      const double loss = loss_with(day);
      if (loss >= least) continue;
      least = loss;
      best = day;
    }
    if (!best) return std::nullopt;
    return year_month_day{sys_days(question_.today) + days(static_cast<int>(*best))};
  }

  /// Whether the rules leave the bed any hour of a day. Its wind is not known yet; who comes brings the time.
  bool may_water(std::size_t bed, std::size_t day) const {
    const year_month_day date{sys_days(question_.today) + days(static_cast<int>(day))};
    DaySlots open = DaySlots{}.set();
    for (const LimitSlots& limit :
         limits_on(garden_, garden_.beds[bed], sky_, date, std::chrono::minutes{0})) {
      if (limit.limit != WeekLimit::wind) open &= limit.open;
    }
    return open.any();
  }

  AwayOutlook outlook(const AwayPlanting& planting, AwayHelp help, const Care& care) const {
    AwayOutlook result;
    result.help = help;
    bool all_beyond = true, all_wilt = true;
    for (const SkyChoice& sky : skies_) {
      const DryDates dates = under(planting, sky, care);
      if (sky.kind == AwaySky::as_now) result.middle = dates;
      ++result.skies;
      result.skies_beyond += dates.leaves_comfort ? 1 : 0;
      result.skies_wilting += dates.wilts ? 1 : 0;
      all_beyond = all_beyond && dates.leaves_comfort;
      all_wilt = all_wilt && dates.wilts;
      widen(result.earliest_limit, result.latest_limit, dates.leaves_comfort, all_beyond);
      widen(result.earliest_wilt, result.latest_wilt, dates.wilts, all_wilt);
    }
    return result;
  }

  AwayBed away_bed(std::size_t bed, const std::optional<year_month_day>& visit) const {
    AwayBed result;
    result.bed = bed;
    const auto index = first_dry(bed);
    result.nothing_grows = !index;
    if (!index) return result;
    const AwayPlanting& planting = plantings_[bed][*index];
    result.planting = planting.account.planting;
    result.seedbed = planting.needs[from_] == PlantingNeed::seed_zone;
    result.outlooks.push_back(outlook(planting, AwayHelp::nothing, {}));
    result.outlooks.push_back(outlook(planting, AwayHelp::deep_watering, {from_, false}));
    if (!result.seedbed) result.outlooks.push_back(outlook(planting, AwayHelp::mulch, {std::nullopt, true}));
    if (visit) {
      const auto day = static_cast<std::size_t>((sys_days(*visit) - sys_days(question_.today)).count());
      const auto watered = may_water(bed, day) ? std::optional(day) : std::nullopt;
      result.outlooks.push_back(outlook(planting, AwayHelp::one_visit, {watered, false}));
    }
    const auto calendar = days_under(planting.account, bed_skies_[bed], skies_.front());
    const auto dry = carried(planting, calendar, {});
    result.deep_net_mm = room_mm(dry[from_].start, calendar[from_]);
    if (visit) {
      const auto day = static_cast<std::size_t>((sys_days(*visit) - sys_days(question_.today)).count());
      if (may_water(bed, day)) result.visit_net_mm = room_mm(dry[day].start, calendar[day]);
    }
    std::vector<BalanceDay> rainy = planting.account.days_to_come;
    for (BalanceDay& day : rainy) {
      const SkyDay* known = sky_.find(sys_days(day.date));
      if (known != nullptr && known->weather.rain_mm > day.rain_mm) day.rain_mm = known->weather.rain_mm;
    }
    result.with_rain = dates_of(planting, carried(planting, rainy, {}), from_);
    return result;
  }

  const Garden& garden_;
  const Sky& sky_;
  const AwayQuestion& question_;
  std::vector<SkyChoice> skies_;
  std::vector<Sky> bed_skies_{};
  std::vector<std::vector<AwayPlanting>> plantings_{};
  std::vector<PlannedWater> planned_{};
  std::optional<Likelihood> tried_{};
  int taken_as_done_ = 0;
  std::size_t from_ = 0;
};

}  // namespace

Away plan_away(const Garden& garden, const Journal& journal, const Sky& sky, const AwayQuestion& question) {
  require_question(sky, question);
  return AwayMaker(garden, journal, sky, question).away();
}

}  // namespace v1
}  // namespace noonleaf
