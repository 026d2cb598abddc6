#include <vector>

#include <fmt/format.h>

#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/plan/week_problem.hpp"
#include "noonleaf/report/away_parts.hpp"
#include "noonleaf/report/away_words.hpp"
#include "noonleaf/report/local_text.hpp"
#include "noonleaf/report/markup.hpp"
#include "noonleaf/report/wrapped_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr TextColumn paragraph{.hanging = 2}, row{.hanging = 3};

/// A bed on the sheet for one visit: it would wilt before, or would without it.
struct VisitLine {
  std::string letter, name, tap, minutes;
  std::string doubt;  ///< whether the visit saves it; empty = it does
};

std::vector<VisitLine> visit_lines(const AwayView& view, Language language) {
  std::vector<VisitLine> lines;
  if (!view.away.best_visit) return lines;
  const auto letters = bed_letters(view.garden);
  for (const AwayBed& bed : view.away.beds) {
    if (bed.nothing_grows || gets_through_alone(view.away, bed)) continue;
    if (bed.visit_net_mm < smallest_net_mm) continue;  // as small a need as `today` leaves alone
    const Bed& where = view.garden.beds[bed.bed];
    const RunPlan run = bed_run(view.garden, where, bed.visit_net_mm);
    const Tap& tap = view.garden.taps[view.garden.sprinklers[where.sprinkler].tap];
    lines.push_back({plain_text(letters[bed.bed]), local_name(language, where.name, where.name_es),
                     local_name(language, tap.name, tap.name_es), fmt::format("{:.0f}", run.minutes),
                     visit_doubt(view.away, bed, language)});
  }
  return lines;
}

std::vector<std::string> sheet_notes(const AwayView& view, const std::vector<VisitLine>& lines,
                                     Language language) {
  const AwayPhrases& say = away_phrases(language);
  std::vector<std::string> notes;
  for (const VisitLine& line : lines)
    if (!line.doubt.empty()) notes.push_back(line.letter + ": " + line.doubt);
  for (const std::string_view note : {say.sheet_close, say.sheet_rain, say.sheet_droop, say.sheet_found_open,
                                      say.sheet_hot_hose, say.sheet_heat})
    notes.emplace_back(note);
  if (!view.garden.site.contact.empty())
    notes.push_back(
        filled(say.sheet_tell, local_name(language, view.garden.site.contact, view.garden.site.contact_es)));
  return notes;
}

std::string title_of(const AwayView& view, Language language) {
  return filled(away_phrases(language).sheet_title, plain_text(view.garden.site.name));
}

std::string span_text(std::string_view phrase, const AwayView& view, Language language) {
  return filled(phrase, away_day(view.away.question.from, language),
                away_day(view.away.question.to, language));
}

}  // namespace

std::string away_sheet_text(const AwayView& view, Language language) {
  const AwayPhrases& say = away_phrases(language);
  const auto lines = visit_lines(view, language);
  std::string text = wrapped_text(title_of(view, language), paragraph) + "\n";
  if (lines.empty()) return text + wrapped_text(span_text(say.sheet_none, view, language), paragraph);
  text += wrapped_text(filled(say.sheet_when, away_day(*view.away.best_visit, language)), paragraph) + "\n";
  for (const VisitLine& line : lines)
    text += wrapped_text(
        fmt::format("{}  {}: {}, {} min  [  ]", line.letter, line.name, line.tap, line.minutes), row);
  text += "\n";
  for (const std::string& note : sheet_notes(view, lines, language))
    text += wrapped_text("- " + note, paragraph);
  return text + "\n" + std::string(say.sheet_signed) + " ____________________\n";
}

std::string away_sheet_html(const AwayView& view, Language language) {
  const AwayPhrases& say = away_phrases(language);
  const auto lines = visit_lines(view, language);
  const std::string title = markup_text(title_of(view, language));
  std::string page = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n<title>{}</title>\n<style>\n"
      "@page {{ margin: 14mm; }}\nbody {{ font: 16pt/1.3 sans-serif; color: #000; background: #fff; "
      "max-width: 180mm; }}\n"
      "h1 {{ font-size: 22pt; }}\ntable {{ border-collapse: collapse; width: 100%; }}\n"
      "th, td {{ border: 1.5pt solid #000; padding: 6pt; text-align: left; }}\ntr {{ break-inside: avoid; "
      "}}\n"
      "</style>\n</head>\n<body>\n<main>\n<h1>{}</h1>\n",
      code(language), title, title);
  if (lines.empty()) {
    page += fmt::format("<p>{}</p>\n", markup_text(span_text(say.sheet_none, view, language)));
  } else {
    page += fmt::format(
        "<p><strong>{}</strong></p>\n<table>\n<tr><th scope=\"col\">{}</th><th scope=\"col\">{}</th>"
        "<th scope=\"col\">{}</th><th scope=\"col\">{}</th></tr>\n",
        markup_text(filled(say.sheet_when, away_day(*view.away.best_visit, language))), say.column_bed,
        say.column_tap, say.column_minutes, say.column_done);
    for (const VisitLine& line : lines) {
      page +=
          fmt::format("<tr><td><strong>{}</strong> {}</td><td>{}</td><td>{}</td><td></td></tr>\n",
                      markup_text(line.letter), markup_text(line.name), markup_text(line.tap), line.minutes);
    }
    page += "</table>\n<ul>\n";
    for (const std::string& note : sheet_notes(view, lines, language))
      page += fmt::format("<li>{}</li>\n", markup_text(note));
    page += fmt::format("</ul>\n<p>{} ______________________________</p>\n", say.sheet_signed);
  }
  return page + "</main>\n</body>\n</html>\n";
}

}  // namespace v1
}  // namespace noonleaf
