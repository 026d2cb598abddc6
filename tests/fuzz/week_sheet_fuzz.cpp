// The week's sheet, filled in and read back; what it brings to a journal comes only once.
#include "noonleaf/garden/week_sheet.hpp"

#include "fuzz_target.hpp"
#include "small_garden.hpp"

namespace {

using fuzz::require;

void check_row(const noonleaf::FilledRun& row) {
  require(row.date.ok(), "a row has a day that exists");
  require(noonleaf::find_bed(fuzz::small_garden(), row.bed) != nullptr, "a row names a bed that is there");
  for (const double minutes : {row.planned_minutes, row.actual_minutes})
    require(noonleaf::is_missing(minutes) || (minutes >= 0 && minutes <= 1440), "minutes fit into a day");
  require(!(row.actual_minutes > 0 && !row.not_done_because.empty()), "a row is run or not done");
}

void check_entries(const std::vector<noonleaf::FilledRun>& rows) {
  const auto first = noonleaf::entries_of_sheet(rows, {});
  require(first.entries.size() == first.rows.size(), "each entry has its row");
  require(first.entries.size() + first.left_out.size() == rows.size(), "each row is brought in or left out");
  for (const noonleaf::JournalEntry& entry : first.entries)
    require(entry.minutes >= 0, "an entry of the sheet has its minutes");
  const auto again = noonleaf::entries_of_sheet(rows, first.entries);
  require(again.entries.empty(), "a sheet that was brought in brings nothing more");
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  const fuzz::InputFile file(bytes);
  for (const noonleaf::UnitSystem units : {noonleaf::UnitSystem::metric, noonleaf::UnitSystem::us}) {
    noonleaf::Garden garden = fuzz::small_garden();
    garden.site.units = units;
    fuzz::done(bytes, [&] {
      const auto rows = noonleaf::read_week_sheet(file.path(), "sheet.csv", garden);
      for (const noonleaf::FilledRun& row : rows) check_row(row);
      check_entries(rows);
    });
  }
  return 0;
}
