#include <algorithm>
#include <array>
#include <cmath>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/heat/people.hpp"
#include "noonleaf/report/week_view.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::year_month_day;

constexpr double hot_hose_c = 27.0;  // common practice, no source: a hose in the sun scalds on such a day

std::string say(const WeekView& view, Phrase id, std::initializer_list<Filling> fillings = {}) {
  return fill(view.language, id, fillings);
}

/// A name of the garden file in the sheet's language, where the file has one.
std::string named(const WeekView& view, const std::string& name, const std::string& name_es) {
  return local_name(view.language, name, name_es);
}

/// "a.m." ends a sentence without a second full stop.
std::string with_full_stop(std::string sentence) {
  if (!sentence.ends_with('.')) sentence += '.';
  return sentence;
}

/// The phrases of one sentence after the other.
std::string joined(const std::vector<std::string>& sentences) {
  std::string text;
  for (const std::string& sentence : sentences) text += (text.empty() ? "" : " ") + sentence;
  return text;
}

/// "bed C", "beds A, B and E"
std::string beds_words(const WeekView& view, const std::vector<std::string>& letters) {
  const Phrase id = letters.size() == 1 ? Phrase::one_bed : Phrase::several_beds;
  return say(view, id, {{"letters", view.text().list(letters)}});
}

// ---- cautions ---------------------------------------------------------------------------------------------

bool any_run(const WeekView& view, bool (*matters)(const WeekView&, const WeekRun&)) {
  return std::any_of(view.plan.runs.begin(), view.plan.runs.end(),
                     [&](const WeekRun& run) { return matters(view, run); });
}

bool wets_beside_the_bed(const WeekView& view, const WeekRun& run) {
  return view.garden.sprinklers[run.sprinkler].rate.off_target_frac > 0;
}

double hottest_c(const WeekView& view) {
  double hottest = missing;
  for (const SkyDay& day : view.plan.sky) {
    if (is_known(day.estimate.t_max_c)) hottest = std::fmax(hottest, day.estimate.t_max_c);  // fmax drops NaN
  }
  return hottest;
}

/// Whether a day of the plan brings a heat index of the second category (90 °F) in the shade, or, where
/// humidity is not known, that temperature.
bool is_hot_for_people(const WeekView& view) {
  constexpr double extreme_caution_c = 32.2;  // 90 °F, the lower edge of "extreme caution" (heat/people.hpp)
  return std::any_of(view.plan.sky.begin(), view.plan.sky.end(), [&](const SkyDay& day) {
    const double t_c = day.estimate.t_max_c, rh_pct = day.estimate.rh_min_pct;
    if (!is_known(t_c)) return false;
    if (!is_known(rh_pct)) return t_c >= extreme_caution_c;
    return heat_index_c({.t_c = t_c, .rh_pct = rh_pct}) >= extreme_caution_c;
  });
}

bool flowers_for_bees(const BedPlanting& planting, year_month_day date) {
  if (planting.pulled && *planting.pulled <= date) return false;
  if (planting.season.start > date) return false;
  const Crop& crop = find_crop(planting.crop);
  const bool kind = crop.group == CropGroup::ornamental || crop.group == CropGroup::cucumber ||
                    crop.group == CropGroup::berry;
  if (!kind) return false;
  const Stage stage = growth_day(crop, planting.season, date, {}).stage;
  return stage == Stage::mid_season || stage == Stage::no_stages;
}

std::vector<std::string> beds_with_flowers(const WeekView& view) {
  std::vector<std::string> letters;
  for (std::size_t index = 0; index < view.garden.beds.size(); ++index) {
    const auto& plantings = view.garden.beds[index].plantings;
    const bool flowers = std::any_of(plantings.begin(), plantings.end(), [&](const BedPlanting& planting) {
      return flowers_for_bees(planting, view.plan.first);
    });
    if (flowers) letters.push_back(bed_letter(view, index));
  }
  return letters;
}

std::vector<std::string> reclaimed_taps(const WeekView& view) {
  std::vector<std::string> names;
  for (std::size_t index = 0; index < view.garden.taps.size(); ++index) {
    if (view.garden.taps[index].reclaimed) names.push_back(tap_name(view, index));
  }
  return names;
}

