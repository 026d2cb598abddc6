// What plan and report say besides whole answers: how likely, how sure, what to measure, every sentence about
// a bed.
#include <chrono>
#include <fstream>
#include <string>
#include <vector>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/plan/account_doubt.hpp"
#include "noonleaf/plan/bed_cycles.hpp"
#include "noonleaf/plan/estimates.hpp"
#include "noonleaf/plan/likelihood.hpp"
#include "noonleaf/plan/member_sky.hpp"
#include "noonleaf/plan/rest_of_run.hpp"
#include "noonleaf/plan/round.hpp"
#include "noonleaf/plan/soil_check.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/plan/wetting_pattern.hpp"
#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/check_json.hpp"
#include "noonleaf/report/crop_words.hpp"
#include "noonleaf/report/estimate_words.hpp"
#include "noonleaf/report/likelihood_words.hpp"
#include "noonleaf/report/local_text.hpp"
#include "noonleaf/report/outdoors_words.hpp"
#include "noonleaf/report/quantity_text.hpp"
#include "noonleaf/report/round_words.hpp"
#include "noonleaf/report/soil_check_words.hpp"
#include "noonleaf/report/soil_words.hpp"
#include "noonleaf/report/today_page.hpp"
#include "noonleaf/report/today_words.hpp"
#include "noonleaf/report/week_changes.hpp"
#include "noonleaf/report/week_text.hpp"
#include "noonleaf/soil/texture.hpp"

#include "door.hpp"

