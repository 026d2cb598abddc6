#include "noonleaf/garden/week_sheet.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/week_sheet_columns.hpp"

#include "refusal.hpp"

using namespace std::chrono_literals;
using noonleaf::Error;
using noonleaf::FilledRun;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::JournalEntry;
using noonleaf::JournalEvent;
using noonleaf::RowLeftOut;

namespace {

struct SheetPlace {
  SheetPlace() {
    garden.beds.resize(2);
    garden.beds[0].id = "a";
    garden.beds[1].id = "b";
  }

  std::vector<FilledRun> read(const std::string& rows) const {
    return noonleaf::parse_week_sheet(header + rows, "week.csv", garden);
  }
  std::string complaint(const std::string& text) const {
    return refusal_text([&] { noonleaf::parse_week_sheet(text, "week.csv", garden); });
  }

  Garden garden;
  std::string header = "date,bed,run,open_at,close_at,planned_minutes,actual_minutes,who,not_done_because\n";
};

}  // namespace

BOOST_FIXTURE_TEST_SUITE(week_sheet, SheetPlace)

BOOST_AUTO_TEST_CASE(the_header_is_the_shared_one) {
  std::string line;
  for (const std::string_view name : noonleaf::week_sheet_columns)
    line += (line.empty() ? "" : ",") + std::string(name);
  BOOST_TEST(line + "\n" == header);
}

BOOST_AUTO_TEST_CASE(minutes_a_reason_and_nothing_are_three_different_things) {
  const auto rows = read(
      "2025-07-14,a,1,06:00,06:25,25,25,JB,\n"
      "2025-07-14,b,2,06:30,06:50,20,,,the gate was locked\n"
      "2025-07-15,a,3,6:05,06:30,25,,,\n"
      "2025-07-15,b,4,06:30,06:50,20,,JB,\n");
  BOOST_REQUIRE(rows.size() == 4U);
  const auto brought = noonleaf::entries_of_sheet(rows, {});
  BOOST_REQUIRE(brought.entries.size() == 2U);
  BOOST_TEST((brought.entries[0].event == JournalEvent::water));
  BOOST_TEST(brought.entries[0].minutes == 25);
  BOOST_TEST((brought.entries[0].time_of_day == 360min));
  BOOST_TEST(brought.entries[0].who == "JB");
  BOOST_TEST(brought.entries[0].note == "week sheet, run 1");
  BOOST_TEST(brought.entries[1].minutes == 0);
  BOOST_TEST(brought.entries[1].note == "week sheet, run 2; not run: the gate was locked");
  BOOST_REQUIRE(brought.left_out.size() == 2U);
  BOOST_TEST((brought.left_out[0].reason == RowLeftOut::nothing_written));
  BOOST_TEST(brought.left_out[0].row.line == 4U);
  BOOST_TEST((brought.left_out[1].reason == RowLeftOut::initials_only));
}

BOOST_AUTO_TEST_CASE(a_sheet_brought_in_twice_counts_once) {
  const auto rows = read("2025-07-14,a,1,06:00,06:25,25,25,JB,\n2025-07-14,a,2,07:00,07:10,10,10,JB,\n");
  Journal journal = noonleaf::entries_of_sheet(rows, {}).entries;
  BOOST_REQUIRE(journal.size() == 2U);  // two runs of one bed on one day
  const auto again = noonleaf::entries_of_sheet(rows, journal);
  BOOST_TEST(again.entries.empty());
  BOOST_TEST((again.left_out[0].reason == RowLeftOut::already_brought_in));
  const auto twice_in_the_sheet =
      read("2025-07-14,a,1,06:00,06:25,25,25,JB,\n2025-07-14,a,1,06:00,06:25,25,25,JB,\n");
  BOOST_TEST(noonleaf::entries_of_sheet(twice_in_the_sheet, {}).entries.size() == 1U);
}

BOOST_AUTO_TEST_CASE(a_run_that_was_logged_by_hand_is_not_counted_again) {
  JournalEntry logged;
  logged.id = "12";
  logged.date = 2025y / 7 / 14;
  logged.event = JournalEvent::water;
  logged.bed = "a";
  logged.minutes = 25;
  const auto rows = read("2025-07-14,a,1,06:00,06:25,25,25,JB,\n2025-07-14,b,2,06:30,06:50,20,20,JB,\n");
  const auto brought = noonleaf::entries_of_sheet(rows, {logged});
  BOOST_TEST(brought.entries.size() == 1U);
  BOOST_REQUIRE(brought.left_out.size() == 1U);
  BOOST_TEST((brought.left_out[0].reason == RowLeftOut::already_logged));
  BOOST_TEST(brought.left_out[0].entry_id == "12");
}

BOOST_AUTO_TEST_CASE(a_spreadsheets_ways_are_read) {
  header.clear();
  const auto rows = read(
      "\"bed\";\"date\";\"tap\";\"actual_minutes\"\r\n\"a\";2025-07-14;\"shed; north\";\"12,5\"\r\n;;;\r\n");
  BOOST_REQUIRE(rows.size() == 1U);
  BOOST_TEST(rows[0].actual_minutes == 12.5);
  BOOST_TEST(rows[0].run == "");
}

