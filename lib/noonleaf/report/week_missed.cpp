#include <algorithm>
#include <array>

#include "noonleaf/report/sentences.hpp"
#include "noonleaf/report/week_sections.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

Phrase limit_phrase(WeekLimit limit) {
  constexpr std::array<Phrase, 15> phrases{Phrase::limit_nobody_on_site,
                                           Phrase::limit_allowed_hours,
                                           Phrase::limit_quiet_hours,
                                           Phrase::limit_restriction,
                                           Phrase::limit_tap_taken,
                                           Phrase::limit_longest_run,
                                           Phrase::limit_tap_flow,
                                           Phrase::limit_wind,
                                           Phrase::limit_frost,
                                           Phrase::limit_ground_closed,
                                           Phrase::limit_reclaimed_on_food,
                                           Phrase::limit_reclaimed_children,
                                           Phrase::limit_no_time_left,
                                           Phrase::limit_clock_change,
                                           Phrase::limit_already_dry};
  static_assert(phrases.size() == static_cast<std::size_t>(WeekLimit::already_dry) + 1);
  return phrases[static_cast<std::size_t>(limit)];
}

std::string restriction_name(const WeekView& view, const std::optional<std::size_t>& index) {
  if (!index) return say(view, Phrase::unknown_value);
  return plain_text(view.garden.rules.restrictions[*index].name);
}

std::string help_words(const WeekView& view, const Relaxation& help) {
  const LocalText text = view.text();
  const bool has_date = help.date.ok();
  const std::string day = has_date ? text.day(help.date) : std::string{};
  const std::string weekday = has_date ? text.weekday(help.date) : std::string{};
  const std::string begin = text.the_clock(help.begin), end = text.the_clock(help.end);
  const std::string who = help.caretaker ? role_name(view, *help.caretaker) : say(view, Phrase::help_anybody);
  const std::string minutes = text.number(help.minutes, 0), litres = text.volume(help.litres);
  const std::initializer_list<Filling> all{{"who", who},      {"date", day}, {"weekday", weekday},
                                           {"begin", begin},  {"end", end},  {"minutes", minutes},
                                           {"litres", litres}};
  switch (help.kind) {
    case RelaxationKind::none:
      return {};
    case RelaxationKind::come_then:
      return say(view, Phrase::help_come_then, all);
    case RelaxationKind::allow_hours:
      return say(view, Phrase::help_allow_hours, all);
    case RelaxationKind::move_quiet_time:
      return say(view, Phrase::help_move_quiet_time, all);
    case RelaxationKind::allow_weekday:
      return say(view, Phrase::help_allow_weekday, all);
    case RelaxationKind::water_by_hand:
      return say(view, Phrase::help_water_by_hand, all);
    case RelaxationKind::move_to_drip:
      return say(view, Phrase::help_move_to_drip);
    case RelaxationKind::longer_run:
      return say(view, Phrase::help_longer_run, all);
    case RelaxationKind::second_tap:
      return say(view, Phrase::help_second_tap);
    case RelaxationKind::smaller_sprinkler:
      return say(view, Phrase::help_smaller_sprinkler);
    case RelaxationKind::drinking_water:
      return say(view, Phrase::help_drinking_water);
    case RelaxationKind::say_children_hours:
      return say(view, Phrase::help_say_children_hours);
  }
  return {};
}

/// Beds that the chart marks as short of water, or worse, with the plan.
std::vector<std::string> beds_marked_dry(const WeekView& view) {
  std::vector<std::string> letters;
  for (const WeekBed& bed : view.plan.beds) {
    if (std::any_of(bed.days.begin(), bed.days.end(),
                    [](const BedDay& day) { return day.risk == DayRisk::dry || day.risk == DayRisk::wilts; }))
      letters.push_back(bed_letter(view, bed.bed));
  }
  return letters;
}

/// "A, B and E 82 %; C 60 %", for beds whose sprinkler waters unevenly.
std::string driest_words(const WeekView& view) {
  std::string list;
  for (std::size_t sprinkler = 0; sprinkler < view.garden.sprinklers.size(); ++sprinkler) {
    const double share = view.garden.sprinklers[sprinkler].rate.du_lq_frac;
    std::vector<std::string> letters;
    for (const WeekBed& bed : view.plan.beds) {
      if (view.garden.beds[bed.bed].sprinkler == sprinkler && !bed.nothing_grows)
        letters.push_back(bed_letter(view, bed.bed));
    }
    if (letters.empty() || !(share < 0.95)) continue;
    list += (list.empty() ? "" : "; ") + view.text().list(letters) + " " +
            view.text().number(100 * share, 0) + " %";
  }
  return list.empty() ? list : say(view, Phrase::driest_quarter, {{"list", list}});
}

/// What was taken as done, and what to do where it was not.
std::string doubt_words(const WeekView& view, const WeekBed& bed) {
  if (!bed.open_question || !(bed.open_question->run_if_not_done.minutes > 0)) return {};
  const LocalText text = view.text();
  std::string runs;
  for (const UnloggedRun& run : bed.open_question->runs)
    runs +=
        (runs.empty() ? "" : ", ") + text.short_day(run.date) + " (" + text.number(run.minutes, 0) + " min)";
  return say(view, Phrase::taken_as_done,
             {{"runs", runs},
              {"bed", bed_letter(view, bed.bed)},
              {"day", text.weekday(view.plan.first)},
              {"minutes", text.number(bed.open_question->run_if_not_done.minutes, 0)}});
}

std::string miss_words(const WeekView& view, const WeekMiss& miss) {
  const LocalText text = view.text();
  const bool one_day = miss.first == miss.last;
  const Phrase id = miss.seedbed ? (one_day ? Phrase::missed_seed_day : Phrase::missed_seed)
                                 : (one_day ? Phrase::missed_dry_day : Phrase::missed_dry);
  std::string words = say(
      view, id,
      {{"bed", bed_letter(view, miss.bed)}, {"first", text.day(miss.first)}, {"last", text.day(miss.last)}});
  words += " " + say(view, limit_phrase(miss.limit), {{"rule", restriction_name(view, miss.restriction)}});
  if (miss.relaxation.kind != RelaxationKind::none)
    words +=
        " " + with_full_stop(say(view, Phrase::help_cheapest, {{"help", help_words(view, miss.relaxation)}}));
  if (miss.or_else && miss.or_else->kind != RelaxationKind::none)
    words += " " + with_full_stop(say(view, Phrase::help_or, {{"help", help_words(view, *miss.or_else)}}));
  return words;
}

}  // namespace

SheetSection missed_section(const WeekView& view) {
  SheetSection section{say(view, Phrase::missed_title), {}};
  for (const WeekMiss& miss : view.plan.misses) section.lines.push_back(miss_words(view, miss));
  if (section.lines.empty()) {
    const auto marked = beds_marked_dry(view);
    section.lines.push_back(
        marked.empty() ? say(view, Phrase::missed_none)
                       : say(view, Phrase::missed_slightly,
                             {{"beds", beds_words(view, marked)}, {"dry", say(view, Phrase::risk_dry)}}));
  }
  if (const std::string driest = driest_words(view); !driest.empty()) section.lines.push_back(driest);
  for (const WeekBed& bed : view.plan.beds) {
    if (const std::string doubt = doubt_words(view, bed); !doubt.empty()) section.lines.push_back(doubt);
  }
  return section;
}

}  // namespace v1
}  // namespace noonleaf