namespace {

using namespace noonleaf;
using namespace std::chrono;

const std::string demo = NOONLEAF_SOURCE_DIR "/weather_samples/demo";
constexpr year_month_day date = 2025y / July / 16;

/// A garden and its day, made by whichever thread comes first, then read by all.
struct SharedDay {
  GardenFolder folder = read_garden_folder(demo, demo);
  Sky sky = sky_over(folder.garden.site, folder.weather);
  Today day = plan_today(folder.garden, folder.journal, sky, {.date = date});
};

const SharedDay& shared() {
  static const SharedDay of_all;
  return of_all;
}

std::string every_sentence() {
  const SharedDay& here = shared();
  Print out;
  for (const Language language : {Language::en, Language::es}) {
    const TodayView view{.garden = here.folder.garden, .today = here.day, .language = language};
    for (const PageParagraph& paragraph : today_page(view)) out << paragraph.text;
    for (const Estimate& estimate : estimates_behind(here.folder.garden, here.folder.journal, here.sky, date))
      out << estimate_words(here.folder.garden, estimate, language);
    out << outdoor_title(language) << outdoor_cautions_title(language);
    const WeekPlan plan =
        plan_week(here.folder.garden, here.folder.journal, here.sky, {.first = date, .days = 2});
    out << likelihood_of_week(here.folder.garden, here.folder.journal, here.sky, plan).members;
    out << alerts_beside(plan, date, here.folder.garden, here.folder.journal, here.sky, language).size();
    for (const BedToday& bed : here.day.beds)
      out << hand_words(view, bed) << by_hand_words(view, bed, 24) << cycle_words(view, bed)
          << doubt_words(view, bed) << people_words(view, bed) << seedbed_words(view, bed)
          << obstacle_words(view, bed) << overflow_words(view, bed) << left_over_words(view, bed)
          << multiplier_words(view, bed) << sprinkler_words(view, bed) << soil_check_words(view, bed)
          << ran_today_words(view, bed) << alerts_of(view).size();
  }
  for (const BedToday& bed : here.day.beds) {
    BedToday rest = bed;
    ask_for_rest(bed, rest);
    out << rest.run.minutes;
    const auto cycles = bed_cycles(here.folder.garden, bed, 30);
    out << (cycles ? running_min(*cycles) : 0);
  }
  out << before_water_of(here.folder.journal, "a", date).size();
  return out.text();
}

std::string likelihoods() {
  const SharedDay& here = shared();
  const Garden& garden = here.folder.garden;
  const MemberOptions few{.members = 32};
  const Likelihood ahead =
      likelihood_of(garden, here.folder.journal, here.sky, {.date = date, .n_days = 4, .options = few});
  const Likelihood today = likelihood_of_today(garden, here.folder.journal, here.sky, here.day, few);
  Print out;
  for (const Language language : {Language::en, Language::es}) {
    for (const Likelihood* likelihood : {&ahead, &today}) {
      const LikelihoodView view{garden, *likelihood, language};
      out << likelihood_head_words(view) << likelihood_bed_words(view) << minutes_doubt_words(view)
          << measure_next_words(view);
      for (const BedLikelihood& bed : likelihood->beds)
        for (const PlantingLikelihood& planting : bed.plantings)
          out << planting_likelihood_words(view, bed, planting)
              << absence_likelihood_words(view, bed.bed, planting.planting, date);
    }
    out << share_words(0.35, language) << alert_likelihood_words(0.8, language);
  }
  const MemberSky sky = member_sky(garden.site, here.sky, date, 4, few);
  out << sky.et0_mm_d << forecast_error(3).t_max_c;
  return out.text();
}

std::string checks_of_the_soil() {
  const SharedDay& here = shared();
  const SoilWater soil = soil_of(find_texture("loam"));
  JournalEntry felt{.date = date, .event = JournalEvent::feel, .bed = "a"};
  Print out;
  for (const SoilFeel feel : {SoilFeel::dry, SoilFeel::moist, SoilFeel::field_capacity}) {
    felt.feel = feel;
    const FoundDepletion found = depletion_found(felt, soil, 0.4);
    out << label(feel) << found.dr_mm << weighted({.dr_mm = 20, .sd_mm = 8}, found).sd_mm;
  }
  out << account_sd_mm(60, 8, 12) << demand_passed_frac(minutes{13 * 60});
  for (const Culprit culprit : {Culprit::rate, Culprit::crop_stage, Culprit::soil}) out << code(culprit);
  for (const GroundState state : {GroundState::open, GroundState::snow, GroundState::frozen})
    out << label(state);
  const Garden& garden = here.folder.garden;
  out << kc_ini_on_ground(garden, 0, garden.beds[0].plantings[0], here.folder.journal, here.sky);
  return out.text();
}

std::string changes_of_the_week() {
  const SharedDay& here = shared();
  const WeekPlan plan =
      plan_week(here.folder.garden, here.folder.journal, here.sky, {.first = date, .days = 4});
  const WeekView view{.garden = here.folder.garden, .plan = plan, .made = {date, minutes{0}}};
  const std::vector<PlannedRun> now = planned_runs(here.folder.garden, plan);
  std::vector<PlannedRun> before = read_planned_runs(week_json(view), "week.json");
  Print out;
  out << now.size() << before.size() << changes_between(before, now, date).size();
  if (!before.empty()) before.front().minutes += 5;
  before.push_back({.date = date, .bed = "a", .closer = "custodian", .run_of_day = 9, .minutes = 5});
  out << changes_between(before, now, date).size() << dropped_openings(before, now, date).size();
  return out.text();
}

std::string tables_in_words() {
  Print out;
  for (const Crop& crop : crop_table()) out << crop_json(crop) << crop_stages_text(crop);
  const PotWeights pot{
      .soil_volume_l = 5, .soaked_kg = 5.15, .drained_kg = 4.35, .wilted_kg = 3.1, .dry_kg = 2.45};
  out << soil_words(soil_answer(pot))
      << soil_words(soil_answer(SoilParticles{.sand_pct = 40, .clay_pct = 20})) << pot_form_text(pot)
      << pot_steps() << soil_table_words();
  return out.text();
}

std::string small_texts() {
  const SharedDay& here = shared();
  Print out;
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us})
    for (const Language language : {Language::en, Language::es}) {
      const QuantityText text(units, language);
      out << text.number(0.25, 2) << text.depth(12) << text.volume(30) << text.temperature(31)
          << text.day(date) << text.date(date) << text.clock(minutes{365}) << text.the_clock(minutes{365})
          << text.hour(18.96) << text.the_hour(13.1) << text.list({"a", "b", "c"})
          << LocalText(language, units).depth(12) << LocalText(language, units).temperature(31)
          << local_name(language, "shed", "cobertizo");
    }
  out << sentence_start("ábrala");
  out << long_date(date) << check_json(std::vector<Problem>{{.file = "garden.toml", .message = "no site"}});
  const RoundRow row{demo, round_entry(here.folder.garden, here.folder.journal, here.sky, date)};
  out << round_text({&row, 1}, {.gardens = 1, .run_today = 1});
  return out.text();
}

}  // namespace

std::vector<Door> words_doors() {
  return {{"every sentence", every_sentence},         {"likelihoods", likelihoods},
          {"checks of the soil", checks_of_the_soil}, {"changes of the week", changes_of_the_week},
          {"tables in words", tables_in_words},       {"small texts", small_texts}};
}
