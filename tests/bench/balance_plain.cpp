#include "bench/balance_plain.hpp"

#include <algorithm>
#include <cmath>

namespace plain {
namespace {

struct Ground {
  double taw_m, below_m, tew, rew;
};

void move_roots(double& dr, double& lower, double from, double to, double profile, const Ground& g) {
  constexpr double ze = 0.1;
  if (to > from) {
    const double dry = std::max(0.0, lower - g.taw_m * (profile - from));
    const double share = from < ze ? (std::min(to, ze) - from) / (ze - from) : 1;
    const double moved = (lower - dry) * (to - from) / (profile - from) + dry * share;
    dr += moved;
    lower -= moved;
  } else if (to < from) {
    const double dry = std::max(0.0, dr - g.taw_m * from), depth = std::min(ze, from);
    const double moved = (dr - dry) * (from - to) / from + dry * (depth - std::min(depth, to)) / depth;
    dr -= moved;
    lower += moved;
  }
}

}  // namespace

Totals run(const Member& m, const std::vector<Plant>& plants, double profile, HeightPower power) {
  constexpr double ze = 0.1;
  const Ground g{1000 * (m.fc - m.wp), 500 * m.wp, 1000 * (m.fc - 0.5 * m.wp) * ze, m.rew};
  double zr = plants[0].zr;
  double dr = m.depleted * g.taw_m * zr, lower = m.depleted * g.taw_m * (profile - zr),
         de = m.depleted * g.taw_m * ze;
  double raw = plants[0].p * g.taw_m * zr;
  Totals out{};
  for (std::size_t day = 0; day < plants.size(); ++day) {
    const Plant& plant = plants[day];
    double water = m.rain[day];
    if (dr > raw) {
      water += dr;
      ++out.refills;
    }
    move_roots(dr, lower, zr, plant.zr, profile, g);
    zr = plant.zr;
    const double et0 = m.et0[day];
    const double wind = std::clamp(m.u2[day], 1.0, 6.0), humidity = std::clamp(m.rh_min[day], 20.0, 80.0);
    const double term =
        power == HeightPower::beforehand ? plant.height_term : std::pow(plant.height / 3, 0.3);
    const double kc_max =
        std::max(1.2 + (0.04 * (wind - 2) - 0.004 * (humidity - 45)) * term, plant.kcb + 0.05);
    const double few = 1 - plant.fc;
    const double de_wet = std::max(0.0, de - water);
    const double kr = de_wet <= g.rew ? 1 : std::max(0.0, (g.tew - de_wet) / (g.tew - g.rew));
    double evaporation =
        std::min(std::min(kr * (kc_max - plant.kcb), few * kc_max) * et0, few * (g.tew - de_wet));
    const double etc = plant.kcb * et0 + evaporation;
    const double p = std::clamp(plant.p + 0.04 * (5 - etc), 0.1, 0.8);
    const double taw = g.taw_m * zr;
    raw = p * taw;
    const double dr_wet = std::max(0.0, dr - water);
    const double ks = dr_wet <= raw ? 1 : std::max(0.0, (taw - dr_wet) / (taw - raw));
    const double transpiration = std::min(ks * plant.kcb * et0, std::max(0.0, taw - (dr - water)));
    const double shallow = std::min(zr, ze), root_share = shallow / ze;
    const double roots_hold = std::max(0.0, taw + g.below_m * shallow - (dr - water) - transpiration);
    const double lower_holds = std::max(0.0, g.taw_m * (profile - zr) + g.below_m * (ze - shallow) - lower);
    double scale = 1;
    if (evaporation * root_share > roots_hold) scale = roots_hold / (evaporation * root_share);
    if (evaporation * (1 - root_share) > lower_holds)
      scale = std::min(scale, lower_holds / (evaporation * (1 - root_share)));
    evaporation *= scale;
    de = de_wet + evaporation / few;
    dr = dr - water + transpiration + evaporation * root_share;
    const double percolation = std::max(0.0, -dr);
    dr += percolation;
    lower += evaporation * (1 - root_share) - percolation;
    const double drainage = std::max(0.0, -lower);
    lower += drainage;
    const double lacking = root_share * few * de, held = root_share * few * g.tew - lacking;
    const double root_held = std::max(0.0, taw + g.below_m * shallow - dr);
    if (lacking > dr)
      de *= dr / lacking;
    else if (held > root_held)
      de = g.tew - (g.tew - de) * root_held / held;
    out.drainage += drainage;
    out.stress += std::max(0.0, plant.kcb * et0 - transpiration);
  }
  out.dr = dr;
  return out;
}

}  // namespace plain
