#include "noonleaf/report/away_words.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/report/away_phrases.hpp"
#include "noonleaf/report/likelihood_json.hpp"
#include "noonleaf/report/likelihood_phrases.hpp"
#include "noonleaf/report/likelihood_words.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr std::size_t page_width = 80;

const AwayPhrases& phrases_in(AwayLanguage language) {
  return language == AwayLanguage::es ? away_spanish : away_english;
}

template <class... Values>
std::string filled(std::string_view phrase, const Values&... values) {
  return fmt::format(fmt::runtime(phrase), values...);
}

/// "Sat 19 Jul", "sáb 19 jul".
std::string day_text(year_month_day date, AwayLanguage language) {
  constexpr std::array<std::array<std::string_view, 7>, 2> weekdays{
      {{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"}, {"dom", "lun", "mar", "mié", "jue", "vie", "sáb"}}};
  constexpr std::array<std::array<std::string_view, 12>, 2> months{
      {{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"},
       {"ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"}}};
  const auto which = static_cast<std::size_t>(language);
  const std::chrono::weekday weekday{sys_days(date)};
  return fmt::format("{} {} {}", weekdays[which][weekday.c_encoding()], static_cast<unsigned>(date.day()),
                     months[which][static_cast<unsigned>(date.month()) - 1]);
}

std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U;  // one for each UTF-8 character
  }));
}

/// Lines of at most 80 columns, the second and later ones indented.
std::string wrapped(std::string_view text, std::size_t indent) {
  std::string lines;
  std::size_t begin = std::min(text.find_first_not_of(' '), text.size());
  std::string line(begin, ' ');
  bool at_start = true;
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find(' ', begin), text.size());
    const std::string_view word = text.substr(begin, end - begin);
    if (!at_start && columns(line) + 1 + columns(word) > page_width) {
      lines += line + "\n";
      line = std::string(indent, ' ') + std::string(word);
    } else {
      line += (at_start ? "" : " ") + std::string(word);
    }
    at_start = false;
    begin = end + 1;
  }
  return lines + line + "\n";
}

std::string crop_of(const Garden& garden, const AwayBed& bed, AwayLanguage language) {
  const Crop& crop = find_crop(garden.beds[bed.bed].plantings[bed.planting].crop);
  return std::string(language == AwayLanguage::es ? crop.name_es : crop.name_en);
}

/// "short of water from Mon 21 Jul, wilts about Fri 25 Jul (Thu 24 Jul to Mon 28 Jul)"
std::string dates_words(const AwayBed& bed, const DryDates& dates, AwayLanguage language) {
  const AwayPhrases& say = phrases_in(language);
  if (!dates.leaves_comfort && !dates.wilts) return std::string(say.comfortable);
  const year_month_day first =
      dates.leaves_comfort.value_or(*(dates.wilts ? dates.wilts : dates.leaves_comfort));
  std::string words = filled(bed.seedbed ? say.seeds_dry : say.dry_from, day_text(first, language));
  if (!dates.wilts) return words + std::string(say.never_wilts);
  return words + filled(bed.seedbed ? say.seeds_lost : say.wilts, day_text(*dates.wilts, language));
}

std::string outlook_words(const AwayBed& bed, const AwayOutlook& outlook, AwayLanguage language) {
  const AwayPhrases& say = phrases_in(language);
  std::string words = dates_words(bed, outlook.middle, language);
  if (outlook.middle.wilts && outlook.earliest_wilt && outlook.latest_wilt &&
      *outlook.earliest_wilt != *outlook.latest_wilt) {
    words += filled(say.wilts_between, day_text(*outlook.earliest_wilt, language),
                    day_text(*outlook.latest_wilt, language));
  }
  if (outlook.skies_wilting > 0 && outlook.skies_wilting < outlook.skies) {
    if (!words.empty() && words.back() == '.') words.pop_back();
    words += filled(say.lasts_under_some, outlook.skies_wilting, outlook.skies);
  }
  if (words.back() != '.') words += '.';
  return words;
}

std::string help_words(const Away& away, AwayHelp help, AwayLanguage language) {
  const AwayPhrases& say = phrases_in(language);
  switch (help) {
    case AwayHelp::nothing:
      return std::string(say.not_watered);
    case AwayHelp::deep_watering:
      return filled(say.help_deep, day_text(away.question.from, language));
    case AwayHelp::mulch:
      return std::string(say.help_mulch);
    case AwayHelp::one_visit:
      return filled(say.help_visit, day_text(*away.best_visit, language));
  }
  return {};
}

