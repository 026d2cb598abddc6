#include "noonleaf/garden/garden_file.hpp"

#include <string>

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_doubts.hpp"
#include "noonleaf/units.hpp"

#include "invented_site.hpp"
#include "refusal.hpp"

using namespace std::chrono_literals;
using noonleaf::Error;
using noonleaf::Garden;
using noonleaf::parse_garden;

namespace {

const std::string& site = invented_site;

const std::string water = R"([[tap]]
id = "t"
flow_l_min = 20
[[sprinkler]]
id = "s"
tap = "t"
flow_l_min = 10
wetted_area_m2 = 20
)";

const std::string bed = R"([[bed]]
id = "a"
area_m2 = 10
sprinkler = "s"
soil = "loam"
[[bed.planting]]
crop = "tomato"
transplanted = 2025-05-10
)";

std::string replaced(std::string text, const std::string& what, const std::string& with) {
  const std::size_t place = text.find(what);
  BOOST_REQUIRE_MESSAGE(place != std::string::npos, what);
  return text.replace(place, what.size(), with);
}

std::string complaint(const std::string& text) {
  return refusal_text([&] { parse_garden(text, "garden.toml"); });
}

}  // namespace

BOOST_AUTO_TEST_SUITE(garden_file)

BOOST_AUTO_TEST_CASE(reads_a_whole_garden) {
  const Garden garden = parse_garden(site + water + bed, "garden.toml");
  BOOST_TEST(garden.site.location.elevation_m == 300);
  BOOST_REQUIRE(garden.beds.size() == 1U);
  BOOST_TEST(garden.beds[0].area_m2 == 10);
  BOOST_TEST(garden.beds[0].plantings[0].crop == "tomato");
  BOOST_TEST((garden.beds[0].plantings[0].season.start == 2025y / 5 / 10));
  BOOST_TEST((garden.beds[0].plantings[0].season.method == noonleaf::PlantingStart::transplanted));
  BOOST_TEST((garden.sprinklers[0].rate.basis == noonleaf::RateBasis::flow_and_area));
  BOOST_TEST(garden.sprinklers[0].rate.rate_mm_h == 30.0);  // 60 x 10 / 20: 1 L on 1 m2 is 1 mm
}

BOOST_AUTO_TEST_CASE(the_ground_of_a_bed_and_the_account) {
  const std::string text =
      replaced(replaced(site + water + bed, "area_m2 = 10",
                        "area_m2 = 10\nsun_pct = 60\nrain_catch_pct = 40\nsoil_salinity_ds_m = "
                        "2.5\nknown_wet = 2025-06-01\n"
                        "mulch = { kind = \"organic\", covered_pct = 80, from = 2025-06-03 }"),
               "[[tap]]",
               "[account]\nbalance = \"single\"\nsoil_at_start = \"unknown\"\n[[tap]]\nsalinity_ds_m = 1.2");
  const Garden garden = parse_garden(text, "garden.toml");
  BOOST_TEST(garden.beds[0].sun_frac == 0.6);
  BOOST_TEST(garden.beds[0].rain_catch_frac == 0.4);
  BOOST_TEST(garden.beds[0].soil_salinity_ds_m == 2.5);
  BOOST_TEST((garden.beds[0].known_wet == 2025y / 6 / 1));
  BOOST_TEST((garden.beds[0].mulch.kind == noonleaf::MulchKind::organic));
  BOOST_TEST(garden.beds[0].mulch.covered_frac == 0.8);
  BOOST_TEST((garden.beds[0].mulch.from == 2025y / 6 / 3));
  BOOST_TEST((garden.account.method == noonleaf::CoefficientMethod::single));
  BOOST_TEST((garden.account.start == noonleaf::SoilAtStart::unknown));
  BOOST_TEST(garden.taps[0].salinity_ds_m == 1.2);
  const Garden plain = parse_garden(site + water + bed, "garden.toml");
  BOOST_TEST(plain.beds[0].sun_frac == 1);
  BOOST_TEST((plain.account.method == noonleaf::CoefficientMethod::dual));
}

