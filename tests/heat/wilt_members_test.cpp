#include "noonleaf/heat/wilt_members.hpp"

#include <array>
#include <cmath>
#include <cstring>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/draws.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/soil/soil_water.hpp"

#include "heat/hot_day.hpp"

using noonleaf::DayMembers;
using noonleaf::missing;
using noonleaf::PlantingMembers;
using noonleaf::WiltMembers;
using noonleaf::WiltPlanting;
using noonleaf::WiltVerdict;

namespace {

/// Days and plantings of all kinds: cool, hot, saturated, calm; from full soil to drier than TAW.
struct Many {
  std::vector<double> t_max, t_min, ea, rs, u2, before, after;
  std::vector<double> fc, wp, taw, raw, dr, total, deficit;

  explicit Many(std::uint32_t members) {
    for (std::uint32_t m = 0; m < members; ++m) {
      const auto between = [&](std::uint32_t what, double low, double high) {
        return low + (high - low) * noonleaf::uniform_draw({.seed = 31, .member = m, .what = what});
      };
      t_max.push_back(between(1, 12, 43));
      t_min.push_back(t_max.back() - between(2, 0, 18));
      before.push_back(t_max.back() + between(3, -8, 8));
      after.push_back(t_min.back() + between(4, -8, 8));
      ea.push_back(between(5, 0.4, 1.2) * 0.6108 * std::exp(17.27 * t_min.back() / (t_min.back() + 237.3)));
      rs.push_back(between(6, 2, 30));
      u2.push_back(between(7, 0.2, 7));
      wp.push_back(between(8, 0.04, 0.2));
      fc.push_back(wp.back() + between(9, 0.06, 0.18));
      taw.push_back(between(10, 15, 150));
      raw.push_back(taw.back() * between(11, 0.2, 0.7));
      dr.push_back(taw.back() * between(12, 0, 1.05));
      total.push_back(between(13, 0.5, 10));
      deficit.push_back(m % 3 == 0 ? between(14, 0, noonleaf::leaf_refill_mm) : 0.0);
    }
  }
  DayMembers day(std::size_t first, std::size_t count) const {
    const auto part = [&](const std::vector<double>& all) { return std::span(all).subspan(first, count); };
    return {part(t_max), part(t_min), part(ea), part(rs), part(u2), part(before), part(after)};
  }
  PlantingMembers planting(const WiltPlanting& shared, std::size_t first, std::size_t count) const {
    const auto part = [&](const std::vector<double>& all) { return std::span(all).subspan(first, count); };
    return {shared, part(fc), part(wp), part(taw), part(raw), part(dr), part(total), part(deficit)};
  }
  /// The scalar doors for one member.
  noonleaf::WiltDay one(const WiltPlanting& shared, std::size_t m) const {
    noonleaf::DailyShape shape = hot_day();
    shape.t_max_c = t_max[m];
    shape.t_min_c = t_min[m];
    shape.t_max_before_c = before[m];
    shape.t_min_after_c = after[m];
    shape.ea_kpa = ea[m];
    shape.rs_mj_m2_d = rs[m];
    shape.u2_m_s = u2[m];
    WiltPlanting planting = shared;
    planting.taw_mm = taw[m];
    planting.raw_mm = raw[m];
    planting.dr_mm = dr[m];
    planting.leaf_deficit_mm = deficit[m];
    planting.soil = {.theta_33 = fc[m], .theta_1500 = wp[m]};
    return through_day(planting, shape, total[m]);
  }
};

std::vector<WiltPlanting> kinds() {
  std::vector<WiltPlanting> out(3, tomato(0));
  out[1].p_frac = 0.3;
  out[1].turgor_loss_mpa = -0.8;
  out[1].root_depth_m = 0.2;
  out[1].sunlit_factor = 1.3;
  out[2].days_since_transplant = 3;
  return out;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(wilt_members)

BOOST_AUTO_TEST_CASE(agrees_with_the_scalar_doors_member_by_member) {
  constexpr std::size_t n = 1500;  // the last block is not full
  const Many all(n);
  const auto shared = kinds();
  std::vector<PlantingMembers> plantings;
  for (const WiltPlanting& kind : shared) plantings.push_back(all.planting(kind, 0, n));
  const auto batch = noonleaf::wilt_members(hot_day().site, all.day(0, n), plantings);
  std::array<int, 6> seen{};
  for (std::size_t kind = 0; kind < shared.size(); ++kind)
    for (std::size_t m = 0; m < n; ++m) {
      const auto one = all.one(shared[kind], m);
      BOOST_REQUIRE(batch[kind].verdict[m] == one.verdict);
      BOOST_REQUIRE(batch[kind].droop_hours[m] == one.droop_hours);
      BOOST_REQUIRE(std::abs(batch[kind].depletion_mm[m] - one.depletion_mm) < 1e-9);
      BOOST_REQUIRE(std::abs(batch[kind].leaf_deficit_mm[m] - one.leaf_deficit_mm) < 1e-9);
      ++seen[static_cast<std::size_t>(one.verdict)];
    }
  // The comparison is worth something only where all of it occurs.
  for (const WiltVerdict verdict :
       {WiltVerdict::comfortable, WiltVerdict::droop, WiltVerdict::stress, WiltVerdict::dry_soil_wilt})
    BOOST_TEST(seen[static_cast<std::size_t>(verdict)] > 50);
}

BOOST_AUTO_TEST_CASE(the_same_bits_whatever_the_split) {
  constexpr std::size_t n = 300;
  const Many all(n);
  const std::vector<PlantingMembers> whole{all.planting(tomato(0), 0, n)};
  const auto together = noonleaf::wilt_members(hot_day().site, all.day(0, n), whole);
  for (const auto& [first, count] : {std::pair<std::size_t, std::size_t>{200, 100}, {0, 1}, {1, 199}}) {
    const std::vector<PlantingMembers> part{all.planting(tomato(0), first, count)};
    const auto apart = noonleaf::wilt_members(hot_day().site, all.day(first, count), part);
    BOOST_TEST(std::memcmp(&together[0].depletion_mm[first], apart[0].depletion_mm.data(),
                           count * sizeof(double)) == 0);
    BOOST_TEST(std::memcmp(&together[0].leaf_deficit_mm[first], apart[0].leaf_deficit_mm.data(),
                           count * sizeof(double)) == 0);
  }
}

BOOST_AUTO_TEST_CASE(one_bad_member_is_unknown_and_spoils_no_other) {
  const Many sound(70);
  const std::vector<PlantingMembers> before{sound.planting(tomato(0), 0, 70)};
  const auto expected = noonleaf::wilt_members(hot_day().site, sound.day(0, 70), before);
  const auto check = [&](auto spoil) {
    Many all(70);
    spoil(all);
    const std::vector<PlantingMembers> plantings{all.planting(tomato(0), 0, 70)};
    const auto found = noonleaf::wilt_members(hot_day().site, all.day(0, 70), plantings);
    BOOST_CHECK(found[0].verdict[5] == WiltVerdict::unknown);
    BOOST_TEST(std::isnan(found[0].droop_hours[5]));
    BOOST_TEST(std::isnan(found[0].depletion_mm[5]));
    for (std::size_t m = 0; m < 70; ++m)
      if (m != 5) BOOST_REQUIRE(found[0].depletion_mm[m] == expected[0].depletion_mm[m]);
  };
  check([](Many& all) { all.t_max[5] = missing; });
  check([](Many& all) { all.t_min[5] = all.t_max[5] + 1; });
  check([](Many& all) { all.rs[5] = -1; });
  check([](Many& all) { all.ea[5] = missing; });
  check([](Many& all) { all.wp[5] = all.fc[5]; });
  check([](Many& all) { all.raw[5] = all.taw[5] + 1; });
  check([](Many& all) { all.dr[5] = missing; });
  check([](Many& all) { all.total[5] = missing; });
}

BOOST_AUTO_TEST_CASE(refuses_spans_of_different_lengths) {
  const Many all(10);
  const std::vector<PlantingMembers> plantings{all.planting(tomato(0), 0, 9)};
  BOOST_CHECK_THROW(noonleaf::wilt_members(hot_day().site, all.day(0, 10), plantings), noonleaf::Error);
}

BOOST_AUTO_TEST_SUITE_END()
