#include "noonleaf/garden/journal_append.hpp"

#include <array>
#include <cmath>
#include <fcntl.h>
#include <filesystem>
#include <string>
#include <sys/file.h>
#include <unistd.h>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

#include "refusal.hpp"
#include "workplace.hpp"

using namespace std::chrono_literals;
using noonleaf::AppendedEntry;
using noonleaf::Error;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::JournalEntry;
using noonleaf::JournalEvent;
using noonleaf::JournalTarget;
using noonleaf::UnitSystem;

namespace {

/// A folder with a journal of its own, and its garden.
struct JournalPlace {
  JournalPlace() {
    garden.beds.resize(2);
    garden.beds[0].id = "a";
    garden.beds[1].id = "b";
    garden.site.units = UnitSystem::us;
  }

  JournalTarget target() const { return {folder / "journal.csv", "journal.csv", 100ms}; }
  AppendedEntry add(const JournalEntry& entry) const { return append_to_journal(target(), garden, entry); }
  void write(const std::string& text) const { place.write("journal.csv", text); }
  std::string text() const { return place.read("journal.csv"); }
  Journal read() const { return noonleaf::read_journal(folder / "journal.csv", "journal.csv", &garden); }
  std::string refusal(const JournalEntry& entry) const {
    return refusal_text([&] { add(entry); });
  }

  Workplace place;
  std::filesystem::path folder = place.folder();
  Garden garden;
};

JournalEntry watered(const std::string& bed, double minutes) {
  JournalEntry entry;
  entry.date = 2025y / 7 / 16;
  entry.time_of_day = 6h;
  entry.event = JournalEvent::water;
  entry.bed = bed;
  entry.minutes = minutes;
  return entry;
}

JournalEntry noted(const std::string& text) {
  JournalEntry entry;
  entry.date = 2025y / 7 / 16;
  entry.note = text;
  return entry;
}

JournalEntry undo_of(const std::string& id) {
  JournalEntry entry;
  entry.date = 2025y / 7 / 16;
  entry.event = JournalEvent::undo;
  entry.undoes = id;
  return entry;
}

const std::string header = "id,date,time,event,bed,minutes,rain_in,undoes,who,note\n";

}  // namespace

BOOST_FIXTURE_TEST_SUITE(journal_append, JournalPlace)