BOOST_AUTO_TEST_CASE(ornamentals_by_three_factors) {
  const Garden garden = parse_garden(replaced(site + water + bed, "crop = \"tomato\"",
                                              "crop = \"lavender\"\nlandscape = { species = \"low\", density "
                                              "= \"high\", microclimate = \"average\" }"),
                                     "garden.toml");
  BOOST_TEST(garden.beds[0].plantings[0].season.landscape_coefficient == 0.2 * 1.2);  // Costello et al. 2000
}

BOOST_AUTO_TEST_CASE(us_units_are_the_same_quantities) {
  std::string us = replaced(site + water + bed, "elevation_m = 300", "elevation_ft = 984.2519685039370");
  us = replaced(us, "area_m2 = 10", "area_ft2 = 107.63910416709722");
  us = replaced(us, "flow_l_min = 10", "flow_gal_min = 2.641720523581484");
  us = replaced(us, "wetted_area_m2 = 20", "wetted_area_ft2 = 215.27820833419444");
  const Garden metric = parse_garden(site + water + bed, "m"), american = parse_garden(us, "u");
  BOOST_TEST(american.beds[0].area_m2 == metric.beds[0].area_m2, boost::test_tools::tolerance(1e-12));
  BOOST_TEST(american.site.location.elevation_m == metric.site.location.elevation_m,
             boost::test_tools::tolerance(1e-12));
  BOOST_TEST(american.sprinklers[0].rate.rate_mm_h == metric.sprinklers[0].rate.rate_mm_h,
             boost::test_tools::tolerance(1e-12));
}

BOOST_AUTO_TEST_CASE(catch_cans_give_rate_and_uniformity) {
  const std::string cans =
      replaced(water, "flow_l_min = 10\nwetted_area_m2 = 20\n",
               "cans_minutes = 15\ncans_depth_in = [0.2, 0.25, 0.3, 0.3, 0.35, 0.25, 0.2, 0.15]\n");
  const Garden garden = parse_garden(site + cans + bed, "garden.toml");
  // Mean 0.25 in in 15 minutes is 1 in/h; the driest two of eight average 0.175: DU 0.70.
  BOOST_TEST(garden.sprinklers[0].rate.rate_mm_h == noonleaf::mm_from_inches(1.0),
             boost::test_tools::tolerance(1e-12));
  BOOST_TEST(garden.sprinklers[0].rate.du_lq_frac == 0.70, boost::test_tools::tolerance(1e-12));
  BOOST_TEST((garden.sprinklers[0].rate.basis == noonleaf::RateBasis::cans_in_bed));
}

// 20 L in 100 s are 12 L/min; on 20 m2 that is 60 x 12 / 20 = 36 mm/h: a litre on a square metre is a millimetre.
BOOST_AUTO_TEST_CASE(a_bucket_and_a_stopwatch_give_the_flow) {
  const auto by_bucket =
      replaced(water, "flow_l_min = 10\nwetted", "bucket_l = 20\nbucket_seconds = 100\nwetted");
  const Garden garden = parse_garden(site + by_bucket + bed, "garden.toml");
  BOOST_TEST((garden.sprinklers[0].rate.basis == noonleaf::RateBasis::bucket));
  BOOST_CHECK_CLOSE(garden.sprinklers[0].rate.flow_l_min, 12, 1e-9);
  BOOST_CHECK_CLOSE(garden.sprinklers[0].rate.rate_mm_h, 36, 1e-9);
}

// An emitter of 2 L/h each 30 cm on lines 40 cm apart waters 0.12 m2: 2 / 0.12 mm/h.
BOOST_AUTO_TEST_CASE(a_drip_line_is_known_by_its_emitters) {
  const std::string spacing = "emitter_spacing_cm = 30\nline_spacing_cm = 40\n";
  const auto drip =
      replaced(water, "flow_l_min = 10\nwetted_area_m2 = 20\n", "emitter_flow_l_h = 2\n" + spacing);
  const Garden garden = parse_garden(site + drip + bed, "garden.toml");
  BOOST_TEST((garden.sprinklers[0].rate.basis == noonleaf::RateBasis::drip_spacing));
  BOOST_CHECK_CLOSE(garden.sprinklers[0].rate.rate_mm_h, 2 / 0.12, 1e-9);
  BOOST_TEST(complaint(site + replaced(drip, spacing, "") + bed).find("spacing of the lines") !=
             std::string::npos);
}