bool gets_through(const AwayOutlook& outlook) { return outlook.skies_wilting == 0; }

const AwayOutlook* outlook_with(const AwayBed& bed, AwayHelp help) {
  const auto found = std::find_if(bed.outlooks.begin(), bed.outlooks.end(),
                                  [help](const AwayOutlook& outlook) { return outlook.help == help; });
  return found == bed.outlooks.end() ? nullptr : &*found;
}

bool helps(const AwayBed& bed, AwayHelp help) {
  const AwayOutlook* outlook = outlook_with(bed, help);
  return outlook != nullptr && gets_through(*outlook);
}

/// Days from full to wilting: how often somebody has to come.
int days_full(const Away& away, const AwayBed& bed) {
  const AwayOutlook* deep = outlook_with(bed, AwayHelp::deep_watering);
  if (deep == nullptr || !deep->earliest_wilt) return 1;
  return std::max(1,
                  static_cast<int>((sys_days(*deep->earliest_wilt) - sys_days(away.question.from)).count()));
}

std::string advice(const Away& away, const AwayBed& bed, AwayLanguage language) {
  const AwayPhrases& say = phrases_in(language);
  if (helps(bed, AwayHelp::nothing)) return std::string(say.do_nothing);
  if (helps(bed, AwayHelp::deep_watering)) return filled(say.do_deep, day_text(away.question.from, language));
  if (helps(bed, AwayHelp::mulch)) return std::string(say.do_mulch);
  if (helps(bed, AwayHelp::one_visit)) return filled(say.do_visit, day_text(*away.best_visit, language));
  const int every_d = days_full(away, bed);
  return every_d == 1 ? std::string(say.do_daily) : filled(say.do_more, every_d);
}

/// A bed on the sheet for one visit: it would wilt before, or would without it.
struct VisitLine {
  std::string letter, name, tap, minutes;
};

/// A name of the garden file in the language of the answer, where the file has one.
std::string named(AwayLanguage language, const std::string& name, const std::string& name_es) {
  return language == AwayLanguage::es && !name_es.empty() ? name_es : name;
}

std::vector<VisitLine> visit_lines(const AwayView& view, AwayLanguage language) {
  std::vector<VisitLine> lines;
  if (!view.away.best_visit) return lines;
  const auto letters = bed_letters(view.garden);
  for (const AwayBed& bed : view.away.beds) {
    if (bed.nothing_grows || helps(bed, AwayHelp::nothing)) continue;
    if (bed.visit_net_mm < 1) continue;  // as small a need as `today` leaves alone
    const Bed& where = view.garden.beds[bed.bed];
    const RunPlan run = bed_run(view.garden, where, bed.visit_net_mm);
    const Tap& tap = view.garden.taps[view.garden.sprinklers[where.sprinkler].tap];
    lines.push_back({letters[bed.bed], named(language, where.name, where.name_es),
                     named(language, tap.name, tap.name_es), fmt::format("{:.0f}", run.minutes)});
  }
  return lines;
}

std::string escaped(std::string_view text) {
  std::string result;
  for (const char c : text) {
    if (c == '&')
      result += "&amp;";
    else if (c == '<')
      result += "&lt;";
    else if (c == '>')
      result += "&gt;";
    else if (c == '"')
      result += "&quot;";
    else
      result += c;
  }
  return result;
}

std::vector<std::string> sheet_notes(const AwayView& view, AwayLanguage language) {
  const AwayPhrases& say = phrases_in(language);
  std::vector<std::string> notes{std::string(say.sheet_close),    std::string(say.sheet_rain),
                                 std::string(say.sheet_droop),    std::string(say.sheet_found_open),
                                 std::string(say.sheet_hot_hose), std::string(say.sheet_heat)};
  if (!view.garden.site.contact.empty())
    notes.push_back(
        filled(say.sheet_tell, named(language, view.garden.site.contact, view.garden.site.contact_es)));
  return notes;
}

std::string span_text(std::string_view phrase, const AwayView& view, AwayLanguage language) {
  return filled(phrase, day_text(view.away.question.from, language),
                day_text(view.away.question.to, language));
}

}  // namespace