SheetSection care_section(const WeekView& view) {
  std::vector<std::string> sentences;
  if (!view.plan.runs.empty()) {
    const double hottest = hottest_c(view);
    if (is_missing(hottest) || hottest >= hot_hose_c) sentences.push_back(say(view, Phrase::care_hot_hose));
    sentences.push_back(say(view, Phrase::care_backflow));
    if (any_run(view, wets_beside_the_bed)) sentences.push_back(say(view, Phrase::care_slips));
    sentences.push_back(say(view, Phrase::care_electricity));
  }
  const auto reclaimed = reclaimed_taps(view);
  if (!reclaimed.empty())
    sentences.push_back(say(view, Phrase::care_reclaimed, {{"taps", view.text().list(reclaimed)}}));
  sentences.push_back(say(view, Phrase::care_lightning));
  const auto flowers = beds_with_flowers(view);
  if (!flowers.empty())
    sentences.push_back(say(view, Phrase::care_bees, {{"beds", beds_words(view, flowers)}}));
  if (is_hot_for_people(view)) sentences.push_back(say(view, Phrase::care_heat));
  sentences.push_back(say(view, Phrase::care_local));
  return {say(view, Phrase::care_title), {joined(sentences)}};
}

// ---- the other sections -----------------------------------------------------------------------------------

SheetSection soil_section(const WeekView& view) {
  const bool us = view.garden.site.units == UnitSystem::us;
  std::vector<std::string> sentences{say(view, us ? Phrase::soil_check : Phrase::soil_check_metric)};
  std::vector<std::string> seedbeds;
  for (const WeekBed& bed : view.plan.beds) {
    if (std::any_of(bed.days.begin(), bed.days.end(), [](const BedDay& day) { return day.seedbed; }))
      seedbeds.push_back(bed_letter(view, bed.bed));
  }
  if (!seedbeds.empty())
    sentences.push_back(say(view, Phrase::soil_seed, {{"beds", beds_words(view, seedbeds)}}));
  return {say(view, Phrase::soil_title), {joined(sentences)}};
}

/// The run that costs most water when nobody closes it.
const WeekRun* costliest_unclosed(const WeekPlan& plan) {
  const WeekRun* costliest = nullptr;
  for (const WeekRun& run : plan.runs) {
    if (is_missing(run.unclosed.extra_l) || !run.unclosed.until_date.ok()) continue;
    if (costliest == nullptr || run.unclosed.extra_l > costliest->unclosed.extra_l) costliest = &run;
  }
  return costliest;
}

SheetSection found_section(const WeekView& view) {
  std::vector<std::string> sentences{say(view, Phrase::found)};
  if (const WeekRun* const run = costliest_unclosed(view.plan)) {
    const std::string until = view.text().weekday(run->unclosed.until_date),
                      clock = view.text().the_clock(run->unclosed.until);
    const std::string known = view.text().volume(run->unclosed.extra_l);
    const std::string volume =
        is_known(run->plan.litres_from_tap) ? known : say(view, Phrase::at_least, {{"volume", known}});
    sentences.push_back(with_full_stop(say(view, Phrase::found_cost,
                                           {{"bed", bed_letter(view, run->bed)},
                                            {"day", view.text().weekday(run->date)},
                                            {"volume", volume},
                                            {"until", until},
                                            {"clock", clock}})));
  }
  return {say(view, Phrase::found_title), {joined(sentences)}};
}

std::string contact(const WeekView& view) {
  const Site& site = view.garden.site;
  if (!site.contact.empty()) return named(view, site.contact, site.contact_es);
  return view.garden.caretakers.empty() ? std::string{} : role_name(view, 0);
}

SheetSection estimated_section(const WeekView& view) {
  constexpr std::array<std::pair<EstimateKind, Phrase>, 4> kinds{
      {{EstimateKind::journal, Phrase::estimate_journal},
       {EstimateKind::sprinkler, Phrase::estimate_sprinkler},
       {EstimateKind::crop, Phrase::estimate_crop},
       {EstimateKind::soil_start, Phrase::estimate_soil_start}}};
  const auto count = [&](EstimateKind kind) {
    return std::count_if(view.plan.estimates.begin(), view.plan.estimates.end(),
                         [kind](const Estimate& estimate) { return estimate.kind == kind; });
  };
  std::string list;
  const auto add = [&list](const std::string& item) { list += (list.empty() ? "" : ", ") + item; };
  const auto weather = count(EstimateKind::weather);
  if (weather == 1) add(say(view, Phrase::estimate_weather_one));
  if (weather > 1) add(say(view, Phrase::estimate_weather, {{"count", std::to_string(weather)}}));
  for (const auto& [kind, id] : kinds) {
    if (count(kind) > 0) add(say(view, id));
  }
  const std::string note = say(view, Phrase::estimate_note);
  if (list.empty()) return {};
  return {say(view, Phrase::estimated_title), {list + ". " + note}};
}

