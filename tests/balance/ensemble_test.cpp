#include "noonleaf/balance/ensemble.hpp"

#include <cmath>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/run.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"

#include "balance/random_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::BalanceSettings;
using noonleaf::EnsembleGround;
using noonleaf::EnsembleSky;
using noonleaf::EnsembleWatering;
using noonleaf::find_crop;
using noonleaf::GrowthDay;
using noonleaf::missing;

namespace {

constexpr auto january = 2023y / 1 / 1;

/// Soils and weather of many members, kept as the batch wants them.
struct Members {
  std::size_t n, days;
  std::vector<double> fc, wp, rew, depleted, share, et0, rain, u2, rh_min;

  Members(std::size_t members, std::size_t n_days, std::uint64_t seed) : n(members), days(n_days) {
    Draws draws(seed);
    for (std::size_t m = 0; m < n; ++m) {
      wp.push_back(draws.between(0.03, 0.22));
      fc.push_back(wp.back() + draws.between(0.06, 0.18));
      rew.push_back(draws.between(2, 9) * 0.5);
      depleted.push_back(draws.uniform());
      share.push_back(draws.between(0.6, 1.2));
    }
    for (std::size_t i = 0; i < n * days; ++i) {
      et0.push_back(draws.between(0, 9));
      rain.push_back(draws.uniform() < 0.12 ? draws.between(0, 40) : 0);
      u2.push_back(draws.between(0.2, 8));
      rh_min.push_back(draws.between(5, 95));
    }
  }
  EnsembleGround ground(double profile) const { return {fc, wp, rew, depleted, 0.10, profile}; }
  EnsembleSky sky() const {
    const auto by_day = static_cast<std::ptrdiff_t>(n);
    return {{et0.data(), by_day, 1},
            {rain.data(), by_day, 1},
            {u2.data(), by_day, 1},
            {rh_min.data(), by_day, 1}};
  }
};

std::vector<GrowthDay> a_year() {
  std::vector<GrowthDay> growth = growth_days(noonleaf::bare_soil(), {.start = january}, january, 90, {});
  const auto add = [&](const char* crop, std::size_t n) {
    const std::chrono::year_month_day from{std::chrono::sys_days{january} +
                                           std::chrono::days{static_cast<int>(growth.size())}};
    const auto more = growth_days(find_crop(crop), {.start = from}, from, n, {3, 35});
    growth.insert(growth.end(), more.begin(), more.end());
  };
  add("lettuce", 70);
  add("annual_flowers", 60);
  add("tomato", 145);
  return growth;
}

/// One member through the scalar door, with the same rule for refilling.
struct OneMember {
  std::vector<double> dr;
  double refills = 0, drainage = 0, stress = 0, evaporation = 0;
};
OneMember one_member(const Members& all, std::size_t m, const EnsembleWatering& watering,
                     const std::vector<GrowthDay>& growth, const BalanceSettings& settings) {
  const noonleaf::SoilWater soil{
      .field_capacity_m3_m3 = all.fc[m], .wilting_point_m3_m3 = all.wp[m], .rew_mm = all.rew[m]};
  auto state = noonleaf::initial_state(soil, growth[0].root_depth_m, 1.5, all.depleted[m]);
  double raw = growth[0].p_frac * taw_mm(soil, growth[0].root_depth_m);
  OneMember out;
  for (std::size_t i = 0; i < growth.size(); ++i) {
    const std::size_t at = i * all.n + m;
    noonleaf::BalanceDay day{
        .et0_mm_d = all.et0[at], .u2_m_s = all.u2[at], .rh_min_pct = all.rh_min[at], .rain_mm = all.rain[at]};
    if (!watering.irrigation_mm.empty()) day.irrigation_mm = watering.irrigation_mm[i] * all.share[m];
    if (!watering.evening_irrigation_mm.empty())
      day.evening_irrigation_mm = watering.evening_irrigation_mm[i] * all.share[m];
    if (state.dr_mm > watering.refill_beyond_raw_frac * raw) {
      day.irrigation_mm += std::min(state.dr_mm, watering.refill_max_mm);
      out.refills += 1;
    }
    const auto detail = noonleaf::daily_step(state, day, growth[i], soil, settings);
    state = detail.end;
    raw = detail.raw_mm;
    out.dr.push_back(state.dr_mm);
    out.drainage += detail.drainage_mm;
    out.evaporation += detail.evaporation_mm;
    const double unstressed = noonleaf::is_known(detail.kcb) ? detail.kcb * detail.et0_mm_d : detail.etc_mm_d;
    out.stress += std::max(0.0, unstressed - detail.transpiration_mm);
  }
  return out;
}

noonleaf::EnsembleResult one_planting(const EnsembleGround& ground, const EnsembleSky& sky,
                                      const EnsembleWatering& watering, const std::vector<GrowthDay>& growth,
                                      const BalanceSettings& settings, std::span<double> trace = {}) {
  const noonleaf::EnsemblePlanting planting{growth, settings, watering, trace};
  return run_ensemble(ground, sky, {&planting, 1}).front();
}

std::vector<BalanceSettings> settings_served() {
  std::vector<BalanceSettings> out(6);
  out[1].curve_number = 78;
  out[1].depletion = noonleaf::DepletionFraction::fixed;
  out[2].irrigated_frac = 0.35;
  out[2].top_roots = noonleaf::TopLayerRoots::drawn;
  out[3].method = noonleaf::CoefficientMethod::single;
  out[3].salt_stress = 0.9;
  out[4].irrigated_frac = 0.4;
  out[4].curve_number = 70;
  out[4].emitters = noonleaf::EmitterPlace::under_canopy;
  out[4].evaporation_factor = 0.75;
  out[5].curve_number = 100;  // sealed ground: it holds nothing back, on a day without rain too
  return out;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(ensemble)

BOOST_AUTO_TEST_CASE(agrees_with_the_scalar_door_member_by_member) {
  const auto growth = a_year();
  const Members all(150, growth.size(), 77);  // more than one block, the last one not full
  std::vector<double> plan(growth.size(), 0.0), evening(growth.size(), 0.0);
  for (std::size_t i = 0; i < plan.size(); i += 9) plan[i] = 8;
  for (std::size_t i = 4; i < plan.size(); i += 13) evening[i] = 6;
  const EnsembleWatering watering{plan, evening, all.share, 1.0, 25};
  std::size_t refills = 0;
  for (const BalanceSettings& settings : settings_served()) {
    std::vector<double> trace(all.n * growth.size());
    const auto batch = one_planting(all.ground(1.5), all.sky(), watering, growth, settings, trace);
    BOOST_TEST(batch.missing_members.empty());
    for (std::size_t m = 0; m < all.n; ++m) {
      const OneMember one = one_member(all, m, watering, growth, settings);
      for (std::size_t i = 0; i < growth.size(); ++i)
        BOOST_REQUIRE(std::abs(trace[i * all.n + m] - one.dr[i]) < 1e-9);
      BOOST_REQUIRE(batch.refills[m] == one.refills);  // the same irrigation days
      BOOST_REQUIRE(std::abs(batch.drainage_mm[m] - one.drainage) < 1e-9);
      BOOST_REQUIRE(std::abs(batch.evaporation_mm[m] - one.evaporation) < 1e-9);
      BOOST_REQUIRE(std::abs(batch.stress_mm[m] - one.stress) < 1e-9);
      refills += static_cast<std::size_t>(one.refills);
    }
  }
  BOOST_TEST(refills > 1000U);  // the rule was at work
}

BOOST_AUTO_TEST_CASE(missing_members_stay_missing_and_alone) {
  const auto growth = a_year();
  Members all(20, growth.size(), 5);
  all.et0[100 * all.n + 3] = missing;
  all.rain[50 * all.n + 7] = -1;
  all.fc[11] = 0.01;
  const auto batch = one_planting(all.ground(1.5), all.sky(), {}, growth, {});
  const std::vector<std::size_t> expected = {3, 7, 11};
  BOOST_TEST(batch.missing_members == expected, boost::test_tools::per_element());
  for (std::size_t m = 0; m < all.n; ++m) {
    const bool gone = m == 3 || m == 7 || m == 11;
    BOOST_TEST(noonleaf::is_missing(batch.dr_mm[m]) == gone);
    BOOST_TEST(noonleaf::is_missing(batch.stress_mm[m]) == gone);
  }
  const OneMember scalar = one_member(all, 3, {}, growth, {});
  BOOST_TEST(noonleaf::is_missing(scalar.dr.back()));
}

BOOST_AUTO_TEST_CASE(a_trace_is_missing_from_the_day_that_is) {
  const auto growth = a_year();
  Members all(70, growth.size(), 6);
  all.et0[100 * all.n + 3] = missing;
  all.rain[50 * all.n + 65] = 5000;
  std::vector<double> trace(all.n * growth.size());
  one_planting(all.ground(1.5), all.sky(), {}, growth, {}, trace);
  for (std::size_t day = 0; day < growth.size(); ++day) {
    BOOST_REQUIRE(noonleaf::is_missing(trace[day * all.n + 3]) == (day >= 100));
    BOOST_REQUIRE(noonleaf::is_missing(trace[day * all.n + 65]) == (day >= 50));
    BOOST_REQUIRE(noonleaf::is_known(trace[day * all.n + 4]));
  }
}

BOOST_AUTO_TEST_CASE(growth_with_something_missing_is_as_in_the_scalar_door) {
  auto growth = a_year();
  Members all(3, growth.size(), 11);
  growth[120].kc_max = missing;  // needed only where wind or humidity is missing
  all.u2[120 * all.n + 1] = missing;
  std::vector<double> trace(all.n * growth.size());
  const auto some = one_planting(all.ground(1.5), all.sky(), {}, growth, {}, trace);
  const std::vector<std::size_t> second = {1};
  BOOST_TEST(some.missing_members == second, boost::test_tools::per_element());
  BOOST_TEST(noonleaf::is_known(trace[119 * all.n + 1]));
  for (std::size_t m = 0; m < all.n; ++m) {
    const OneMember one = one_member(all, m, {}, growth, {});
    BOOST_TEST(noonleaf::is_missing(one.dr.back()) == (m == 1));
    BOOST_TEST(noonleaf::is_missing(some.dr_mm[m]) == (m == 1));
  }
  growth[110].kcb = missing;  // needed by all
  const auto none = one_planting(all.ground(1.5), all.sky(), {}, growth, {}, trace);
  BOOST_TEST(none.missing_members.size() == all.n);
  BOOST_TEST(noonleaf::is_known(trace[109 * all.n]));
  BOOST_TEST(noonleaf::is_missing(trace[110 * all.n]));
  BOOST_TEST(noonleaf::is_missing(one_member(all, 0, {}, growth, {}).dr.back()));
}

BOOST_AUTO_TEST_CASE(weather_can_be_shared_and_wind_left_out) {
  const auto growth = a_year();
  const Members all(5, growth.size(), 9);
  const Members one(1, growth.size(), 10);
  const EnsembleSky shared{{one.et0.data(), 1, 0}, {one.rain.data(), 1, 0}, {}, {}};
  const auto batch = one_planting(all.ground(1.5), shared, {}, growth, {});
  Members spread = all;
  for (std::size_t i = 0; i < growth.size(); ++i)
    for (std::size_t m = 0; m < all.n; ++m) {
      spread.et0[i * all.n + m] = one.et0[i];
      spread.rain[i * all.n + m] = one.rain[i];
      spread.u2[i * all.n + m] = missing;
    }
  for (std::size_t m = 0; m < all.n; ++m)
    BOOST_CHECK_SMALL(batch.dr_mm[m] - one_member(spread, m, {}, growth, {}).dr.back(), 1e-9);
}

BOOST_AUTO_TEST_CASE(the_split_changes_nothing) {
  const auto growth = a_year();
  const Members all(300, growth.size(), 21);
  const EnsembleWatering rule{
      .irrigation_mm = {}, .evening_irrigation_mm = {}, .share = {}, .refill_beyond_raw_frac = 1};
  const auto whole = one_planting(all.ground(1.5), all.sky(), rule, growth, {});
  const std::size_t from = 77, n = 130;
  const EnsembleGround part{std::span(all.fc).subspan(from, n),
                            std::span(all.wp).subspan(from, n),
                            std::span(all.rew).subspan(from, n),
                            std::span(all.depleted).subspan(from, n),
                            0.10,
                            1.5};
  EnsembleSky sky = all.sky();
  for (auto* series : {&sky.et0_mm_d, &sky.rain_mm, &sky.u2_m_s, &sky.rh_min_pct}) series->data += from;
  const auto split = one_planting(part, sky, rule, growth, {});
  for (std::size_t m = 0; m < n; ++m) {
    BOOST_TEST(split.dr_mm[m] == whole.dr_mm[from + m]);
    BOOST_TEST(split.refills[m] == whole.refills[from + m]);
  }
}

BOOST_AUTO_TEST_CASE(plantings_under_one_sky_do_not_touch_each_other) {
  const auto growth = a_year();
  const Members all(140, growth.size(), 8);
  BalanceSettings drip;
  drip.irrigated_frac = 0.35;
  const noonleaf::EnsemblePlanting plantings[] = {
      {growth, {}, {}, {}}, {growth, drip, {}, {}}, {growth, {}, {}, {}}};
  const auto together = run_ensemble(all.ground(1.5), all.sky(), plantings);
  const auto alone = one_planting(all.ground(1.5), all.sky(), {}, growth, drip);
  BOOST_TEST(together[1].dr_mm == alone.dr_mm, boost::test_tools::per_element());
  BOOST_TEST(together[0].stress_mm == together[2].stress_mm, boost::test_tools::per_element());
}

BOOST_AUTO_TEST_CASE(what_the_batch_does_not_serve_is_refused) {
  const auto growth = a_year();
  const Members all(3, growth.size(), 1);
  BalanceSettings printed;
  printed.surface = noonleaf::SurfaceAccount::as_printed;
  BOOST_CHECK_THROW(one_planting(all.ground(1.5), all.sky(), {}, growth, printed), noonleaf::Error);
  BOOST_CHECK_THROW(one_planting(all.ground(0.3), all.sky(), {}, growth, {}), noonleaf::Error);
  BOOST_CHECK_THROW(one_planting(all.ground(1.5), {}, {}, growth, {}), noonleaf::Error);
  BalanceSettings unknown_salt;
  unknown_salt.salt_stress = missing;
  BOOST_CHECK_THROW(one_planting(all.ground(1.5), all.sky(), {}, growth, unknown_salt), noonleaf::Error);
  BalanceSettings beyond_sealed;
  beyond_sealed.curve_number = 101;
  BOOST_CHECK_THROW(one_planting(all.ground(1.5), all.sky(), {}, growth, beyond_sealed), noonleaf::Error);
  EnsembleGround odd = all.ground(1.5);
  odd.rew_mm = odd.rew_mm.first(2);
  BOOST_CHECK_THROW(one_planting(odd, all.sky(), {}, growth, {}), noonleaf::Error);
}

// Cut in two where the first half ends: the same depletion and limit, day by day.
BOOST_AUTO_TEST_CASE(goes_on_from_where_it_stopped) {
  auto growth = growth_days(find_crop("tomato"), {.start = january},
                            std::chrono::sys_days(january) + std::chrono::days(60), 20, {3, 35});
  for (GrowthDay& day : growth)
    day.root_depth_m = growth.front().root_depth_m;  // no growth between the halves
  const Members all(70, growth.size(), 5);
  std::vector<double> dr(all.n * 20), raw(all.n * 20), dr_late(all.n * 10), raw_late(all.n * 10);
  const noonleaf::EnsemblePlanting whole{growth, {}, {}, dr, raw};
  run_ensemble(all.ground(1.5), all.sky(), {&whole, 1});
  const noonleaf::EnsemblePlanting early{std::span(growth).first(10)};
  const auto half = run_ensemble(all.ground(1.5), all.sky(), {&early, 1}).front();
  EnsembleSky sky = all.sky();
  for (auto* series : {&sky.et0_mm_d, &sky.rain_mm, &sky.u2_m_s, &sky.rh_min_pct}) series->data += 10 * all.n;
  const noonleaf::EnsemblePlanting late{std::span(growth).subspan(10),          {}, {}, dr_late, raw_late,
                                        {half.dr_mm, half.lower_mm, half.de_mm}};
  run_ensemble(all.ground(1.5), sky, {&late, 1});
  for (std::size_t i = 0; i < dr_late.size(); ++i) {
    BOOST_REQUIRE(std::abs(dr_late[i] - dr[10 * all.n + i]) < 1e-9);
    BOOST_REQUIRE(std::abs(raw_late[i] - raw[10 * all.n + i]) < 1e-9);
  }
}

BOOST_AUTO_TEST_SUITE_END()