BOOST_AUTO_TEST_CASE(the_first_entry_makes_the_file_in_the_sites_units) {
  BOOST_TEST(add(watered("a", 25)).id == "1");
  BOOST_TEST(add(watered("b", 7.5)).id == "2");
  BOOST_TEST(text() ==
             "id,date,time,event,bed,crop,minutes,rain_in,share_pct,stage,feel,water_pct,tension_kpa,undoes,"
             "who,note,gallons,recovered,mulch,covered_pct,organic_pct,field_capacity_pct,wilting_point_pct\n"
             "1,2025-07-16,06:00,water,a,,25,,,,,,,,,,,,,,,,\n"
             "2,2025-07-16,06:00,water,b,,7.5,,,,,,,,,,,,,,,,\n");
  std::filesystem::remove(folder / "journal.csv");
  garden.site.units = UnitSystem::metric;
  add(watered("a", 25));
  BOOST_TEST(text().find(",rain_mm,") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(the_id_is_one_above_the_highest_wherever_that_stands) {
  write(header +
        "9,2025-07-15,,note,,,,,,late\n3,2025-07-14,,note,,,,,,sorted by hand\nx7,2025-07-14,,note,,,,,,\n");
  BOOST_TEST(add(watered("a", 5)).id == "10");
}

BOOST_AUTO_TEST_CASE(a_files_own_columns_separator_and_line_ends_are_kept) {
  write(
      "\"note\";\"minutes\";\"bed\";\"event\";\"time\";\"date\";\"id\"\r\n\"\";\"12,5\";\"b\";\"water\";\"7:"
      "30\";\"2025-07-15\";\"4\"\r\n");
  JournalEntry entry = watered("a", 25);
  entry.note = "gate; locked";
  BOOST_TEST(add(entry).id == "5");
  BOOST_TEST(text().ends_with("\"4\"\r\n\"gate; locked\";25;a;water;06:00;2025-07-16;5\r\n"));
  const Journal journal = read();
  BOOST_REQUIRE(journal.size() == 2U);
  BOOST_TEST(journal[0].minutes == 12.5);
  BOOST_TEST(journal[1].note == "gate; locked");
}

BOOST_AUTO_TEST_CASE(rain_goes_into_the_column_that_is_there) {
  write(header);
  JournalEntry entry = noted("");
  entry.event = JournalEvent::rain;
  entry.rain_mm = 12.7;
  add(entry);
  BOOST_TEST(text().ends_with("1,2025-07-16,,rain,,,0.5,,,\n"));
}

JournalEntry entry_at_b(JournalEvent event) {
  JournalEntry entry;
  entry.date = 2025y / 7 / 16;
  entry.event = event;
  entry.bed = "b";
  return entry;
}

/// An entry for each kind of number and choice that a journal holds.
std::vector<JournalEntry> one_of_each() {
  std::vector<JournalEntry> entries;
  const auto add = [&](JournalEvent event) -> JournalEntry& {
    return entries.emplace_back(entry_at_b(event));
  };
  JournalEntry& cans = add(JournalEvent::water);
  cans.minutes = 12.25;
  cans.litres = 37.5;
  JournalEntry& gauge = add(JournalEvent::rain);
  gauge.bed = "";
  gauge.rain_mm = 8.4;
  JournalEntry& sown = add(JournalEvent::sow);
  sown.crop = "carrot";
  sown.share_pct = 33.3;
  add(JournalEvent::feel).feel = noonleaf::SoilFeel::slightly_moist;
  add(JournalEvent::probe).water_pct = 21.7;
  add(JournalEvent::probe).tension_kpa = 45;
  add(JournalEvent::droop).recovered = true;
  JournalEntry& film = add(JournalEvent::mulch);
  film.mulch = noonleaf::MulchKind::plastic;
  film.covered_pct = 62.5;
  add(JournalEvent::amend).organic_pct = 4.1;
  JournalEntry& weighed = add(JournalEvent::amend);
  weighed.field_capacity_pct = 31.5;
  weighed.wilting_point_pct = 14.5;
  return entries;
}

// To the last digit that is written: a hundredth of a litre, a thousandth of a gallon (0.0038 l) or of a millimetre.
BOOST_AUTO_TEST_CASE(what_an_entry_says_comes_back) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    garden.site.units = units;
    std::filesystem::remove(folder / "journal.csv");
    const std::vector<JournalEntry> entries = one_of_each();
    for (const JournalEntry& entry : entries) add(entry);
    const Journal journal = read();
    BOOST_REQUIRE(journal.size() == entries.size());
    for (std::size_t i = 0; i < entries.size(); ++i) {
      const JournalEntry &given = entries[i], &back = journal[i];
      BOOST_TEST_CONTEXT("entry " << i) {
        BOOST_TEST((back.event == given.event && back.date == given.date && back.bed == given.bed));
        BOOST_TEST(
            (back.feel == given.feel && back.mulch == given.mulch && back.recovered == given.recovered));
        for (const auto number :
             {&JournalEntry::minutes, &JournalEntry::litres, &JournalEntry::rain_mm, &JournalEntry::share_pct,
              &JournalEntry::water_pct, &JournalEntry::tension_kpa, &JournalEntry::covered_pct,
              &JournalEntry::organic_pct, &JournalEntry::field_capacity_pct,
              &JournalEntry::wilting_point_pct}) {
          BOOST_TEST(noonleaf::is_known(back.*number) == noonleaf::is_known(given.*number));
          if (noonleaf::is_known(given.*number)) BOOST_TEST(std::abs(back.*number - given.*number) < 0.005);
        }
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(a_value_without_a_column_is_refused_with_the_fix) {
  write("id,date,event,note\n");
  BOOST_TEST(refusal(watered("a", 25)) ==
             "journal.csv:1: header: there is no column \"bed\" to write \"a\" into\n"
             "  fix: put ,bed at the end of the first line; the lines below may stay as they are\n"
             "journal.csv:1: header: there is no column \"minutes\" to write \"25\" into\n"
             "  fix: put ,minutes at the end of the first line; the lines below may stay as they are\n"
             "journal.csv:1: header: there is no column \"time\" to write \"06:00\" into\n"
             "  fix: put ,time at the end of the first line; the lines below may stay as they are\n");
  BOOST_TEST(text() == "id,date,event,note\n");
}

BOOST_AUTO_TEST_CASE(an_entry_that_cannot_be_true_is_refused_before_it_is_written) {
  write(header);
  BOOST_TEST(refusal(watered("c", 25)).find("bed: there is no bed with the id \"c\"") == 0U);
  BOOST_TEST(refusal(watered("a", noonleaf::missing)).find("\"water\" needs how long it ran") == 0U);
  BOOST_TEST(refusal(watered("a", 9000)).find("minutes: \"9000\" is outside 0 to 2880") == 0U);
  BOOST_TEST(refusal(undo_of("5")).find("undoes: no entry has the id \"5\"") == 0U);
  BOOST_TEST(refusal(noted("two\nlines")).find("note: this text holds a line end") == 0U);
  BOOST_TEST(refusal(noted("\xFF")).find("note: this text holds") == 0U);
  BOOST_TEST(refusal(noted("mine [cut off]")).find("note: a text cannot end in [cut off]") == 0U);
  BOOST_TEST(text() == header);
}

// One run typed twice counts twice: whoever types it is told of the first.
BOOST_AUTO_TEST_CASE(water_of_the_same_bed_and_day_is_named) {
  BOOST_TEST(add(watered("a", 25)).other_water.empty());
  BOOST_TEST(add(watered("a", 25)).other_water == "1");
  BOOST_TEST(add(watered("b", 25)).other_water.empty());
  JournalEntry other_day = watered("b", 25);
  other_day.date = 2025y / 7 / 17;
  BOOST_TEST(add(other_day).other_water.empty());
  BOOST_TEST(add(watered("b", 0)).other_water.empty());  // it did not run: nothing counts twice
  add(undo_of("1"));
  add(undo_of("2"));
  BOOST_TEST(add(watered("a", 25)).other_water.empty());
}

BOOST_AUTO_TEST_CASE(texts_come_back_as_they_were_and_no_spreadsheet_runs_them) {
  write(header);
  const std::array<std::string, 9> texts{
      "=1+1", "+1", "-1 in", "@SUM(A1)", "'=1", "# a hash", "a \"word\", a comma", "café; ñ", "'twas dry"};
  for (const std::string& each : texts) add(noted(each));
  const Journal journal = read();
  BOOST_REQUIRE(journal.size() == texts.size());
  for (std::size_t index = 0; index < texts.size(); ++index) BOOST_TEST(journal[index].note == texts[index]);
  BOOST_TEST(text().find("\"'=1+1\"") != std::string::npos);
  for (const char* cell : {",=", ",+", ",-", ",@", ",\"=", ",\"+", ",\"-", ",\"@"})
    BOOST_TEST(text().find(cell) == std::string::npos);
}

BOOST_AUTO_TEST_CASE(a_half_line_is_named_and_never_merged_with_the_next) {
  write(header + "1,2025-07-15,06:00,water,a,20,,,,\n2,2025-07-16,06:00,water,b,2");
  const AppendedEntry added = add(watered("a", 25));
  BOOST_TEST(added.id == "3");
  BOOST_REQUIRE(added.cut_off.has_value());
  BOOST_TEST(added.cut_off->line == 3U);
  BOOST_TEST(added.line == 4U);
  BOOST_TEST(added.other_problems == 1U);
  BOOST_TEST(text().ends_with("b,2 [cut off]\n3,2025-07-16,06:00,water,a,25,,,,\n"));
  try {
    read();
    BOOST_ERROR("a cut line was read as an entry");
  } catch (const Error& refused) {
    BOOST_TEST(refused.problems().size() == 1U);
    BOOST_TEST(refused.problems().front().line == 3U);
    BOOST_TEST(refused.problems().front().message.find("cut off") != std::string::npos);
  }
}

BOOST_AUTO_TEST_CASE(a_half_line_at_the_end_is_not_read_as_a_shorter_run) {
  write(header + "1,2025-07-16,06:00,water,b,2");
  BOOST_CHECK_THROW(read(), Error);
}

BOOST_AUTO_TEST_CASE(a_half_line_with_an_open_quotation_mark_swallows_nothing) {
  write(header + "1,2025-07-15,06:00,note,,,,,custodian,\"the gate, whi");
  const AppendedEntry added = add(watered("a", 25));
  BOOST_TEST(added.cut_off.has_value());
  BOOST_TEST(text().ends_with("\"the gate, whi [cut off]\"\n2,2025-07-16,06:00,water,a,25,,,,\n"));
}

BOOST_AUTO_TEST_CASE(an_open_quotation_mark_far_above_is_refused) {
  const std::string broken = header + "1,2025-07-15,,note,,,,,,\"open\n2,2025-07-15,,note,,,,,,below\n";
  write(broken);
  BOOST_TEST(refusal(watered("a", 25)).find("journal.csv:2: a quotation mark is opened here") == 0U);
  BOOST_TEST(text() == broken);
}

BOOST_AUTO_TEST_CASE(a_whole_last_line_without_its_end_gets_one) {
  write(header + "1,2025-07-15,06:00,water,a,20,,,,");
  BOOST_TEST(!add(watered("a", 25)).cut_off.has_value());
  BOOST_TEST(read().size() == 2U);
}

BOOST_AUTO_TEST_CASE(faults_of_other_lines_do_not_keep_an_entry_out) {
  write(header + "1,2025-07-15,06:00,watr,a,20,,,,\n");
  BOOST_TEST(add(watered("a", 25)).other_problems == 1U);
  BOOST_TEST(text().ends_with("2,2025-07-16,06:00,water,a,25,,,,\n"));
}

BOOST_AUTO_TEST_CASE(an_undo_takes_back_and_an_undone_undo_brings_back) {
  write(header);
  add(watered("a", 25));
  add(watered("b", 10));
  add(undo_of("1"));
  BOOST_REQUIRE(read().size() == 1U);
  BOOST_TEST(read().front().bed == "b");
  add(undo_of("3"));
  BOOST_TEST(read().size() == 2U);
  BOOST_TEST(text().find("1,2025-07-16,06:00,water,a,25") != std::string::npos);  // nothing was rewritten
}

BOOST_AUTO_TEST_CASE(undos_that_make_no_sense_are_refused) {
  const auto complaint = [&](const std::string& lines) {
    write(header + lines);
    try {
      read();
    } catch (const Error& refused) {
      return describe(refused.problems());
    }
    return std::string{};
  };
  BOOST_TEST(
      complaint("1,2025-07-16,,undo,,,,7,,\n").find("journal.csv:2: undoes: no entry has the id \"7\"") ==
      0U);
  BOOST_TEST(complaint("1,2025-07-16,,undo,,,,2,,\n2,2025-07-16,,undo,,,,1,,\n").find("run in a circle") !=
             std::string::npos);
  BOOST_TEST(complaint("1,2025-07-16,,note,,,,,,\n1,2025-07-16,,note,,,,,,\n2,2025-07-16,,undo,,,,1,,\n")
                 .find("several entries") != std::string::npos);
  BOOST_TEST(complaint("1,2025-07-16,,undo,,,,,,\n").find("\"undo\" needs the id") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(another_writer_is_waited_for_only_so_long) {
  const int other = ::open((folder / "journal.csv.lock").c_str(), O_RDWR | O_CREAT, 0600);
  BOOST_REQUIRE(other >= 0);
  BOOST_REQUIRE(::flock(other, LOCK_EX) == 0);
  BOOST_TEST(
      refusal(watered("a", 25)).find("journal.csv.lock: somebody else has been writing for 0.1 seconds") ==
      0U);
  BOOST_TEST(!std::filesystem::exists(folder / "journal.csv"));
  ::close(other);
  BOOST_TEST(add(watered("a", 25)).id == "1");
}

BOOST_AUTO_TEST_SUITE_END()
