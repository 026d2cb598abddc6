// The crop and the soil table as a person and a program get them.
#include <cmath>
#include <cstdlib>

#include <boost/test/unit_test.hpp>

#include "command_run.hpp"
#include "json_number.hpp"
#include "text_checks.hpp"

namespace {

std::string answer(const Workplace& place, const std::string& words) {
  const CommandRun run = run_noonleaf(place, words);
  BOOST_TEST(run.exit_code == 0, words << ": " << run.err);
  BOOST_TEST(run.err == "");
  return run.out;
}

void fits_80_columns(const std::string& text) { BOOST_REQUIRE_MESSAGE(widest_line(text) <= 80U, text); }

void refuses(const Workplace& place, const std::string& words, int code, const std::string& golden) {
  const CommandRun refused = run_noonleaf(place, words);
  BOOST_TEST(refused.exit_code == code, words);
  BOOST_TEST(refused.out == "");
  check_golden(golden + ".txt", refused.err);
}

}  // namespace

BOOST_AUTO_TEST_SUITE(tables)

BOOST_AUTO_TEST_CASE(crops_as_text) {
  const Workplace place;
  for (const std::string name : {"", "tomato", "carrot", "lavender", "bare_soil"}) {
    const std::string text = answer(place, "crops " + name);
    check_golden("crops" + (name.empty() ? "" : "_" + name) + ".txt", text);
    fits_80_columns(text);
  }
}

BOOST_AUTO_TEST_CASE(a_region_chooses_the_stage_lengths) {
  const Workplace place;
  BOOST_TEST(holds(answer(place, "crops tomato --region mediterranean"), "Mediterranean)\n"));
  refuses(place, "crops tomato --region atlantis", 1, "refused/no_such_region");
}

BOOST_AUTO_TEST_CASE(a_crop_for_programs) {
  const Workplace place;
  const std::string json = answer(place, "crops tomato --format json");
  // FAO-56 Tables 12, 17 and 22, from memory.
  const std::pair<const char*, double> printed[] = {
      {"kc_ini", 0.6},           {"kc_mid", 1.15},  {"kc_end", 0.8},   {"kcb_ini", 0.15},
      {"kcb_mid", 1.10},         {"kcb_end", 0.70}, {"height_m", 0.6}, {"root_depth_min_m", 0.7},
      {"root_depth_max_m", 1.5}, {"p_frac", 0.40}};
  for (const auto& [key, value] : printed) BOOST_TEST(number_of(json, key) == value, key);
  BOOST_TEST(holds(json, "\"source\": \"FAO Irrigation and Drainage Paper 56"));
  BOOST_TEST(holds(json, "\"confidence\": \"high\""));
  const std::string all = answer(place, "crops --format json");
  for (const auto& [key, value] : printed) BOOST_TEST(holds(all, std::string("\"") + key + "\": "), key);
  BOOST_TEST(holds(all, "\"id\": \"bare_soil\""));
}

BOOST_AUTO_TEST_CASE(a_crop_as_a_picture) {
  const Workplace place;
  check_golden("crops_tomato.svg", answer(place, "crops tomato --format svg"));
  refuses(place, "crops --format svg", 1, "refused/picture_of_all_crops");
  refuses(place, "crops lavender --format svg", 1, "refused/picture_without_stages");
  refuses(place, "crops tomatos", 1, "refused/crop_name");
}

BOOST_AUTO_TEST_CASE(soils_as_text) {
  const Workplace place;
  for (const std::string words : {"", "clay_loam", "--sand 55 --clay 15 --organic 4 --gravel 10"}) {
    const std::string text = answer(place, "soils " + words);
    check_golden(words.empty()          ? "soils.txt"
                 : words == "clay_loam" ? "soils_class.txt"
                                        : "soils_particles.txt",
                 text);
    fits_80_columns(text);
  }
}

