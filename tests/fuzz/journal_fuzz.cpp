// journal.csv, with its garden and without.
#include <algorithm>

#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/garden/journal.hpp"

#include "fuzz_target.hpp"
#include "small_garden.hpp"

namespace {

using fuzz::require;

void check_entry(const noonleaf::JournalEntry& entry) {
  require(entry.date.ok(), "an entry has a day that exists");
  require(entry.line > 0, "an entry has its line");
  for (const double value :
       {entry.minutes, entry.litres, entry.rain_mm, entry.share_pct, entry.water_pct, entry.tension_kpa,
        entry.covered_pct, entry.organic_pct, entry.field_capacity_pct, entry.wilting_point_pct}) {
    require(fuzz::missing_or_finite(value), "a number of an entry is one");
    require(!(value < 0), "no number of an entry is below 0");
  }
  require(entry.event != noonleaf::JournalEvent::undo, "what was undone is left out, and the undo");
  if (!entry.bed.empty())
    require(noonleaf::find_bed(fuzz::small_garden(), entry.bed) != nullptr,
            "an entry names a bed that is there");
}

void check_garden(const noonleaf::Garden& garden) {
  require(garden.beds.size() == fuzz::small_garden().beds.size(), "a journal makes no bed");
  for (const noonleaf::Bed& bed : garden.beds) {
    for (const noonleaf::BedPlanting& planting : bed.plantings)
      require(planting.share_frac >= 0 && planting.share_frac <= 1, "a share is a share");
  }
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  const fuzz::InputFile file(bytes);
  fuzz::done(bytes, [&] {
    const auto journal = noonleaf::read_journal(file.path(), "journal.csv", &fuzz::small_garden());
    for (const noonleaf::JournalEntry& entry : journal) check_entry(entry);
    check_garden(noonleaf::with_journal(fuzz::small_garden(), journal, "journal.csv"));
  });
  fuzz::done(bytes, [&] { noonleaf::read_journal(file.path(), "journal.csv", nullptr); });
  return 0;
}
