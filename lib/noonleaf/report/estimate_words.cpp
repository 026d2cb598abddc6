#include <algorithm>
#include <cctype>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/report/today_words.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double start_worth_a_word_mm = 1.0;

/// Beds that stand apart from what was taken for the start, and how much that start still matters.
std::string start_words(const TodayView& view) {
  double doubt_mm = 0;
  std::string bed_id, known;
  for (const BedToday& bed : view.today.beds) {
    const Bed& where = view.garden.beds[bed.bed];
    if (where.known_wet && *where.known_wet <= view.today.date)
      known += fmt::format("; bed {} was known to be full on {}", where.id, iso_date(*where.known_wet));
    for (const PlantingToday& planting : bed.plantings) {
      if (!(planting.start_doubt_mm > doubt_mm)) continue;
      doubt_mm = planting.start_doubt_mm;
      bed_id = where.id;
    }
  }
  if (doubt_mm < start_worth_a_word_mm) return known + "; it no longer matters";
  return known + fmt::format("; had it been dry, bed {} would be {} drier now: feel the soil", bed_id,
                             view.text().depth(doubt_mm));
}

}  // namespace

std::vector<std::string> estimate_words(const TodayView& view) {
  std::vector<std::string> lines;
  for (const Estimate& estimate : view.today.estimates) {
    std::string line = estimate.what;
    if (!line.empty()) line[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(line[0])));
    if (estimate.kind == EstimateKind::soil_start) line += start_words(view);
    if (estimate.days > 0) line += fmt::format(" ({} of {} days)", estimate.days, estimate.of_days);
    lines.push_back(line + ".");
  }
  std::vector<UnloggedRun> open_runs;
  for (const BedToday& bed : view.today.beds)
    if (bed.open_question)
      open_runs.insert(open_runs.end(), bed.open_question->runs.begin(), bed.open_question->runs.end());
  if (!open_runs.empty()) {
    const UnloggedRun& first = open_runs.front();
    const std::string& bed = view.garden.beds[first.bed].id;
    lines.push_back(fmt::format(
        "{} planned {} not in the journal, done or not. Write down what you know: noonleaf log DIR water {} "
        "--date {} --minutes {:.0f} (0 if it did not run), or log DIR feel {} --feel moist.",
        open_runs.size(), open_runs.size() == 1 ? "run is" : "runs are", bed, iso_date(first.date),
        first.minutes, bed));
  }
  return lines;
}

}  // namespace v1
}  // namespace noonleaf
