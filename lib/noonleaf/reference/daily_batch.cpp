#include "noonleaf/reference/daily_batch.hpp"

#include <algorithm>
#include <iterator>
#include <thread>
#include <vector>

#include "noonleaf/atmosphere/batch_block.hpp"
#include "noonleaf/reference/daily_kernel.hpp"
#include "noonleaf/reference/surface.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;

/// The year that a day lies in, as two days; kept from row to row, since most rows stay in it.
class YearOfDay {
 public:
  /// J - 1
  std::size_t index(sys_days day) {
    if (day < begin_ || day >= end_) move_to(day);
    return static_cast<std::size_t>((day - begin_).count());
  }
  /// The first day after the year that index() saw last.
  sys_days end() const { return end_; }

 private:
  void move_to(sys_days day) {
    using namespace std::chrono;
    const year this_year = year_month_day{day}.year();
    begin_ = sys_days{this_year / January / 1};
    end_ = sys_days{(this_year + years{1}) / January / 1};
  }
  sys_days begin_{}, end_{};
};

/// Ra of a block of rows: the site's own table where the rows are days in a row within a year, else gathered.
const double* radiation_of(const DailySite& site, const DayAxis& axis, std::size_t first, std::size_t rows,
                           YearOfDay& year, BlockBuffer& buffer) {
  if (axis.column == nullptr) {
    const sys_days day = axis.first + std::chrono::days{first};
    const std::size_t index = year.index(day);
    if (day + std::chrono::days{rows} <= year.end()) return site.ra_mj_m2_d.data() + index;
    for (std::size_t i = 0; i < rows; ++i) {
      buffer[i] = site.ra_mj_m2_d[year.index(day + std::chrono::days{i})];
    }
    return buffer.data();
  }
  const sys_days* days = axis.column + static_cast<std::ptrdiff_t>(first) * axis.stride;
  for (std::size_t i = 0; i < rows; ++i) {
    buffer[i] = site.ra_mj_m2_d[year.index(days[static_cast<std::ptrdiff_t>(i) * axis.stride])];
  }
  return buffer.data();
}

/// A column, or one value repeated where there is none.
ConstColumn column_or(const ConstColumn& column, const double& value) {
  return column.data == nullptr ? ConstColumn{&value, 0} : column;
}

/// The memory of a batch: one block of each column.
struct Workspace {
  BlockBuffer t_max_c, t_min_c, ea_kpa, rs_mj_m2_d, u2_m_s, pressure_kpa, g_mj_m2_d, ra_mj_m2_d, et0_mm_d,
      outside;
};

/// Reads a column block by block. One value repeated is written out once for all blocks.
class BlockReader {
 public:
  BlockReader(const ConstColumn& column, BlockBuffer& buffer) : column_(column), buffer_(buffer) {
    if (column_.stride == 0) buffer_.fill(*column_.data);
  }
  const double* read(std::size_t first, std::size_t rows) {
    return column_.stride == 0 ? buffer_.data() : side_by_side(column_, first, rows, buffer_);
  }

 private:
  ConstColumn column_;
  BlockBuffer& buffer_;
};

struct Method {
  Equation equation;
  formula::SurfaceCoefficients surface;
};

void run(const DailySite& site, const DailyColumns& in, std::size_t count, const MutableColumn& result,
         const Method& method, std::size_t row_offset, BadRows& bad_rows) {
  Workspace work;
  const double absent = missing, no_heat = 0.0;
  BlockReader t_max(column_or(in.t_max_c, absent), work.t_max_c),
      t_min(column_or(in.t_min_c, absent), work.t_min_c);
  BlockReader ea(column_or(in.ea_kpa, absent), work.ea_kpa),
      rs(column_or(in.rs_mj_m2_d, absent), work.rs_mj_m2_d);
  BlockReader u2(column_or(in.u2_m_s, absent), work.u2_m_s);
  BlockReader pressure(column_or(in.pressure_kpa, site.pressure_kpa), work.pressure_kpa);
  BlockReader g(column_or(in.g_mj_m2_d, no_heat), work.g_mj_m2_d);
  YearOfDay year;
  for (std::size_t first = 0; first < count; first += block_rows) {
    const std::size_t rows = std::min(block_rows, count - first);
    const kernel::DailyBlock block{
        t_max.read(first, rows), t_min.read(first, rows),
        ea.read(first, rows),    rs.read(first, rows),
        u2.read(first, rows),    pressure.read(first, rows),
        g.read(first, rows),     radiation_of(site, in.day, first, rows, year, work.ra_mj_m2_d),
        site.elevation_m,        method.surface};
    const auto work_out =
        method.equation == Equation::asce ? kernel::daily_et0_asce : kernel::daily_et0_fao56;
    work_out(block, rows, work.et0_mm_d.data(), work.outside.data());
    list_bad_rows(work.outside, rows, row_offset + first, bad_rows);
    deliver(result, first, rows, work.et0_mm_d);
  }
}

ConstColumn of_site(const ConstColumn& column, std::ptrdiff_t offset) {
  return column.data == nullptr ? column : ConstColumn{column.data + offset, column.stride};
}

DailyColumns of_site(const DailyColumns& columns, std::ptrdiff_t offset) {
  return {.day = columns.day,
          .t_max_c = of_site(columns.t_max_c, offset),
          .t_min_c = of_site(columns.t_min_c, offset),
          .ea_kpa = of_site(columns.ea_kpa, offset),
          .rs_mj_m2_d = of_site(columns.rs_mj_m2_d, offset),
          .u2_m_s = of_site(columns.u2_m_s, offset),
          .pressure_kpa = of_site(columns.pressure_kpa, offset),
          .g_mj_m2_d = of_site(columns.g_mj_m2_d, offset)};
}

}  // namespace

BadRows daily_et0_mm_d(const DailySite& site, const DailyColumns& columns, std::size_t count,
                       MutableColumn result_mm_d, Equation equation, Surface surface) {
  BadRows bad_rows;
  run(site, columns, count, result_mm_d, {equation, daily_coefficients(equation, surface)}, 0, bad_rows);
  return bad_rows;
}

BadRows daily_et0_mm_d(std::span<const Location> sites, const StationColumns& columns, std::size_t count,
                       MutableColumn result_mm_d, Equation equation, Surface surface, Threads threads) {
  const Method method{equation, daily_coefficients(equation, surface)};
  const SunYear sun = sun_year();
  for (const Location& site : sites) require_location(site);  // before any thread runs
  const std::size_t parts = std::clamp<std::size_t>(threads.count, 1, std::max<std::size_t>(1, sites.size()));
  std::vector<BadRows> bad_rows(parts);
  const auto work = [&](std::size_t part) {
    for (std::size_t s = sites.size() * part / parts; s < sites.size() * (part + 1) / parts; ++s) {
      const auto index = static_cast<std::ptrdiff_t>(s);
      const MutableColumn result{result_mm_d.data + index * columns.result_site_stride, result_mm_d.stride};
      run(daily_site(sites[s], sun), of_site(columns.first_site, index * columns.site_stride), count, result,
          method, s * count, bad_rows[part]);
    }
  };
  {
    std::vector<std::jthread> helpers;
    for (std::size_t part = 1; part < parts; ++part) helpers.emplace_back(work, part);
    work(0);
  }
  for (std::size_t part = 1; part < parts; ++part) {
    std::copy(bad_rows[part].begin(), bad_rows[part].end(), std::back_inserter(bad_rows[0]));
  }
  return std::move(bad_rows[0]);
}

}  // namespace v1
}  // namespace noonleaf
