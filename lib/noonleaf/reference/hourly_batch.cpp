#include "noonleaf/reference/hourly_batch.hpp"

#include <algorithm>
#include <string>

#include "noonleaf/atmosphere/batch_block.hpp"
#include "noonleaf/atmosphere/pressure_formula.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/reference/hourly_kernel.hpp"
#include "noonleaf/reference/surface.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using namespace std::chrono;

void require_beginning(const HourlySite& site, sys_seconds begin) {
  if ((begin - floor<days>(begin)) % site.length == site.phase) return;
  throw Error({.field = "first_begin",
               .message = "is not a beginning of the periods that the site was made for",
               .fix = "make the site with hourly_site(location, first_begin, length)"});
}

/// Where the rows stand in the site's table. Rows run through it in order and go back to its start at the new
/// year.
class TablePlace {
 public:
  TablePlace(const HourlySite& site, sys_seconds first_begin) : site_(site), begin_(first_begin) {}

  struct Stretch {
    std::size_t index, rows;  ///< rows until the year ends
  };
  Stretch at(std::size_t row) const {
    const sys_seconds begin = begin_ + site_.length * static_cast<std::int64_t>(row);
    const formula::SolarMoment moment =
        formula::solar_moment(begin, site_.length, site_.location.longitude_deg);
    const year this_year = year_month_day{moment.day}.year();
    const auto day_index = static_cast<std::size_t>((moment.day - sys_days{this_year / January / 1}).count());
    const std::size_t year_days = this_year.is_leap() ? 366 : 365;
    const auto period = static_cast<std::size_t>(moment.into_day / site_.length);
    const std::size_t index = day_index * site_.periods_a_day + period;
    return {index, year_days * site_.periods_a_day - index};
  }

 private:
  const HourlySite& site_;
  sys_seconds begin_;
};

struct Workspace {
  BlockBuffer t_c, ea_kpa, rs_mj_m2_h, u2_m_s, pressure_kpa;
  BlockBuffer relative_sun, day_g, et0_mm_h;
  std::array<bool, block_rows> bad;
};

const double* block_of(const ConstColumn& column, std::size_t first, std::size_t rows, BlockBuffer& buffer) {
  if (column.data != nullptr) return side_by_side(column, first, rows, buffer);
  buffer.fill(missing);
  return buffer.data();
}

kernel::HourlyBlock block_at(const HourlySite& site, const HourlyColumns& in, std::size_t first,
                             std::size_t rows, std::size_t index, const formula::HourlyCoefficients& surface,
                             Workspace& work) {
  return {.t_c = block_of(in.t_c, first, rows, work.t_c),
          .ea_kpa = block_of(in.ea_kpa, first, rows, work.ea_kpa),
          .rs_mj_m2_h = block_of(in.rs_mj_m2_h, first, rows, work.rs_mj_m2_h),
          .u2_m_s = block_of(in.u2_m_s, first, rows, work.u2_m_s),
          .pressure_kpa = in.pressure_kpa.data == nullptr
                              ? nullptr
                              : block_of(in.pressure_kpa, first, rows, work.pressure_kpa),
          .ra_mj_m2_h = site.ra_mj_m2_h.data() + index,
          .gamma_kpa_c = formula::psychrometric_constant_kpa_c(site.pressure_kpa),
          .elevation_m = site.location.elevation_m,
          .surface = surface};
}

/// Hands Rs/Rso on from the periods that have one to those that have none, and finds G/Rn by the sun.
class NightKeeper {
 public:
  NightKeeper(double relative_sun, const formula::HourlyCoefficients& surface)
      : relative_sun_(relative_sun), surface_(surface) {}

  void pass(const std::uint8_t* sky, std::size_t rows, Workspace& work) {
    for (std::size_t i = 0; i < rows; ++i) {
      const double own = work.relative_sun[i];
      work.relative_sun[i] = (sky[i] & HourlySite::has_own_ratio) != 0 ? own : relative_sun_;
      work.day_g[i] = (sky[i] & HourlySite::is_day) != 0 ? surface_.g_day : surface_.g_night;
      const bool keeps = (sky[i] & HourlySite::keeps_ratio) != 0 && is_known(own) && !work.bad[i];
      relative_sun_ = keeps ? own : relative_sun_;
    }
  }

 private:
  double relative_sun_;
  formula::HourlyCoefficients surface_;
};

/// Rs/Rso before the first evening: within its limits for ASCE-EWRI; missing where the place is, so that
/// every night is missing too.
double first_ratio(const HourlySite& site, Dryness dryness) {
  const double place = site.location.latitude_deg + site.location.longitude_deg + site.location.elevation_m;
  if (is_missing(place)) return missing;
  const double ratio = first_night_relative_sun(dryness);
  return site.equation == Equation::asce ? formula::relative_sun_asce(ratio, 1.0) : ratio;
}

}  // namespace

BadRows hourly_et0_mm_h(const HourlySite& site, const HourlyColumns& columns, std::size_t count,
                        MutableColumn result_mm_h, Surface surface, Dryness dryness) {
  const formula::HourlyCoefficients coefficients = hourly_coefficients(site.equation, surface);
  require_beginning(site, columns.first_begin);
  const TablePlace place(site, columns.first_begin);
  NightKeeper night(first_ratio(site, dryness), coefficients);
  Workspace work;
  BadRows bad_rows;
  for (std::size_t first = 0; first < count;) {
    TablePlace::Stretch year = place.at(first);
    const std::size_t year_end = std::min(count, first + year.rows);
    for (std::size_t rows; first < year_end; first += rows, year.index += rows) {
      rows = std::min(block_rows, year_end - first);
      const kernel::HourlyBlock block = block_at(site, columns, first, rows, year.index, coefficients, work);
      const bool suspect = kernel::hourly_relative_sun(site.equation, block, rows, work.relative_sun.data());
      work.bad.fill(false);
      for (std::size_t i = 0; suspect && i < rows; ++i) {
        work.bad[i] = kernel::hourly_row_is_bad(block, i);
        if (work.bad[i]) bad_rows.push_back(first + i);
      }
      night.pass(site.sky.data() + year.index, rows, work);
      kernel::hourly_et0(site.equation, block, work.relative_sun.data(), work.day_g.data(), rows,
                         work.et0_mm_h.data());
      for (std::size_t i = 0; suspect && i < rows; ++i) {
        if (work.bad[i]) work.et0_mm_h[i] = missing;
      }
      deliver(result_mm_h, first, rows, work.et0_mm_h);
    }
  }
  return bad_rows;
}

}  // namespace v1
}  // namespace noonleaf