BOOST_AUTO_TEST_CASE(the_letters_of_the_sheet_say_why_not) {
  const auto rows = read(
      "2025-07-14,a,1,06:00,06:25,25,R,JB,\n"
      "2025-07-14,b,2,06:00,06:25,25,h,JB,\n"
      "2025-07-15,a,3,06:00,06:25,25,M,JB,felt it twice\n"
      "2025-07-15,b,4,06:00,06:25,25,20,JB,\n");
  const auto entries = noonleaf::entries_of_sheet(rows, {}).entries;
  BOOST_REQUIRE(entries.size() == 4U);
  BOOST_TEST(entries[0].minutes == 0);
  BOOST_TEST(entries[0].note == "week sheet, run 1; not run: rain");
  BOOST_TEST(entries[1].note == "week sheet, run 2; not run: frost");
  BOOST_TEST(entries[2].note == "week sheet, run 3; not run: felt it twice");
  BOOST_TEST(entries[3].minutes == 20);
  BOOST_TEST(entries[3].note == "week sheet, run 4");
  BOOST_TEST(complaint(header + "2025-07-14,a,1,06:00,06:25,25,X,JB,\n").find("actual_minutes") !=
             std::string::npos);
}

BOOST_AUTO_TEST_CASE(dates_that_a_spreadsheet_wrote_are_read_by_the_gardens_units) {
  garden.site.units = noonleaf::UnitSystem::us;
  const auto rows = read("7/9/2025,a,1,06:00,06:25,25,25,JB,\n7/16/25,b,2,06:00,06:25,25,25,JB,\n");
  BOOST_REQUIRE(rows.size() == 2U);
  BOOST_TEST((rows[0].date == 2025y / 7 / 9));
  BOOST_TEST((rows[1].date == 2025y / 7 / 16));
  garden.site.units = noonleaf::UnitSystem::metric;
  BOOST_TEST((read("9.7.2025,a,1,06:00,06:25,25,25,JB,\n")[0].date == 2025y / 7 / 9));
}

BOOST_AUTO_TEST_CASE(dates_in_the_other_order_are_refused_once) {
  garden.site.units = noonleaf::UnitSystem::metric;
  std::string no_such_day, months_apart;
  for (int day = 13; day <= 20; ++day)
    no_such_day += "7/" + std::to_string(day) + "/2025,a,1,06:00,06:25,25,25,JB,\n";
  for (int day = 1; day <= 7; ++day)
    months_apart += "7/" + std::to_string(day) + "/2025,a,1,06:00,06:25,25,25,JB,\n";
  for (const std::string& rows : {no_such_day, months_apart}) {
    const std::string said = complaint(header + rows);
    BOOST_TEST(said.find("day/month/year") != std::string::npos, said);
    BOOST_TEST(said.find("date", said.find("fix:")) == std::string::npos, said);  // one problem, one fix
    BOOST_TEST(said.find("2025-07-16") != std::string::npos, said);
  }
}

BOOST_AUTO_TEST_CASE(every_fault_is_named_with_its_place) {
  const std::string faults = complaint(header +
                                       "July 14,a,1,06:00,06:25,25,25,JB,\n"
                                       "2025-07-14,z,1,06:00,06:25,25,25,JB,\n"
                                       "2025-07-14,a,1,06:00,06:25,25,2O,JB,\n"
                                       "2025-07-14,a,1,06:00,06:25,25,2000,JB,\n"
                                       "2025-07-14,a,1,06:00,06:25,25,10,JB,rain\n");
  for (const char* part :
       {"week.csv:2:1: date: \"July 14\" is not a date", "week.csv:3:12: bed: there is no bed",
        "week.csv:4:31: actual_minutes:", "week.csv:5:31: actual_minutes: \"2000\" is outside 0 to 1440",
        "week.csv:6: this row was run and not done at once"}) {
    BOOST_TEST(faults.find(part) != std::string::npos, part << " is not in\n" << faults);
  }
  BOOST_TEST(complaint("date,bed,actual_minuts\n").find("did you mean actual_minutes?") != std::string::npos);
  BOOST_TEST(complaint("date,bed,who\n").find("the column \"actual_minutes\" has to be there once") !=
             std::string::npos);
  BOOST_TEST(complaint("").find("the sheet is empty") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(a_sheet_with_thousands_of_faults_is_refused_in_little_memory) {
  std::string rows;
  for (int row = 0; row < 5'000; ++row) rows += "2025-07-14,nowhere,1,,,,25,,\n";
  const std::string said = complaint(header + rows);
  BOOST_TEST(said.find("there is no bed with the id \"nowhere\"") != std::string::npos);
  BOOST_TEST(said.size() < 5'000U);
  const std::string long_text = complaint(header + std::string(100'000, 'x') + ",a,1,,,,25,,\n");
  BOOST_TEST(long_text.find("week.csv:2:1: date: \"xxx") == 0U, long_text.substr(0, 80));
  BOOST_TEST(long_text.size() < 500U);
}

BOOST_AUTO_TEST_SUITE_END()
