#include "noonleaf/report/away_words.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/report/away_parts.hpp"
#include "noonleaf/report/labels.hpp"
#include "noonleaf/report/likelihood_phrases.hpp"
#include "noonleaf/report/likelihood_words.hpp"
#include "noonleaf/report/local_text.hpp"
#include "noonleaf/report/sentences.hpp"
#include "noonleaf/report/wrapped_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr double doubtful_frac = 0.2;
constexpr TextColumn paragraph{.hanging = 2}, bed_line{.hanging = 3}, detail{.indent = 3, .hanging = 2},
    advised{.indent = 3, .hanging = 3};

std::string crop_of(const Garden& garden, const AwayBed& bed, Language language) {
  return std::string(crop_name(language, find_crop(garden.beds[bed.bed].plantings[bed.planting].crop)));
}

/// "short of water from Mon 21 Jul, wilts about Fri 25 Jul (Thu 24 Jul to Mon 28 Jul)"
std::string dates_words(const AwayBed& bed, const DryDates& dates, Language language) {
  const AwayPhrases& say = away_phrases(language);
  if (!dates.leaves_comfort && !dates.wilts) return std::string(say.comfortable);
  const year_month_day first = dates.leaves_comfort ? *dates.leaves_comfort : *dates.wilts;
  std::string words = filled(bed.seedbed ? say.seeds_dry : say.dry_from, away_day(first, language));
  if (!dates.wilts) return words + std::string(say.never_wilts);
  return words + filled(bed.seedbed ? say.seeds_lost : say.wilts, away_day(*dates.wilts, language));
}

std::string outlook_words(const AwayBed& bed, const AwayOutlook& outlook, Language language) {
  const AwayPhrases& say = away_phrases(language);
  std::string words = dates_words(bed, outlook.middle, language);
  if (outlook.middle.wilts && outlook.earliest_wilt && outlook.latest_wilt &&
      *outlook.earliest_wilt != *outlook.latest_wilt) {
    words += filled(say.wilts_between, away_day(*outlook.earliest_wilt, language),
                    away_day(*outlook.latest_wilt, language));
  }
  if (outlook.skies_wilting > 0 && outlook.skies_wilting < outlook.skies) {
    if (!words.empty() && words.back() == '.') words.pop_back();
    words += filled(say.lasts_under_some, outlook.skies_wilting, outlook.skies);
  }
  return with_full_stop(std::move(words));
}

std::string help_words(const Away& away, AwayHelp help, Language language) {
  const AwayPhrases& say = away_phrases(language);
  switch (help) {
    case AwayHelp::nothing:
      return std::string(say.not_watered);
    case AwayHelp::deep_watering:
      return filled(say.help_deep, away_day(away.question.from, language));
    case AwayHelp::mulch:
      return std::string(say.help_mulch);
    case AwayHelp::one_visit:
      return filled(say.help_visit, away_day(*away.best_visit, language));
  }
  return {};
}

const AwayOutlook* outlook_with(const AwayBed& bed, AwayHelp help) {
  const auto found = std::find_if(bed.outlooks.begin(), bed.outlooks.end(),
                                  [help](const AwayOutlook& outlook) { return outlook.help == help; });
  return found == bed.outlooks.end() ? nullptr : &*found;
}

/// Share of the members in which the bed has wilted up to a day, the last at most; missing where none were tried.
double wilted_frac(const Away& away, const AwayBed& bed, year_month_day last) {
  double share = missing;
  if (!away.likelihood) return share;
  for (const BedLikelihood& each : away.likelihood->beds)
    for (const PlantingLikelihood& one : each.plantings)
      for (const DayLikelihood& day : one.days)
        if (each.bed == bed.bed && one.planting == bed.planting && day.date <= last) share = day.halved_frac;
  return share;
}

bool gets_through_with(const AwayBed& bed, AwayHelp help) {
  const AwayOutlook* outlook = outlook_with(bed, help);
  return outlook != nullptr && outlook->skies_wilting == 0;
}

bool may_wilt_before_visit(const Away& away, const AwayBed& bed) {
  return wilted_frac(away, bed, year_month_day{sys_days(*away.best_visit) - std::chrono::days(1)}) >=
         doubtful_frac;
}

/// Days from full to wilting: how often somebody has to come.
int days_full(const Away& away, const AwayBed& bed) {
  const AwayOutlook* deep = outlook_with(bed, AwayHelp::deep_watering);
  if (deep == nullptr || !deep->earliest_wilt) return 1;
  return std::max(1,
                  static_cast<int>((sys_days(*deep->earliest_wilt) - sys_days(away.question.from)).count()));
}

std::string more_visits(const Away& away, const AwayBed& bed, Language language) {
  const AwayPhrases& say = away_phrases(language);
  const int every_d = days_full(away, bed);
  return every_d == 1 ? std::string(say.do_daily) : filled(say.do_more, every_d);
}

