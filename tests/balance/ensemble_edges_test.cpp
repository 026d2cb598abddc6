// The batch of many members where it is easiest to be wrong: totals, dry ground under shallow roots, what a member may
// be, and how the caller keeps his numbers.
#include <cmath>
#include <functional>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/ensemble.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/crop/crop_table.hpp"

#include "accepted_range.hpp"
#include "balance/random_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::BalanceSettings;
using noonleaf::EnsembleGround;
using noonleaf::EnsemblePlanting;
using noonleaf::EnsembleResult;
using noonleaf::EnsembleSky;
using noonleaf::GrowthDay;
using noonleaf::missing;

namespace {

constexpr auto first_day = 2024y / 5 / 1;
constexpr double profile_m = 1.2;

/// Members of our own invention, kept day by day or member by member.
struct Members {
  std::size_t n, days;
  std::vector<double> fc, wp, rew, depleted, et0, rain, u2,
      rh_min;  ///< weather: member after member of a day

  Members(std::size_t members, std::size_t n_days, double rain_share) : n(members), days(n_days) {
    Draws draws(99);
    for (std::size_t m = 0; m < n; ++m) {
      wp.push_back(draws.between(0.08, 0.2));
      fc.push_back(wp.back() + draws.between(0.08, 0.15));
      rew.push_back(draws.between(2, 4));
      depleted.push_back(draws.uniform());
    }
    for (std::size_t i = 0; i < n * days; ++i) {
      et0.push_back(draws.between(2, 9));
      rain.push_back(draws.uniform() < rain_share ? draws.between(0, 40) : 0);
      u2.push_back(draws.between(0.5, 7));
      rh_min.push_back(draws.between(10, 90));
    }
  }
  EnsembleGround ground() const { return {fc, wp, rew, depleted, 0.10, profile_m}; }
  EnsembleSky sky() const {
    const auto by_day = static_cast<std::ptrdiff_t>(n);
    return {{et0.data(), by_day, 1},
            {rain.data(), by_day, 1},
            {u2.data(), by_day, 1},
            {rh_min.data(), by_day, 1}};
  }
};

/// A crop of 60 days whose roots go from `from_m` to `to_m` and back in the last ten.
std::vector<GrowthDay> crop_with_roots(double from_m, double to_m) {
  const auto last = std::chrono::sys_days{first_day} + std::chrono::days{60};
  std::vector<GrowthDay> growth =
      growth_days(noonleaf::find_crop("tomato"), {.start = first_day}, last, 60, {3, 35});
  for (std::size_t i = 0; i < 60; ++i) {
    growth[i].root_depth_m = i < 50 ? from_m + (to_m - from_m) * static_cast<double>(i) / 50.0 : from_m;
    growth[i].kcb = 0.4;
    growth[i].cover_frac = 0.2;
  }
  return growth;
}

/// Days one by one, for one member.
struct OneByOne {
  noonleaf::BalanceState end;
  double transpiration = 0, evaporation = 0, drainage = 0, runoff = 0, irrigation = 0, beyond = 0, raw = 0;
};
OneByOne one_by_one(const Members& all, std::size_t m, const std::vector<GrowthDay>& growth,
                    const BalanceSettings& settings, std::span<const double> morning = {},
                    std::span<const double> evening = {}) {
  const noonleaf::SoilWater soil{
      .field_capacity_m3_m3 = all.fc[m], .wilting_point_m3_m3 = all.wp[m], .rew_mm = all.rew[m]};
  OneByOne out;
  out.end = noonleaf::initial_state(soil, growth[0].root_depth_m, profile_m, all.depleted[m]);
  for (std::size_t i = 0; i < growth.size(); ++i) {
    const std::size_t at = i * all.n + m;
    const auto detail = noonleaf::daily_step(out.end,
                                             {.et0_mm_d = all.et0[at],
                                              .u2_m_s = all.u2[at],
                                              .rh_min_pct = all.rh_min[at],
                                              .rain_mm = all.rain[at],
                                              .irrigation_mm = morning.empty() ? 0 : morning[i],
                                              .evening_irrigation_mm = evening.empty() ? 0 : evening[i]},
                                             growth[i], soil, settings);
    out.end = detail.end;
    out.transpiration += detail.transpiration_mm;
    out.evaporation += detail.evaporation_mm;
    out.drainage += detail.drainage_mm;
    out.runoff += detail.runoff_mm;
    out.irrigation += detail.irrigation_mm;
    out.raw = detail.raw_mm;
    out.beyond += detail.end.dr_mm > detail.raw_mm ? 1 : 0;
  }
  return out;
}

void check_same(const EnsembleResult& batch, std::size_t m, const OneByOne& one) {
  BOOST_TEST_CONTEXT("member " << m) {
    BOOST_CHECK_SMALL(batch.dr_mm[m] - one.end.dr_mm, 1e-9);
    BOOST_CHECK_SMALL(batch.lower_mm[m] - one.end.lower_mm, 1e-9);
    if (noonleaf::is_known(one.end.de_mm)) BOOST_CHECK_SMALL(batch.de_mm[m] - one.end.de_mm, 1e-9);
    BOOST_CHECK_SMALL(batch.raw_mm[m] - one.raw, 1e-9);
    BOOST_CHECK_SMALL(batch.transpiration_mm[m] - one.transpiration, 1e-9);
    BOOST_CHECK_SMALL(batch.evaporation_mm[m] - one.evaporation, 1e-9);
    BOOST_CHECK_SMALL(batch.drainage_mm[m] - one.drainage, 1e-9);
    BOOST_CHECK_SMALL(batch.runoff_mm[m] - one.runoff, 1e-9);
    BOOST_CHECK_SMALL(batch.irrigation_mm[m] - one.irrigation, 1e-9);
    BOOST_TEST(batch.days_beyond_raw[m] == one.beyond);
  }
}

EnsembleResult run_one(const EnsembleGround& ground, const EnsembleSky& sky,
                       const EnsemblePlanting& planting) {
  return run_ensemble(ground, sky, {&planting, 1}).front();
}

std::vector<BalanceSettings> settings_with_corners() {
  std::vector<BalanceSettings> out(6);
  out[1].irrigated_frac = 0.4;
  out[2].top_roots = noonleaf::TopLayerRoots::drawn;  // under a sprinkler
  out[3].irrigated_frac = 0.4;
  out[3].top_roots = noonleaf::TopLayerRoots::drawn;
  out[3].curve_number = 85;
  out[4].curve_number = 85;
  out[5].method = noonleaf::CoefficientMethod::single;
  out[5].curve_number = 85;
  return out;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(ensemble_edges)

BOOST_AUTO_TEST_CASE(all_totals_and_states_are_those_of_the_days_one_by_one) {
  const Members all(70, 60, 0.15);
  std::vector<double> morning(60, 0.0), evening(60, 0.0);
  for (std::size_t i = 3; i < 60; i += 7) morning[i] = 9;
  for (std::size_t i = 5; i < 60; i += 11) evening[i] = 6;
  for (const double deepest_m : {0.6, 0.08})
    for (const BalanceSettings& settings : settings_with_corners()) {
      const auto growth = crop_with_roots(0.05, deepest_m);
      const auto batch = run_one(all.ground(), all.sky(), {growth, settings, {morning, evening, {}}});
      for (const std::size_t m : {0U, 1U, 33U, 63U, 64U, 69U})
        check_same(batch, m, one_by_one(all, m, growth, settings, morning, evening));
    }
}

// Never a drop: the ground gets as dry as it can, below the wilting point where evaporation takes it.
BOOST_AUTO_TEST_CASE(ground_that_dries_out_does_so_as_day_by_day) {
  Members all(5, 60, 0.0);
  all.depleted = {0, 0.3, 0.6, 0.9, 1};
  for (const double deepest_m : {0.05, 0.08, 0.6})
    for (const BalanceSettings& settings : settings_with_corners()) {
      auto growth = crop_with_roots(0.05, deepest_m);
      for (auto& day : growth) day.p_frac = 0.75;  // with little demand it would pass 0.8
      const auto batch = run_one(all.ground(), all.sky(), {growth, settings});
      for (std::size_t m = 0; m < all.n; ++m) check_same(batch, m, one_by_one(all, m, growth, settings));
    }
}

BOOST_AUTO_TEST_CASE(weather_may_be_kept_member_by_member) {
  const Members all(77, 60, 0.15);  // whole eights, blocks and a rest
  const auto growth = crop_with_roots(0.2, 0.6);
  const auto turned = [&](const std::vector<double>& by_day) {
    std::vector<double> out(by_day.size());
    for (std::size_t i = 0; i < all.days; ++i)
      for (std::size_t m = 0; m < all.n; ++m) out[m * all.days + i] = by_day[i * all.n + m];
    return out;
  };
  const std::vector<double> et0 = turned(all.et0), rain = turned(all.rain), u2 = turned(all.u2),
                            rh_min = turned(all.rh_min);
  const auto by_member = static_cast<std::ptrdiff_t>(all.days);
  const EnsembleSky sky{{et0.data(), 1, by_member},
                        {rain.data(), 1, by_member},
                        {u2.data(), 1, by_member},
                        {rh_min.data(), 1, by_member}};
  const auto a = run_one(all.ground(), all.sky(), {growth}), b = run_one(all.ground(), sky, {growth});
  BOOST_TEST(a.dr_mm == b.dr_mm, boost::test_tools::per_element());
  BOOST_TEST(a.evaporation_mm == b.evaporation_mm, boost::test_tools::per_element());
}

BOOST_AUTO_TEST_CASE(one_number_serves_all_days_and_members) {
  const Members all(3, 60, 0.0);
  const double et0 = 5, rain = 0;
  const auto growth = crop_with_roots(0.2, 0.6);
  const auto batch = run_one(all.ground(), {{&et0}, {&rain}, {}, {}}, {growth});
  Members spread = all;
  spread.et0.assign(spread.et0.size(), 5.0);
  spread.u2.assign(spread.u2.size(), missing);
  for (std::size_t m = 0; m < all.n; ++m) check_same(batch, m, one_by_one(spread, m, growth, {}));
}

// Without wind the growth day's Kc max holds, from the first day on.
BOOST_AUTO_TEST_CASE(without_wind_the_first_day_has_the_kc_max_of_its_growth) {
  Members all(4, 1, 0.0);
  all.depleted.assign(4, 0.0);
  all.u2.assign(4, missing);
  std::vector<GrowthDay> growth{crop_with_roots(0.2, 0.6).front()};
  growth[0].kc_max = 1.35;
  EnsembleSky sky = all.sky();
  sky.u2_m_s = sky.rh_min_pct = {};
  const auto batch = run_one(all.ground(), sky, {growth});
  for (std::size_t m = 0; m < 4; ++m) check_same(batch, m, one_by_one(all, m, growth, {}));
}

BOOST_AUTO_TEST_CASE(what_is_not_said_of_share_and_depth) {
  const Members all(3, 60, 0.1);
  const auto growth = crop_with_roots(0.2, 0.6);
  const std::vector<double> morning(60, 4.0), ones(3, 1.0);
  const auto unsaid = run_one(all.ground(), all.sky(), {growth, {}, {morning, {}, {}}});
  const auto said = run_one(all.ground(), all.sky(), {growth, {}, {morning, {}, ones}});
  BOOST_TEST(unsaid.dr_mm == said.dr_mm, boost::test_tools::per_element());
  BOOST_CHECK_CLOSE(unsaid.irrigation_mm[1], 240.0, 1e-9);
  EnsembleGround ground{.field_capacity_m3_m3 = all.fc,
                        .wilting_point_m3_m3 = all.wp,
                        .rew_mm = all.rew,
                        .depleted_frac = all.depleted,
                        .profile_depth_m = profile_m};  // a top layer of 0.10 m
  BOOST_TEST(run_one(ground, all.sky(), {growth}).de_mm == run_one(all.ground(), all.sky(), {growth}).de_mm,
             boost::test_tools::per_element());
}

// A refill brings 1000 mm and no more if nothing else is said: roots of 9 m in empty ground would take more.
BOOST_AUTO_TEST_CASE(one_refill_brings_a_metre_at_most) {
  Members all(2, 1, 0.0);
  all.fc = {0.3, 0.3};
  all.wp = {0.15, 0.15};
  all.depleted = {1, 0.2};
  std::vector<GrowthDay> growth{crop_with_roots(0.2, 0.6).front()};
  growth[0].root_depth_m = 9;
  EnsembleGround ground = all.ground();
  ground.profile_depth_m = 10;
  const auto batch = run_one(
      ground, all.sky(),
      {growth,
       {},
       {.irrigation_mm = {}, .evening_irrigation_mm = {}, .share = {}, .refill_beyond_raw_frac = 0.1}});
  BOOST_TEST(batch.irrigation_mm[0] == 1000.0);
  BOOST_CHECK_CLOSE(batch.irrigation_mm[1], 0.2 * 1350, 1e-9);
}

// Each end of what a member may be, and the first number beyond it.
BOOST_AUTO_TEST_CASE(sound_members_and_others) {
  const auto growth = crop_with_roots(0.2, 0.6);
  struct Case {
    const char* what;
    std::function<void(Members&, std::vector<double>&)> change;
    bool sound;
  };
  const std::vector<Case> cases = {
      {"FC 0.95", [](Members& m, auto&) { m.fc[0] = 0.95; }, true},
      {"FC 0.951", [](Members& m, auto&) { m.fc[0] = 0.951; }, false},
      {"WP 0", [](Members& m, auto&) { m.wp[0] = 0; }, true},
      {"WP below 0", [](Members& m, auto&) { m.wp[0] = -0.001; }, false},
      {"REW 0", [](Members& m, auto&) { m.rew[0] = 0; }, true},
      {"REW 0.5", [](Members& m, auto&) { m.rew[0] = 0.5; }, true},
      {"REW below 0", [](Members& m, auto&) { m.rew[0] = -0.001; }, false},
      {"all gone", [](Members& m, auto&) { m.depleted[0] = 1; }, true},
      {"more than all gone", [](Members& m, auto&) { m.depleted[0] = 1.001; }, false},
      {"nothing gone", [](Members& m, auto&) { m.depleted[0] = 0; }, true},
      {"less than nothing gone", [](Members& m, auto&) { m.depleted[0] = -0.001; }, false},
      {"share 10", [](Members&, auto& share) { share[0] = 10; }, true},
      {"share 10.001", [](Members&, auto& share) { share[0] = 10.001; }, false},
      {"share 0", [](Members&, auto& share) { share[0] = 0; }, true},
      {"share below 0", [](Members&, auto& share) { share[0] = -0.001; }, false},
      {"ET0 30", [](Members& m, auto&) { m.et0[0] = 30; }, true},
      {"ET0 30.001", [](Members& m, auto&) { m.et0[0] = 30.001; }, false},
      {"ET0 0", [](Members& m, auto&) { m.et0[0] = 0; }, true},
      {"ET0 below 0", [](Members& m, auto&) { m.et0[0] = -0.001; }, false},
      {"rain 2000", [](Members& m, auto&) { m.rain[0] = 2000; }, true},
      {"rain 2000.001", [](Members& m, auto&) { m.rain[0] = 2000.001; }, false},
      {"rain below 0", [](Members& m, auto&) { m.rain[0] = -0.001; }, false},
  };
  for (const Case& one : cases) {
    Members all(3, 60, 0.1);
    std::vector<double> share(3, 1.0), trace(3 * 60);
    one.change(all, share);
    const auto batch = run_one(all.ground(), all.sky(), {growth, {}, {{}, {}, share}, trace});
    const std::vector<std::size_t> expected =
        one.sound ? std::vector<std::size_t>{} : std::vector<std::size_t>{0};
    BOOST_TEST_CONTEXT(one.what) {
      BOOST_TEST(batch.missing_members == expected, boost::test_tools::per_element());
      BOOST_TEST(noonleaf::is_missing(trace[0]) == !one.sound);  // from the first day on
      BOOST_TEST(noonleaf::is_known(trace[1]));
    }
  }
}

BOOST_AUTO_TEST_CASE(a_start_of_its_own_is_sound_or_not) {
  const Members all(3, 60, 0.1);
  const auto growth = crop_with_roots(0.2, 0.6);
  const auto missing_with = [&](double dr, double lower, double de) {
    const std::vector<double> drs{dr, 5, 5}, lowers{lower, 5, 5}, des{de, 2, 2};
    return run_one(all.ground(), all.sky(), {growth, {}, {}, {}, {}, {drs, lowers, des}})
        .missing_members.size();
  };
  BOOST_TEST(missing_with(0, 0, 0) == 0U);
  BOOST_TEST(missing_with(9999, 5, 2) == 0U);
  for (const double odd : {-0.001, 1e4, 1.05e4, missing}) {
    BOOST_TEST(missing_with(odd, 5, 2) == 1U);
    BOOST_TEST(missing_with(5, odd, 2) == 1U);
    BOOST_TEST(missing_with(5, 5, odd) == 1U);
  }
}

BOOST_AUTO_TEST_CASE(ranges_of_the_batch) {
  const Members all(3, 60, 0.1);
  const auto growth = crop_with_roots(0.2, 0.6);
  const auto ground_with = [&](double ze, double profile) {
    EnsembleGround ground = all.ground();
    ground.evaporation_depth_m = ze;
    ground.profile_depth_m = profile;
    return run_one(ground, all.sky(), {growth});
  };
  check_accepted("evaporation_depth_m", 0.05, 0.3, [&](double x) { return ground_with(x, 1.2); });
  check_accepted("profile_depth_m", 0.7, 10, [&](double x) {
    if (x < 0.7)
      x = std::nextafter(0.1, 0);  // shallower than the top layer; between lie the roots' own words
    return ground_with(0.1, x);
  });
  const auto settings_with = [&](double BalanceSettings::*which, double value) {
    BalanceSettings settings;
    settings.*which = value;
    return run_one(all.ground(), all.sky(), {growth, settings});
  };
  check_accepted("irrigated_frac", 0.01, 1,
                 [&](double x) { return settings_with(&BalanceSettings::irrigated_frac, x); });
  check_accepted("curve_number", 1, 100,
                 [&](double x) { return settings_with(&BalanceSettings::curve_number, x); });
  check_accepted("salt_stress", 0, 1,
                 [&](double x) { return settings_with(&BalanceSettings::salt_stress, x); });
  check_accepted("evaporation_factor", 0, 1,
                 [&](double x) { return settings_with(&BalanceSettings::evaporation_factor, x); });
  check_accepted("refill_max_mm", 0, 2000, [&](double x) {
    return run_one(all.ground(), all.sky(), {growth, {}, {{}, {}, {}, missing, x}});
  });
  const std::vector<double> none(60, 0.0);
  check_accepted("irrigation_mm", 0, 2000, [&](double x) {
    std::vector<double> plan = none;
    plan[7] = x;
    return run_one(all.ground(), all.sky(), {growth, {}, {plan, {}, {}}});
  });
  check_accepted("irrigation_mm", 0, 2000, [&](double x) {
    std::vector<double> plan = none;
    plan[7] = x;
    return run_one(all.ground(), all.sky(), {growth, {}, {none, plan, {}}});
  });
  check_accepted("root_depth_m", 0.01, 1.2, [&](double x) {
    auto other = growth;
    other[7].root_depth_m = x;
    return run_one(all.ground(), all.sky(), {other});
  });
}

BOOST_AUTO_TEST_SUITE_END()
