#include <algorithm>
#include <array>
#include <chrono>
#include <limits>
#include <memory>

#include "noonleaf/c_interface/columns.hpp"
#include "noonleaf/c_interface/refused_rows.hpp"
#include "noonleaf/c_interface/sized_struct.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/reference/daily_batch.hpp"
#include "noonleaf/reference/hourly_batch.hpp"

using namespace noonleaf::c_interface;
using std::chrono::sys_days;
using std::chrono::sys_seconds;

struct noonleaf_site {
  noonleaf::Location location;
  noonleaf::DailySite site;
};

struct noonleaf_hourly_site {
  noonleaf::HourlySite site;
};

namespace {

constexpr int64_t first_day_number = -719162, last_day_number = 2932896;  // 0001-01-01, 9999-12-31
constexpr int64_t no_day_number = std::numeric_limits<int64_t>::min();
constexpr int64_t day_s = 86400;

/// Days of a caller's column are turned into the library's own in blocks of this many.
constexpr std::size_t block_rows = 512;

noonleaf::ConstColumn moved(const noonleaf::ConstColumn& column, std::size_t rows) {
  if (column.data == nullptr) return column;
  return {column.data + static_cast<std::ptrdiff_t>(rows) * column.stride, column.stride};
}

/// A daily batch in the library's own terms.
struct DailyBatch {
  const noonleaf_site& site;
  noonleaf::DailyColumns columns{};
  noonleaf_day_column day{};
  noonleaf::MutableColumn result{};
  std::size_t rows = 0;
  noonleaf::Equation equation = noonleaf::Equation::fao56;
  noonleaf::Surface surface = noonleaf::Surface::short_crop;
};

DailyBatch daily_batch(const noonleaf_site& site, const noonleaf_daily_columns& given) {
  DailyBatch batch{site};
  batch.rows = given.et0_mm_d.count;
  batch.result = required_result(given.et0_mm_d, "et0_mm_d");
  batch.columns.t_max_c = column_of(given.t_max_c, batch.rows, "t_max_c");
  batch.columns.t_min_c = column_of(given.t_min_c, batch.rows, "t_min_c");
  batch.columns.ea_kpa = column_of(given.ea_kpa, batch.rows, "ea_kpa");
  batch.columns.rs_mj_m2_d = column_of(given.rs_mj_m2_d, batch.rows, "rs_mj_m2_d");
  batch.columns.u2_m_s = column_of(given.u2_m_s, batch.rows, "u2_m_s");
  batch.columns.pressure_kpa = column_of(given.pressure_kpa, batch.rows, "pressure_kpa");
  batch.columns.g_mj_m2_d = column_of(given.g_mj_m2_d, batch.rows, "g_mj_m2_d");
  batch.equation = chosen<noonleaf::Equation>(given.equation, 2, "equation");
  batch.surface = chosen<noonleaf::Surface>(given.surface, 2, "surface");
  batch.day = given.day;
  if (given.day.data == nullptr)
    batch.columns.day.first = sys_days{day_of(given.first_day, "first_day")};
  else if (given.day.count != batch.rows)
    throw CallRefused(
        "day", "has " + std::to_string(given.day.count) + " days for " + std::to_string(batch.rows) + " rows",
        "give one day a row");
  return batch;
}

int64_t day_number(const noonleaf_day_column& column, std::size_t row) {
  return column.data[static_cast<std::ptrdiff_t>(row) * column.stride];
}

/// The rows of one block with days of their own: those that are missing or no day of the calendar are taken
/// out afterwards.
void run_block(const DailyBatch& batch, std::size_t first, std::size_t rows, noonleaf::BadRows& bad_rows) {
  std::array<sys_days, block_rows> days;
  std::array<bool, block_rows> strange{}, none{};
  for (std::size_t i = 0; i < rows; ++i) {
    const int64_t number = day_number(batch.day, first + i);
    none[i] = number == no_day_number;
    strange[i] = !none[i] && (number < first_day_number || number > last_day_number);
    days[i] = none[i] || strange[i] ? sys_days{} : sys_days{std::chrono::days{number}};
  }
  noonleaf::DailyColumns columns = batch.columns;
  columns.day = {.first = {}, .column = days.data(), .stride = 1};
  for (noonleaf::ConstColumn* column :
       {&columns.t_max_c, &columns.t_min_c, &columns.ea_kpa, &columns.rs_mj_m2_d, &columns.u2_m_s,
        &columns.pressure_kpa, &columns.g_mj_m2_d})
    *column = moved(*column, first);
  noonleaf::MutableColumn result = batch.result;
  result.data += static_cast<std::ptrdiff_t>(first) * result.stride;
  const noonleaf::BadRows bad =
      noonleaf::daily_et0_mm_d(batch.site.site, columns, rows, result, batch.equation, batch.surface);
  auto listed = bad.begin();
  for (std::size_t i = 0; i < rows; ++i) {
    const bool of_core = listed != bad.end() && *listed == i;
    if (of_core) ++listed;
    if (none[i] || strange[i]) put(result, i, noonleaf::missing);
    if (strange[i] || (of_core && !none[i])) bad_rows.push_back(first + i);
  }
}

noonleaf::BadRows run(const DailyBatch& batch) {
  if (batch.day.data == nullptr)
    return noonleaf::daily_et0_mm_d(batch.site.site, batch.columns, batch.rows, batch.result, batch.equation,
                                    batch.surface);
  noonleaf::BadRows bad_rows;
  for (std::size_t first = 0; first < batch.rows; first += block_rows)
    run_block(batch, first, std::min(block_rows, batch.rows - first), bad_rows);
  return bad_rows;
}

/// One row by the door of one day, which names what is wrong with it.
void try_day(const DailyBatch& batch, std::size_t row) {
  const int64_t number =
      batch.day.data == nullptr
          ? (batch.columns.day.first.time_since_epoch().count() + static_cast<int64_t>(row))
          : day_number(batch.day, row);
  if (number < first_day_number || number > last_day_number) {
    noonleaf::Problem problem;
    problem.field = "day";
    problem.text = std::to_string(number);
    problem.message = problem.text + " is no day of the years 1 to 9999";
    problem.fix = "count days from 1970-01-01; the least int64_t is a missing day";
    throw noonleaf::Error(problem);
  }
  const auto& in = batch.columns;
  noonleaf::daily_et0_mm_d({.date = sys_days{std::chrono::days{number}},
                            .latitude_deg = batch.site.location.latitude_deg,
                            .elevation_m = batch.site.location.elevation_m,
                            .t_max_c = value_at(in.t_max_c, row, noonleaf::missing),
                            .t_min_c = value_at(in.t_min_c, row, noonleaf::missing),
                            .ea_kpa = value_at(in.ea_kpa, row, noonleaf::missing),
                            .rs_mj_m2_d = value_at(in.rs_mj_m2_d, row, noonleaf::missing),
                            .u2_m_s = value_at(in.u2_m_s, row, noonleaf::missing),
                            .pressure_kpa = value_at(in.pressure_kpa, row, noonleaf::missing),
                            .g_mj_m2_d = value_at(in.g_mj_m2_d, row, 0.0)},
                           batch.equation, batch.surface);
}

noonleaf::Location location_of(double latitude_deg, double longitude_deg, double elevation_m) {
  return {.latitude_deg = latitude_deg, .longitude_deg = longitude_deg, .elevation_m = elevation_m};
}

sys_seconds second_of(int64_t seconds, const char* member) {
  if (seconds < first_day_number * day_s || seconds >= (last_day_number + 1) * day_s)
    throw CallRefused(member, std::to_string(seconds) + " s is beyond the years 1 to 9999",
                      "count seconds from 1970-01-01 00:00 UTC");
  return sys_seconds{std::chrono::seconds{seconds}};
}

/// An hourly batch in the library's own terms.
struct HourlyBatch {
  const noonleaf::HourlySite& site;
  noonleaf::HourlyColumns columns{};
  noonleaf::MutableColumn result{};
  std::size_t rows = 0;
  noonleaf::Surface surface = noonleaf::Surface::short_crop;
  noonleaf::Dryness dryness = noonleaf::Dryness::humid;
};

HourlyBatch hourly_batch(const noonleaf_hourly_site& site, const noonleaf_hourly_columns& given) {
  HourlyBatch batch{site.site};
  batch.rows = given.et0_mm_h.count;
  batch.result = required_result(given.et0_mm_h, "et0_mm_h");
  batch.columns.first_begin = second_of(given.first_begin_s, "first_begin_s");
  batch.columns.t_c = column_of(given.t_c, batch.rows, "t_c");
  batch.columns.ea_kpa = column_of(given.ea_kpa, batch.rows, "ea_kpa");
  batch.columns.rs_mj_m2_h = column_of(given.rs_mj_m2_h, batch.rows, "rs_mj_m2_h");
  batch.columns.u2_m_s = column_of(given.u2_m_s, batch.rows, "u2_m_s");
  batch.columns.pressure_kpa = column_of(given.pressure_kpa, batch.rows, "pressure_kpa");
  batch.surface = chosen<noonleaf::Surface>(given.surface, 2, "surface");
  batch.dryness = chosen<noonleaf::Dryness>(given.dryness, 2, "dryness");
  return batch;
}

void try_hour(const HourlyBatch& batch, std::size_t row) {
  const auto& in = batch.columns;
  constexpr double any_sun = 0.5;  // the row is looked at for its own values
  noonleaf::hourly_et0_mm_h({.begin = in.first_begin + static_cast<int64_t>(row) * batch.site.length,
                             .length = batch.site.length,
                             .t_c = value_at(in.t_c, row, noonleaf::missing),
                             .ea_kpa = value_at(in.ea_kpa, row, noonleaf::missing),
                             .rs_mj_m2_h = value_at(in.rs_mj_m2_h, row, noonleaf::missing),
                             .u2_m_s = value_at(in.u2_m_s, row, noonleaf::missing),
                             .pressure_kpa = value_at(in.pressure_kpa, row, noonleaf::missing),
                             .earlier_relative_sun = any_sun},
                            batch.site.location, batch.site.equation, batch.surface);
}

}  // namespace