BOOST_AUTO_TEST_CASE(stages_that_were_seen_are_kept) {
  const std::string seen = "stages_seen = { development = 2025-06-03, mid_season = 2025-06-28 }\n";
  const Garden garden = parse_garden(site + water + bed + seen, "garden.toml");
  const auto& stages = garden.beds[0].plantings[0].season.observed;
  BOOST_TEST((stages.development == 2025y / 6 / 3));
  BOOST_TEST((stages.mid_season == 2025y / 6 / 28));
  BOOST_TEST(!stages.late_season);
  BOOST_TEST(!stages.over);
}

BOOST_AUTO_TEST_CASE(an_unmeasured_sprinkler_is_called_a_guess) {
  const Garden garden =
      parse_garden(site + replaced(water, "flow_l_min = 10\nwetted_area_m2 = 20\n", "") + bed, "garden.toml");
  BOOST_TEST((garden.sprinklers[0].rate.basis == noonleaf::RateBasis::guess));
}

BOOST_AUTO_TEST_CASE(an_area_of_nothing_is_refused) {
  BOOST_TEST(complaint(site + water + replaced(bed, "area_m2 = 10", "area_m2 = 0")) ==
             "garden.toml:17:11: bed.area_m2: 0 is outside the range: 0.01 to 100000 m2\n"
             "  area_m2 = 0\n"
             "            ^\n"
             "  fix: check the number; the unit is the end of the name area_m2\n");
}

BOOST_AUTO_TEST_CASE(an_unknown_crop_names_the_nearest) {
  const std::string text = complaint(site + water + replaced(bed, "\"tomato\"", "\"tomatoe\""));
  BOOST_TEST(text.find("garden.toml:21:8: planting.crop: ") == 0U, text);
  BOOST_TEST(text.find("did you mean tomato?") != std::string::npos, text);
  BOOST_TEST(text.find("crop = \"tomatoe\"\n         ^") != std::string::npos, text);
}

BOOST_AUTO_TEST_CASE(a_bed_without_a_sprinkler_is_refused) {
  const std::string text = complaint(site + water + replaced(bed, "sprinkler = \"s\"\n", ""));
  BOOST_TEST(text.find("garden.toml:15:1: bed: \"sprinkler\" is missing") == 0U, text);
  const std::string wrong =
      complaint(site + water + replaced(bed, "sprinkler = \"s\"", "sprinkler = \"hose\""));
  BOOST_TEST(wrong.find("there is no sprinkler with the id \"hose\"") != std::string::npos, wrong);
}

BOOST_AUTO_TEST_CASE(several_problems_come_at_once_in_the_order_of_the_file) {
  std::string text = replaced(site + water + bed, "latitude_deg = 40", "latitude_deg = 400");
  text = replaced(text, "soil = \"loam\"", "soil = \"lome\"");
  text = replaced(text, "area_m2 = 10", "are_m2 = 10");
  try {
    parse_garden(text, "garden.toml");
    BOOST_FAIL("accepted");
  } catch (const Error& refused) {
    BOOST_REQUIRE(refused.problems().size() == 4U);
    BOOST_TEST(refused.problems()[0].field == "site.latitude_deg");
    BOOST_TEST(refused.problems()[0].line == 3U);
    BOOST_TEST(refused.problems()[1].message == "the area of the bed is missing");
    BOOST_TEST(refused.problems()[2].fix == "did you mean \"area_m2\"?");
    BOOST_TEST(refused.problems()[3].fix.find("loam") != std::string::npos);
  }
}