BOOST_AUTO_TEST_CASE(a_soil_for_programs_meets_the_printed_table) {
  const Workplace place;
  const std::string json = answer(place, "soils --sand 65 --clay 10 --organic 2.5 --gravel 0 --format json");
  // Saxton & Rawls (2006), Table 3, sandy loam: 8.1, 17.9, 45.0 % of the volume, 50.3 mm/h.
  BOOST_CHECK_SMALL(number_of(json, "wilting_point_m3_m3") - 0.081, 0.0005);
  BOOST_CHECK_SMALL(number_of(json, "field_capacity_m3_m3") - 0.179, 0.0005);
  BOOST_CHECK_SMALL(number_of(json, "saturation_m3_m3") - 0.450, 0.0005);
  BOOST_CHECK_SMALL(number_of(json, "conductivity_mm_h") - 50.3, 0.05);
  const std::string stony =
      answer(place, "soils --sand 65 --clay 10 --organic 2.5 --gravel 40 --format json");
  BOOST_TEST(number_of(stony, "field_capacity_m3_m3") < number_of(json, "field_capacity_m3_m3"));
  const std::string dense = answer(place, "soils --sand 65 --clay 10 --density 1.2 --format json");
  BOOST_TEST(number_of(dense, "saturation_m3_m3") < number_of(json, "saturation_m3_m3"));
  BOOST_TEST(holds(answer(place, "soils --format json"), "\"name\": \"silty_clay_loam\""));
}

BOOST_AUTO_TEST_CASE(beyond_the_limits_of_the_paper_there_is_a_way_out) {
  const Workplace place;
  refuses(place, "soils --sand 20 --clay 10 --organic 8.1", 1, "refused/too_much_organic_matter");
  refuses(place, "soils --sand 20 --clay 61", 1, "refused/too_much_clay");
  BOOST_TEST(run_noonleaf(place, "soils --sand 20 --clay 60 --organic 8").exit_code == 0);
  refuses(place, "soils --sand 60 --clay 50", 1, "refused/more_than_all");
  refuses(place, "soils --sand 60", 2, "usage/sand_alone");
  refuses(place, "soils loamy", 1, "refused/soil_name");
}

BOOST_AUTO_TEST_CASE(a_pot_is_weighed_and_worked_out) {
  const Workplace place;
  const std::string form = answer(place, "soils --pot");
  check_golden("soils_pot_form.txt", form);
  fits_80_columns(form);
  const std::string words =
      "soils --pot --volume 5l --soaked 5150g --drained 4.35kg --wilted 3.1 --dry 2.45kg";
  const std::string text = answer(place, words);
  check_golden("soils_pot.txt", text);
  fits_80_columns(text);
  const std::string json = answer(place, words + " --format json");
  BOOST_CHECK_SMALL(number_of(json, "wilting_point_m3_m3") - 0.13, 1e-12);  // (3.10 - 2.45) / 5
  BOOST_CHECK_SMALL(number_of(json, "field_capacity_m3_m3") - 0.38, 1e-12);
  BOOST_CHECK_SMALL(number_of(json, "saturation_m3_m3") - 0.54, 1e-12);
  const std::string us =
      answer(place,
             "soils --pot --volume 1.3208603gal --drained 9.5901087lb --wilted 6.8343301lb "
             "--format json");
  BOOST_CHECK_SMALL(number_of(us, "field_capacity_m3_m3") - 0.5, 1e-6);  // twice 0.25: no dry weight
  refuses(place, "soils --pot --volume 5l --drained 3.1kg --wilted 4.35kg", 1, "refused/pot_weights_swapped");
  refuses(place, "soils --pot --volume 5l", 1, "refused/pot_without_weights");
  refuses(place, "soils --pot --volume five", 2, "usage/pot_volume");
  refuses(place, "soils --drained 4kg", 2, "usage/weight_without_pot");
}

BOOST_AUTO_TEST_CASE(a_day_explained) {
  const Workplace place;
  BOOST_REQUIRE(run_noonleaf(place, "new demo --demo").exit_code == 0);
  const std::string text = answer(place, "explain demo b 2025-07-16");
  fits_80_columns(text);
  for (const char* line : {"1. THE SKY", "2. THE PLANT: Squash, zucchini", "4. THE PLANT: Bean, green (snap)",
                           "6. THE RUN", "  Ks: water stress coefficient  [FAO-56 eq. 84]\n", "NOT MEASURED"})
    BOOST_TEST(holds(text, line), line);
  const std::string json = answer(place, "explain demo b 2025-07-16 --format json");
  BOOST_TEST(holds(json, "\"equation\": \"max(0, min(1, (TAW - Dr) / (TAW - RAW)))\""));
  refuses(place, "explain demo bb 2025-07-16", 1, "refused/no_such_bed");
  refuses(place, "explain demo b 2019-07-16", 1, "refused/explain_without_weather");
  refuses(place, "explain demo b", 2, "usage/explain_without_date");
}

BOOST_AUTO_TEST_SUITE_END()
