// A day's explanation against the answer that it explains.
#include <algorithm>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/quantities.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/report/explain_steps.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::DayExplanation;
using noonleaf::ExplainPart;
using noonleaf::ExplainStep;
using noonleaf::Garden;

namespace {

constexpr auto first = std::chrono::sys_days(2025y / 6 / 1);
constexpr auto date = 2025y / 6 / 20;

const std::string tomato = "[[bed.planting]]\ncrop = \"tomato\"\ntransplanted = 2025-05-01\n";

struct Explained {
  explicit Explained(Garden asked)
      : garden(std::move(asked)),
        explanation(noonleaf::explain_day(
            garden, {}, noonleaf::sky_over(garden.site, steady_weather(first, 30)), 0, date)),
        parts(noonleaf::explain_parts({garden, explanation})) {}
  Garden garden;
  DayExplanation explanation;
  std::vector<ExplainPart> parts;

  const ExplainStep& last(std::string_view symbol, std::size_t part) const {
    const auto& steps = parts.at(part).steps;
    const auto found = std::find_if(steps.rbegin(), steps.rend(),
                                    [&](const ExplainStep& step) { return step.symbol == symbol; });
    BOOST_REQUIRE_MESSAGE(found != steps.rend(), symbol);
    return *found;
  }
};

}  // namespace

BOOST_AUTO_TEST_SUITE(explain)

BOOST_AUTO_TEST_CASE(it_tells_the_numbers_of_the_answer) {
  const Explained day(invented_garden(tomato));
  const auto& planting = day.explanation.today.beds[0].plantings[0];
  BOOST_TEST(day.last("ET0", 0).value == day.explanation.today.sky.et0_mm_d);
  BOOST_TEST(day.last("RAW", 2).value == planting.raw_mm);
  BOOST_TEST(day.last("Dr", 2).value == planting.dr_close_mm);
  BOOST_TEST(day.last("d_n", 3).value == day.explanation.today.beds[0].run.net_depth_mm);
  BOOST_TEST(day.last("t_r", 3).value == day.explanation.today.beds[0].run.minutes);
}

// What the source line names is what was done to the printed lengths.
BOOST_AUTO_TEST_CASE(stage_lengths_say_what_was_done_to_them) {
  const auto stage_sentence = [](const Garden& garden) {
    return Explained(garden).parts.at(1).sentences.at(1);
  };
  const auto has = [](const std::string& text, const char* words) {
    return text.find(words) != std::string::npos;
  };
  const std::string halved = "the initial stage halved for a transplant", seen = "stages that were seen";
  const Garden set_out = invented_garden(tomato);
  BOOST_TEST(has(stage_sentence(set_out), "FAO-56 Table 11"));
  BOOST_TEST(has(stage_sentence(set_out), halved.c_str()));
  BOOST_TEST(!has(stage_sentence(set_out), seen.c_str()));
  const std::string sown =
      stage_sentence(invented_garden("[[bed.planting]]\ncrop = \"tomato\"\nsown = 2025-05-01\n"));
  BOOST_TEST(!has(sown, halved.c_str()));
  BOOST_TEST(!has(sown, seen.c_str()));
  Garden watched = set_out;
  watched.beds[0].plantings[0].season.observed.mid_season = 2025y / 6 / 15;
  BOOST_TEST(has(stage_sentence(watched), halved.c_str()));  // it still shares out the days before
  BOOST_TEST(has(stage_sentence(watched), seen.c_str()));
  watched.beds[0].plantings[0].season.observed.development = 2025y / 5 / 20;
  BOOST_TEST(!has(stage_sentence(watched), halved.c_str()));  // seen, not halved
  BOOST_TEST(has(stage_sentence(watched), seen.c_str()));
}

/// The numbers of a step are shown only where they lead to its result; here all must.
BOOST_AUTO_TEST_CASE(every_equation_is_shown_with_numbers_that_lead_to_its_result) {
  for (const std::string bed_keys : {"", "soil_is_sandy"}) {
    Garden garden = invented_garden(tomato);
    if (!bed_keys.empty()) {
      garden.beds[0].framed = false;
      garden.beds[0].soil = {.texture = "sandy_loam"};
    }
    const Explained day(garden);
    std::size_t worked = 0;
    for (std::size_t part = 0; part < 3; ++part) {
      for (const ExplainStep& step : day.parts[part].steps)
        BOOST_TEST_CONTEXT(step.symbol << ": " << step.equation) {
          BOOST_TEST(!step.source.empty());
          BOOST_TEST(!step.meaning.empty());
          if (step.equation.empty()) continue;
          ++worked;
          BOOST_TEST(!step.numbers.empty());
          BOOST_TEST(!step.inputs.empty());
        }
    }
    BOOST_TEST(worked > 40U);
  }
}