BOOST_AUTO_TEST_CASE(other_faults_have_their_own_words) {
  const auto fault = [](const std::string& what, const std::string& with, const std::string& words) {
    const std::string text = complaint(replaced(site + water + bed, what, with));
    BOOST_TEST(text.find(words) != std::string::npos, words << " not in: " << text);
  };
  fault("area_m2 = 10", "area_m2 = \"1O\"", "\"1O\" is not a number");
  fault("area_m2 = 10", "area_m2 = 10\nsun_pct = 0", "outside the range");
  fault("crop = \"tomato\"",
        "crop = \"tomato\"\nlandscape = { species = \"low\", density = \"high\", microclimate = \"high\" }",
        "would be a second one");
  fault("crop = \"tomato\"",
        "crop = \"lavender\"\nlandscape = { species = \"lo\", density = \"high\", microclimate = \"high\" }",
        "did you mean low?");
  fault("area_m2 = 10", "area_m2 = 10\nrain_catch_pct = 500", "outside the range");
  fault("area_m2 = 10", "area_m2 = 10\nmulch = \"strow\"", "mulch");
  fault("area_m2 = 10", "area_m2 = 10\nmulch = { kind = \"plastic\", cover = 3 }", "cover");
  fault("[[tap]]", "[account]\nbalance = \"triple\"\n[[tap]]", "triple");
  fault("area_m2 = 10", "area_m2 = 10\narea_ft2 = 100", "the same quantity is given in two units");
  fault("transplanted = 2025-05-10", "transplanted = 2025-02-30", "garden.toml:22:");
  fault("transplanted = 2025-05-10", "transplanted = \"10 May\"", "is not a date");
  fault("transplanted = 2025-05-10", "", "does not say when it began");
  fault("transplanted = 2025-05-10", "transplanted = 2025-05-10\nsown = 2025-05-01", "began in two ways");
  fault("zone = \"America/Chicago\"", "zone = \"Chicago\"", "is not a time zone");
  fault("elevation_m = 300", "", "the elevation is missing");
  fault("crop = \"tomato\"", "crop = \"tomato\"\nshare_pct = 120", "outside the range");
  fault("soil = \"loam\"", "soil = { sand_pct = 40 }", "needs either sand_pct and clay_pct");
  fault("soil = \"loam\"", "soil = { field_capacity_pct = 10, wilting_point_pct = 20 }",
        "must be above the wilting point");
  fault("[[bed]]", "[[bed]]\nid = 7\n[[bed]]", "this must be text in quotation marks");
  fault("id = \"t\"", "id = \"t\"\n[[tap]]\nid = \"t\"", "is the id of an earlier tap");
  fault("name = \"Test\"", "name = ", "garden.toml:2:");
}

BOOST_AUTO_TEST_CASE(shares_of_what_is_pulled_do_not_count) {
  const std::string two = bed + "[[bed.planting]]\ncrop = \"lettuce\"\nsown = 2025-03-01\n";
  BOOST_TEST(complaint(site + water + two).find("share more than the whole bed: 200 %") != std::string::npos);
  BOOST_TEST(complaint(site + water + two + "pulled = 2025-05-09\n") == "");
}

