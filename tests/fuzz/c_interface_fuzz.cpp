// The C interface as a careless program calls it: sizes, strides, choices and dates that cannot be, null
// pointers, numbers that are none. Memory is exactly as long as the call may touch, so that a step too far is
// found.
#include <array>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "noonleaf/noonleaf.h"

#include "byte_stream.hpp"
#include "fuzz_target.hpp"

namespace {

using fuzz::ByteStream;
using fuzz::require;

/// What a call said, looked at and freed.
class Problems {
 public:
  noonleaf_problems** out() { return &problems_; }
  void check(noonleaf_status status) {
    require(status >= noonleaf_done && status <= noonleaf_fault, "a status is one");
    require(status != noonleaf_fault, "the library finds no fault in itself");
    const std::size_t count = noonleaf_problems_count(problems_);
    require(status == noonleaf_no_memory || (status == noonleaf_done) == (count == 0), "a refusal says why");
    for (std::size_t index = 0; index < count; ++index) {
      noonleaf_problem problem;
      problem.size = sizeof problem;
      require(noonleaf_problems_at(problems_, index, &problem) == noonleaf_done, "a problem can be read");
      require(problem.message != nullptr && problem.field != nullptr && problem.fix != nullptr,
              "texts are there");
      if (index < 1000)
        require(std::strlen(problem.message) > 0 && std::strlen(problem.fix) > 0, "texts say something");
    }
    char* text = nullptr;
    if (count > 0) require(noonleaf_problems_text(problems_, &text) == noonleaf_done, "problems have a text");
    noonleaf_text_free(text);
    noonleaf_problems_free(problems_);
    problems_ = nullptr;
  }

 private:
  noonleaf_problems* problems_ = nullptr;
};

/// The columns of one call, each in memory of its own that ends where the call may no longer go.
class Columns {
 public:
  Columns(ByteStream& bytes, std::size_t rows) : bytes_(bytes), rows_(rows) {}

  noonleaf_column values(double low, double high) {
    if (bytes_.chance(30)) return {nullptr, bytes_.bits(1), 1};
    const auto [stride, memory, first] = room(true);
    for (std::size_t index = 0; index < memory.size(); ++index) memory[index] = bytes_.number(low, high);
    return {first, count(), stride};
  }
  noonleaf_result_column results() {
    if (bytes_.chance(30)) return {nullptr, count(), 1};
    const auto [stride, memory, first] = room(false);
    return {first, count(), stride};
  }
  noonleaf_day_column days() {
    if (bytes_.chance(128)) return {nullptr, 0, 1};
    auto& memory = day_memory_.emplace_back(new std::int64_t[rows_ + 1]);
    for (std::size_t index = 0; index < rows_; ++index)
      memory[index] =
          bytes_.chance(230) ? bytes_.whole(-30'000, 30'000) : static_cast<std::int64_t>(bytes_.bits(8));
    return {memory.get(), count(), 1};
  }
  std::size_t rows() const { return rows_; }

 private:
  struct Room {
    std::ptrdiff_t stride;
    std::span<double> memory;
    double* first;
  };
  /// Now and then a count that does not fit, which has to be refused before anything is read.
  std::size_t count() { return bytes_.chance(8) ? static_cast<std::size_t>(bytes_.bits(8)) : rows_; }
  Room room(bool may_repeat) {
    std::ptrdiff_t stride = bytes_.chance(100) ? bytes_.whole(-3, 3) : 1;
    if (stride == 0 && !may_repeat && !bytes_.chance(20)) stride = 2;
    const std::size_t step = static_cast<std::size_t>(std::abs(stride));
    const std::size_t size = rows_ == 0 ? 0 : (rows_ - 1) * step + 1;
    auto& memory = memory_.emplace_back(new double[size]());
    double* first = stride < 0 && rows_ > 0 ? memory.get() + (rows_ - 1) * step : memory.get();
    return {stride, {memory.get(), size}, first};
  }