namespace {

LikelihoodView sure_view(const AwayView& view, AwayLanguage language) {
  return {view.garden, *view.away.likelihood, language == AwayLanguage::es ? Language::es : Language::en};
}

std::string sure_line(const AwayView& view, const AwayBed& bed, AwayLanguage language) {
  if (!view.away.likelihood) return {};
  const std::string words =
      absence_likelihood_words(sure_view(view, language), bed.bed, bed.planting, view.away.question.from);
  if (words.empty()) return {};
  const LikelihoodPhrases& say = language == AwayLanguage::es ? likelihood_spanish : likelihood_english;
  return wrapped(fmt::format("   {}: {}", say.how_sure, words), 5);
}

std::string sure_notes(const AwayView& view, AwayLanguage language) {
  if (!view.away.likelihood) return {};
  const LikelihoodPhrases& say = language == AwayLanguage::es ? likelihood_spanish : likelihood_english;
  std::string text;
  for (const std::string& line : likelihood_head_words(sure_view(view, language)))
    text += wrapped((text.empty() ? std::string(say.how_sure) + ": " : std::string()) + line, 2);
  return text;
}

}  // namespace

std::string away_text(const AwayView& view, AwayLanguage language) {
  const AwayPhrases& say = phrases_in(language);
  const Away& away = view.away;
  std::string text = wrapped(filled(say.title, view.garden.site.name, day_text(away.question.from, language),
                                    day_text(away.question.to, language)),
                             2);
  const auto letters = bed_letters(view.garden);
  for (const AwayBed& bed : away.beds) {
    const Bed& where = view.garden.beds[bed.bed];
    if (bed.nothing_grows) {
      text += "\n" + wrapped(fmt::format("{}  {}: {}", letters[bed.bed],
                                         named(language, where.name, where.name_es), say.bare),
                             3);
      continue;
    }
    text += "\n" +
            wrapped(fmt::format("{}  {} ({})", letters[bed.bed], named(language, where.name, where.name_es),
                                crop_of(view.garden, bed, language)),
                    3);
    for (const AwayOutlook& outlook : bed.outlooks) {
      text += wrapped(fmt::format("   {}: {}", help_words(away, outlook.help, language),
                                  outlook_words(bed, outlook, language)),
                      5);
    }
    if (away.rain_forecast) {
      std::string words = dates_words(bed, bed.with_rain, language);
      if (words.back() != '.') words += '.';
      text += wrapped(fmt::format("   {}: {}", say.with_rain, words), 5);
    }
    text += sure_line(view, bed, language);
    text += wrapped("   -> " + advice(away, bed, language), 6);
  }
  text += "\n" + wrapped(filled(say.skies_note, day_text(away.known_to, language)), 2);
  if (away.past_years > 0) text += wrapped(filled(say.years_note, away.past_years), 2);
  if (away.taken_as_done > 0) text += wrapped(filled(say.as_done_note, away.taken_as_done), 2);
  return text + wrapped(say.no_probability, 2) + sure_notes(view, language);
}

std::string away_sheet_text(const AwayView& view, AwayLanguage language) {
  const AwayPhrases& say = phrases_in(language);
  const auto lines = visit_lines(view, language);
  std::string text = wrapped(filled(say.sheet_title, view.garden.site.name), 2) + "\n";
  if (lines.empty()) return text + wrapped(span_text(say.sheet_none, view, language), 2);
  text += wrapped(filled(say.sheet_when, day_text(*view.away.best_visit, language)), 2) + "\n";
  for (const VisitLine& line : lines) {
    text +=
        wrapped(fmt::format("{}  {}: {}, {} min  [  ]", line.letter, line.name, line.tap, line.minutes), 3);
  }
  text += "\n";
  for (const std::string& note : sheet_notes(view, language)) text += wrapped("- " + note, 2);
  return text + "\n" + std::string(say.sheet_signed) + " ____________________\n";
}

