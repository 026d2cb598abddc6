#include "noonleaf/garden/journal.hpp"

#include <string>

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

#include "refusal.hpp"

using namespace std::chrono_literals;
using noonleaf::Error;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::JournalEvent;

namespace {

Garden two_beds() {
  Garden garden;
  garden.beds.resize(2);
  garden.beds[0].id = "a";
  garden.beds[1].id = "b";
  noonleaf::BedPlanting peas;
  peas.crop = "pea_fresh";
  peas.season.start = 2025y / 4 / 1;
  garden.beds[0].plantings.push_back(peas);
  return garden;
}

Journal parse(const std::string& text) {
  const Garden garden = two_beds();
  return noonleaf::parse_journal(text, "journal.csv", &garden);
}

std::string complaint(const std::string& text) {
  return refusal_text([&] { noonleaf::with_journal(two_beds(), parse(text), "journal.csv"); });
}

const std::string header = "id,date,time,event,bed,crop,minutes,rain_in,stage,who,note\n";

}  // namespace

BOOST_AUTO_TEST_SUITE(journal)

BOOST_AUTO_TEST_CASE(reads_what_happened) {
  const Journal journal = parse(header +
                                "1,2025-07-14,07:05,water,b,,12,,,custodian,\"ran late, gate locked\"\r\n"
                                "\n"
                                "# a comment\n"
                                "2,2025-07-15,7:30,rain,,,,0.5,,educator,\n"
                                "3,2025-07-15,,note,,,,,,,no newline at the end");
  BOOST_REQUIRE(journal.size() == 3U);
  BOOST_TEST((journal[0].event == JournalEvent::water));
  BOOST_TEST((journal[0].time_of_day == 425min));
  BOOST_TEST(journal[0].minutes == 12);
  BOOST_TEST(journal[0].note == "ran late, gate locked");
  BOOST_TEST(journal[1].rain_mm == 12.7);
  BOOST_TEST((journal[1].time_of_day == 450min));
  BOOST_TEST(journal[1].line == 5U);
  BOOST_TEST(!journal[2].time_of_day.has_value());
}

BOOST_AUTO_TEST_CASE(every_fault_has_its_place_and_its_fix) {
  BOOST_TEST(complaint(header + "1,2025-07-14,,water,b,,1O,,,,\n2,2025-02-30,,watr,x,,5,,,,\n") ==
             "journal.csv:2:24: minutes: \"1O\" is not a number\n"
             "  1,2025-07-14,,water,b,,1O,,,,\n"
             "                         ^^\n"
             "  fix: write digits only, like 10\n"
             "journal.csv:3:3: date: \"2025-02-30\" is not a date that exists\n"
             "  2,2025-02-30,,watr,x,,5,,,,\n"
             "    ^^^^^^^^^^\n"
             "  fix: write year-month-day, like 2025-07-16\n"
             "journal.csv:3:15: event: \"watr\" is not an event\n"
             "  2,2025-02-30,,watr,x,,5,,,,\n"
             "                ^^^^\n"
             "  fix: did you mean water?\n"
             "journal.csv:3:20: bed: there is no bed with the id \"x\"\n"
             "  2,2025-02-30,,watr,x,,5,,,,\n"
             "                     ^\n"
             "  fix: use an id of garden.toml\n");
}

BOOST_AUTO_TEST_CASE(an_entry_needs_what_its_event_is_about) {
  BOOST_TEST(complaint(header + "1,2025-07-14,,water,,,12,,,,\n").find("\"water\" needs a bed") !=
             std::string::npos);
  BOOST_TEST(complaint(header + "1,2025-07-14,,water,a,,,,,,\n").find("needs how long it ran") !=
             std::string::npos);
  BOOST_TEST(complaint(header + "1,2025-07-14,,rain,,,,,,,\n").find("needs what the gauge held") !=
             std::string::npos);
  BOOST_TEST(complaint(header + "1,2025-07-14,,sow,a,,,,,,\n").find("needs a crop") != std::string::npos);
  BOOST_TEST(complaint(header + "1,2025-07-14,,stage,a,,,,flower,,\n").find("needs a stage") !=
             std::string::npos);
}