// ---- changes ----------------------------------------------------------------------------------------------

std::string change_words(const WeekView& view, const WeekChange& change) {
  const LocalText text = view.text();
  const PlannedRun& run = change.kind == WeekChangeKind::dropped ? change.before : change.now;
  const Bed* const bed = find_bed(view.garden, run.bed);
  const std::string letter = bed != nullptr
                                 ? bed_letter(view, static_cast<std::size_t>(bed - view.garden.beds.data()))
                                 : plain_text(run.bed);
  const std::string day = text.day_heading(run.date), open = text.the_clock(run.begin);
  switch (change.kind) {
    case WeekChangeKind::added:
      return say(view, Phrase::changed_added,
                 {{"day", day}, {"bed", letter}, {"open", open}, {"close", text.the_clock(run.end)}});
    case WeekChangeKind::dropped:
      return say(view, Phrase::changed_dropped, {{"day", day}, {"bed", letter}, {"open", open}});
    case WeekChangeKind::time:
      return say(
          view, Phrase::changed_time,
          {{"day", day}, {"bed", letter}, {"open", open}, {"before", text.the_clock(change.before.begin)}});
    case WeekChangeKind::minutes:
      return say(view, Phrase::changed_minutes,
                 {{"day", day},
                  {"bed", letter},
                  {"open", open},
                  {"minutes", text.number(run.minutes, 0)},
                  {"before", text.number(change.before.minutes, 0)}});
    case WeekChangeKind::closer:
      break;
  }
  std::string closer = plain_text(run.closer);
  for (std::size_t index = 0; index < view.garden.caretakers.size(); ++index) {
    if (view.garden.caretakers[index].id == run.closer) closer = role_name(view, index);
  }
  return say(view, Phrase::changed_closer,
             {{"day", day}, {"bed", letter}, {"open", open}, {"closer", closer}});
}

// ---- what the plan cannot do ------------------------------------------------------------------------------

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

std::string bed_letter(const WeekView& view, std::size_t bed) {
  return plain_text(bed_letters(view.garden)[bed]);
}

std::string bed_name(const WeekView& view, std::size_t bed) {
  return named(view, view.garden.beds[bed].name, view.garden.beds[bed].name_es);
}

std::string role_name(const WeekView& view, std::size_t caretaker) {
  return named(view, view.garden.caretakers[caretaker].role, view.garden.caretakers[caretaker].role_es);
}

std::string tap_name(const WeekView& view, std::size_t tap) {
  return named(view, view.garden.taps[tap].name, view.garden.taps[tap].name_es);
}

std::string sprinkler_name(const WeekView& view, std::size_t sprinkler) {
  return named(view, view.garden.sprinklers[sprinkler].name, view.garden.sprinklers[sprinkler].name_es);
}

std::string landmark_name(const WeekView& view, std::size_t landmark) {
  return named(view, view.garden.landmarks[landmark].name, view.garden.landmarks[landmark].name_es);
}

std::vector<RunGroup> run_groups(const WeekPlan& plan) {
  std::vector<RunGroup> groups;
  for (const WeekRun& run : plan.runs) {
    const WeekRun* const last = groups.empty() ? nullptr : groups.back().runs.back();
    const bool same = last != nullptr && last->date == run.date && last->opener == run.opener &&
                      last->closer == run.closer && last->backup == run.backup;
    if (!same) groups.push_back({run.date, {}});
    groups.back().runs.push_back(&run);
  }
  return groups;
}

std::string people_words(const WeekView& view, const WeekRun& run) {
  const std::string backup = run.backup ? role_name(view, *run.backup) : say(view, Phrase::no_backup);
  if (run.opener == run.closer)
    return say(view, Phrase::same_opens_closes, {{"who", role_name(view, run.closer)}, {"backup", backup}});
  return say(
      view, Phrase::opens_closes,
      {{"opener", role_name(view, run.opener)}, {"closer", role_name(view, run.closer)}, {"backup", backup}});
}