std::string away_sheet_html(const AwayView& view, AwayLanguage language) {
  const AwayPhrases& say = phrases_in(language);
  const auto lines = visit_lines(view, language);
  const std::string title = escaped(filled(say.sheet_title, view.garden.site.name));
  std::string page = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n<title>{}</title>\n<style>\n"
      "@page {{ margin: 14mm; }}\nbody {{ font: 16pt/1.3 sans-serif; color: #000; background: #fff; "
      "max-width: 180mm; }}\n"
      "h1 {{ font-size: 22pt; }}\ntable {{ border-collapse: collapse; width: 100%; }}\n"
      "th, td {{ border: 1.5pt solid #000; padding: 6pt; text-align: left; }}\ntr {{ break-inside: avoid; "
      "}}\n"
      "</style>\n</head>\n<body>\n<main>\n<h1>{}</h1>\n",
      language == AwayLanguage::es ? "es" : "en", title, title);
  if (lines.empty()) {
    page += fmt::format("<p>{}</p>\n", escaped(span_text(say.sheet_none, view, language)));
  } else {
    page += fmt::format(
        "<p><strong>{}</strong></p>\n<table>\n<tr><th scope=\"col\">{}</th><th scope=\"col\">{}</th>"
        "<th scope=\"col\">{}</th><th scope=\"col\">{}</th></tr>\n",
        escaped(filled(say.sheet_when, day_text(*view.away.best_visit, language))), say.column_bed,
        say.column_tap, say.column_minutes, say.column_done);
    for (const VisitLine& line : lines) {
      page += fmt::format("<tr><td><strong>{}</strong> {}</td><td>{}</td><td>{}</td><td></td></tr>\n",
                          escaped(line.letter), escaped(line.name), escaped(line.tap), line.minutes);
    }
    page += "</table>\n<ul>\n";
    for (const std::string& note : sheet_notes(view, language))
      page += fmt::format("<li>{}</li>\n", escaped(note));
    page += fmt::format("</ul>\n<p>{} ______________________________</p>\n", say.sheet_signed);
  }
  return page + "</main>\n</body>\n</html>\n";
}

std::string away_json(const AwayView& view) {
  using Json = nlohmann::ordered_json;
  const auto date = [](const std::optional<year_month_day>& day) {
    return day ? Json(iso_date(*day)) : Json(nullptr);
  };
  constexpr std::array<std::string_view, 4> helps_words{"nothing", "deep_watering", "mulch", "one_visit"};
  const Away& away = view.away;
  const auto letters = bed_letters(view.garden);
  Json json{
      {"shape", "noonleaf.away"},
      {"version", 1},
      {"today", iso_date(away.question.today)},
      {"from", iso_date(away.question.from)},
      {"to", iso_date(away.question.to)},
      {"weather_known_to", iso_date(away.known_to)},
      {"past_years", away.past_years},
      {"runs_taken_as_done", away.taken_as_done},
      {"best_visit", date(away.best_visit)},
      {"likelihood", away.likelihood ? likelihood_json({view.garden, *away.likelihood}) : Json(nullptr)},
      {"beds", Json::array()}};
  for (const AwayBed& bed : away.beds) {
    const Bed& where = view.garden.beds[bed.bed];
    Json entry{{"bed", where.id}, {"letter", letters[bed.bed]}, {"nothing_grows", bed.nothing_grows}};
    if (!bed.nothing_grows) {
      entry["crop"] = where.plantings[bed.planting].crop;
      entry["seedbed"] = bed.seedbed;
      entry["deep_watering_mm"] = bed.deep_net_mm;
      entry["visit_mm"] = bed.visit_net_mm;
      entry["with_rain"] = {{"leaves_comfort", date(bed.with_rain.leaves_comfort)},
                            {"wilts", date(bed.with_rain.wilts)}};
      entry["likelihood"] =
          away.likelihood ? planting_likelihood_json(*away.likelihood, bed.bed, bed.planting) : Json(nullptr);
      entry["outlooks"] = Json::array();
      for (const AwayOutlook& outlook : bed.outlooks) {
        entry["outlooks"].push_back({{"help", helps_words[static_cast<std::size_t>(outlook.help)]},
                                     {"leaves_comfort", date(outlook.middle.leaves_comfort)},
                                     {"wilts", date(outlook.middle.wilts)},
                                     {"lost_mm", outlook.middle.lost_mm},
                                     {"earliest_wilt", date(outlook.earliest_wilt)},
                                     {"latest_wilt", date(outlook.latest_wilt)},
                                     {"skies", outlook.skies},
                                     {"skies_beyond_limit", outlook.skies_beyond},
                                     {"skies_wilting", outlook.skies_wilting}});
      }
    }
    json["beds"].push_back(std::move(entry));
  }
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace v1
}  // namespace noonleaf
