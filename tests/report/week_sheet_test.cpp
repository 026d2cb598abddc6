#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/report/week_text.hpp"
#include "noonleaf/units.hpp"
#include "noonleaf/weather/utf8_text.hpp"

#include "golden_text.hpp"
#include "invented_week.hpp"
#include "text_checks.hpp"

using namespace noonleaf;
using namespace std::chrono_literals;

namespace {

/// For the browser and the calendar reader (look-at-pages.sh, read-calendar.sh).
void write_sheet(const std::string& name, const std::string& text) {
  std::filesystem::create_directories(NOONLEAF_SHEETS_FOLDER);
  std::ofstream(std::filesystem::path(NOONLEAF_SHEETS_FOLDER) / name, std::ios::binary) << text;
}

std::size_t count_of(const std::string& text, const std::string& what) {
  std::size_t count = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++count;
  return count;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(week_sheet)

BOOST_AUTO_TEST_CASE(the_usual_week_in_both_languages) {
  const Garden garden = invented::garden({});
  const WeekPlan plan = invented::plan(garden, invented::usual_runs());
  for (const Language language : {Language::en, Language::es}) {
    const WeekView view{.garden = garden, .plan = plan, .language = language, .made = invented::made()};
    const std::string stem = "usual_" + std::string(code(language));
    check_golden(stem + ".txt", week_text(view));
    check_golden(stem + ".html", week_html(view));
    check_golden(stem + ".ics", week_ics(view));
    BOOST_TEST(widest_line(week_text(view)) <= 80U);
    write_sheet(stem + ".html", week_html(view));
    check_golden("usual.csv", week_csv(view));
  }
}

/// Of a text from a line on.
std::string from_line(const std::string& text, const std::string& begin) {
  const std::size_t at = text.find("\n" + begin);
  return at == std::string::npos ? "" : text.substr(at + 1);
}

// Shares by bed and day, the range of the worst day, alerts: on the educator's pages, in all forms.
BOOST_AUTO_TEST_CASE(how_sure_the_week_is_in_both_languages) {
  const Garden garden = invented::garden({});
  WeekPlan plan = invented::plan(garden, invented::usual_runs());
  plan.likelihood = invented::likelihood(plan);
  for (const Language language : {Language::en, Language::es}) {
    WeekView view{.garden = garden, .plan = plan, .language = language, .made = invented::made()};
    view.alerts = invented::alerts();
    const bool english = language == Language::en;
    const std::string text = week_text(view), page = week_html(view),
                      stem = "sure_" + std::string(code(language));
    check_golden(stem + ".txt", from_line(text, english ? "For the educator" : "Para la persona"));
    BOOST_TEST(widest_line(text) <= 80U);
    const std::string share = english ? "S10 W4" : "F10 M4",
                      alert = english ? "in 6 of 10" : "en 6 de cada 10";
    BOOST_TEST(count_of(page, "<td>" + share + "</td>") == 1U);
    // Nothing of it on the custodian's page.
    const std::size_t educator = page.find("<section class=\"page educator\"");
    BOOST_REQUIRE(educator != std::string::npos);
    BOOST_TEST(page.find("class=\"sure\"") > educator);
    BOOST_TEST(page.find(alert) > educator);
    BOOST_TEST(page.substr(0, educator).find("do not skip") == std::string::npos);
    write_sheet(stem + ".html", page);
    BOOST_TEST(week_csv(view).find("S10") == std::string::npos);
  }
}

BOOST_AUTO_TEST_CASE(two_weeks_of_twelve_beds_have_a_table_for_each_week) {
  const Garden garden = invented::garden({.beds = 12});
  WeekPlan plan = invented::plan(garden, invented::usual_runs(), 14);
  plan.likelihood = invented::likelihood(plan);
  const WeekView view{.garden = garden, .plan = plan, .language = Language::es, .made = invented::made()};
  BOOST_TEST(sure_table(view)->days.size() == 14U);
  BOOST_TEST(sure_table(view)->rows.size() == 11U);  // the seedbed is named in a note
  BOOST_TEST(count_of(week_html(view), "<table class=\"sure\">") == 2U);
  BOOST_TEST(widest_line(week_text(view)) <= 80U);
  write_sheet("long_es.html", week_html(view));
}

// Shares that the words must not round into certainty or away.
BOOST_AUTO_TEST_CASE(a_share_reads_as_tenths) {
  const Garden garden = invented::garden({.beds = 1});
  WeekPlan plan = invented::plan(garden, {});
  plan.likelihood = invented::likelihood(plan);
  auto& days = plan.likelihood->beds[0].plantings[0].days;
  const std::vector<std::pair<double, double>> shares{{0, 0},       {0.049, 0.049}, {0.05, 0},   {0.94, 0.06},
                                                      {0.96, 0.96}, {0.02, 0.2},    {1, missing}};
  for (std::size_t day = 0; day < shares.size(); ++day)
    std::tie(days[day].beyond_frac, days[day].wilt_frac) = shares[day];
  const WeekView view{.garden = garden, .plan = plan, .made = invented::made()};
  const std::vector<std::string> cells{"\u2013", "\u2013", "S1", "S9 W1", "S10 W10", "W2", "S10"};
  BOOST_TEST(sure_table(view)->rows[0].cells == cells, boost::test_tools::per_element());
  plan.likelihood.reset();
  BOOST_TEST(!sure_table(view).has_value());
  BOOST_TEST(sure_range_words(view, 0).empty());
}

BOOST_AUTO_TEST_CASE(twelve_beds_on_numbered_pages) {
  const Garden garden = invented::garden({.beds = 12});
  const WeekPlan plan = invented::plan(garden, invented::many_runs(), 10);
  for (const Language language : {Language::en, Language::es}) {
    const WeekView view{.garden = garden, .plan = plan, .language = language, .made = invented::made()};
    const std::string page = week_html(view);
    write_sheet("many_" + std::string(code(language)) + ".html", page);
    BOOST_TEST(count_of(page, "<th scope=\"row\" class=\"bed\">") == plan.runs.size());
    BOOST_TEST(page.find(language == Language::en ? "Page 1 of 3" : "Página 1 de 3") != std::string::npos);
  }
}

// As the program plans it, in a heat wave: the browser counts its pages (look-at-pages.mjs).
BOOST_AUTO_TEST_CASE(the_demo_garden_has_one_page) {
  const GardenFolder demo = read_garden_folder(NOONLEAF_DEMO_FOLDER, "demo");
  const Sky sky = sky_over(demo.garden.site, demo.weather);
  WeekPlan plan =
      plan_week(demo.garden, demo.journal, sky, {.first = *demo.garden.site.demo_date, .days = 7});
  BOOST_TEST(plan.runs.size() >= 15U);
  plan.likelihood = likelihood_of_week(demo.garden, demo.journal, sky, plan);
  Today today = plan_today(demo.garden, demo.journal, sky, {plan.first});
  today.likelihood = likelihood_of_alerts(demo.garden, demo.journal, sky, today);
  for (const Language language : {Language::en, Language::es}) {
    WeekView view{.garden = demo.garden, .plan = plan, .language = language, .made = {plan.first, 0min}};
    view.alerts = alerts_of({demo.garden, today, language, ReadOn::sheet});
    BOOST_TEST(!view.alerts.empty());
    const std::string page = week_html(view);
    BOOST_TEST(count_of(page, "<th scope=\"row\" class=\"bed\">") == plan.runs.size());
    BOOST_TEST(page.find(language == Language::en ? "Page 1 of 1" : "Página 1 de 1") != std::string::npos);
    write_sheet("demo_" + std::string(code(language)) + ".html", page);
  }
}

// Somebody with a can and the sheet has to know how many times to walk.
BOOST_AUTO_TEST_CASE(a_bed_watered_by_hand_gets_its_cans) {
  Garden garden = invented::garden({});
  Sprinkler& can = garden.sprinklers[garden.beds[1].sprinkler];
  can.kind = WettingKind::hand;
  const WeekPlan plan = invented::plan(garden, invented::usual_runs());
  const auto run =
      std::find_if(plan.runs.begin(), plan.runs.end(), [&](const WeekRun& each) { return each.bed == 1; });
  BOOST_REQUIRE((run != plan.runs.end()));
  const double litres = run->depth_mm * garden.beds[1].area_m2;
  const std::size_t by_hand =
      static_cast<std::size_t>(std::count_if(plan.runs.begin(), plan.runs.end(), [&](const WeekRun& each) {
        return each.sprinkler == run->sprinkler;
      }));
  const std::string gallons = std::to_string(std::lround(litres / litres_per_gallon));
  struct Kind {
    double can_l;
    std::string en, es;
  };
  for (const Kind& kind :
       {Kind{missing, "By hand: " + gallons + " gallons", "A mano: " + gallons + " galones"},
        Kind{litres / 3, gallons + " gallons: 3 cans of ", gallons + " galones: 3 regaderas de "},
        Kind{litres, gallons + " gallons: 1 can of ", gallons + " galones: 1 regadera de "}}) {
    can.can_l = kind.can_l;
    for (const Language language : {Language::en, Language::es}) {
      const WeekView view{.garden = garden, .plan = plan, .language = language, .made = invented::made()};
      const std::string& words = language == Language::en ? kind.en : kind.es;
      for (const std::string& sheet : {week_text(view), week_html(view), week_csv(view)})
        BOOST_TEST(sheet.find(words) != std::string::npos, words + "\n" + sheet);
      BOOST_TEST(count_of(week_html(view), "<td colspan=\"7\">") == by_hand);
      BOOST_TEST(widest_line(week_text(view)) <= 80U);
      write_sheet("by_hand_" + std::string(code(language)) + ".html", week_html(view));
    }
    const std::string json = week_json({.garden = garden, .plan = plan, .made = invented::made()});
    const std::string cans = std::isnan(kind.can_l) ? "null" : kind.can_l == litres ? "1.0" : "3.0";
    BOOST_TEST(json.find("\"cans\": " + cans) != std::string::npos, cans);
    BOOST_TEST(json.find("\"by_hand_l\": null") != std::string::npos);  // the other beds
  }
}

// The rain limit of the first run stood for the whole week.
BOOST_AUTO_TEST_CASE(every_run_has_its_own_rain_limit) {
  const Garden garden = invented::garden({});
  WeekPlan plan = invented::plan(garden, invented::usual_runs());
  plan.runs[0].skip_rain_mm = 40;
  plan.runs[4].skip_rain_mm = 7;  // the same bed, days later
  plan.runs[1].skip_rain_mm = missing;
  const WeekView view{.garden = garden, .plan = plan, .made = invented::made()};
  const std::string page = week_html(view), text = week_text(view);
  BOOST_TEST(page.find("<td class=\"minutes\">40</td><td>1 3/4</td>") != std::string::npos);
  BOOST_TEST(page.find("<td class=\"minutes\">40</td><td>1/2</td>") != std::string::npos);
  BOOST_TEST(page.find("<td class=\"minutes\">10</td><td>\u2013</td>") != std::string::npos);
  BOOST_TEST(text.find("40    1 3/4") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(a_name_can_do_nothing_to_the_page_or_the_table) {
  const Garden garden = invented::garden({.site = "</title><script>alert(1)</script>",
                                          .first_bed_name = "<script>alert(2)</script>\" onload=\"x",
                                          .first_bed_id = "=HYPERLINK(\"http://x\")"});
  const WeekPlan plan = invented::plan(garden, invented::usual_runs());
  const WeekView view{.garden = garden, .plan = plan, .made = invented::made()};
  const std::string page = week_html(view);
  BOOST_TEST(page.find("<script") == std::string::npos);
  BOOST_TEST(page.find("\" onload=\"x") == std::string::npos);
  BOOST_TEST(page.find("http") == std::string::npos);  // nothing from the network, not even a namespace
  BOOST_TEST(week_csv(view).find(",\"'=HYPERLINK(\"\"http://x\"\")\",") != std::string::npos, week_csv(view));
  write_sheet("hostile.html", page);
}

BOOST_AUTO_TEST_CASE(a_week_without_a_run_says_so) {
  const Garden garden = invented::garden({});
  const WeekPlan plan = invented::plan(garden, {});
  const WeekView view{.garden = garden, .plan = plan, .made = invented::made()};
  BOOST_TEST(week_text(view).find("no bed needs water") != std::string::npos);
  BOOST_TEST(week_html(view).find("no bed needs water") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(what_the_plan_cannot_do_names_the_rule_and_the_help) {
  const Garden garden = invented::garden({});
  WeekPlan plan = invented::plan(garden, invented::usual_runs());
  WeekMiss miss{
      .bed = 1, .first = plan.first, .last = plan.last, .limit = WeekLimit::restriction, .restriction = 0};
  miss.relaxation = {.kind = RelaxationKind::allow_weekday, .date = plan.last};
  miss.or_else = Relaxation{.kind = RelaxationKind::move_to_drip};
  plan.misses = {miss};
  const WeekView view{.garden = garden, .plan = plan, .language = Language::es, .made = invented::made()};
  BOOST_TEST(missed_section(view).lines.front() ==
             "A la cama B le falta agua del miércoles 16 de julio al martes 22 de julio. Lo prohíbe la regla "
             "«city stage 2». "
             "Lo más fácil: pedir permiso para regar el martes, o regar a mano. O bien: una línea de goteo "
             "en esta cama.");
}

// "Every bed stays within its limit" stood beside days marked as short of water.
BOOST_AUTO_TEST_CASE(what_the_chart_marks_is_said) {
  const Garden garden = invented::garden({});
  WeekPlan plan = invented::plan(garden, invented::usual_runs());
  const WeekView view{.garden = garden, .plan = plan, .made = invented::made()};
  const auto said = [&] { return missed_section(view).lines.front(); };
  for (WeekBed& bed : plan.beds) {
    for (BedDay& day : bed.days) day.risk = DayRisk::comfortable;
  }
  BOOST_TEST(said() == "With these runs every bed stays within its limit.");
  plan.beds[3].days[2].risk = DayRisk::dry;
  BOOST_TEST(said().find("bed D passes its limit") != std::string::npos, said());
  plan.beds[1].open_question = OpenQuestion{.runs = {{1, 2025y / std::chrono::July / 14, 60}}};
  plan.beds[1].open_question->run_if_not_done.minutes = 75;
  const auto lines = missed_section(view).lines;
  BOOST_TEST(lines.back().find("Mon 14 (60 min). If the soil of bed B is dry on Wednesday: 75 minutes") !=
                 std::string::npos,
             lines.back());
}

BOOST_AUTO_TEST_CASE(a_sheet_without_anybody_to_call_leaves_a_line) {
  Garden garden = invented::garden({});
  const WeekPlan plan = invented::plan(garden, {});
  garden.site.contact.clear();
  garden.caretakers.clear();
  const WeekView view{.garden = garden, .plan = plan, .made = invented::made()};
  BOOST_TEST(week_text(view).find("____________________, phone") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(calendars_across_a_clock_change_and_made_again) {
  // Clocks go back on Sunday 2 November 2025 in Los Angeles.
  const Garden garden = invented::garden({});
  const auto friday = 2025y / std::chrono::October / 31;
  std::vector<invented::RunKind> runs;
  for (int day = 0; day < 5; ++day) runs.push_back({.day = day, .bed = 0, .begin = 6h, .length_min = 30});
  const WeekPlan first = invented::plan(garden, runs, 7, friday);
  runs.pop_back();
  runs[0].begin = 7h;
  const WeekPlan second = invented::plan(garden, runs, 7, friday);
  const WeekView before{.garden = garden, .plan = first, .made = {friday, 5h + 0min}};
  WeekView after{.garden = garden, .plan = second, .made = {friday, 5h + 30min}};
  after.changes = changes_between(planned_runs(garden, first), planned_runs(garden, second), friday);
  after.dropped = dropped_openings(planned_runs(garden, first), planned_runs(garden, second), friday);
  BOOST_TEST(after.dropped.size() == 1U);
  write_sheet("first.ics", week_ics(before));
  write_sheet("again.ics", week_ics(after));
}

BOOST_AUTO_TEST_CASE(reclaimed_water_is_named_where_it_is_used) {
  const Garden garden = invented::garden({.reclaimed = true});
  const WeekPlan plan = invented::plan(garden, invented::usual_runs());
  const WeekView view{.garden = garden, .plan = plan, .made = invented::made()};
  BOOST_TEST(week_text(view).find("do not drink it") != std::string::npos);
}

BOOST_AUTO_TEST_SUITE_END()
