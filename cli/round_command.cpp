#include <algorithm>
#include <string>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/plan/round.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/report/round_words.hpp"

#include "commands.hpp"
#include "site_day.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

/// One garden is read, answered and forgotten. What is wrong in it does not stop the round.
RoundRow row_of(const std::string& name, const RoundArguments& arguments) {
  RoundRow row;
  row.folder = name;
  try {
    const GardenFolder folder = read_garden_folder(name, name);
    row.entry = round_entry(folder.garden, folder.journal, sky_over(folder.garden.site, folder.weather),
                            day_at(folder.garden.site, arguments.date));
  } catch (const Error& refused) {
    const Problem& first = refused.problems().front();
    row.entry.need = RoundNeed::cannot_tell;
    row.entry.problem = (first.file.empty() ? std::string{} : first.file + ": ") + first.message + ".";
  }
  return row;
}

void count(const RoundEntry& entry, RoundCounts& counts) {
  ++counts.gardens;
  counts.person_needed += entry.need == RoundNeed::person_needed ? 1 : 0;
  counts.run_today += entry.need == RoundNeed::run_today ? 1 : 0;
  counts.cannot_tell += entry.need == RoundNeed::cannot_tell ? 1 : 0;
}

/// Keeps the most pressing rows, no more than asked for: memory does not grow with the number of gardens.
void keep(RoundRow row, std::size_t top, std::vector<RoundRow>& rows) {
  const auto before = [](const RoundRow& a, const RoundRow& b) { return goes_before(a.entry, b.entry); };
  rows.insert(std::upper_bound(rows.begin(), rows.end(), row, before), std::move(row));
  if (rows.size() > top) rows.pop_back();
}

}  // namespace

int run(const RoundArguments& arguments) {
  RoundCounts counts;
  std::vector<RoundRow> rows;
  const bool as_json = arguments.format == OutputFormat::json;
  if (as_json) print("[\n");
  for (const std::string& folder : arguments.folders) {
    RoundRow row = row_of(folder, arguments);
    if (as_json) print((counts.gardens > 0 ? ",\n" : "") + round_json(row));
    count(row.entry, counts);
    if (!as_json) keep(std::move(row), arguments.top, rows);
  }
  print(as_json ? "\n]\n" : round_text(rows, counts));
  constexpr int input_wrong = 1;
  return counts.cannot_tell > 0 ? input_wrong : 0;
}

}  // namespace noonleaf::cli
