// Every call of the C interface. Handles are shared by all threads, as the interface allows.
#include <limits>
#include <string>
#include <vector>

#include "noonleaf/noonleaf.h"

#include "door.hpp"

namespace {

template <class Struct>
Struct struct_of(noonleaf_status (*)(Struct*));

/// A struct filled by its function of defaults; the function is named, not pointed to, so that every_door.sh
/// sees the call.
template <auto defaults>
auto with_defaults() {
  decltype(struct_of(defaults)) value{};
  value.size = sizeof value;
  defaults(&value);
  return value;
}

std::string problems_text(noonleaf_problems* problems) {
  if (problems == nullptr) return "none";
  char* text = nullptr;
  noonleaf_problems_text(problems, &text);
  noonleaf_problem first{};
  first.size = sizeof first;
  noonleaf_problems_at(problems, 0, &first);
  std::string all = std::string(text) + first.field + std::to_string(noonleaf_problems_count(problems));
  noonleaf_text_free(text);
  noonleaf_problems_free(problems);
  return all;
}

/// Handles of all threads, made by whichever comes first and freed when the program ends.
struct Handles {
  noonleaf_site* site = nullptr;
  noonleaf_hourly_site* hourly = nullptr;
  noonleaf_garden* garden = nullptr;
  Handles() {
    auto location = with_defaults<noonleaf_location_defaults>();
    location.latitude_deg = 46.07;
    location.elevation_m = 290;
    noonleaf_site_make(&location, &site, nullptr);
    auto place = with_defaults<noonleaf_hourly_place_defaults>();
    place.latitude_deg = 46.07;
    place.longitude_deg = -118.33;
    place.elevation_m = 290;
    noonleaf_hourly_site_make(&place, &hourly, nullptr);
    noonleaf_garden_read(NOONLEAF_SOURCE_DIR "/weather_samples/demo", &garden, nullptr);
  }
  Handles(const Handles&) = delete;
  Handles& operator=(const Handles&) = delete;
  ~Handles() {
    noonleaf_site_free(site);
    noonleaf_hourly_site_free(hourly);
    noonleaf_garden_free(garden);
  }
};

const Handles& handles() {
  static const Handles shared;
  return shared;
}

std::string c_reference() {
  constexpr std::size_t rows = 700;
  std::vector<double> hot(rows, 31), cool(rows, 12), air(rows, 1.2), radiation(rows, 22), wind(rows, 3),
      et0(rows);
  hot[5] = 200;
  const auto of = [](const std::vector<double>& values) {
    return noonleaf_column{values.data(), values.size(), 1};
  };
  auto days = with_defaults<noonleaf_daily_columns_defaults>();
  days.first_day = {2024, 3, 1};
  days.t_max_c = of(hot);
  days.t_min_c = of(cool);
  days.ea_kpa = of(air);
  days.rs_mj_m2_d = of(radiation);
  days.u2_m_s = of(wind);
  days.et0_mm_d = {et0.data(), rows, 1};
  noonleaf_problems* problems = nullptr;
  Print out;
  out << noonleaf_daily_et0(handles().site, &days, &problems) << et0 << problems_text(problems);
  auto hours = with_defaults<noonleaf_hourly_columns_defaults>();
  std::vector<double> sun(rows, 1.5);
  hours.t_c = of(cool);
  hours.ea_kpa = of(air);
  hours.rs_mj_m2_h = of(sun);
  hours.u2_m_s = of(wind);
  hours.et0_mm_h = {et0.data(), rows, 1};
  out << noonleaf_hourly_et0(handles().hourly, &hours, nullptr) << et0;
  out << noonleaf_version() << noonleaf_interface_number();
  return out.text();
}

std::string c_balance() {
  constexpr std::size_t rows = 90;
  std::vector<double> et0(rows, 6), dr(rows), ks(rows);
  auto soil = with_defaults<noonleaf_soil_defaults>();
  Print out;
  out << noonleaf_soil_of_texture("loam", &soil, nullptr);
  auto wetness = with_defaults<noonleaf_wetness_defaults>();
  wetness.depleted_frac = 0.2;
  wetness.root_depth_m = 0.25;
  wetness.profile_depth_m = 1.5;
  auto ground = with_defaults<noonleaf_ground_defaults>();
  out << noonleaf_ground_of(&soil, &wetness, &ground, nullptr);
  auto planting = with_defaults<noonleaf_planting_defaults>();
  planting.crop = "tomato";
  planting.start = {2024, 4, 15};
  const auto settings = with_defaults<noonleaf_balance_settings_defaults>();
  auto days = with_defaults<noonleaf_balance_days_defaults>();
  days.first_day = {2024, 5, 1};
  days.et0_mm_d = {et0.data(), rows, 1};
  days.dr_mm = {dr.data(), rows, 1};
  days.ks = {ks.data(), rows, 1};
  noonleaf_balance_totals totals{};
  totals.size = sizeof totals;
  out << noonleaf_balance(&soil, &planting, &settings, &days, &ground, &totals, nullptr) << dr << ks
      << ground.dr_mm << totals.stress_mm;
  noonleaf_problems* problems = nullptr;
  out << noonleaf_soil_of_texture("lome", &soil, &problems) << problems_text(problems);
  return out.text();
}

std::string c_run_and_wilt() {
  auto request = with_defaults<noonleaf_run_request_defaults>();
  request.net_depth_mm = 12;
  request.rate_mm_h = 14;
  noonleaf_run run{};
  run.size = sizeof run;
  noonleaf_depth depth{};
  depth.size = sizeof depth;
  Print out;
  out << noonleaf_run_time(&request, &run, nullptr) << run.minutes;
  out << noonleaf_depth_of_minutes(&request, 30, &depth, nullptr) << depth.mean_mm;
  auto wilt = with_defaults<noonleaf_wilt_request_defaults>();
  wilt.date = {2024, 7, 10};
  wilt.utc_offset_h = -7;
  wilt.latitude_deg = 46.07;
  wilt.longitude_deg = -118.33;
  wilt.elevation_m = 290;
  wilt.t_max_c = 38;
  wilt.t_min_c = 20;
  wilt.ea_kpa = 1.4;
  wilt.rs_mj_m2_d = 27;
  wilt.u2_m_s = 3;
  wilt.transpiration_mm_d = 8;
  wilt.crop = "tomato";
  wilt.taw_mm = 80;
  wilt.raw_mm = 32;
  wilt.dr_mm = 40;
  wilt.field_capacity_m3_m3 = 0.25;
  wilt.wilting_point_m3_m3 = 0.12;
  noonleaf_wilt_day day{};
  day.size = sizeof day;
  out << noonleaf_wilt(&wilt, &day, nullptr) << day.verdict << day.droop_hours << day.unmet_frac;
  return out.text();
}

std::string c_garden() {
  auto moment = with_defaults<noonleaf_moment_defaults>();
  moment.date = {2025, 7, 16};
  auto week = with_defaults<noonleaf_week_request_defaults>();
  week.made_date = moment.date;
  week.days = 4;
  char* json = nullptr;
  Print out;
  out << noonleaf_today_json(handles().garden, &moment, &json, nullptr) << json;
  noonleaf_text_free(json);
  out << noonleaf_week_json(handles().garden, &week, &json, nullptr) << json;
  noonleaf_text_free(json);
  noonleaf_garden* none = nullptr;
  noonleaf_problems* problems = nullptr;
  out << noonleaf_garden_read("no/such/garden", &none, &problems) << problems_text(problems);
  return out.text();
}

}  // namespace

std::vector<Door> c_doors() {
  return {{"C: reference", c_reference},
          {"C: balance", c_balance},
          {"C: run time and wilt", c_run_and_wilt},
          {"C: garden", c_garden}};
}
