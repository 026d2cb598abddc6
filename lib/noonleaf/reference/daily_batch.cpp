#include "noonleaf/reference/daily_batch.hpp"

#include <algorithm>
#include <iterator>
#include <thread>
#include <vector>

#include "noonleaf/atmosphere/batch_block.hpp"
#include "noonleaf/atmosphere/pressure_formula.hpp"
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
  BlockBuffer t_max_c, t_min_c, ea_kpa, rs_mj_m2_d, u2_m_s, pressure_kpa, g_mj_m2_d, ra_mj_m2_d, result;
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

/// The columns of a batch, block by block.
class BlockSource {
 public:
  BlockSource(const DailySite& site, const DailyColumns& columns, formula::SurfaceCoefficients surface,
              Workspace& work)
      : site_(site),
        day_(columns.day),
        surface_(surface),
        work_(work),
        t_max_(column_or(columns.t_max_c, missing_), work.t_max_c),
        t_min_(column_or(columns.t_min_c, missing_), work.t_min_c),
        ea_(column_or(columns.ea_kpa, missing_), work.ea_kpa),
        rs_(column_or(columns.rs_mj_m2_d, missing_), work.rs_mj_m2_d),
        u2_(column_or(columns.u2_m_s, missing_), work.u2_m_s),
        pressure_(column_or(columns.pressure_kpa, site.pressure_kpa), work.pressure_kpa),
        g_(column_or(columns.g_mj_m2_d, no_heat_), work.g_mj_m2_d),
        extra_(columns.pressure_kpa.data != nullptr || columns.g_mj_m2_d.data != nullptr) {}

  kernel::DailyBlock read(std::size_t first, std::size_t rows) {
    return {.t_max_c = t_max_.read(first, rows),
            .t_min_c = t_min_.read(first, rows),
            .ea_kpa = ea_.read(first, rows),
            .rs_mj_m2_d = rs_.read(first, rows),
            .u2_m_s = u2_.read(first, rows),
            .ra_mj_m2_d = radiation_of(site_, day_, first, rows, year_, work_.ra_mj_m2_d),
            .pressure_kpa = extra_ ? pressure_.read(first, rows) : nullptr,
            .g_mj_m2_d = extra_ ? g_.read(first, rows) : nullptr,
            .gamma_kpa_c = formula::psychrometric_constant_kpa_c(site_.pressure_kpa),
            .elevation_m = site_.elevation_m,
            .surface = surface_};
  }

 private:
  static constexpr double missing_ = missing, no_heat_ = 0.0;
  const DailySite& site_;
  DayAxis day_;
  formula::SurfaceCoefficients surface_;
  Workspace& work_;
  YearOfDay year_;
  BlockReader t_max_, t_min_, ea_, rs_, u2_, pressure_, g_;
  bool extra_;
};

/// Which kernel works a block out.
using Kernel = bool (*)(Equation, const kernel::DailyBlock&, std::size_t, double*);

struct Method {
  Kernel kernel;
  Equation equation;
  formula::SurfaceCoefficients surface;
};

void run(const DailySite& site, const DailyColumns& in, std::size_t count, const MutableColumn& result,
         const Method& method, std::size_t row_offset, BadRows& bad_rows) {
  if (count == 0) return;  // a column that repeats its one value need not have one
  Workspace work;
  BlockSource source(site, in, method.surface, work);
  for (std::size_t first = 0; first < count; first += block_rows) {
    const std::size_t rows = std::min(block_rows, count - first);
    const kernel::DailyBlock block = source.read(first, rows);
    const bool suspect = method.kernel(method.equation, block, rows, work.result.data());
    for (std::size_t i = 0; suspect && i < rows; ++i) {
      if (!kernel::daily_row_is_bad(block, i)) continue;
      work.result[i] = missing;
      bad_rows.push_back(row_offset + first + i);
    }
    deliver(result, first, rows, work.result);
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
  run(site, columns, count, result_mm_d, {kernel::daily_et0, equation, daily_coefficients(equation, surface)},
      0, bad_rows);
  return bad_rows;
}

BadRows daily_net_radiation_mj_m2_d(const DailySite& site, const DailyColumns& columns, std::size_t count,
                                    MutableColumn result_mj_m2_d, Equation equation) {
  DailyColumns used = columns;
  used.u2_m_s = used.pressure_kpa = used.g_mj_m2_d = {};
  BadRows bad_rows;
  run(site, used, count, result_mj_m2_d,
      {kernel::daily_net_radiation, equation, daily_coefficients(equation, Surface::short_crop)}, 0,
      bad_rows);
  return bad_rows;
}

BadRows daily_et0_mm_d(std::span<const Location> sites, const StationColumns& columns, std::size_t count,
                       MutableColumn result_mm_d, Equation equation, Surface surface, Threads threads) {
  const Method method{kernel::daily_et0, equation, daily_coefficients(equation, surface)};
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
