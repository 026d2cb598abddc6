#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/report/week_view.hpp"

// Plans made by hand, so that what is printed does not move when the planner learns something.

namespace invented {

using noonleaf::BedDay;
using noonleaf::DayRisk;
using noonleaf::Garden;
using noonleaf::WeekBed;
using noonleaf::WeekPlan;
using noonleaf::WeekRun;
using std::chrono::minutes;
using std::chrono::year_month_day;
using namespace std::chrono_literals;

/// What a garden of these tests differs in.
struct GardenKind {
  int beds = 5;
  std::string site = "Wren Hill School garden";
  std::string zone = "America/Los_Angeles", units = "us";
  std::string first_bed_name = "Tomatoes", first_bed_id = "a";
  bool reclaimed = false;
};

inline std::string bed_text(const GardenKind& kind, int index) {
  const bool first = index == 0;
  const std::string id = first ? kind.first_bed_id : std::string(1, static_cast<char>('a' + index));
  const std::string name = first ? kind.first_bed_name : "Bed number " + std::to_string(index + 1);
  const double x_ft = 4 + 18 * (index % 3), y_ft = 4 + 8 * (index / 3);
  return "[[bed]]\nid = '''" + id + "'''\nname = '''" + name + "'''\narea_ft2 = 64\nsprinkler = \"" +
         (index % 2 == 0 ? "fan" : "soaker") +
         "\"\nsoil = \"loam\"\nplace = { x_ft = " + noonleaf::number_text(x_ft) +
         ", y_ft = " + noonleaf::number_text(y_ft) +
         ", width_ft = 14, length_ft = 4 }\n[[bed.planting]]\ncrop = \"" +
         (index % 2 == 0 ? "squash_zucchini" : "tomato") + "\"\nsown = 2025-05-20\n\n";
}

inline Garden garden(const GardenKind& kind) {
  std::string text = "[site]\nname = '''" + kind.site +
                     "'''\nlatitude_deg = 46.07\nlongitude_deg = -118.33\nelevation_ft = 950\nzone = \"" +
                     kind.zone + "\"\nunits = \"" + kind.units + "\"\n";
  text += R"([[caretaker]]
id = "educator"
role = "garden educator"
role_es = "encargada del huerto"
hours = ["mon,wed 07:30-10:00"]
[[caretaker]]
id = "custodian"
role = "day custodian"
role_es = "conserje de día"
hours = ["daily 05:00-14:30"]
[[caretaker]]
id = "evening"
role = "evening custodian"
role_es = "conserje de la tarde"
hours = ["daily 14:00-22:30"]
[rules]
[[rules.restriction]]
name = "city stage 2"
weekdays = ["mon-thu"]
[[tap]]
id = "shed"
name = "tap by the tool shed"
name_es = "llave junto al cobertizo"
flow_gal_min = 6
place = { x_ft = 0, y_ft = 0 }
)";
  if (kind.reclaimed) text += "reclaimed = true\n";
  text += R"([[sprinkler]]
id = "fan"
name = "fan spray"
name_es = "aspersor de abanico"
tap = "shed"
flow_gal_min = 3
wetted_area_ft2 = 150
off_target_pct = 15
[[sprinkler]]
id = "soaker"
name = "soaker hose"
name_es = "manguera exudante"
kind = "soaker_hose"
tap = "shed"
[[landmark]]
name = "gate"
name_es = "puerta"
place = { x_ft = 30, y_ft = -3 }
)";
  for (int index = 0; index < kind.beds; ++index) text += bed_text(kind, index);
  return noonleaf::parse_garden(text, "garden.toml");
}

/// One run with its people; the day counts from the first of the plan.
struct RunKind {
  int day = 0, bed = 0;
  minutes begin{6h};
  int length_min = 25;
  std::size_t opener = 1, closer = 1;
  std::optional<std::size_t> backup = 0;
  int pause_min = 0;  ///< 0 = in one go
};