BOOST_AUTO_TEST_CASE(a_drip_line_has_two_surfaces_and_the_numbers_still_fit) {
  // Young plants: between them lies ground that only rain wets.
  Garden garden = invented_garden("[[bed.planting]]\ncrop = \"tomato\"\ntransplanted = 2025-06-12\n");
  garden.sprinklers[0].kind = noonleaf::WettingKind::drip;
  garden.beds[0].framed = false;
  const Explained day(garden);
  for (const char* symbol : {"few,p", "De,p", "Kr,p", "W", "Ke,p"})
    BOOST_TEST(!day.last(symbol, 2).numbers.empty(), symbol);
}

BOOST_AUTO_TEST_CASE(each_planting_of_a_mixed_bed_in_turn) {
  const Explained day(
      invented_garden("[[bed.planting]]\ncrop = \"squash_zucchini\"\nshare_pct = 60\nsown = 2025-05-01\n"
                      "[[bed.planting]]\ncrop = \"bean_green\"\nshare_pct = 40\nsown = 2025-05-05\n"));
  BOOST_REQUIRE(day.parts.size() == 6U);
  BOOST_TEST(day.parts[1].title == "THE PLANT: Squash, zucchini");
  BOOST_TEST(day.parts[3].title == "THE PLANT: Bean, green (snap)");
  // What one planting's part set is not taken for told in the other's.
  BOOST_TEST(day.last("Kcb", 3).value == day.explanation.plantings[1].growth.day.kcb);
}

BOOST_AUTO_TEST_CASE(a_plant_factor_is_told_as_one) {
  const Explained day(invented_garden("[[bed.planting]]\ncrop = \"lavender\"\nestablished = 2022-05-01\n"));
  const ExplainStep& etc = day.last("ETc", 2);
  BOOST_TEST(etc.equation == "Kc ET0");
  BOOST_TEST(!etc.numbers.empty());
}

BOOST_AUTO_TEST_CASE(shade_mulch_salt_and_the_single_coefficient_are_told_with_numbers_that_fit) {
  for (const auto method : {noonleaf::CoefficientMethod::dual, noonleaf::CoefficientMethod::single}) {
    Garden garden = invented_garden(tomato);
    garden.account.method = method;
    garden.beds[0].sun_frac = 0.6;
    garden.beds[0].mulch = {.kind = noonleaf::MulchKind::organic, .covered_frac = 0.8};
    garden.taps[0].salinity_ds_m = 2;
    const Explained day(garden);
    for (const ExplainPart& part : {day.parts[0], day.parts[1], day.parts[2]}) {
      for (const ExplainStep& step : part.steps) BOOST_TEST_CONTEXT(step.symbol << ": " << step.equation)
      BOOST_TEST((step.equation.empty() || !step.numbers.empty()));
    }
    BOOST_TEST(day.last("ET0", 0).value < day.explanation.today.sky.et0_mm_d);
    BOOST_TEST(day.last("Ks,salt", 2).value < 1);
    if (method == noonleaf::CoefficientMethod::dual) BOOST_TEST(day.last("fm", 2).value == 0.6);
  }
}

BOOST_AUTO_TEST_CASE(bare_ground_has_only_its_sky) {
  const Explained day(invented_garden(""));
  BOOST_REQUIRE(day.parts.size() == 3U);
  BOOST_TEST(day.parts[1].sentences.front() == "Nothing grows in this bed on this day.");
}

BOOST_AUTO_TEST_CASE(for_programs) {
  const Explained day(invented_garden(tomato));
  const std::string json = noonleaf::explain_json({day.garden, day.explanation});
  for (const char* text : {"\"shape\": \"noonleaf.explain\"", "\"symbol\": \"ETc adj\"",
                           "\"equation\": \"p TAW\"", "\"source\": \"FAO-56 eq. 83\"", "\"inputs\": ["})
    BOOST_TEST(json.find(text) != std::string::npos, text);
}

BOOST_AUTO_TEST_SUITE_END()
