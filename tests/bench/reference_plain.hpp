#pragma once

#include <cstddef>
#include <cstdint>

// Daily and hourly reference evapotranspiration as one would write them from the page with the C library, one
// row at a time: the baselines that the batch doors are measured against.
namespace plain {

struct Days {
  const double *t_max_c, *t_min_c, *ea_kpa, *rs_mj_m2_d, *u2_m_s;
  const std::int16_t* day_of_year;
};

/// All equations for every row; what depends on the site alone is taken out of the loop.
void daily_et0(double latitude_deg, double elevation_m, const Days& in, std::size_t count, double* et0_mm_d);

/// Extraterrestrial radiation of every day of the year.
void radiation_table(double latitude_deg, double* ra_mj_m2_d);

/// The same with Ra looked up in such a table.
void daily_et0_with_table(const double* ra_table, double elevation_m, const Days& in, std::size_t count,
                          double* et0_mm_d);

struct Hours {
  const double *t_c, *ea_kpa, *rs_mj_m2_h, *u2_m_s;
  const std::int16_t* day_of_year;  ///< of the middle, UTC
  const double* middle_h;           ///< UTC since midnight
};

/// FAO-56 eq. 53 for hours one after the other, all equations for every row, Rs/Rso carried through the
/// night.
void hourly_et0(double latitude_deg, double longitude_deg, double elevation_m, const Hours& in,
                std::size_t count, double* et0_mm_h);

}  // namespace plain
