#include <algorithm>
#include <array>

#include "noonleaf/report/sentences.hpp"
#include "noonleaf/report/week_sections.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// A name of the garden file in the sheet's language, where the file has one.
std::string named(const WeekView& view, const std::string& name, const std::string& name_es) {
  return local_name(view.language, name, name_es);
}

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
  return {say(view, Phrase::soil_title), {joined(sentences, " ")}};
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
  return {say(view, Phrase::found_title), {joined(sentences, " ")}};
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

}  // namespace

/// "bed C", "beds A, B and E"
std::string beds_words(const WeekView& view, const std::vector<std::string>& letters) {
  const Phrase id = letters.size() == 1 ? Phrase::one_bed : Phrase::several_beds;
  return say(view, id, {{"letters", view.text().list(letters)}});
}

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

double by_hand_l(const WeekView& view, const WeekRun& run) {
  const bool by_hand = view.garden.sprinklers[run.sprinkler].kind == WettingKind::hand;
  return by_hand ? run.depth_mm * view.garden.beds[run.bed].area_m2 : missing;
}

std::string by_hand_words(const WeekView& view, const WeekRun& run) {
  const double litres = by_hand_l(view, run), can_l = view.garden.sprinklers[run.sprinkler].can_l;
  if (is_missing(litres)) return {};
  const LocalText text = view.text();
  const double cans = whole_cans(litres, can_l);
  if (is_missing(cans)) return fill(view.language, Phrase::by_hand, {{"volume", text.volume(litres)}});
  return fill(view.language, cans == 1 ? Phrase::by_hand_can : Phrase::by_hand_cans,
              {{"volume", text.volume(litres)}, {"cans", text.number(cans, 0)}, {"can", text.volume(can_l)}});
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

std::string lasts_words(const WeekView& view, const WeekBed& bed) {
  if (bed.nothing_grows) return say(view, Phrase::bare_ground);
  if (!bed.lasts_to) return say(view, Phrase::lasts_not);
  if (*bed.lasts_to >= view.plan.last) return say(view, Phrase::lasts_beyond);
  return say(view, Phrase::lasts_to, {{"date", view.text().day(*bed.lasts_to)}});
}

}  // namespace v1
}  // namespace noonleaf