inline void add_run(WeekPlan& plan, const Garden& garden, const RunKind& kind) {
  WeekRun run;
  run.number = static_cast<int>(plan.runs.size()) + 1;
  run.date = year_month_day(std::chrono::sys_days(plan.first) + std::chrono::days(kind.day));
  run.bed = static_cast<std::size_t>(kind.bed);
  run.sprinkler = garden.beds[run.bed].sprinkler;
  run.tap = garden.sprinklers[run.sprinkler].tap;
  run.opener = kind.opener;
  run.closer = kind.closer;
  run.backup = kind.backup;
  const minutes length(kind.length_min);
  if (kind.pause_min == 0) {
    run.cycles = {{kind.begin, kind.begin + length}};
  } else {
    const minutes second = kind.begin + length / 2 + minutes(kind.pause_min);
    run.cycles = {{kind.begin, kind.begin + length / 2}, {second, second + length / 2}};
  }
  run.minutes = kind.length_min;
  run.net_depth_mm = 0.5 * kind.length_min;
  run.depth_mm = 0.6 * kind.length_min;
  run.skip_rain_mm = run.net_depth_mm;
  run.volume_l = 11.4 * kind.length_min;
  run.unclosed = {.until_date = run.date,
                  .until = minutes(14h),
                  .finder = 2,
                  .extra_hours = 7.5,
                  .extra_l = 40.0 * kind.length_min,
                  .extra_depth_mm = 50,
                  .percolation_mm = 40};
  plan.runs.push_back(run);
}

/// A week in which each bed dries by 4 mm a day and gets what its runs bring.
inline void add_beds(WeekPlan& plan, const Garden& garden, int days) {
  for (std::size_t bed = 0; bed < garden.beds.size(); ++bed) {
    WeekBed week{.bed = bed,
                 .lasts_to = year_month_day(std::chrono::sys_days(plan.first) + std::chrono::days(2))};
    double depletion_mm = 8 + static_cast<double>(bed);
    for (int day = 0; day < days; ++day) {
      BedDay each{.date = year_month_day(std::chrono::sys_days(plan.first) + std::chrono::days(day))};
      for (const WeekRun& run : plan.runs) {
        if (run.bed == bed && run.date == each.date) each.irrigation_mm += run.depth_mm;
      }
      each.depletion_dawn_mm = depletion_mm;
      depletion_mm = std::max(0.0, depletion_mm - each.irrigation_mm) + 4;
      each.depletion_close_mm = depletion_mm;
      each.raw_mm = 22;
      each.taw_mm = 44;
      each.rain_mm = day == 3 ? 5 : 0;
      each.seedbed = bed == 2;
      each.risk = depletion_mm > 22 ? DayRisk::dry : day == 1 ? DayRisk::droops : DayRisk::comfortable;
      each.risk_dry = DayRisk::dry;
      week.days.push_back(each);
    }
    plan.beds.push_back(week);
  }
}

inline WeekPlan plan(const Garden& garden, const std::vector<RunKind>& runs, int days = 7,
                     year_month_day first = 2025y / std::chrono::July / 16) {
  WeekPlan plan{.first = first,
                .last = year_month_day(std::chrono::sys_days(first) + std::chrono::days(days - 1))};
  for (const RunKind& run : runs) add_run(plan, garden, run);
  add_beds(plan, garden, days);
  for (int day = 0; day < days; ++day) {
    noonleaf::SkyDay sky;
    sky.weather.date = plan.beds.front().days[static_cast<std::size_t>(day)].date;
    sky.estimate.t_max_c = 36;
    sky.estimate.rh_min_pct = 30;
    plan.sky.push_back(sky);
  }
  plan.skip = {.rain_mm = 4, .wind_m_s = 4, .frost_c = 0, .forecast_rain = true};
  plan.estimates = {
      {.kind = noonleaf::EstimateKind::weather,
       .fact = noonleaf::NotMeasured::sun_from_temperature,
       .days = 7,
       .of_days = 7},
      {.kind = noonleaf::EstimateKind::weather,
       .fact = noonleaf::NotMeasured::forecast_weather,
       .days = 6,
       .of_days = 7},
      {.kind = noonleaf::EstimateKind::sprinkler,
       .fact = noonleaf::NotMeasured::rate_guessed,
       .sprinkler = "soaker"},
      {.kind = noonleaf::EstimateKind::soil_start, .fact = noonleaf::NotMeasured::soil_full, .date = first}};
  return plan;
}