std::string advice(const Away& away, const AwayBed& bed, Language language) {
  const AwayPhrases& say = away_phrases(language);
  if (gets_through_alone(away, bed)) return std::string(say.do_nothing);
  if (gets_through_with(bed, AwayHelp::nothing)) return std::string(say.do_look);
  if (gets_through_with(bed, AwayHelp::deep_watering))
    return filled(say.do_deep, away_day(away.question.from, language));
  if (gets_through_with(bed, AwayHelp::mulch)) return std::string(say.do_mulch);
  if (gets_through_with(bed, AwayHelp::one_visit))
    return filled(may_wilt_before_visit(away, bed) ? say.do_visit_before : say.do_visit,
                  away_day(*away.best_visit, language));
  return more_visits(away, bed, language);
}

const LikelihoodPhrases& sure_phrases(Language language) {
  return language == Language::es ? likelihood_spanish : likelihood_english;
}

std::string sure_line(const AwayView& view, const AwayBed& bed, Language language) {
  if (!view.away.likelihood) return {};
  const std::string words =
      absence_likelihood_words(tried_in(view, language), bed.bed, bed.planting, view.away.question.from);
  if (words.empty()) return {};
  return wrapped_text(fmt::format("{}: {}", sure_phrases(language).how_sure, words), detail);
}

std::string sure_notes(const AwayView& view, Language language) {
  if (!view.away.likelihood) return {};
  std::string text, begin = std::string(sure_phrases(language).how_sure) + ": ";
  for (const std::string& line : likelihood_head_words(tried_in(view, language)))
    text += wrapped_text(std::exchange(begin, {}) + line, paragraph);
  return text;
}

/// One bed: how it gets through with each help, and what to do.
std::string bed_text(const AwayView& view, const AwayBed& bed, Language language) {
  const AwayPhrases& say = away_phrases(language);
  const Bed& where = view.garden.beds[bed.bed];
  const std::string name =
      plain_text(bed_letters(view.garden)[bed.bed]) + "  " + local_name(language, where.name, where.name_es);
  if (bed.nothing_grows) return wrapped_text(fmt::format("{}: {}", name, say.bare), bed_line);
  std::string text =
      wrapped_text(fmt::format("{} ({})", name, crop_of(view.garden, bed, language)), bed_line);
  for (const AwayOutlook& outlook : bed.outlooks)
    text += wrapped_text(fmt::format("{}: {}", help_words(view.away, outlook.help, language),
                                     outlook_words(bed, outlook, language)),
                         detail);
  if (view.away.rain_forecast)
    text += wrapped_text(
        fmt::format("{}: {}", say.with_rain, with_full_stop(dates_words(bed, bed.with_rain, language))),
        detail);
  return text + sure_line(view, bed, language) +
         wrapped_text("-> " + advice(view.away, bed, language), advised);
}

}  // namespace

std::string away_day(year_month_day date, Language language) {
  constexpr std::array<std::array<std::string_view, 12>, 2> months{
      {{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"},
       {"ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"}}};
  return LocalText(language, UnitSystem::metric).short_day(date) + " " +
         std::string(months[static_cast<std::size_t>(language)][static_cast<unsigned>(date.month()) - 1]);
}

LikelihoodView tried_in(const AwayView& view, Language language) {
  const bool at_once = view.away.question.from == view.away.question.today;
  return {view.garden, view.away.likelihood.value(), language,
          at_once ? WaterTried::no_more : WaterTried::until_leaving};
}

std::string visit_doubt(const Away& away, const AwayBed& bed, Language language) {
  if (!gets_through_with(bed, AwayHelp::one_visit)) return more_visits(away, bed, language);
  if (!may_wilt_before_visit(away, bed)) return {};
  return filled(away_phrases(language).do_visit_before, away_day(*away.best_visit, language));
}

bool gets_through_alone(const Away& away, const AwayBed& bed) {
  return gets_through_with(bed, AwayHelp::nothing) &&
         !(wilted_frac(away, bed, away.question.to) >= doubtful_frac);
}

std::string away_text(const AwayView& view, Language language) {
  const AwayPhrases& say = away_phrases(language);
  const Away& away = view.away;
  std::string text =
      wrapped_text(filled(say.title, plain_text(view.garden.site.name),
                          away_day(away.question.from, language), away_day(away.question.to, language)),
                   paragraph);
  for (const AwayBed& bed : away.beds) text += "\n" + bed_text(view, bed, language);
  text += "\n" + wrapped_text(filled(say.skies_note, away_day(away.known_to, language)), paragraph);
  if (away.past_years > 0) text += wrapped_text(filled(say.years_note, away.past_years), paragraph);
  if (away.taken_as_done > 0) text += wrapped_text(filled(say.as_done_note, away.taken_as_done), paragraph);
  return text + wrapped_text(say.no_probability, paragraph) + sure_notes(view, language);
}

}  // namespace v1
}  // namespace noonleaf
