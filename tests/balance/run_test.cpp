#include "noonleaf/balance/run.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/profile.hpp"
#include "noonleaf/balance/quantities.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/soil/texture.hpp"

#include "random_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::BalanceDay;
using noonleaf::BalanceRun;
using noonleaf::BalanceSettings;
using noonleaf::BalanceState;
using noonleaf::Error;
using noonleaf::find_crop;
using noonleaf::GrowthDay;
using noonleaf::missing;
using noonleaf::SoilWater;

namespace {

constexpr auto january = 2023y / 1 / 1;

SoilWater soil(const char* id) { return soil_of(noonleaf::find_texture(id)); }

/// A year with two crops one after the other and bare ground before, between and after.
std::vector<GrowthDay> succession(const char* first, const char* second) {
  const auto bare = [](std::chrono::year_month_day date, std::size_t n) {
    return noonleaf::growth_days(noonleaf::bare_soil(), {.start = date}, date, n, {});
  };
  std::vector<GrowthDay> growth = bare(january, 80);
  const auto add = [&](const std::vector<GrowthDay>& more) {
    growth.insert(growth.end(), more.begin(), more.end());
  };
  const auto spring = std::chrono::year_month_day{std::chrono::sys_days{january} + std::chrono::days{80}};
  const auto summer = std::chrono::year_month_day{std::chrono::sys_days{january} + std::chrono::days{190}};
  add(noonleaf::growth_days(find_crop(first), {.start = spring}, spring, 100, {3, 35}));
  add(bare(std::chrono::sys_days{january} + std::chrono::days{180}, 10));
  add(noonleaf::growth_days(find_crop(second), {.start = summer}, summer, 130, {2, 50}));
  add(bare(std::chrono::sys_days{january} + std::chrono::days{320}, 45));
  return growth;
}

double stored(const BalanceState& state) { return -state.dr_mm - state.lower_mm; }

std::vector<BalanceSettings> all_settings() {
  std::vector<BalanceSettings> out(5);
  out[1].curve_number = 75;
  out[2].irrigated_frac = 0.35;
  out[2].top_roots = noonleaf::TopLayerRoots::drawn;
  out[3].method = noonleaf::CoefficientMethod::single;
  out[4].surface = noonleaf::SurfaceAccount::as_printed;
  out[4].irrigated_frac = 0.35;
  out[4].emitters = noonleaf::EmitterPlace::under_canopy;
  out[4].evaporation_factor = 0.75;
  return out;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(run)

// Twenty random years x soils x successions x settings: water is added up here once more, from the totals.
BOOST_AUTO_TEST_CASE(mass_closes_over_random_years) {
  const std::vector<std::pair<const char*, const char*>> crops = {{"radish", "tomato"},
                                                                  {"lettuce", "carrot"},
                                                                  {"pea_fresh", "maize_sweet"},
                                                                  {"annual_flowers", "cover_rye"}};
  double worst = 0;
  for (std::uint64_t year = 0; year < 20; ++year) {
    Draws draws(1000 + year);
    const auto days = random_days(draws, january, 365);
    for (const char* texture : {"sand", "sandy_loam", "silt", "clay"})
      for (const auto& [first, second] : crops)
        for (const BalanceSettings& settings : all_settings()) {
          const SoilWater ground = soil(texture);
          const BalanceState start = noonleaf::initial_state(ground, 0.1, 1.5, draws.uniform());
          const BalanceRun run =
              noonleaf::run_balance(start, days, succession(first, second), ground, settings);
          const double change = stored(run.days.back().end) - stored(start);
          const double flows = run.rain_mm - run.runoff_mm + run.irrigation_mm - run.transpiration_mm -
                               run.evaporation_mm - run.drainage_mm;
          worst = std::max(worst, std::abs(change - flows));
          for (const auto& day : run.days) worst = std::max(worst, std::abs(day.closure_mm));
        }
  }
  BOOST_TEST(worst < 1e-9);
}

BOOST_AUTO_TEST_CASE(states_stay_within_what_the_ground_can_hold) {
  for (std::uint64_t year = 0; year < 10; ++year) {
    Draws draws(2000 + year);
    auto days = random_days(draws, january, 365);
    for (auto& day : days)  // mostly dry
      if (draws.uniform() < 0.8)
        day.rain_mm = day.irrigation_mm = day.evening_rain_mm = day.evening_irrigation_mm = 0;
    for (const char* texture : {"sand", "loam", "clay"})
      for (const BalanceSettings& settings : all_settings()) {
        const SoilWater ground = soil(texture);
        const auto run = noonleaf::run_balance(initial_state(ground, 0.1, 1.5, 0.9), days,
                                               succession("lettuce", "tomato"), ground, settings);
        const double tew = tew_mm(ground);
        for (const auto& day : run.days) {
          const auto roots = noonleaf::root_zone_limits(ground, day.end.root_depth_m);
          const auto lower = noonleaf::lower_layer_limits(ground, day.end.root_depth_m, 1.5);
          BOOST_REQUIRE(day.end.dr_mm >= 0);
          BOOST_REQUIRE(day.end.lower_mm >= 0);
          BOOST_REQUIRE(day.end.dr_mm <= roots.evaporation_mm + 1e-9);
          BOOST_REQUIRE(day.end.lower_mm <= lower.evaporation_mm + 1e-9);
          if (noonleaf::is_known(day.end.de_mm)) {
            BOOST_REQUIRE(day.end.de_mm >= 0);
            BOOST_REQUIRE(day.end.de_mm <= tew + 1e-9);
          }
          BOOST_REQUIRE(day.ks >= 0);
          BOOST_REQUIRE(day.ks <= 1);
          BOOST_REQUIRE(day.transpiration_mm >= 0);
          BOOST_REQUIRE(day.evaporation_mm >= 0);
        }
      }
  }
}

namespace {

/// The same year with water added on some mornings and evenings.
std::vector<BalanceDay> with_more_water(std::vector<BalanceDay> days, Draws& draws) {
  for (auto& day : days) {
    if (draws.uniform() < 0.05) day.irrigation_mm += draws.between(0, 15);
    if (draws.uniform() < 0.05) day.evening_irrigation_mm += draws.between(0, 15);
  }
  return days;
}

std::vector<BalanceDay> drier(std::vector<BalanceDay> days, Draws& draws, double share) {
  for (auto& day : days)
    if (draws.uniform() < share)
      day.rain_mm = day.irrigation_mm = day.evening_rain_mm = day.evening_irrigation_mm = 0;
  return days;
}

}  // namespace

// p fixed, no runoff (a wetter surface sheds more of a storm), one crop, a single coefficient: on every day.
BOOST_AUTO_TEST_CASE(more_water_never_means_more_stress_on_any_day) {
  BalanceSettings settings;
  settings.method = noonleaf::CoefficientMethod::single;
  settings.depletion = noonleaf::DepletionFraction::fixed;
  for (std::uint64_t year = 0; year < 30; ++year)
    for (const char* texture : {"sand", "loam", "clay"})
      for (const char* crop : {"strawberry", "lettuce", "tomato", "turf_cool"}) {
        Draws draws(3000 + year);
        const auto days = drier(random_days(draws, january, 365), draws, draws.uniform());
        const auto wetter = with_more_water(days, draws);
        const SoilWater ground = soil(texture);
        const auto growth = noonleaf::growth_days(find_crop(crop), {.start = january}, january, 365, {});
        const auto start = noonleaf::initial_state(ground, 0.15, 1.5, draws.uniform());
        const auto a = noonleaf::run_balance(start, days, growth, ground, settings);
        const auto b = noonleaf::run_balance(start, wetter, growth, ground, settings);
        for (std::size_t i = 0; i < days.size(); ++i) {
          BOOST_REQUIRE(b.days[i].ks >= a.days[i].ks - 1e-9);
          BOOST_REQUIRE(b.days[i].end.dr_mm <= a.days[i].end.dr_mm + 1e-9);
        }
      }
}

// With the dual coefficient a plant that was relieved by water that then evaporated has drunk more, and can
// be drier for it some days later; what it lost to stress, summed up to any day, is never more.
BOOST_AUTO_TEST_CASE(more_water_never_means_more_stress_in_sum) {
  for (std::uint64_t year = 0; year < 20; ++year)
    for (const char* texture : {"sand", "loam", "clay"})
      for (BalanceSettings settings : all_settings()) {
        if (settings.surface == noonleaf::SurfaceAccount::as_printed) continue;  // it does not hold there
        settings.curve_number = missing;
        settings.depletion = noonleaf::DepletionFraction::fixed;
        Draws draws(4000 + year);
        const auto days = drier(random_days(draws, january, 365), draws, draws.uniform());
        const auto wetter = with_more_water(days, draws);
        const SoilWater ground = soil(texture);
        const auto start = noonleaf::initial_state(ground, 0.1, 1.5, 0.5);
        const auto growth = succession("lettuce", "tomato");
        const auto a = noonleaf::run_balance(start, days, growth, ground, settings);
        const auto b = noonleaf::run_balance(start, wetter, growth, ground, settings);
        double gained = 0;
        for (std::size_t i = 0; i < days.size(); ++i) {
          gained += b.days[i].transpiration_mm - a.days[i].transpiration_mm;
          BOOST_REQUIRE(gained >= -1e-9);
        }
      }
}

BOOST_AUTO_TEST_CASE(a_correction_is_its_own_line) {
  Draws draws(5);
  const SoilWater ground = soil("loam");
  const auto days = random_days(draws, january, 60);
  const auto growth = noonleaf::growth_days(find_crop("strawberry"), {.start = january}, january, 60, {});
  const auto start = noonleaf::initial_state(ground, 0.15, 1.0, 0.4);
  const std::vector<noonleaf::Correction> found = {{.date = days[20].date, .dr_mm = 3}};
  const auto run = noonleaf::run_balance(start, days, growth, ground, {}, found);
  BOOST_CHECK_CLOSE(run.days[20].correction_mm, 3 - run.days[19].end.dr_mm, 1e-9);
  BOOST_TEST(run.days[20].start.dr_mm == 3);
  BOOST_TEST(run.days[21].correction_mm == 0);
  const double flows =
      run.rain_mm + run.irrigation_mm - run.transpiration_mm - run.evaporation_mm - run.drainage_mm;
  BOOST_CHECK_SMALL(stored(run.days.back().end) - stored(start) - flows + run.correction_mm, 1e-9);
  const std::vector<noonleaf::Correction> wet = {{.date = days[20].date, .dr_mm = 0}};
  BOOST_TEST(noonleaf::run_balance(start, days, growth, ground, {}, wet).days[20].start.de_mm == 0);
  const std::vector<noonleaf::Correction> absurd = {{.date = days[20].date, .dr_mm = 500}};
  BOOST_CHECK_THROW(noonleaf::run_balance(start, days, growth, ground, {}, absurd), Error);
}

BOOST_AUTO_TEST_CASE(after_a_gap_all_is_missing_until_somebody_looks) {
  Draws draws(6);
  const SoilWater ground = soil("loam");
  auto days = random_days(draws, january, 40);
  days[10].et0_mm_d = missing;
  const auto growth = noonleaf::growth_days(find_crop("strawberry"), {.start = january}, january, 40, {});
  const std::vector<noonleaf::Correction> found = {{.date = days[20].date, .dr_mm = 5}};
  const auto run =
      noonleaf::run_balance(initial_state(ground, 0.15, 1.0, 0.4), days, growth, ground, {}, found);
  BOOST_TEST(noonleaf::is_known(run.days[9].end.dr_mm));
  for (std::size_t i = 10; i < 20; ++i) BOOST_TEST(noonleaf::is_missing(run.days[i].end.dr_mm));
  for (std::size_t i = 20; i < 40; ++i) BOOST_TEST(noonleaf::is_known(run.days[i].end.dr_mm));
}

BOOST_AUTO_TEST_CASE(refill_and_days_to_go) {
  const SoilWater ground = soil("loam");
  const auto growth =
      noonleaf::growth_days(find_crop("turf_cool"), {.start = 2020y / 1 / 1}, january, 60, {});
  std::vector<BalanceDay> dry(60);
  for (std::size_t i = 0; i < dry.size(); ++i)
    dry[i] = {.date = growth[i].date, .et0_mm_d = 5, .u2_m_s = 2, .rh_min_pct = 45};
  const auto run = noonleaf::run_balance(initial_state(ground, 0.5, 1.0, 0), dry, growth, ground, {});
  const auto day = noonleaf::first_day_beyond_raw(run.days);
  BOOST_REQUIRE(day.has_value());
  BOOST_TEST(run.days[*day].end.dr_mm > run.days[*day].raw_mm);
  BOOST_TEST(run.days[*day - 1].end.dr_mm <= run.days[*day - 1].raw_mm);
  BOOST_TEST(noonleaf::net_refill_mm(run.days[*day].end) == run.days[*day].end.dr_mm);
  BOOST_TEST(noonleaf::is_missing(noonleaf::net_refill_mm({})));
  BOOST_TEST(run.stress_mm > 0);
  auto refilled = dry;
  refilled[*day].evening_irrigation_mm = noonleaf::net_refill_mm(run.days[*day].end);
  const auto again = noonleaf::run_balance(initial_state(ground, 0.5, 1.0, 0), refilled, growth, ground, {});
  BOOST_CHECK_SMALL(again.days[*day].end.dr_mm, 1e-9);
  BOOST_CHECK_SMALL(again.days[*day].drainage_mm, 1e-9);
}

BOOST_AUTO_TEST_CASE(days_must_follow_each_other) {
  const SoilWater ground = soil("loam");
  const auto growth = noonleaf::growth_days(find_crop("turf_cool"), {.start = january}, january, 3, {});
  std::vector<BalanceDay> days(3);
  for (std::size_t i = 0; i < 3; ++i) days[i] = {.date = growth[i].date, .et0_mm_d = 3};
  const auto start = noonleaf::initial_state(ground, 0.15, 1.0, 0);
  BOOST_CHECK_NO_THROW(noonleaf::run_balance(start, days, growth, ground, {}));
  BOOST_CHECK_THROW(noonleaf::run_balance(start, std::span(days).first(2), growth, ground, {}), Error);
  days[2].date = days[1].date;
  BOOST_CHECK_THROW(noonleaf::run_balance(start, days, growth, ground, {}), Error);
  BOOST_CHECK_THROW(noonleaf::initial_state(ground, 0.5, 0.4, 0), Error);
  BOOST_CHECK_THROW(noonleaf::initial_state(ground, 0.5, 1.0, 1.1), Error);
}

BOOST_AUTO_TEST_CASE(every_number_of_the_day_is_explained) {
  const SoilWater ground = soil("loam");
  const auto growth = noonleaf::growth_day(find_crop("tomato"), {.start = 2023y / 4 / 1}, 2023y / 6 / 1, {});
  BalanceSettings settings;
  settings.curve_number = 80;
  const auto day = noonleaf::daily_step(initial_state(ground, 0.5, 1.2, 0.5),
                                        {.et0_mm_d = 5, .u2_m_s = 2, .rh_min_pct = 45, .rain_mm = 30}, growth,
                                        ground, settings);
  for (const auto& quantity : noonleaf::balance_quantities()) BOOST_TEST_CONTEXT(quantity.member) {
      if (quantity.applies == nullptr || quantity.applies(day))
        BOOST_TEST(noonleaf::is_known(quantity.value(day)));
      BOOST_TEST(!quantity.meaning.empty());
      BOOST_TEST(!quantity.source.empty());
    }
}

BOOST_AUTO_TEST_SUITE_END()
