// What belongs to a bed's ground and reaches its account: shade, rain catch, mulch, amendments, salt, the
// start, the single coefficient, seedbeds.
#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/mulch.hpp"
#include "noonleaf/crop/emergence.hpp"
#include "noonleaf/crop/kc_ini.hpp"
#include "noonleaf/crop/salinity.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/plan/bed_sky.hpp"
#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/ground_history.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/wetting_pattern.hpp"
#include "noonleaf/reference/penman_monteith.hpp"
#include "noonleaf/soil/saxton_rawls.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::JournalEntry;
using noonleaf::JournalEvent;
using noonleaf::PlantingAccount;
using noonleaf::Sky;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
constexpr auto date = 2025y / 6 / 20;
const std::string tomato = tomatoes_from("2025-05-15");

Sky sky_of(const Garden& garden, int days = 40) {
  return noonleaf::sky_over(garden.site, steady_weather(first, days));
}

PlantingAccount account(const Garden& garden, const Journal& journal = {},
                        std::chrono::year_month_day on = date) {
  return noonleaf::accounts_of_bed(garden, 0, journal, sky_of(garden), on).front();
}

double first_evaporation_mm(const PlantingAccount& account) {
  return account.past.days.front().evaporation_mm;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(bed_ground)

BOOST_AUTO_TEST_CASE(shade_takes_sun_from_the_beds_own_et0) {
  Garden garden = invented_garden(tomato);
  const Sky open = sky_of(garden);
  BOOST_TEST(noonleaf::sky_over_bed(garden.site, garden.beds[0], open).days[3].et0_mm_d ==
             open.days[3].et0_mm_d);
  garden.beds[0].sun_frac = 0.5;
  const Sky shaded = noonleaf::sky_over_bed(garden.site, garden.beds[0], open);
  noonleaf::DailyEstimate half = open.days[3].estimate;
  half.rs_mj_m2_d *= 0.5;
  BOOST_TEST(shaded.days[3].et0_mm_d == noonleaf::daily_et0_mm_d(half, garden.site.location));
  const PlantingAccount in_shade = account(garden);
  BOOST_TEST(in_shade.past.days[5].et0_mm_d == shaded.days[5].et0_mm_d);
  garden.beds[0].sun_frac = 1;
  BOOST_TEST(in_shade.dawn.dr_mm < account(garden).dawn.dr_mm);
}

BOOST_AUTO_TEST_CASE(eaves_keep_rain_off_and_a_roof_brings_more) {
  for (const double catches : {0.0, 0.4, 1.5}) {
    Garden garden = invented_garden(tomato);
    garden.beds[0].rain_catch_frac = catches;
    auto series = steady_weather(first, 4);
    series.days[1].rain_mm = 10;
    const Sky sky = noonleaf::sky_over(garden.site, series);
    BOOST_CHECK_CLOSE(1 + noonleaf::water_on(garden, 0, {}, sky.days[1]).rain_mm, 1 + 10 * catches, 1e-9);
    JournalEntry gauge = entry_of(JournalEvent::rain, 2025y / 6 / 3);
    gauge.rain_mm = 20;
    gauge.time_of_day = 720min;
    BOOST_CHECK_CLOSE(1 + noonleaf::water_on(garden, 0, {gauge}, sky.days[2]).rain_mm, 1 + 20 * catches,
                      1e-9);
  }
}

BOOST_AUTO_TEST_CASE(mulch_of_the_file_and_of_the_journal) {
  Garden garden = invented_garden(tomato);
  const double bare_mm = first_evaporation_mm(account(garden));
  garden.beds[0].mulch = {.kind = noonleaf::MulchKind::organic, .covered_frac = 1, .from = 2025y / 6 / 10};
  const auto factor = [&](const Journal& journal, std::chrono::sys_days day) {
    return noonleaf::mulch_factor_on(garden.beds[0], journal, day);
  };
  BOOST_TEST(factor({}, 2025y / 6 / 9) == 1);
  BOOST_TEST(factor({}, 2025y / 6 / 10) == 0.5);  // FAO-56 ch. 10: 5 % for each 10 % covered
  JournalEntry film = entry_of(JournalEvent::mulch, 2025y / 6 / 12);
  film.mulch = noonleaf::MulchKind::plastic;
  film.covered_pct = 80;
  JournalEntry off = entry_of(JournalEvent::mulch, 2025y / 6 / 15);
  off.mulch = noonleaf::MulchKind::none;
  BOOST_TEST(factor({off, film}, 2025y / 6 / 12) == 1 - 0.8);
  BOOST_TEST(factor({film, off}, 2025y / 6 / 15) == 1);
  BOOST_TEST(factor({entry_of(JournalEvent::mulch, 2025y / 6 / 12)}, 2025y / 6 / 13) ==
             0.5);  // says nothing of its kind
  garden.beds[0].mulch.from.reset();
  BOOST_CHECK_CLOSE(first_evaporation_mm(account(garden)), 0.5 * bare_mm, 1e-9);
}

BOOST_AUTO_TEST_CASE(compost_changes_the_soil_from_its_day_on_and_moves_no_water) {
  const Garden garden = invented_garden(tomato);
  JournalEntry dug = entry_of(JournalEvent::amend, 2025y / 6 / 11);
  dug.organic_pct = 5;
  const auto soil_on = [&](std::chrono::sys_days day) {
    return noonleaf::soil_of_bed_on(garden.beds[0], {dug}, day);
  };
  const double before = soil_on(2025y / 6 / 10).field_capacity_m3_m3;
  // By the difference that Saxton & Rawls make for a typical loam: 40 % sand, 20 % clay.
  // A spade turns over 20 of the 50 cm that roots reach.
  const double richer =
      0.2 / 0.5 *
      (noonleaf::soil_of(noonleaf::SoilParticles{.sand_pct = 40, .clay_pct = 20, .organic_pct = 5})
           .field_capacity_m3_m3 -
       noonleaf::soil_of(noonleaf::SoilParticles{.sand_pct = 40, .clay_pct = 20}).field_capacity_m3_m3);
  BOOST_TEST(richer > 0.005);
  BOOST_CHECK_CLOSE(soil_on(2025y / 6 / 11).field_capacity_m3_m3, before + richer, 1e-9);
  const PlantingAccount amended = account(garden, {dug}), plain = account(garden);
  const auto& day = amended.past.days[10];
  BOOST_TEST((day.date == 2025y / 6 / 11));
  BOOST_CHECK_CLOSE(day.start.dr_mm, plain.past.days[10].start.dr_mm + 1000 * richer * day.start.root_depth_m,
                    1e-6);
  BOOST_TEST(day.amended_mm > 0);
  BOOST_TEST(day.taw_mm > plain.past.days[10].taw_mm);
  BOOST_TEST(amended.past.days[9].taw_mm == plain.past.days[9].taw_mm);
  BOOST_TEST(amended.soil.field_capacity_m3_m3 == soil_on(date).field_capacity_m3_m3);
  Garden shallow = garden;
  shallow.beds[0].rooting_depth_m = 0.2;  // a raised bed is dug through
  const double whole = noonleaf::soil_of_bed_on(shallow.beds[0], {dug}, date).field_capacity_m3_m3 - before;
  BOOST_CHECK_CLOSE(whole, richer / 0.4, 1e-6);
}

BOOST_AUTO_TEST_CASE(a_measured_amendment_is_the_soil_and_one_without_numbers_is_said) {
  const Garden garden = invented_garden(tomato);
  JournalEntry measured = entry_of(JournalEvent::amend, 2025y / 6 / 11);
  measured.field_capacity_pct = 38;
  measured.wilting_point_pct = 13;
  const auto soil = noonleaf::soil_of_bed_on(garden.beds[0], {measured}, date);
  BOOST_TEST(soil.field_capacity_m3_m3 == 0.38);
  BOOST_TEST(soil.wilting_point_m3_m3 == 0.13);
  const JournalEntry words = entry_of(JournalEvent::amend, 2025y / 6 / 11);
  BOOST_TEST(noonleaf::amendments_of_bed(garden.beds[0], {words}).empty());
  const auto today = noonleaf::plan_today(garden, {words}, sky_of(garden), {.date = date});
  BOOST_TEST(std::any_of(today.estimates.begin(), today.estimates.end(), [](const noonleaf::Estimate& each) {
    return each.fact == noonleaf::NotMeasured::amend_unsaid && each.date == 2025y / 6 / 11 && each.bed == "a";
  }));
  JournalEntry too_much = entry_of(JournalEvent::amend, 2025y / 6 / 11);
  too_much.organic_pct = 9;
  BOOST_CHECK_THROW(noonleaf::amendments_of_bed(garden.beds[0], {too_much}), noonleaf::Error);
}

Garden garden_of_measured_soil() {
  Garden garden = invented_garden(tomato);
  garden.beds[0].soil = {.field_capacity_m3_m3 = 0.31, .wilting_point_m3_m3 = 0.15};
  return garden;
}

BOOST_AUTO_TEST_CASE(a_measured_soil_holds_what_was_measured) {
  const Garden garden = garden_of_measured_soil();
  const PlantingAccount measured = account(garden);
  const auto& day = measured.past.days.back();
  BOOST_CHECK_CLOSE(day.taw_mm, 1000 * (0.31 - 0.15) * day.end.root_depth_m, 1e-9);  // FAO-56 eq. 82
  BOOST_CHECK_CLOSE(day.tew_mm, 1000 * (0.31 - 0.5 * 0.15) * 0.10, 1e-9);            // eq. 73
  const auto today = noonleaf::plan_today(garden, {}, sky_of(garden), {.date = date});
  BOOST_TEST(today.beds.at(0).driver.has_value());
}

// The texture equations have nothing to go by: the soil stays, and that is said.
BOOST_AUTO_TEST_CASE(compost_in_a_measured_soil_is_said_to_count_for_nothing) {
  const Garden garden = garden_of_measured_soil();
  JournalEntry dug = entry_of(JournalEvent::amend, 2025y / 6 / 11);
  dug.organic_pct = 5;
  BOOST_TEST(noonleaf::soil_of_bed_on(garden.beds[0], {dug}, date).field_capacity_m3_m3 == 0.31);
  const auto said = [&](const JournalEntry& entry) {
    const auto today = noonleaf::plan_today(garden, {entry}, sky_of(garden), {.date = date});
    return std::any_of(today.estimates.begin(), today.estimates.end(), [](const noonleaf::Estimate& each) {
      return each.fact == noonleaf::NotMeasured::amend_measured && each.bed == "a";
    });
  };
  BOOST_TEST(said(dug));
  dug.field_capacity_pct = 35;
  dug.wilting_point_pct = 15;
  BOOST_TEST(!said(dug));
}

BOOST_AUTO_TEST_CASE(salt_stresses_and_asks_for_leaching) {
  Garden garden = invented_garden(tomato);
  garden.taps[0].salinity_ds_m = 2;
  const PlantingAccount salty = account(garden);
  // FAO-56 eq. 90 with ECe 1.5 x 2, threshold 1.7, b 9, Ky 1.05: 1 - 9 / 105 x 1.3
  BOOST_CHECK_CLOSE(salty.salt.stress, 1 - 9 / (100 * 1.05) * (3 - 1.7), 1e-9);
  BOOST_TEST(salty.salt.ece_is_guess);
  BOOST_CHECK_CLOSE(salty.salt.leaching_frac, 2 / (5 * 1.7 - 2), 1e-9);  // Ayers & Westcot 1985, eq. 9
  BOOST_CHECK_CLOSE(salty.past.days[0].ks, salty.salt.stress, 1e-9);     // on full soil
  const auto today = noonleaf::plan_today(garden, {}, sky_of(garden), {.date = date});
  const auto& planting = today.beds[0].plantings[0];
  BOOST_TEST(planting.net_need_mm > 0);
  BOOST_CHECK_CLOSE(planting.net_need_mm, planting.dr_mm / (1 - planting.salt.leaching_frac), 1e-9);
  garden.beds[0].soil_salinity_ds_m = 1.5;  // measured below the threshold
  BOOST_TEST(account(garden).salt.stress == 1);
  garden.taps[0].salinity_ds_m = 6;
  BOOST_TEST(account(garden).salt.too_salty);
  BOOST_TEST(account(garden).salt.leaching_frac == 0);
}

BOOST_AUTO_TEST_CASE(a_known_wet_morning_begins_the_account) {
  Garden garden = invented_garden(tomato);
  garden.beds[0].known_wet = 2025y / 6 / 18;
  const PlantingAccount wet = account(garden);
  BOOST_REQUIRE(wet.past.days.size() == 2U);
  BOOST_TEST(wet.past.days[0].start.dr_mm == 0);
  BOOST_TEST(wet.start_doubt_mm == 0);
  garden.beds[0].known_wet = 2025y / 6 / 21;  // not yet
  BOOST_TEST(account(garden).past.days.size() == 19U);
}

BOOST_AUTO_TEST_CASE(how_much_the_start_matters_fades_with_a_soaking) {
  Garden garden = invented_garden(tomato);
  const PlantingAccount dry_spell = account(garden);
  BOOST_TEST(dry_spell.start_doubt_mm > 5);
  const PlantingAccount soaked = account(garden, {watered(2025y / 6 / 15, 300)});  // 150 mm
  BOOST_TEST(soaked.start_doubt_mm < 0.5);
  garden.account.start = noonleaf::SoilAtStart::unknown;
  const PlantingAccount unknown = account(garden);
  BOOST_CHECK_CLOSE(unknown.past.days[0].start.dr_mm, 0.5 * unknown.past.days[0].taw_mm, 1e-9);
  BOOST_TEST(unknown.start_doubt_mm < dry_spell.start_doubt_mm);
}

BOOST_AUTO_TEST_CASE(the_single_coefficient_takes_kc_ini_from_the_wettings) {
  Garden garden = invented_garden(tomatoes_from("2025-06-01"));
  garden.account.method = noonleaf::CoefficientMethod::single;
  Journal journal;
  for (int day = 1; day <= 19; day += 3)
    journal.push_back(watered(std::chrono::sys_days(2025y / 6 / 1) + std::chrono::days(day), 20));  // 10 mm
  const Sky sky = sky_of(garden);
  const double kc_ini = noonleaf::kc_ini_on_ground(garden, 0, garden.beds[0].plantings[0], journal, sky);
  // 18 days of the halved initial stage, 6 wettings of 10 mm on loam.
  BOOST_CHECK_CLOSE(kc_ini,
                    noonleaf::kc_ini_of_wetting({.et0_mm_d = sky.days[0].et0_mm_d,
                                                 .interval_d = 18.0 / 6,
                                                 .infiltrated_mm = 10,
                                                 .wetted_frac = 1,
                                                 .soil = noonleaf::KcIniSoil::medium_fine}),
                    0.5);  // ET0 moves a little over the days
  const PlantingAccount single = account(garden, journal);
  BOOST_TEST(single.past.days[2].kc == kc_ini);
  BOOST_TEST(noonleaf::is_missing(single.past.days[2].kcb));
  const auto today = noonleaf::plan_today(garden, journal, sky, {.date = date});
  BOOST_TEST(noonleaf::is_known(today.beds[0].plantings[0].dr_close_mm));
}

BOOST_AUTO_TEST_CASE(seed_is_up_when_the_table_says_so) {
  const Garden garden = invented_garden("[[bed.planting]]\ncrop = \"carrot\"\nsown = 2025-06-10\n");
  const Sky sky = sky_of(garden);  // 22.5 degrees every day
  const double days = noonleaf::days_to_emergence("carrot", 22.5);
  const auto up =
      std::chrono::sys_days(2025y / 6 / 10) + std::chrono::days(static_cast<int>(std::ceil(days - 1e-9)));
  const auto seedbed = noonleaf::seedbed_on(garden, 0, garden.beds[0].plantings[0], {}, sky, 2025y / 6 / 12);
  BOOST_REQUIRE(seedbed.has_value());
  BOOST_TEST(seedbed->by_table);
  BOOST_TEST((seedbed->emergence == std::chrono::year_month_day(up)));
  BOOST_TEST(!noonleaf::seedbed_on(garden, 0, garden.beds[0].plantings[0], {}, sky, up).has_value());
  BOOST_TEST(seedbed->zone.depth_m == 0.026);  // twice half an inch
  BOOST_TEST(seedbed->close_mm > seedbed->zone.damp_mm);
  BOOST_TEST(seedbed->light.per_day > 1);
}

BOOST_AUTO_TEST_CASE(cold_soil_keeps_seed_waiting_and_an_unknown_one_has_the_rule_of_thumb) {
  const Garden garden = invented_garden(
      "[[bed.planting]]\ncrop = \"bean_green\"\nshare_pct = 50\nsown = 2025-06-01\n"
      "[[bed.planting]]\ncrop = \"basil\"\nshare_pct = 50\nsown = 2025-06-01\n");
  auto cold = steady_weather(first, 40);
  for (auto& day : cold.days) {
    day.t_min_c = 2;
    day.t_max_c = 12;
  }
  const Sky sky = noonleaf::sky_over(garden.site, cold);
  const auto beans = noonleaf::seedbed_on(garden, 0, garden.beds[0].plantings[0], {}, sky, date);
  BOOST_REQUIRE(beans.has_value());
  BOOST_TEST(!beans->emergence.has_value());  // 7 degrees: it does not come up
  const auto basil = noonleaf::seedbed_on(garden, 0, garden.beds[0].plantings[1], {}, sky, 2025y / 6 / 14);
  BOOST_REQUIRE(basil.has_value());
  BOOST_TEST(!basil->by_table);
  BOOST_TEST((basil->emergence == 2025y / 6 / 15));
  BOOST_TEST(
      !noonleaf::seedbed_on(garden, 0, garden.beds[0].plantings[1], {}, sky, 2025y / 6 / 15).has_value());
}

BOOST_AUTO_TEST_CASE(a_run_tells_what_it_costs_the_other_plantings) {
  const Garden garden = invented_garden(
      "[[bed.planting]]\ncrop = \"tomato\"\nshare_pct = 50\ntransplanted = 2025-04-15\n"
      "[[bed.planting]]\ncrop = \"lettuce\"\nshare_pct = 50\ntransplanted = 2025-06-14\n");
  auto today = noonleaf::plan_today(garden, {}, sky_of(garden), {.date = 2025y / 6 / 30});
  auto& bed = today.beds[0];
  BOOST_REQUIRE(bed.driver.has_value());
  bed.run = noonleaf::bed_run(garden, garden.beds[0], 40);
  const auto outcomes = noonleaf::outcomes_of_run(bed);
  BOOST_REQUIRE(outcomes.size() == 2U);
  for (std::size_t i = 0; i < 2; ++i) {
    const double over_mm = bed.run.mean_depth_mm - bed.plantings[i].dr_mm;
    BOOST_CHECK_SMALL(outcomes[i].percolation_mm - std::max(0.0, over_mm), 1e-9);
  }
  BOOST_TEST(outcomes[1].percolation_mm > outcomes[0].percolation_mm + 1);  // lettuce roots are short
  bed.driver.reset();
  BOOST_TEST(noonleaf::outcomes_of_run(bed).empty());
}

BOOST_AUTO_TEST_CASE(an_ornamental_in_its_first_year_is_said_to_be_one) {
  const auto says_so = [](const std::string& established) {
    const Garden garden =
        invented_garden("[[bed.planting]]\ncrop = \"lavender\"\nestablished = " + established + "\n");
    const auto today = noonleaf::plan_today(garden, {}, sky_of(garden), {.date = date});
    return std::any_of(today.estimates.begin(), today.estimates.end(), [](const noonleaf::Estimate& each) {
      return each.fact == noonleaf::NotMeasured::first_year && each.bed == "a" && each.crop->id == "lavender";
    });
  };
  BOOST_TEST(says_so("2025-03-01"));
  BOOST_TEST(!says_so("2023-03-01"));
}

BOOST_AUTO_TEST_CASE(now_and_tonight_are_two_numbers) {
  const auto today =
      noonleaf::plan_today(invented_garden(tomato), {}, sky_of(invented_garden(tomato)), {.date = date});
  const auto& planting = today.beds[0].plantings[0];
  BOOST_TEST(planting.dr_close_mm > planting.dr_mm + 1);
}

BOOST_AUTO_TEST_SUITE_END()
