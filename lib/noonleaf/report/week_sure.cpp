// How sure the week's plan is, and today's alerts: for the educator.
#include <algorithm>
#include <cmath>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/report/labels.hpp"
#include "noonleaf/report/likelihood_words.hpp"
#include "noonleaf/report/sentences.hpp"
#include "noonleaf/report/week_sections.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;

constexpr double worth_a_letter_frac = 0.05;  // rounds to less than 1 of 10 below it
constexpr std::string_view hardly_any = "\u2013";

const BedLikelihood* tried_bed(const WeekView& view, std::size_t bed) {
  if (!view.plan.likelihood) return nullptr;
  for (const BedLikelihood& each : view.plan.likelihood->beds)
    if (each.bed == bed && !each.plantings.empty()) return &each;
  return nullptr;
}

/// The greatest share over the plantings of a bed on one day; missing where none has one.
double worst_share(const BedLikelihood& bed, std::size_t day, double DayLikelihood::*share) {
  double worst = missing;
  for (const PlantingLikelihood& planting : bed.plantings)
    if (day < planting.days.size()) worst = std::fmax(worst, planting.days[day].*share);  // fmax drops NaN
  return worst;
}

std::string tenths(double share, std::string_view letter) {
  if (!(share >= worth_a_letter_frac)) return {};
  return std::string(letter) + std::to_string(std::lround(10 * share));
}

std::string cell_words(const WeekView& view, const BedLikelihood& bed, std::size_t day) {
  const double dry = worst_share(bed, day, &DayLikelihood::beyond_frac);
  const double wilts = worst_share(bed, day, &DayLikelihood::wilt_frac);
  const std::string first = tenths(dry, phrase(view.language, Phrase::risk_dry));
  const std::string second = tenths(wilts, phrase(view.language, Phrase::risk_wilts));
  if (is_missing(dry)) return "?";
  if (first.empty() && second.empty()) return std::string(hardly_any);
  return first + (first.empty() || second.empty() ? "" : " ") + second;
}

bool has_wilt(const Likelihood& likelihood) {
  for (const BedLikelihood& bed : likelihood.beds)
    for (const PlantingLikelihood& planting : bed.plantings)
      for (const DayLikelihood& day : planting.days)
        if (is_known(day.wilt_frac)) return true;
  return false;
}

std::vector<std::string> notes_of(const WeekView& view, const std::vector<std::string>& untried) {
  const Likelihood& likelihood = *view.plan.likelihood;
  std::vector<std::string> notes{
      say(view, Phrase::sure_note, {{"members", std::to_string(likelihood.members)}}),
      say(view, Phrase::sure_letters,
          {{"dry", phrase(view.language, Phrase::risk_dry)},
           {"wilts", phrase(view.language, Phrase::risk_wilts)},
           {"none", hardly_any}})};
  if (!has_wilt(likelihood)) notes.push_back(say(view, Phrase::sure_no_hours));
  if (!untried.empty())
    notes.push_back(say(view, Phrase::sure_untried, {{"beds", view.text().list(untried)}}));
  if (sys_days(view.plan.last) > sys_days(likelihood.forecast_to))
    notes.push_back(behind_forecast_words({view.garden, likelihood, view.language}));
  return notes;
}

/// The planting and day on which the bed is likeliest to be short, the driest of equal ones.
struct WorstDay {
  std::size_t planting = 0;
  const DayLikelihood* day = nullptr;
};

WorstDay worst_day(const BedLikelihood& bed) {
  WorstDay worst;
  const auto key = [](const DayLikelihood& day) { return std::pair(day.beyond_frac, day.dr90_mm); };
  for (const PlantingLikelihood& planting : bed.plantings)
    for (const DayLikelihood& day : planting.days) {
      if (is_missing(day.beyond_frac) || is_missing(day.dr90_mm)) continue;
      if (worst.day == nullptr || key(day) > key(*worst.day)) worst = {planting.planting, &day};
    }
  return worst;
}

/// The account's limit on that day, where the plan's chart is of that planting and of its root zone.
double limit_mm(const WeekView& view, std::size_t bed, const WorstDay& worst) {
  for (const WeekBed& each : view.plan.beds)
    for (const BedDay& day : each.days)
      if (each.bed == bed && day.date == worst.day->date && day.planting == worst.planting && !day.seedbed)
        return day.raw_mm;
  return missing;
}

}  // namespace

SheetSection alert_section(const WeekView& view) {
  SheetSection section;
  for (const Alert& alert : view.alerts) {
    if (alert.kind == AlertKind::blocked_run) continue;
    const bool is_heat = alert.kind == AlertKind::crop_heat;
    const std::string action = plain_text(alert.action);
    std::string line = with_full_stop(plain_text(alert.sentence));
    if (is_known(alert.likelihood)) line += " " + alert_likelihood_words(alert.likelihood, view.language);
    line += " " +
            with_full_stop(say(view, is_heat ? Phrase::alert_helps : Phrase::alert_do, {{"action", action}}));
    section.lines.push_back(std::move(line));
  }
  if (!section.lines.empty())
    section.title = say(view, Phrase::alerts_title, {{"date", view.text().day(view.plan.first)}});
  return section;
}

std::optional<SureTable> sure_table(const WeekView& view) {
  SureTable table;
  std::vector<std::string> untried;
  for (std::size_t bed = 0; bed < view.garden.beds.size(); ++bed) {
    const BedLikelihood* const tried = tried_bed(view, bed);
    if (tried == nullptr) {
      untried.push_back(bed_letter(view, bed));
      continue;
    }
    SureTable::Row row{.letter = bed_letter(view, bed)};
    const auto& days = tried->plantings.front().days;
    for (std::size_t day = 0; day < days.size(); ++day) row.cells.push_back(cell_words(view, *tried, day));
    if (table.days.empty())
      for (const DayLikelihood& day : days) table.days.push_back(view.text().short_day(day.date));
    table.rows.push_back(std::move(row));
  }
  if (table.rows.empty()) return std::nullopt;
  table.title = say(view, Phrase::sure_title);
  table.notes = notes_of(view, untried);
  return table;
}

std::string sure_range_words(const WeekView& view, std::size_t bed) {
  const BedLikelihood* const tried = tried_bed(view, bed);
  if (tried == nullptr) return {};
  const WorstDay worst = worst_day(*tried);
  if (worst.day == nullptr) return {};
  const LocalText text = view.text();
  const Crop& crop = find_crop(view.garden.beds[bed].plantings[worst.planting].crop);
  const std::string day = text.short_day(worst.day->date), low = text.depth(worst.day->dr10_mm),
                    high = text.depth(worst.day->dr90_mm);
  std::string words =
      tried->plantings.size() == 1
          ? say(view, Phrase::sure_range, {{"day", day}, {"low", low}, {"high", high}})
          : say(view, Phrase::sure_range_of,
                {{"day", day}, {"low", low}, {"high", high}, {"crop", crop_name(view.language, crop)}});
  const double limit = limit_mm(view, bed, worst);
  if (is_known(limit)) words += ", " + say(view, Phrase::sure_limit, {{"limit", text.depth(limit)}});
  return words;
}

}  // namespace v1
}  // namespace noonleaf