noonleaf_status noonleaf_site_make(const noonleaf_location* location, noonleaf_site** site,
                                   noonleaf_problems** problems) {
  return guarded(problems, [&] {
    required(site, "site") = nullptr;
    const noonleaf_location given = taken(location, default_location(), "location");
    const auto place = location_of(given.latitude_deg, given.longitude_deg, given.elevation_m);
    *site = new noonleaf_site{place, noonleaf::daily_site(place)};
    return noonleaf_status{noonleaf_done};
  });
}

void noonleaf_site_free(noonleaf_site* site) { delete site; }

noonleaf_status noonleaf_daily_et0(const noonleaf_site* site, const noonleaf_daily_columns* columns,
                                   noonleaf_problems** problems) {
  return guarded(problems, [&] {
    const noonleaf_site& here = required(site, "site");
    const DailyBatch batch = daily_batch(here, taken(columns, default_daily_columns(), "columns"));
    return hand_over_rows(problems, run(batch), [&](std::size_t row) { try_day(batch, row); });
  });
}

noonleaf_status noonleaf_hourly_site_make(const noonleaf_hourly_place* place, noonleaf_hourly_site** site,
                                          noonleaf_problems** problems) {
  return guarded(problems, [&] {
    required(site, "site") = nullptr;
    const noonleaf_hourly_place given = taken(place, default_hourly_place(), "place");
    const auto equation = chosen<noonleaf::Equation>(given.equation, 2, "equation");
    *site = new noonleaf_hourly_site{noonleaf::hourly_site(
        location_of(given.latitude_deg, given.longitude_deg, given.elevation_m),
        second_of(given.begin_s, "begin_s"), std::chrono::seconds{given.length_s}, equation)};
    return noonleaf_status{noonleaf_done};
  });
}

void noonleaf_hourly_site_free(noonleaf_hourly_site* site) { delete site; }

noonleaf_status noonleaf_hourly_et0(const noonleaf_hourly_site* site, const noonleaf_hourly_columns* columns,
                                    noonleaf_problems** problems) {
  return guarded(problems, [&] {
    const noonleaf_hourly_site& here = required(site, "site");
    const HourlyBatch batch = hourly_batch(here, taken(columns, default_hourly_columns(), "columns"));
    const noonleaf::BadRows bad_rows = noonleaf::hourly_et0_mm_h(batch.site, batch.columns, batch.rows,
                                                                 batch.result, batch.surface, batch.dryness);
    return hand_over_rows(problems, bad_rows, [&](std::size_t row) { try_hour(batch, row); });
  });
}