/// A usual week of five beds: six runs on four days, one of them in two parts, one opened by one and closed
/// by another.
inline std::vector<RunKind> usual_runs() {
  return {{.day = 0, .bed = 0, .begin = 6h + 5min, .length_min = 40},
          {.day = 0, .bed = 2, .begin = 7h + 35min, .length_min = 10},
          {.day = 2, .bed = 1, .begin = 6h, .length_min = 35, .backup = {}, .pause_min = 20},
          {.day = 3, .bed = 3, .begin = 13h + 50min, .length_min = 25, .opener = 1, .closer = 2, .backup = 1},
          {.day = 5, .bed = 0, .begin = 7h + 30min, .length_min = 40, .backup = 0},
          {.day = 5, .bed = 4, .begin = 8h + 30min, .length_min = 30, .backup = 0}};
}

/// Twelve beds, five runs each in ten days.
inline std::vector<RunKind> many_runs() {
  std::vector<RunKind> runs;
  for (int day = 0; day < 10; ++day) {
    for (int slot = 0; slot < 6; ++slot) {
      runs.push_back({.day = day,
                      .bed = (6 * day + slot) % 12,
                      .begin = minutes(6 * 60 + 40 * slot),
                      .length_min = 30,
                      .opener = static_cast<std::size_t>(slot < 3 ? 1 : 0)});
    }
  }
  return runs;
}

/// What 1,000 members might say: bed b short in 3 of 10 on the second day, in all and wilting in 4 of 10 on
/// the last; the others in hardly any. Bed c is seed and was not tried; the forecast ends on the fifth day.
inline noonleaf::Likelihood likelihood(const WeekPlan& plan) {
  noonleaf::Likelihood answer{.members = 1000, .seed = 1, .past_years = 4};
  answer.behind_forecast = noonleaf::MemberDayFrom::past_years;
  answer.forecast_to = plan.beds.front().days.at(4).date;
  for (const WeekBed& week : plan.beds) {
    noonleaf::BedLikelihood& bed = answer.beds.emplace_back();
    bed.bed = week.bed;
    if (week.days.front().seedbed) continue;
    noonleaf::PlantingLikelihood planting;
    for (const BedDay& day : week.days) {
      noonleaf::DayLikelihood said{.date = day.date, .beyond_frac = 0.02, .left_frac = 0.02};
      said.droop_frac = said.stress_frac = said.wilt_frac = said.wilted_frac = 0;
      said.half_frac = said.halved_frac = 0;
      said.dr10_mm = day.depletion_close_mm / 2;
      said.dr50_mm = day.depletion_close_mm;
      said.dr90_mm = day.depletion_close_mm * 1.5;
      planting.days.push_back(said);
    }
    if (week.bed == 1) {
      planting.days[1].beyond_frac = 0.31;
      planting.days.back().beyond_frac = 1;
      planting.days.back().wilt_frac = 0.44;
    }
    planting.low_quarter_days = planting.days;
    bed.plantings.push_back(planting);
  }
  return answer;
}

/// An alert of each way to be told: sure, without a share, what helps against heat, and a run without a time,
/// which the plan tells itself.
inline std::vector<noonleaf::Alert> alerts() {
  using noonleaf::AlertKind;
  return {{.kind = AlertKind::stress,
           .bed = 1,
           .sentence = "Tomato in bed B: short of water; leaves hang from about 8:00 am to 7:50 pm",
           .action = "do not skip its run at 6:00 am",
           .likelihood = 0.62},
          {.kind = AlertKind::look_at_the_roots,
           .bed = 3,
           .sentence = "Tomato in bed D: hung at dawn over moist soil",
           .action = "do not water"},
          {.kind = AlertKind::crop_heat,
           .bed = 0,
           .sentence = "Squash in bed A: the five days from today are hot enough for blossom drop",
           .action = "Shade cloth in the afternoon."},
          {.kind = AlertKind::blocked_run, .bed = 4, .sentence = "bed E has no run", .action = "call"}};
}

inline noonleaf::LocalTime made() { return {2025y / std::chrono::July / 16, minutes(5h + 40min)}; }

}  // namespace invented