BOOST_AUTO_TEST_CASE(wrong_columns_are_named) {
  BOOST_TEST(complaint("date,event,minuets\n").find("did you mean minutes?") != std::string::npos);
  BOOST_TEST(complaint("date,bed\n").find("the column \"event\" is missing") != std::string::npos);
  BOOST_TEST(complaint("").find("the journal is empty") != std::string::npos);
  BOOST_TEST(complaint(header + "1,2025-07-14,,note,,,,,,,a,b\n").find("more cells than the header") !=
             std::string::npos);
  BOOST_TEST(complaint(header + "1,2025-07-14,,note,,,,,,,\"a\n").find("never closed") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(sowing_and_pulling_change_the_beds) {
  const Garden garden = noonleaf::with_journal(
      two_beds(),
      parse(header + "2,2025-07-12,,sow,a,carrot,,,,,\n1,2025-07-08,,pull,a,pea_fresh,,,,,\n"
                     "3,2025-07-30,,stage,a,carrot,,,development,,\n"),
      "journal.csv");
  BOOST_REQUIRE(garden.beds[0].plantings.size() == 2U);
  BOOST_TEST((garden.beds[0].plantings[0].pulled == 2025y / 7 / 8));
  BOOST_TEST(garden.beds[0].plantings[1].crop == "carrot");
  BOOST_TEST((garden.beds[0].plantings[1].season.observed.development == 2025y / 7 / 30));
}

BOOST_AUTO_TEST_CASE(the_same_start_in_both_files_is_one_planting) {
  const Garden garden = noonleaf::with_journal(
      two_beds(), parse(header + "1,2025-04-01,,sow,a,pea_fresh,,,,,\n"), "journal.csv");
  BOOST_TEST(garden.beds[0].plantings.size() == 1U);
}

// A spreadsheet may sort the rows by any column: the garden is the same, also where one day has several.
BOOST_AUTO_TEST_CASE(the_order_of_the_rows_does_not_matter) {
  const std::string rows[] = {"1,2025-06-20,,pull,a,,,,,,\n", "2,2025-06-20,,sow,a,carrot,,,,,\n",
                              "3,2025-07-10,,stage,a,carrot,,,development,,\n",
                              "4,2025-05-10,,transplant,b,tomato,,,,,\n",
                              "5,2025-07-12,,pull,b,tomato,,,,,\n"};
  const auto planted = [&](std::initializer_list<int> order) {
    std::string text = header;
    for (const int row : order) text += rows[row];
    std::string result;
    for (const auto& bed : noonleaf::with_journal(two_beds(), parse(text), "journal.csv").beds) {
      for (const auto& planting : bed.plantings) {
        result += bed.id + planting.crop + (planting.pulled ? " pulled" : " grows") +
                  (planting.season.observed.development ? " seen;" : ";");
      }
    }
    return result;
  };
  BOOST_TEST(planted({0, 1, 2, 3, 4}) == "apea_fresh pulled;acarrot grows seen;btomato pulled;");
  BOOST_TEST(planted({4, 3, 2, 1, 0}) == planted({0, 1, 2, 3, 4}));
  BOOST_TEST(planted({2, 4, 1, 3, 0}) == planted({0, 1, 2, 3, 4}));
}

BOOST_AUTO_TEST_CASE(what_was_laid_and_what_was_dug_in) {
  const std::string columns =
      "date,event,bed,mulch,covered_pct,organic_pct,field_capacity_pct,wilting_point_pct\n";
  const auto journal = parse(columns +
                             "2025-06-01,mulch,a,organic,80,,,\n2025-06-02,amend,a,,,5,,\n"
                             "2025-06-03,amend,a,,,,38,13\n2025-06-04,mulch,a,,,,,\n");
  BOOST_TEST((journal[0].mulch == noonleaf::MulchKind::organic));
  BOOST_TEST(journal[0].covered_pct == 80);
  BOOST_TEST(journal[1].organic_pct == 5);
  BOOST_TEST(journal[2].field_capacity_pct == 38);
  BOOST_TEST(!journal[3].mulch.has_value());
  const auto faulty = [&](const std::string& line, const std::string& words) {
    BOOST_TEST(complaint(columns + line + "\n").find(words) != std::string::npos,
               complaint(columns + line + "\n"));
  };
  faulty("2025-06-01,mulch,a,gravel,,,,", "is not a kind of mulch");
  faulty("2025-06-01,mulch,,organic,,,,", "needs a bed");
  faulty("2025-06-01,amend,a,,,9,,", "outside 0 to 8");
  faulty("2025-06-01,amend,a,,,,38,", "both numbers or none");
  faulty("2025-06-01,amend,a,,,,13,38", "field capacity above the wilting point");
}

BOOST_AUTO_TEST_CASE(pulling_what_does_not_grow_is_refused) {
  const std::string text = complaint(header + "1,2025-07-08,,pull,b,pea_fresh,,,,,\n");
  BOOST_TEST(text.find("journal.csv:2: bed: nothing of that kind grows in bed \"b\" on 2025-07-08") == 0U,
             text);
}

BOOST_AUTO_TEST_CASE(what_cannot_be_is_refused_at_its_line) {
  BOOST_TEST(complaint(header + "1,2025-05-08,,sow,a,lettuce,,,,,\n")
                 .find("journal.csv:2: share_pct: with this planting") == 0U);
  BOOST_TEST(complaint(header + "1,2025-05-08,,rain,a,,,0.5,,,\n").find("rain falls on every bed") !=
             std::string::npos);
  const std::string order = complaint(header +
                                      "1,2025-05-10,,stage,a,pea_fresh,,,late_season,,\n"
                                      "2,2025-05-20,,stage,a,pea_fresh,,,mid_season,,\n");
  BOOST_TEST(order.find("journal.csv:3: stage") == 0U, order);
}

BOOST_AUTO_TEST_CASE(no_journal_yet_is_an_empty_one) {
  BOOST_TEST(noonleaf::read_journal("/nowhere/journal.csv", "journal.csv", nullptr).empty());
}

// Each of 20,000 unknown columns kept the whole line beside its problem: two gigabytes.
BOOST_AUTO_TEST_CASE(a_header_of_thousands_of_columns_is_refused_in_little_memory) {
  std::string text = "date,event";
  for (int column = 0; column < 20'000; ++column) text += ",zzz";
  try {
    noonleaf::parse_journal(text + "\n", "journal.csv", nullptr);
    BOOST_ERROR("columns that nobody knows were taken");
  } catch (const Error& refused) {
    BOOST_REQUIRE_EQUAL(refused.problems().size(), 1001U);
    std::size_t bytes = 0;
    for (const auto& problem : refused.problems()) bytes += problem.excerpt.size();
    BOOST_TEST(bytes == 0U);  // the line is too long to be shown
    BOOST_TEST(refused.problems().back().message ==
               "there are more problems than 1,000; the rest is not listed");
  }
}

BOOST_AUTO_TEST_SUITE_END()