  ByteStream& bytes_;
  std::size_t rows_;
  std::vector<std::unique_ptr<double[]>> memory_{};
  std::vector<std::unique_ptr<std::int64_t[]>> day_memory_{};
};

/// The struct's size as a rule; else one that may be an older version's, or cannot be. The memory behind the
/// pointer always has the whole struct.
template <class Struct>
std::size_t size_of(ByteStream& bytes) {
  if (bytes.chance(230)) return sizeof(Struct);
  return bytes.chance(128) ? bytes.byte() : static_cast<std::size_t>(bytes.bits(8));
}

template <class Struct>
Struct with_defaults(ByteStream& bytes, noonleaf_status (*defaults)(Struct*)) {
  Struct value;
  std::memset(static_cast<void*>(&value), 0, sizeof value);
  value.size = sizeof value;
  require(defaults(&value) == noonleaf_done, "defaults can be had");
  value.size = size_of<Struct>(bytes);
  return value;
}

template <class Struct>
Struct blank(ByteStream& bytes) {
  Struct value;
  std::memset(static_cast<void*>(&value), 0, sizeof value);
  value.size = size_of<Struct>(bytes);
  return value;
}

noonleaf_date date(ByteStream& bytes) {
  if (bytes.chance(20)) return {};
  if (bytes.chance(20))
    return {static_cast<std::int32_t>(bytes.bits(4)), static_cast<std::int16_t>(bytes.bits(2)),
            static_cast<std::int16_t>(bytes.bits(2))};
  return {bytes.whole(1990, 2040), static_cast<std::int16_t>(bytes.whole(1, 12)),
          static_cast<std::int16_t>(bytes.whole(1, 31))};
}

std::int32_t choice(ByteStream& bytes, int count) {
  return bytes.chance(240) ? bytes.whole(0, count - 1) : static_cast<std::int32_t>(bytes.bits(4));
}

template <class Struct>
const Struct* pointer(ByteStream& bytes, const Struct& value) {
  return bytes.chance(8) ? nullptr : &value;
}

void call_daily(ByteStream& bytes) {
  auto location = with_defaults(bytes, noonleaf_location_defaults);
  location.latitude_deg = bytes.number(-90, 90);
  location.elevation_m = bytes.number(-500, 4000);
  noonleaf_site* site = nullptr;
  Problems problems;
  problems.check(noonleaf_site_make(pointer(bytes, location), &site, problems.out()));
  Columns memory(bytes, static_cast<std::size_t>(bytes.whole(0, 40)));
  auto columns = with_defaults(bytes, noonleaf_daily_columns_defaults);
  columns.first_day = date(bytes);
  columns.day = memory.days();
  columns.t_max_c = memory.values(10, 45);
  columns.t_min_c = memory.values(-20, 20);
  columns.ea_kpa = memory.values(0, 4);
  columns.rs_mj_m2_d = memory.values(0, 35);
  columns.u2_m_s = memory.values(0, 12);
  columns.pressure_kpa = memory.values(60, 105);
  columns.g_mj_m2_d = memory.values(-5, 5);
  columns.equation = choice(bytes, 2);
  columns.surface = choice(bytes, 2);
  columns.et0_mm_d = memory.results();
  columns.et0_mm_d.count = memory.rows();  // the rows of the call
  const noonleaf_status status = noonleaf_daily_et0(site, pointer(bytes, columns), problems.out());
  if (status <= noonleaf_rows_refused && columns.size == sizeof columns) {
    for (std::size_t row = 0; row < memory.rows() && columns.et0_mm_d.data != nullptr; ++row) {
      const double et0 = columns.et0_mm_d.data[static_cast<std::ptrdiff_t>(row) * columns.et0_mm_d.stride];
      require(fuzz::missing_or_finite(et0) && !(std::abs(et0) > 100), "ET0 of a day is missing or one");
    }
  }
  problems.check(status);
  noonleaf_site_free(site);
}

void call_hourly(ByteStream& bytes) {
  auto place = with_defaults(bytes, noonleaf_hourly_place_defaults);
  place.latitude_deg = bytes.number(-90, 90);
  place.longitude_deg = bytes.number(-180, 180);
  place.elevation_m = bytes.number(-500, 4000);
  place.begin_s =
      bytes.chance(240) ? bytes.whole(-30'000, 30'000) * 3600LL : static_cast<std::int64_t>(bytes.bits(8));
  place.length_s = bytes.chance(240) ? 3600 / bytes.whole(1, 4) : static_cast<std::int64_t>(bytes.bits(8));
  place.equation = choice(bytes, 2);
  noonleaf_hourly_site* site = nullptr;
  Problems problems;
  problems.check(noonleaf_hourly_site_make(pointer(bytes, place), &site, problems.out()));
  Columns memory(bytes, static_cast<std::size_t>(bytes.whole(0, 60)));
  auto columns = with_defaults(bytes, noonleaf_hourly_columns_defaults);
  columns.first_begin_s = bytes.chance(240) ? place.begin_s + bytes.whole(-100, 100) * 3600LL
                                            : static_cast<std::int64_t>(bytes.bits(8));
  columns.t_c = memory.values(-20, 45);
  columns.ea_kpa = memory.values(0, 4);
  columns.rs_mj_m2_h = memory.values(0, 4);
  columns.u2_m_s = memory.values(0, 12);
  columns.pressure_kpa = memory.values(60, 105);
  columns.surface = choice(bytes, 2);
  columns.dryness = choice(bytes, 2);
  columns.et0_mm_h = memory.results();
  columns.et0_mm_h.count = memory.rows();  // the rows of the call
  problems.check(noonleaf_hourly_et0(site, pointer(bytes, columns), problems.out()));
  noonleaf_hourly_site_free(site);
}

noonleaf_soil soil(ByteStream& bytes) {
  auto soil = with_defaults(bytes, noonleaf_soil_defaults);
  if (bytes.chance(100)) {
    soil.size = sizeof soil;
    Problems problems;
    const std::string texture = bytes.chance(200) ? "sandy_loam" : bytes.text(20);
    problems.check(noonleaf_soil_of_texture(texture.c_str(), &soil, problems.out()));
    return soil;
  }
  soil.field_capacity_m3_m3 = bytes.number(0.1, 0.5);
  soil.wilting_point_m3_m3 = bytes.number(0.02, 0.3);
  soil.saturation_m3_m3 = bytes.number(0.3, 0.6);
  soil.conductivity_mm_h = bytes.number(0, 200);
  soil.rew_mm = bytes.number(2, 12);
  soil.evaporation_depth_m = bytes.number(0.1, 0.15);
  return soil;
}

noonleaf_balance_days balance_days(ByteStream& bytes, Columns& memory) {
  auto days = with_defaults(bytes, noonleaf_balance_days_defaults);
  days.first_day = date(bytes);
  days.et0_mm_d = memory.values(0, 10);
  days.et0_mm_d.count = memory.rows();
  days.rain_mm = memory.values(0, 40);
  days.irrigation_mm = memory.values(0, 30);
  days.evening_rain_mm = memory.values(0, 20);
  days.evening_irrigation_mm = memory.values(0, 20);
  days.u2_m_s = memory.values(0, 8);
  days.rh_min_pct = memory.values(5, 95);
  days.observed_dr_mm = memory.values(0, 60);
  days.ground_closed = memory.values(0, 0);
  days.dr_mm = memory.results();
  days.de_mm = memory.results();
  days.taw_mm = memory.results();
  days.raw_mm = memory.results();
  days.kcb = memory.results();
  days.ks = memory.results();
  days.evaporation_mm = memory.results();
  days.drainage_mm = memory.results();
  return days;
}

void call_balance(ByteStream& bytes) {
  static constexpr std::array<const char*, 6> crops{"tomato", "carrot", "lettuce", "tomatoe", "", nullptr};
  const noonleaf_soil earth = soil(bytes);
  auto wetness = with_defaults(bytes, noonleaf_wetness_defaults);
  wetness.depleted_frac = bytes.number(0, 1);
  wetness.root_depth_m = bytes.number(0.1, 1);
  wetness.profile_depth_m = bytes.number(0.5, 2);
  auto ground = with_defaults(bytes, noonleaf_ground_defaults);
  Problems problems;
  problems.check(noonleaf_ground_of(pointer(bytes, earth), pointer(bytes, wetness), &ground, problems.out()));
  if (bytes.chance(60)) {
    for (double* part : {&ground.de_mm, &ground.de_rain_mm, &ground.dr_mm, &ground.lower_mm,
                         &ground.root_depth_m, &ground.profile_depth_m, &ground.wetted_frac})
      *part = bytes.number(0, 100);
  }
  auto planting = with_defaults(bytes, noonleaf_planting_defaults);
  planting.crop = bytes.one_of(crops);
  planting.start = date(bytes);
  planting.method = choice(bytes, 2);
  planting.rooting = choice(bytes, 2);
  planting.root_limit_m = bytes.number(0.05, 2);
  planting.u2_m_s = bytes.number(1, 6);
  planting.rh_min_pct = bytes.number(20, 80);
  for (noonleaf_date* stage :
       {&planting.development, &planting.mid_season, &planting.late_season, &planting.over})
    if (bytes.chance(60)) *stage = date(bytes);
  auto settings = with_defaults(bytes, noonleaf_balance_settings_defaults);
  settings.irrigated_frac = bytes.number(0.1, 1);
  settings.curve_number = bytes.number(40, 95);
  settings.salt_stress = bytes.number(0.3, 1);
  settings.evaporation_factor = bytes.number(0, 1);
  for (std::int32_t* option :
       {&settings.method, &settings.depletion, &settings.surface, &settings.top_roots, &settings.emitters})
    *option = choice(bytes, 2);
  Columns memory(bytes, static_cast<std::size_t>(bytes.whole(0, 30)));
  const noonleaf_balance_days days = balance_days(bytes, memory);
  auto totals = blank<noonleaf_balance_totals>(bytes);
  const noonleaf_status status =
      noonleaf_balance(pointer(bytes, earth), pointer(bytes, planting), pointer(bytes, settings),
                       pointer(bytes, days), &ground, bytes.chance(60) ? nullptr : &totals, problems.out());
  if (status == noonleaf_done && totals.size == sizeof totals)
    require(totals.drainage_mm >= -1e-9 && totals.evaporation_mm >= -1e-9, "water does not come from below");
  problems.check(status);
}

void call_run(ByteStream& bytes) {
  auto request = with_defaults(bytes, noonleaf_run_request_defaults);
  for (double* fraction : {&request.du_lq_frac, &request.off_target_frac, &request.spray_loss_frac})
    if (bytes.chance(128)) *fraction = bytes.number(0, 1);
  request.net_depth_mm = bytes.number(0, 50);
  request.rate_mm_h = bytes.number(1, 60);
  request.flow_l_min = bytes.number(1, 40);
  request.bed_area_m2 = bytes.number(1, 50);
  request.shortest_min = bytes.number(1, 10);
  request.longest_min = bytes.number(10, 200);
  request.basis = choice(bytes, 5);
  request.area = choice(bytes, 2);
  auto run = blank<noonleaf_run>(bytes);
  Problems problems;
  const noonleaf_status status = noonleaf_run_time(pointer(bytes, request), &run, problems.out());
  if (status == noonleaf_done && run.size == sizeof run && request.size == sizeof request)
    require(run.minutes >= 0 && run.minutes <= request.longest_min, "a run keeps within its limits");
  problems.check(status);
  auto depth = blank<noonleaf_depth>(bytes);
  problems.check(noonleaf_depth_of_minutes(&request, bytes.number(0, 300), &depth, problems.out()));
}

void fill_wilt(ByteStream& bytes, Columns& hours, noonleaf_wilt_request& request) {
  request.date = date(bytes);
  request.utc_offset_h = bytes.number(-12, 14);
  request.latitude_deg = bytes.number(-66, 66);
  request.longitude_deg = bytes.number(-180, 180);
  request.elevation_m = bytes.number(0, 3000);
  request.t_max_c = bytes.number(15, 45);
  request.t_min_c = bytes.number(0, 20);
  request.ea_kpa = bytes.number(0.3, 3);
  request.rs_mj_m2_d = bytes.number(2, 32);
  request.u2_m_s = bytes.number(0.5, 6);
  request.t_max_before_c = bytes.number(15, 45);
  request.t_min_after_c = bytes.number(0, 20);
  request.hour_t_c = hours.values(0, 45);
  request.hour_ea_kpa = hours.values(0.3, 3);
  request.hour_rs_mj_m2_h = hours.values(0, 4);
  request.hour_u2_m_s = hours.values(0, 8);
  request.transpiration_mm_d = bytes.number(0, 9);
  request.crop = bytes.chance(200) ? "tomato" : nullptr;
  request.p_frac = bytes.number(0.1, 0.8);
  request.turgor_loss_mpa = bytes.number(-3, -0.5);
  request.sunlit_factor = bytes.number(1, 2);
  request.taw_mm = bytes.number(20, 150);
  request.raw_mm = bytes.number(10, 60);
  request.dr_mm = bytes.number(0, 100);
  request.root_depth_m = bytes.number(0.1, 1.5);
  request.field_capacity_m3_m3 = bytes.number(0.1, 0.5);
  request.wilting_point_m3_m3 = bytes.number(0.02, 0.3);
  request.saturation_m3_m3 = bytes.number(0.3, 0.6);
  request.days_since_transplant = bytes.number(0, 40);
  request.leaf_deficit_mm = bytes.number(0, 2);
  request.dawn_look = choice(bytes, 3);
  request.hour_demand_mm_h = hours.results();
  request.hour_supply_mm_h = hours.results();
  request.hour_leaf_potential_mpa = hours.results();
  request.hour_clock_h = hours.results();
  request.hour_hangs = hours.results();
}

void call_wilt(ByteStream& bytes) {
  Columns hours(bytes, 24);
  auto request = with_defaults(bytes, noonleaf_wilt_request_defaults);
  fill_wilt(bytes, hours, request);
  auto day = blank<noonleaf_wilt_day>(bytes);
  Problems problems;
  const noonleaf_status status = noonleaf_wilt(pointer(bytes, request), &day, problems.out());
  if (status == noonleaf_done && day.size == sizeof day) {
    require(day.verdict >= noonleaf_comfortable && day.verdict <= noonleaf_unknown, "a verdict is one");
    require(day.advice >= noonleaf_leave_alone && day.advice <= noonleaf_no_advice, "an advice is one");
    require(day.droop_hours >= 0 && day.droop_hours <= 24, "a day has 24 hours to droop");
  }
  problems.check(status);
}

void call_garden(ByteStream& bytes) {
  noonleaf_garden* garden = nullptr;
  Problems problems;
  const std::string folder = "/nowhere/" + bytes.text(12);
  problems.check(noonleaf_garden_read(bytes.chance(20) ? nullptr : folder.c_str(), &garden, problems.out()));
  require(garden == nullptr, "a folder that is not there gives no garden");
  char* json = nullptr;
  auto moment = with_defaults(bytes, noonleaf_moment_defaults);
  moment.date = date(bytes);
  problems.check(noonleaf_today_json(garden, pointer(bytes, moment), &json, problems.out()));
  auto request = with_defaults(bytes, noonleaf_week_request_defaults);
  request.made_date = date(bytes);
  problems.check(noonleaf_week_json(garden, pointer(bytes, request), &json, problems.out()));
  require(json == nullptr, "no garden gives no plan");
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static constexpr std::array<void (*)(ByteStream&), 6> calls{call_daily, call_hourly, call_balance,
                                                              call_run,   call_wilt,   call_garden};
  ByteStream bytes(data, size);
  for (int count = 0; count < 4 && !bytes.ended(); ++count) bytes.one_of(calls)(bytes);
  return 0;
}
