#pragma once

#include <cstddef>
#include <vector>

/// The baseline: the same balance as anybody would write it for one member, a day at a time, on plain
/// doubles. What the members share (coefficients, the power of the height) is worked out beforehand for it
/// too.
namespace plain {

struct Plant {
  double zr, kcb, height, height_term, fc, p;
};

struct Member {
  double fc, wp, rew, depleted;
  const double *et0, *rain, *u2, *rh_min;  ///< its days, one after the other
};

struct Totals {
  double dr, stress, drainage;
  int refills;
};

/// Where (h / 3)^0.3 of FAO-56 eq. 72 is worked out: with each day of each member, as the equation stands, or
/// once for all members beforehand, as the batch does.
enum class HeightPower { each_day, beforehand };

/// Refills when Dr at dawn exceeds RAW.
Totals run(const Member& member, const std::vector<Plant>& plants, double profile, HeightPower power);

}  // namespace plain