std::string total_words(const WeekView& view) {
  if (view.plan.runs.empty())
    return say(view, view.plan.misses.empty() ? Phrase::no_runs : Phrase::no_run_possible);
  double minutes = 0;
  for (const WeekRun& run : view.plan.runs) minutes += run.minutes;
  if (view.plan.runs.size() == 1)
    return say(view, Phrase::total_run, {{"minutes", view.text().number(minutes, 0)}});
  return say(view, Phrase::total_runs,
             {{"runs", std::to_string(view.plan.runs.size())}, {"minutes", view.text().number(minutes, 0)}});
}

std::string dates_words(const WeekView& view) {
  return say(view, Phrase::sheet_dates,
             {{"first", view.text().day(view.plan.first)}, {"last", view.text().day(view.plan.last)}});
}

std::string valid_words(const WeekView& view) {
  return say(view, Phrase::valid_until, {{"date", view.text().day(view.plan.last)}});
}

std::string made_words(const WeekView& view) {
  return with_full_stop(say(view, Phrase::made_on,
                            {{"date", view.text().short_day(view.made.date)},
                             {"clock", view.text().clock(view.made.time_of_day)}}));
}

SheetSection skip_section(const WeekView& view) {
  SheetSection section{say(view, Phrase::skip_title), {}};
  const bool any_rain = std::any_of(view.plan.runs.begin(), view.plan.runs.end(),
                                    [](const WeekRun& run) { return is_known(run.skip_rain_mm); });
  const bool us = view.garden.site.units == UnitSystem::us;
  if (any_rain) section.lines.push_back(say(view, us ? Phrase::skip_rain : Phrase::skip_rain_metric));
  section.lines.push_back(say(view, Phrase::skip_rain_now));
  if (is_known(view.plan.skip.wind_m_s)) section.lines.push_back(say(view, Phrase::skip_wind));
  section.lines.push_back(say(view, Phrase::skip_frost));
  return section;
}

SheetSection where_section(const WeekView& view) {
  SheetSection section{say(view, Phrase::beds_title), {}};
  for (std::size_t sprinkler = 0; sprinkler < view.garden.sprinklers.size(); ++sprinkler) {
    std::vector<std::string> beds;
    for (std::size_t bed = 0; bed < view.garden.beds.size(); ++bed) {
      if (view.garden.beds[bed].sprinkler == sprinkler)
        beds.push_back(bed_letter(view, bed) + "\u00A0" + bed_name(view, bed));
    }
    if (beds.empty()) continue;
    std::string list;
    for (const std::string& bed : beds) list += (list.empty() ? "" : "; ") + bed;
    section.lines.push_back(say(view, Phrase::beds_of_sprinkler,
                                {{"sprinkler", sprinkler_name(view, sprinkler)},
                                 {"tap", tap_name(view, view.garden.sprinklers[sprinkler].tap)},
                                 {"beds", list}}));
  }
  return section;
}

SheetSection changed_section(const WeekView& view) {
  if (!view.changes) return {};
  SheetSection section{say(view, Phrase::changed_title), {}};
  for (const WeekChange& change : *view.changes) section.lines.push_back(change_words(view, change));
  if (section.lines.empty()) section.lines.push_back(say(view, Phrase::changed_nothing));
  return section;
}

std::vector<SheetSection> help_sections(const WeekView& view) {
  std::vector<SheetSection> sections{soil_section(view)};
  sections.push_back({say(view, Phrase::droop_title),
                      {say(view, Phrase::droop_noon) + " " + say(view, Phrase::droop_morning)}});
  if (!view.plan.runs.empty()) {
    sections.push_back(found_section(view));
    sections.push_back({say(view, Phrase::never_title), {say(view, Phrase::never)}});
  }
  sections.push_back(
      {say(view, Phrase::tell_title),
       {say(view, Phrase::tell, {{"who", contact(view).empty() ? "____________________" : contact(view)}})}});
  sections.push_back(care_section(view));
  if (SheetSection estimated = estimated_section(view); !estimated.title.empty())
    sections.push_back(std::move(estimated));
  return sections;
}

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

std::string lasts_words(const WeekView& view, const WeekBed& bed) {
  if (bed.nothing_grows) return say(view, Phrase::bare_ground);
  if (!bed.lasts_to) return say(view, Phrase::lasts_not);
  if (*bed.lasts_to >= view.plan.last) return say(view, Phrase::lasts_beyond);
  return say(view, Phrase::lasts_to, {{"date", view.text().day(*bed.lasts_to)}});
}

}  // namespace v1
}  // namespace noonleaf
