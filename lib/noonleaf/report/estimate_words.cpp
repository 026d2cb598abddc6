#include "noonleaf/report/estimate_words.hpp"

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/report/estimate_phrases.hpp"
#include "noonleaf/report/labels.hpp"
#include "noonleaf/report/sentences.hpp"
#include "noonleaf/report/today_words.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double start_worth_a_word_mm = 1.0;

std::string say(const TodayView& view, EstimatePhrase id, std::initializer_list<Filling> fillings = {}) {
  return fill(view.language, id, fillings);
}

/// "2025-04-01", "martes 1 de abril de 2025"
std::string date_words(Language language, std::chrono::year_month_day date) {
  return language == Language::en ? iso_date(date) : QuantityText(UnitSystem::metric, language).date(date);
}

std::string sprinkler_words(const Garden& garden, std::string_view id, Language language) {
  for (const Sprinkler& sprinkler : garden.sprinklers)
    if (sprinkler.id == id) return local_name(language, sprinkler.name, sprinkler.name_es);
  return std::string(id);
}

/// Beds that stand apart from what was taken for the start, and how much that start still matters.
std::string start_words(const TodayView& view) {
  double doubt_mm = 0;
  std::string bed_id, known;
  for (const BedToday& bed : view.today.beds) {
    const Bed& where = view.garden.beds[bed.bed];
    if (where.known_wet && *where.known_wet <= view.today.date)
      known += say(view, EstimatePhrase::known_full,
                   {{"bed", where.id}, {"date", date_words(view.language, *where.known_wet)}});
    for (const PlantingToday& planting : bed.plantings) {
      if (!(planting.start_doubt_mm > doubt_mm)) continue;
      doubt_mm = planting.start_doubt_mm;
      bed_id = where.id;
    }
  }
  if (doubt_mm < start_worth_a_word_mm) return known + say(view, EstimatePhrase::start_no_matter);
  return known +
         say(view, EstimatePhrase::start_matters, {{"bed", bed_id}, {"depth", view.text().depth(doubt_mm)}});
}

/// Planned runs without a word in the journal, and how to give it; empty without one.
std::string unlogged_words(const TodayView& view) {
  std::size_t count = 0;
  const UnloggedRun* first = nullptr;
  for (const BedToday& bed : view.today.beds) {
    if (!bed.open_question) continue;
    count += bed.open_question->runs.size();
    if (first == nullptr && !bed.open_question->runs.empty()) first = &bed.open_question->runs.front();
  }
  if (first == nullptr) return {};
  return say(view, count == 1 ? EstimatePhrase::unlogged_run : EstimatePhrase::unlogged_runs,
             {{"count", std::to_string(count)},
              {"bed", view.garden.beds[first->bed].id},
              {"date", iso_date(first->date)},
              {"minutes", QuantityText(view.garden.site.units).number(first->minutes, 0)}});
}

}  // namespace

std::string estimate_words(const Garden& garden, const Estimate& estimate, Language language) {
  const std::string on_bed =
      estimate.bed.empty() ? std::string() : fill(language, EstimatePhrase::on_bed, {{"bed", estimate.bed}});
  const std::string_view crop = estimate.crop == nullptr ? "" : crop_name(language, *estimate.crop);
  const std::string date = estimate.date.ok() ? date_words(language, estimate.date) : std::string();
  return fill(language, estimate.fact,
              {{"date", date},
               {"bed", estimate.bed},
               {"on_bed", on_bed},
               {"crop", crop},
               {"sprinkler", sprinkler_words(garden, estimate.sprinkler, language)},
               {"doubt", estimate.doubt}});
}

std::vector<std::string> estimate_words(const TodayView& view) {
  std::vector<std::string> lines;
  for (const Estimate& estimate : view.today.estimates) {
    std::string line = sentence_start(estimate_words(view.garden, estimate, view.language));
    if (estimate.kind == EstimateKind::soil_start) line += start_words(view);
    if (estimate.days > 0)
      line += say(view, EstimatePhrase::days_of,
                  {{"days", std::to_string(estimate.days)}, {"of_days", std::to_string(estimate.of_days)}});
    lines.push_back(with_full_stop(std::move(line)));
  }
  std::string open_runs = unlogged_words(view);
  if (!open_runs.empty()) lines.push_back(std::move(open_runs));
  return lines;
}

}  // namespace v1
}  // namespace noonleaf
