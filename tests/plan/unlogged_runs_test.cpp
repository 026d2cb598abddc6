#include "noonleaf/plan/unlogged_runs.hpp"

#include <algorithm>

#include <boost/test/unit_test.hpp>

#include "noonleaf/plan/today.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::BedToday;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::JournalEntry;
using noonleaf::JournalEvent;
using noonleaf::SoilFeel;
using noonleaf::UnloggedRuns;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
const std::chrono::year_month_day day = 2025y / 7 / 23;  // a Wednesday, weeks after the last rain
const std::string tomato = tomatoes_from("2025-04-15");

struct Place {
  Garden garden = invented_garden(tomato);
  noonleaf::Sky sky = noonleaf::sky_over(garden.site, steady_weather(first, 60, 0));

  UnloggedRuns unlogged(const Journal& journal) const {
    return noonleaf::unlogged_runs(garden, journal, sky, day);
  }
  BedToday bed(const Journal& journal) const {
    return noonleaf::plan_today(garden, journal, sky, {.date = day}).beds[0];
  }
};

JournalEntry entry(JournalEvent event, std::chrono::sys_days date, double minutes = noonleaf::missing) {
  JournalEntry result = entry_of(event, date);
  result.time_of_day = 360min;
  result.minutes = minutes;
  return result;
}

JournalEntry felt(SoilFeel feel, std::chrono::sys_days date) {
  JournalEntry result = entry(JournalEvent::feel, date);
  result.feel = feel;
  return result;
}

}  // namespace

BOOST_FIXTURE_TEST_SUITE(unlogged_runs, Place)

BOOST_AUTO_TEST_CASE(a_run_that_nobody_wrote_down_is_unknown_and_one_of_0_minutes_is_not) {
  const UnloggedRuns open = unlogged({});
  BOOST_REQUIRE(!open.runs.empty());
  BOOST_TEST(open.if_done.size() == open.runs.size());
  for (const noonleaf::UnloggedRun& run : open.runs) {
    BOOST_TEST((std::chrono::sys_days(run.date) >=
                std::chrono::sys_days(day) - std::chrono::days(noonleaf::doubted_days)));
    BOOST_TEST((run.date < day));
    BOOST_TEST(run.minutes > 0);
  }
  BOOST_TEST(unlogged(nothing_ran_before(day)).runs.empty());
}

// What is asked for on one day rests on the days before as done: the sheets of a week do not ask twice for
// one depletion.
BOOST_AUTO_TEST_CASE(a_run_taken_as_done_is_not_asked_for_again_the_day_after) {
  const UnloggedRuns open = unlogged({});
  int followed_a_full_run = 0;
  for (std::size_t index = 1; index < open.runs.size(); ++index) {
    const auto between =
        std::chrono::sys_days(open.runs[index].date) - std::chrono::sys_days(open.runs[index - 1].date);
    const bool in_full =
        open.runs[index - 1].minutes < noonleaf::RunLimits{}.longest_min;  // a cut run leaves a rest
    if (in_full) BOOST_TEST(between.count() > 1);
    followed_a_full_run += in_full;
  }
  BOOST_TEST(followed_a_full_run > 0);
}

BOOST_AUTO_TEST_CASE(a_look_into_the_soil_settles_what_was_before) {
  const auto yesterday = std::chrono::sys_days(day) - std::chrono::days(1);
  BOOST_TEST(unlogged({felt(SoilFeel::moist, yesterday)}).runs.empty());
}

BOOST_AUTO_TEST_CASE(both_traces_are_shown_and_the_run_fits_in_both) {
  const BedToday doubtful = bed({});
  BOOST_REQUIRE(doubtful.open_question.has_value());
  const noonleaf::OpenQuestion& open = *doubtful.open_question;
  const BedToday not_done = bed(nothing_ran_before(day));
  const BedToday done = bed(unlogged({}).if_done);
  BOOST_TEST(!not_done.open_question.has_value());
  BOOST_TEST(std::abs(open.dr_if_not_done_mm - not_done.plantings[0].dr_mm) < 1e-9);
  BOOST_TEST(std::abs(open.dr_if_done_mm - done.plantings[0].dr_mm) < 1e-9);
  BOOST_TEST(open.dr_if_done_mm < open.dr_if_not_done_mm);
  BOOST_TEST(open.run_if_not_done.minutes == not_done.run.minutes);
  BOOST_REQUIRE(doubtful.driver.has_value());
  BOOST_TEST(doubtful.run.net_depth_mm <= open.dr_if_done_mm + 1e-9);
  BOOST_TEST(doubtful.run.minutes < not_done.run.minutes);
}

// All known but a long run this side of yesterday: done, it filled the bed to the brim.
BOOST_AUTO_TEST_CASE(one_long_run_that_nobody_wrote_down_keeps_the_two_traces_far_apart) {
  Journal journal = nothing_ran_before(day);
  std::erase_if(journal, [](const JournalEntry& each) { return each.date == 2025y / 7 / 22; });
  const BedToday doubtful = bed(journal);
  BOOST_REQUIRE(doubtful.open_question.has_value());
  BOOST_TEST(doubtful.open_question->runs.size() == 1U);
  BOOST_TEST(doubtful.open_question->dr_if_done_mm < doubtful.open_question->dr_if_not_done_mm - 20);
}

// Rain of this morning on yesterday's run: done, the bed is full and takes nothing; not done, it is thirsty all the same.
BOOST_AUTO_TEST_CASE(where_no_run_is_right_in_both_cases_the_soil_is_looked_at_first) {
  garden.beds[0].known_wet = 2025y / 7 / 16;  // so that one run fills it
  Journal journal = nothing_ran_before(day);
  std::erase_if(journal, [](const JournalEntry& each) { return each.date == 2025y / 7 / 22; });
  journal.push_back(entry(JournalEvent::rain, day));
  journal.back().bed.clear();
  journal.back().time_of_day = 630min;  // read earlier it would tell of yesterday
  journal.back().rain_mm = 8;
  const BedToday doubtful = bed(journal);
  BOOST_TEST((doubtful.reason == noonleaf::BedReason::look_first));
  BOOST_TEST(!doubtful.driver.has_value());
  BOOST_TEST(!(doubtful.run.minutes > 0));
  BOOST_REQUIRE(doubtful.open_question.has_value());
  BOOST_TEST(doubtful.open_question->dr_if_done_mm < 1);
  BOOST_TEST(doubtful.open_question->run_if_not_done.minutes > 0);
  BOOST_TEST(doubtful.later_slot.has_value());
}

BOOST_AUTO_TEST_SUITE_END()
