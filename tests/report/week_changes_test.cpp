#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/report/week_text.hpp"

#include "invented_week.hpp"

using namespace noonleaf;
using namespace std::chrono_literals;
using std::chrono::minutes;

namespace {

constexpr auto first_day = 2025y / std::chrono::July / 16;

PlannedRun run(unsigned day, const char* bed, minutes begin, double length) {
  return {.date = 2025y / std::chrono::July / std::chrono::day(day),
          .bed = bed,
          .closer = "custodian",
          .begin = begin,
          .end = begin + minutes(static_cast<int>(length)),
          .minutes = length};
}

}  // namespace

BOOST_AUTO_TEST_SUITE(week_changes)

BOOST_AUTO_TEST_CASE(each_kind_once_in_the_order_of_time) {
  std::vector<PlannedRun> before{run(16, "a", minutes(360), 20), run(17, "b", minutes(360), 20),
                                 run(18, "c", minutes(360), 20), run(19, "d", minutes(360), 20),
                                 run(15, "e", minutes(360), 20)};
  std::vector<PlannedRun> now{run(16, "a", minutes(390), 20), run(18, "c", minutes(360), 25),
                              run(19, "d", minutes(360), 20), run(20, "a", minutes(360), 20)};
  now[2].closer = "educator";
  const auto changes = changes_between(before, now, first_day);
  BOOST_REQUIRE(changes.size() == 5U);
  BOOST_CHECK(changes[0].kind == WeekChangeKind::time);
  BOOST_CHECK(changes[1].kind == WeekChangeKind::dropped);  // 15 July is over and is not mentioned
  BOOST_CHECK(changes[2].kind == WeekChangeKind::minutes);
  BOOST_CHECK(changes[3].kind == WeekChangeKind::closer);
  BOOST_CHECK(changes[4].kind == WeekChangeKind::added);
}

BOOST_AUTO_TEST_CASE(a_run_that_differs_in_all_is_named_for_each) {
  const std::vector<PlannedRun> before{run(17, "a", minutes(360), 60), run(17, "b", minutes(380), 20)};
  std::vector<PlannedRun> now{run(17, "a", minutes(460), 10), run(17, "b", minutes(380), 20)};
  now[0].closer = "educator";
  const Garden garden = invented::garden({});
  const WeekPlan plan = invented::plan(garden, {});
  WeekView view{.garden = garden, .plan = plan, .made = invented::made()};
  view.changes = changes_between(before, now, first_day);
  BOOST_REQUIRE(view.changes->size() == 3U);
  BOOST_CHECK((*view.changes)[0].kind == WeekChangeKind::time);
  BOOST_CHECK((*view.changes)[1].kind == WeekChangeKind::minutes);
  BOOST_CHECK((*view.changes)[2].kind == WeekChangeKind::closer);
  const std::string english = week_json(view);
  BOOST_TEST(english.find("opens at 7:40 am, not 6:00 am") != std::string::npos);
  BOOST_TEST(english.find("10 minutes, not 60") != std::string::npos);
  view.language = Language::es;
  const std::string spanish = week_json(view);
  BOOST_TEST(spanish.find("se abre ahora a las 7:40 a.m., no a las 6:00 a.m.") != std::string::npos);
  BOOST_TEST(spanish.find("10 minutos, no 60") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(a_plan_reads_back_from_its_own_json) {
  const Garden garden = invented::garden({});
  const WeekPlan plan = invented::plan(garden, invented::usual_runs());
  const WeekView view{.garden = garden, .plan = plan, .made = invented::made()};
  const auto read = read_planned_runs(week_json(view), "plan.json");
  BOOST_TEST(read.size() == plan.runs.size());
  BOOST_TEST(changes_between(read, planned_runs(garden, plan), plan.first).empty());
}

// The second half of a run that now goes in one stayed in the calendar.
BOOST_AUTO_TEST_CASE(a_second_half_that_is_off_is_cancelled) {
  const Garden garden = invented::garden({});
  const WeekPlan halves = invented::plan(garden, {{.day = 0, .bed = 0, .pause_min = 20}});
  const WeekPlan whole = invented::plan(garden, {{.day = 0, .bed = 0}});
  const auto before =
      read_planned_runs(week_json({.garden = garden, .plan = halves, .made = invented::made()}), "plan.json");
  WeekView view{.garden = garden, .plan = whole, .made = invented::made()};
  view.dropped = dropped_openings(before, planned_runs(garden, whole), whole.first);
  BOOST_REQUIRE(view.dropped.size() == 1U);
  const std::string calendar = week_ics(view);
  const auto second = calendar.find("-2025-07-16-1.2@noonleaf");
  BOOST_REQUIRE(second != std::string::npos);
  BOOST_TEST(calendar.find("STATUS:CANCELLED", second) != std::string::npos);
  BOOST_TEST(calendar.find("STATUS:CANCELLED") > second);
  view.dropped = dropped_openings(planned_runs(garden, whole), planned_runs(garden, halves), whole.first);
  BOOST_TEST(view.dropped.empty());
}

BOOST_AUTO_TEST_CASE(what_is_no_plan_is_refused) {
  for (const char* text :
       {"", "{", "[]", "{\"shape\":\"noonleaf.today\",\"version\":1}",
        "{\"shape\":\"noonleaf.week\",\"version\":1,\"runs\":[{\"date\":\"2025-02-30\"}]}"})
    BOOST_CHECK_THROW(read_planned_runs(text, "plan.json"), Error);
}

BOOST_AUTO_TEST_SUITE_END()