BOOST_AUTO_TEST_CASE(a_key_of_200000_parts_does_not_reach_the_parser) {
  std::string key = "a";
  for (int part = 0; part < 200'000; ++part) key += ".a";
  const std::string text = complaint(key + " = 1\n");
  BOOST_TEST(text.find("this line is longer than 2000 bytes") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(a_missing_file_says_so) {
  BOOST_CHECK_EXCEPTION(noonleaf::read_garden("/nowhere/garden.toml", "garden.toml"), Error,
                        [](const Error& refused) {
                          return std::string(refused.what()) == "garden.toml: there is no such file";
                        });
}

BOOST_AUTO_TEST_CASE(a_letter_stands_for_one_bed) {
  const std::string text = site + R"(units = "metric"
[[tap]]
id = "t"
flow_l_min = 5
[[sprinkler]]
id = "s"
tap = "t"
cans_minutes = 20
cans_depth_mm = [10, 10, 10, 10]
[[bed]]
id = "a"
letter = "Q"
area_m2 = 20
sprinkler = "s"
soil = "loam"
[[bed]]
id = "b"
letter = ")";
  const std::string end = "\"\narea_m2 = 2\nsprinkler = \"s\"\nsoil = \"loam\"\n";
  BOOST_CHECK_EXCEPTION(noonleaf::parse_garden(text + "Q" + end, "garden.toml"), noonleaf::Error,
                        [](const noonleaf::Error& refused) {
                          return refused.problems().front().message ==
                                 "\"Q\" is the letter of an earlier bed";
                        });
  // 30 mm/h on 20 m2 is 10 L a minute, and the tap gives 5; nobody is there to open it.
  const auto doubts = noonleaf::garden_doubts(noonleaf::parse_garden(text + "R" + end, "garden.toml"));
  BOOST_REQUIRE(doubts.size() == 2U);
  BOOST_TEST(doubts[0].message.find("[[caretaker]]") != std::string::npos);
  BOOST_TEST(doubts[1].message.find("5.0 L a minute") != std::string::npos, doubts[1].message);
  BOOST_TEST(doubts[1].message.find("10.0 L a minute") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(an_empty_file_says_what_is_missing) {
  const std::string text = complaint("");
  BOOST_TEST(text.find("the [site] table is missing") != std::string::npos);
  BOOST_TEST(text.find("there is no bed") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(a_sprinkler_that_draws_more_than_its_tap_gives_is_refused) {
  const auto with_flow = [](const std::string& flow) {
    return std::string(
               "[site]\nname = \"T\"\nlatitude_deg = 40\nlongitude_deg = -100\nelevation_m = 300\nzone = "
               "\"America/Chicago\"\n"
               "[[tap]]\nid = \"t\"\nflow_gal_min = 4.5\n[[sprinkler]]\nid = \"s\"\ntap = \"t\"\n") +
           flow +
           "\nwetted_area_m2 = 20\n[[bed]]\nid = \"a\"\narea_m2 = 10\nsprinkler = \"s\"\nsoil = \"loam\"\n";
  };
  noonleaf::parse_garden(with_flow("flow_gal_min = 4.5"), "garden.toml");
  try {
    noonleaf::parse_garden(with_flow("flow_gal_min = 5"), "garden.toml");
    BOOST_ERROR("accepted");
  } catch (const noonleaf::Error& refused) {
    const std::string text = describe(refused.problems());
    BOOST_TEST(text.find("garden.toml:13:") == 0U, text);
    BOOST_TEST(text.find("18.9 l/min (5 gal/min), more than the tap \"t\" gives: 17 l/min (4.5 gal/min)") !=
                   std::string::npos,
               text);
  }
}

BOOST_AUTO_TEST_CASE(a_can_in_the_hand_needs_no_evenness) {
  const auto garden = noonleaf::parse_garden(
      "[site]\nname = \"T\"\nlatitude_deg = 40\nlongitude_deg = -100\nelevation_m = 300\nzone = "
      "\"America/Chicago\"\n"
      "[[tap]]\nid = \"t\"\n[[sprinkler]]\nid = \"can\"\nkind = \"hand\"\ntap = \"t\"\ncan_l = 9\n"
      "[[bed]]\nid = \"a\"\narea_m2 = 10\nsprinkler = \"can\"\nsoil = \"loam\"\n",
      "garden.toml");
  BOOST_TEST(garden.sprinklers[0].can_l == 9);
  BOOST_TEST(garden.sprinklers[0].rate.du_lq_frac == 1);
  BOOST_TEST(!garden.sprinklers[0].evenness_is_guess);
}

// Each line is short, each value is nested within what the parser allows, and yet 119,000 tables lay in each
// other: freeing them overflowed the stack.
BOOST_AUTO_TEST_CASE(dotted_keys_within_arrays_do_not_reach_the_parser) {
  std::string key = "{a", text = site + "k = [\n";
  for (int part = 1; part < 990; ++part) key += ".a";
  for (int level = 0; level < 120; ++level) text += key + " = [\n";
  for (int level = 0; level < 120; ++level) text += "]}\n";
  const std::string said = complaint(text + "]\n");
  BOOST_TEST(said.find("garden.toml:8:33: this key has more than 16 parts") == 0U, said.substr(0, 200));
}

BOOST_AUTO_TEST_CASE(dots_that_are_in_no_key_are_left_alone) {
  std::string depths = "1.5";
  for (int can = 1; can < 60; ++can) depths += ", 1.5";
  const std::string dots(40, '.');
  const std::string cans = replaced(water, "flow_l_min = 10\nwetted_area_m2 = 20\n",
                                    "cans_minutes = 15\ncans_depth_mm = [" + depths + "] # " + dots + "\n");
  const Garden garden =
      parse_garden("# " + dots + "\n" + replaced(site, "\"Test\"", "\"it's \\\"" + dots + "\"") + cans + bed,
                   "garden.toml");
  BOOST_TEST(garden.site.name == "it's \"" + dots);
  BOOST_TEST(garden.sprinklers[0].cans->can_count == 60U);
  BOOST_TEST(parse_garden(replaced(site, "\"Test\"", "'C:\\" + dots + "'") + water + bed, "g").site.name ==
             "C:\\" + dots);
}

// What is text and what is not has to be known for each line by itself.
BOOST_AUTO_TEST_CASE(text_over_several_lines_is_refused) {
  for (const char mark : {'"', '\''}) {
    const std::string marks(3, mark);
    const std::string said = complaint(replaced(site, "\"Test\"", marks + "Te\nst" + marks) + water + bed);
    BOOST_TEST(
        said.find("garden.toml:2:8: three quotation marks begin a text that goes on below this line") == 0U,
        said);
  }
  const std::string five = "\"\"\"the \"old\" garden\"\"\"\"\"";
  BOOST_TEST(parse_garden(replaced(site, "\"Test\"", five) + water + bed, "g").site.name ==
             "the \"old\" garden\"\"");
  BOOST_TEST(complaint(replaced(site, "\"Test\"", "\"\"") + water + bed).find("this must not be empty") !=
             std::string::npos);
}

// The parser takes for granted that a name follows the brackets; built with assertions it ended the program.
BOOST_AUTO_TEST_CASE(brackets_without_a_name_do_not_reach_the_parser) {
  for (const std::string line : {"[[[site]", "[=", " [ .a]", "[[#", "[{", "[", "[[ ", "[[\red]]"}) {
    const std::string said = complaint(site + line + "\n" + water + bed);
    BOOST_TEST(said.find("the name of a table is missing between the brackets") != std::string::npos, said);
    BOOST_TEST(said.find("garden.toml:7:") == 0U, said);
  }
  BOOST_TEST(complaint(site + "  [ \"tap\" ]\n" + bed) != "");
}

// For some letters the parser's own tables end in undefined behaviour (U+028B, say).
BOOST_AUTO_TEST_CASE(letters_outside_ascii_stand_in_texts_only) {
  const std::string said = complaint(replaced(site, "name = ", "name \xCA\x8B= ") + water + bed);
  BOOST_TEST(said.find("garden.toml:2:6: this letter or sign may stand between quotation marks only") == 0U,
             said);
  BOOST_TEST(
      parse_garden("\xEF\xBB\xBF# \xCA\x8B\n" + replaced(site, "Test", "Se\xC3\xB1or") + water + bed, "g")
          .site.name == "Se\xC3\xB1or");
}

BOOST_AUTO_TEST_CASE(so_many_problems_are_listed_and_no_more) {
  std::string text = site + water;
  for (int index = 0; index < 30'000; ++index) text += "[[bed]]\n";
  try {
    parse_garden(text, "garden.toml");
    BOOST_ERROR("beds without anything were taken");
  } catch (const Error& refused) {
    BOOST_REQUIRE_EQUAL(refused.problems().size(), 1001U);
    BOOST_TEST(refused.problems().back().message ==
               "there are more problems than 1,000; the rest is not listed");
  }
}

BOOST_AUTO_TEST_SUITE_END()
