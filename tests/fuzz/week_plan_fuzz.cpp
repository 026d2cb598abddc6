// The planner: bytes make a small garden, its people, rules and weather. Whatever comes out keeps every
// limit, and a bed that suffers is said.
#include <algorithm>
#include <cmath>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/weather/merge.hpp"

#include "byte_stream.hpp"
#include "fuzz_target.hpp"

namespace {

using fuzz::ByteStream;
using fuzz::require;
using namespace std::chrono_literals;
using std::chrono::minutes;
using std::chrono::sys_days;

constexpr int history_days = 24, forecast_days = 10;
constexpr double library_longest_min = 120;  // where the garden says nothing
constexpr minutes to_move_the_hose{5}, to_open{5};

std::string clock_range(ByteStream& bytes) {
  const int begin = bytes.whole(0, 21), length = bytes.whole(1, 8);
  const auto two = [](int number) { return (number < 10 ? "0" : "") + std::to_string(number); };
  const int end = std::min(24, begin + length);
  return two(begin) + (bytes.chance(60) ? ":30-" : ":00-") + two(end) + ":00";
}

std::string weekly_hours(ByteStream& bytes) {
  static constexpr std::array<const char*, 6> days{"mon-fri", "daily",   "sat,sun",
                                                   "tue",     "wed-mon", "mon,wed,fri"};
  return std::string("\"") + bytes.one_of(days) + " " + clock_range(bytes) + "\"";
}

std::string site_and_people(ByteStream& bytes) {
  static constexpr std::array<const char*, 2> zones{"America/Chicago", "Etc/GMT+6"};
  std::string text =
      "[site]\nname = \"F\"\nlatitude_deg = 40\nlongitude_deg = -95\nelevation_m = 300\nzone = \"" +
      std::string(bytes.one_of(zones)) + "\"\n";
  const int people = bytes.whole(1, 2);
  for (int person = 0; person < people; ++person) {
    text += "[[caretaker]]\nid = \"p" + std::to_string(person) + "\"\nrole = \"r\"\nhours = [" +
            weekly_hours(bytes);
    if (bytes.chance(80)) text += ", " + weekly_hours(bytes);
    text += "]\n";
    if (bytes.chance(40)) text += "away = [\"2025-07-08/2025-07-10\"]\n";
  }
  return text;
}

std::string taps_and_sprinklers(ByteStream& bytes, int count) {
  static constexpr std::array<const char*, 4> kinds{"sprinkler", "drip", "soaker_hose", "hand"};
  const int taps = bytes.whole(1, 2);
  std::string text;
  for (int tap = 0; tap < taps; ++tap) {
    text += "[[tap]]\nid = \"t" + std::to_string(tap) + "\"\n";
    if (bytes.chance(100)) text += "flow_l_min = " + std::to_string(bytes.whole(12, 40)) + "\n";
    if (bytes.chance(20)) text += "reclaimed = true\n";
  }
  for (int index = 0; index < count; ++index) {
    text += "[[sprinkler]]\nid = \"s" + std::to_string(index) + "\"\ntap = \"t" +
            std::to_string(bytes.whole(0, taps - 1)) + "\"\nkind = \"" + bytes.one_of(kinds) +
            "\"\nflow_l_min = " + std::to_string(bytes.whole(2, 14)) +
            "\nwetted_area_m2 = " + std::to_string(bytes.whole(5, 60)) + "\n";
    if (bytes.chance(100)) text += "longest_run_min = " + std::to_string(bytes.whole(1, 200)) + "\n";
  }
  return text;
}

std::string bed(ByteStream& bytes, int index) {
  static constexpr std::array<const char*, 4> soils{"loam", "sand", "clay", "sandy_loam"};
  static constexpr std::array<const char*, 5> plantings{
      "crop = \"tomato\"\ntransplanted = 2025-05-10\n", "crop = \"carrot\"\nsown = 2025-07-04\n",
      "crop = \"lettuce\"\ntransplanted = 2025-06-15\n",
      "crop = \"pepper_sweet\"\ntransplanted = 2025-05-20\n", "crop = \"radish\"\nsown = 2025-06-10\n"};
  std::string text = "[[bed]]\nid = \"b" + std::to_string(index) +
                     "\"\narea_m2 = " + std::to_string(bytes.whole(1, 30)) + "\nsprinkler = \"s" +
                     std::to_string(index) + "\"\nsoil = \"" + bytes.one_of(soils) + "\"\n";
  if (bytes.chance(128)) text += "framed = true\n";
  if (bytes.chance(50)) text += "slope_pct = " + std::to_string(bytes.whole(0, 40)) + "\n";
  if (bytes.chance(50)) text += "intake_mm_h = " + std::to_string(bytes.whole(1, 60)) + "\n";
  if (bytes.chance(40)) text += "rooting_depth_cm = " + std::to_string(bytes.whole(10, 60)) + "\n";
  const int count = bytes.whole(0, 2);
  for (int planting = 0; planting < count; ++planting)
    text += "[[bed.planting]]\nshare_pct = " + std::to_string(100 / count) + "\n" + bytes.one_of(plantings);
  return text;
}

std::string rules(ByteStream& bytes) {
  std::string text = "[rules]\n";
  if (bytes.chance(60))
    text += "allowed_hours = [" + weekly_hours(bytes) + ", " + weekly_hours(bytes) + "]\n";
  if (bytes.chance(60)) text += "quiet_hours = [" + weekly_hours(bytes) + "]\n";
  if (bytes.chance(40)) text += "holidays = [\"2025-07-09 X\"]\n";
  if (bytes.chance(40)) text += "frost_lockout_c = " + std::to_string(bytes.whole(0, 15)) + "\n";
  if (bytes.chance(40)) text += "wind_limit_m_s = " + std::to_string(bytes.whole(1, 8)) + "\n";
  if (bytes.chance(60)) {
    static constexpr std::array<const char*, 3> dates{"any", "odd", "even"};
    static constexpr std::array<const char*, 3> exempt{"[]", "[\"drip\"]", "[\"hand\", \"drip\"]"};
    text += "[[rules.restriction]]\nname = \"R\"\nweekdays = [\"tue\", \"fri\"]\ndates = \"" +
            std::string(bytes.one_of(dates)) + "\"\nexempt = " + bytes.one_of(exempt) + "\n";
    if (bytes.chance(128)) text += "hours = [" + weekly_hours(bytes) + "]\n";
  }
  return text;
}

std::string garden_text(ByteStream& bytes) {
  std::string text = site_and_people(bytes);
  const int beds = bytes.whole(1, 3);
  text += taps_and_sprinklers(bytes, beds);
  for (int index = 0; index < beds; ++index) text += bed(bytes, index);
  return text + rules(bytes);
}

noonleaf::DailySeries weather(ByteStream& bytes, sys_days first) {
  noonleaf::DailySeries series;
  for (int day = 0; day < history_days + forecast_days; ++day) {
    const bool ahead = day >= history_days;
    noonleaf::DailyWeather weather;
    weather.date = first + std::chrono::days(day);
    const int kind = day < 8 ? 0 : bytes.whole(0, 15);  // weeks back the days are alike
    weather.t_min_c = kind == 1 ? -2 : 12 + kind % 5;
    weather.t_max_c = weather.t_min_c + 8 + kind;
    weather.rh_min_pct = 30;
    weather.rh_max_pct = 85;
    weather.wind_m_s = kind == 2 ? 9 : 2;
    weather.rs_mj_m2_d = 10 + kind;
    weather.rain_mm = kind == 3 || kind == 4 ? 12 : 0;
    if (kind == 5) weather.t_max_c = weather.t_min_c = noonleaf::missing;
    series.days.push_back(weather);
    series.origins.push_back(ahead ? noonleaf::DayOrigin::forecast : noonleaf::DayOrigin::measured);
    series.forecast.emplace_back();
    if (ahead) series.forecast.back().set();
  }
  return series;
}

/// Everything that a plan is held against.
struct Case {
  const noonleaf::Garden& garden;
  const noonleaf::Sky& sky;
  noonleaf::WeekQuestion question;
};

bool exempt(const noonleaf::WateringRestriction& restriction, noonleaf::WettingKind kind) {
  if (kind == noonleaf::WettingKind::hand) return restriction.exempt_hand;
  return kind != noonleaf::WettingKind::sprinkler && restriction.exempt_drip;
}

/// Minute by minute, since hours that meet are one.
template <class Allowed>
bool each_minute(const noonleaf::WeekCycle& cycle, const Allowed& allowed) {
  for (minutes at = cycle.begin; at < cycle.end; at += 1min)
    if (!allowed(at)) return false;
  return true;
}

void check_rules(const Case& that, const noonleaf::WeekRun& run, const noonleaf::WeekCycle& cycle) {
  const auto& rules = that.garden.rules;
  const noonleaf::WettingKind kind = that.garden.sprinklers[run.sprinkler].kind;
  const auto covered = [&](const std::vector<noonleaf::WeeklyHours>& hours) {
    return each_minute(cycle, [&](minutes at) { return noonleaf::covers(hours, run.date, at, at + 1min); });
  };
  require(rules.allowed_hours.empty() || covered(rules.allowed_hours), "a run lies in the allowed hours");
  const bool quiet = noonleaf::holiday_on(rules, run.date) == nullptr &&
                     noonleaf::overlaps(rules.quiet_hours, run.date, cycle.begin, cycle.end);
  require(!quiet, "a run lies in no quiet hour");
  for (const noonleaf::WateringRestriction& restriction : rules.restrictions) {
    if (exempt(restriction, kind) || !noonleaf::in_force(restriction, run.date, rules.drought_level))
      continue;
    require(noonleaf::allows_date(restriction, run.date), "a run lies on a date that is allowed");
    require(restriction.hours.empty() || covered(restriction.hours),
            "a run lies in the hours of the restriction");
  }
}

void check_people(const Case& that, const noonleaf::WeekRun& run, const noonleaf::WeekCycle& cycle) {
  require(run.opener < that.garden.caretakers.size() && run.closer < that.garden.caretakers.size(),
          "a run has its people");
  const auto there = [&](std::size_t person, minutes begin, minutes end) {
    return each_minute({begin, end}, [&](minutes at) {
      return noonleaf::on_site(that.garden, that.garden.caretakers[person], run.date, at, at + 1min);
    });
  };
  require(there(run.opener, cycle.begin, cycle.begin + to_open), "somebody is there to open");
  require(there(run.closer, std::max(cycle.end - to_open, cycle.begin), cycle.end),
          "somebody is there to close");
}

void check_run(const Case& that, const noonleaf::WeekRun& run) {
  const auto& sprinkler = that.garden.sprinklers[run.sprinkler];
  const sys_days day(run.date), first(that.question.first);
  require(day >= first && day < first + std::chrono::days(that.question.days), "a run lies in the plan");
  require(run.sprinkler == that.garden.beds[run.bed].sprinkler && run.tap == sprinkler.tap,
          "a run is its bed's");
  require(!run.cycles.empty(), "a run opens");
  minutes running{0}, last{0};
  for (const noonleaf::WeekCycle& cycle : run.cycles) {
    require(cycle.begin >= last && cycle.begin < cycle.end && cycle.end <= 24h,
            "cycles follow each other in the day");
    require(day > first || cycle.begin >= that.question.from, "no run lies in the past");
    check_rules(that, run, cycle);
    check_people(that, run, cycle);
    running += cycle.end - cycle.begin;
    last = cycle.end;
  }
  require(run.minutes == static_cast<double>(running.count()), "the minutes are those of the clock");
  const double longest =
      noonleaf::is_known(sprinkler.longest_run_min) ? sprinkler.longest_run_min : library_longest_min;
  require(run.minutes > 0 && run.minutes <= longest, "a run is no longer than allowed");
  require(run.net_depth_mm <= run.depletion_before_mm + 1e-9, "no more is asked for than is lacking");
  require(std::isfinite(run.depth_mm) && run.depth_mm > 0, "a run has its depth");
  const noonleaf::SkyDay* sky = that.sky.find(day);
  require(sky == nullptr || !(sky->weather.t_min_c <= that.garden.rules.frost_lockout_c),
          "no tap is opened in frost");
  const double flow = that.garden.taps[run.tap].flow_l_min;
  require(!(sprinkler.rate.flow_l_min > flow * 1.02), "a tap gives what its sprinkler takes");
}

void check_taps(const noonleaf::WeekPlan& plan) {
  for (std::size_t one = 0; one < plan.runs.size(); ++one) {
    require(plan.runs[one].number == static_cast<int>(one) + 1, "runs are numbered in their order");
    for (std::size_t other = one + 1; other < plan.runs.size(); ++other) {
      const auto &a = plan.runs[one], &b = plan.runs[other];
      if (a.tap != b.tap || a.date != b.date) continue;
      const bool apart = a.cycles.back().end + to_move_the_hose <= b.cycles.front().begin ||
                         b.cycles.back().end + to_move_the_hose <= a.cycles.front().begin;
      require(apart, "one run at a tap at a time");
    }
  }
}

void check_plan(const Case& that, const noonleaf::WeekPlan& plan) {
  for (const noonleaf::WeekRun& run : plan.runs) check_run(that, run);
  check_taps(plan);
  require(plan.beds.size() == that.garden.beds.size(), "every bed is in the plan");
  for (const noonleaf::WeekBed& bed : plan.beds) {
    const bool suffers = std::any_of(bed.days.begin(), bed.days.end(), [](const noonleaf::BedDay& day) {
      return day.lost_mm > 0.5 || day.risk == noonleaf::DayRisk::wilts;
    });
    const bool said = std::any_of(plan.misses.begin(), plan.misses.end(),
                                  [&](const noonleaf::WeekMiss& miss) { return miss.bed == bed.bed; });
    require(!suffers || said, "a bed that suffers is said");
  }
  require(plan.proof.bound_stress_l <= plan.proof.stress_l + 1e-9, "no plan is better than its bound");
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  ByteStream bytes(data, size);
  const noonleaf::WeekQuestion question{.first = 2025y / 7 / 7,
                                        .from = minutes(bytes.chance(60) ? bytes.whole(0, 1440) : 0),
                                        .days = bytes.whole(1, 5),
                                        .most_steps = 20};
  const std::string text = garden_text(bytes);
  fuzz::done(text, [&] {
    const noonleaf::Garden garden = noonleaf::parse_garden(text, "garden.toml");
    const sys_days first = sys_days(question.first) - std::chrono::days(history_days - 2);
    const noonleaf::Sky sky = noonleaf::sky_over(garden.site, weather(bytes, first));
    check_plan({garden, sky, question}, noonleaf::plan_week(garden, {}, sky, question));
  });
  return 0;
}
