#include "noonleaf/report/soil_check_words.hpp"

#include <cmath>

#include "noonleaf/plan/account_doubt.hpp"
#include "noonleaf/report/labels.hpp"
#include "noonleaf/report/soil_check_phrases.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::chrono::days shown_for{3};

std::string say(const TodayView& view, CheckPhrase id, std::initializer_list<Filling> fillings = {}) {
  return fill(view.language, id, fillings);
}

std::string method_words(const TodayView& view, const SoilCheck& check) {
  if (check.method != JournalEvent::feel) return say(view, CheckPhrase::by_probe);
  if (!check.feel) return say(view, CheckPhrase::by_feel);
  return say(view, CheckPhrase::by_feel_found, {{"feel", label(view.language, *check.feel)}});
}

/// The crop as the sentence has it: at its head in Spanish, within it in English, where crops have capitals.
std::string crop_words(const TodayView& view, const PlantingToday& planting) {
  return sentence_start(std::string(crop_name(view.language, *planting.crop)));
}

std::string check_line(const TodayView& view, const PlantingToday& planting, const SoilCheck& check) {
  const QuantityText text = view.text();
  return say(view, CheckPhrase::soil_check,
             {{"day", text.day(check.date)},
              {"method", method_words(view, check)},
              {"crop", crop_words(view, planting)},
              {"before", text.depth(check.before.dr_mm)},
              {"before_sd", text.depth(check.before.sd_mm)},
              {"found", text.depth(check.found.dr_mm)},
              {"found_sd", text.depth(check.found.sd_mm)},
              {"after", text.depth(check.after.dr_mm)}});
}

/// "the runs of 14 July and 15 July (60 and 20 minutes)", "3 runs from 8 July to 12 July (90 minutes
/// together)"
std::string runs_words(const TodayView& view, const std::vector<UnloggedRun>& runs) {
  const QuantityText text = view.text();
  const UnloggedRun &first = runs.front(), &last = runs.back();
  double sum_min = 0;
  for (const UnloggedRun& run : runs) sum_min += run.minutes;
  const CheckPhrase id = runs.size() == 1   ? CheckPhrase::one_run
                         : runs.size() == 2 ? CheckPhrase::two_runs
                                            : CheckPhrase::many_runs;
  return say(view, id,
             {{"count", std::to_string(runs.size())},
              {"day", text.day(first.date)},
              {"first", text.day(first.date)},
              {"last", text.day(last.date)},
              {"minutes", text.number(runs.size() > 2 ? sum_min : first.minutes, 0)},
              {"last_minutes", text.number(last.minutes, 0)}});
}

std::string percent_words(const TodayView& view, double share) {
  return say(view, share < 0 ? CheckPhrase::less : CheckPhrase::more,
             {{"share", view.text().number(std::abs(100 * share), 0)}});
}

/// What it would mean, and the one thing that settles it.
std::string suspect_words(const TodayView& view, const BedToday& bed, const Suspect& suspect) {
  const Bed& where = view.garden.beds[bed.bed];
  const Sprinkler& sprinkler = view.garden.sprinklers[where.sprinkler];
  const CheckPhrase id = suspect.culprit == Culprit::rate         ? CheckPhrase::suspect_rate
                         : suspect.culprit == Culprit::crop_stage ? CheckPhrase::suspect_crop
                                                                  : CheckPhrase::suspect_soil;
  return say(view, id,
             {{"share", percent_words(view, suspect.share)},
              {"bed", where.id},
              {"sprinkler", local_name(view.language, sprinkler.name, sprinkler.name_es)}});
}

std::string name_of(const TodayView& view, Culprit culprit) {
  return say(view, culprit == Culprit::rate         ? CheckPhrase::rate
                   : culprit == Culprit::crop_stage ? CheckPhrase::crop
                                                    : CheckPhrase::soil);
}

/// The suspects behind the likeliest; empty where none explains anything.
std::string other_suspects(const TodayView& view, const AccountDoubt& doubt) {
  std::string others;
  for (std::size_t index = 1; index < doubt.suspects.size(); ++index) {
    const Suspect& other = doubt.suspects[index];
    if (!(other.explained_frac > 0)) continue;
    others += (others.empty() ? "" : ", ") +
              say(view, CheckPhrase::other_suspect,
                  {{"culprit", name_of(view, other.culprit)},
                   {"share", percent_words(view, other.share)},
                   {"explained", view.text().number(100 * other.explained_frac, 0)}});
  }
  return others.empty() ? others : say(view, CheckPhrase::less_likely, {{"suspects", others}});
}

std::string doubt_line(const TodayView& view, const BedToday& bed, const PlantingToday& planting,
                       const AccountDoubt& doubt) {
  const QuantityText text = view.text();
  const bool drier = doubt.most_difference_mm > 0;
  const std::string line = say(view, drier ? CheckPhrase::doubt_drier : CheckPhrase::doubt_wetter,
                               {{"count", std::to_string(doubt.entry_ids.size())},
                                {"day", text.day(doubt.first)},
                                {"crop", crop_name(view.language, *planting.crop)},
                                {"least", text.depth(std::abs(doubt.least_difference_mm))},
                                {"most", text.depth(std::abs(doubt.most_difference_mm))}});
  const Suspect& first = doubt.suspects.front();
  if (!(first.explained_frac > 0)) return line + say(view, CheckPhrase::no_reason);
  return line +
         say(view, CheckPhrase::likeliest,
             {{"suspect", suspect_words(view, bed, first)},
              {"share", text.number(100 * first.explained_frac, 0)}}) +
         other_suspects(view, doubt) + ".";
}

/// What settles an open question, and the minutes until then.
std::string settling_words(const TodayView& view, const BedToday& bed) {
  const QuantityText text = view.text();
  const double all_min = bed.open_question->run_if_not_done.minutes;
  const std::string all = text.number(all_min, 0);
  if (bed.driver)
    return say(view, all_min > bed.run.minutes ? CheckPhrase::right_or_more : CheckPhrase::right_either_way,
               {{"minutes", text.number(bed.run.minutes, 0)}, {"all", all}});
  if (bed.reason != BedReason::look_first) {
    const auto& limit_day = bed.plantings[bed.open_question->planting].limit_day;
    const bool lasts = !limit_day || (bed.next_chance && *limit_day >= *bed.next_chance);
    const double dry_min =
        bed_run(view.garden, view.garden.beds[bed.bed], bed.open_question->dr_if_not_done_mm).minutes;
    if (lasts || !(dry_min > 0)) return say(view, CheckPhrase::lasts_either_way);
    return say(view, CheckPhrase::lasts_if_moist, {{"minutes", text.number(dry_min, 0)}});
  }
  if (!bed.later_slot) return say(view, CheckPhrase::moist_or_dry, {{"all", all}});
  const Caretaker& closer = view.garden.caretakers[bed.later_slot->closer];
  return say(view, CheckPhrase::moist_or_dry_at,
             {{"all", all},
              {"clock", text.the_clock(bed.later_slot->begin)},
              {"closer", local_name(view.language, closer.role, closer.role_es)}});
}

}  // namespace

std::vector<std::string> soil_check_words(const TodayView& view, const BedToday& bed) {
  std::vector<std::string> lines;
  for (const PlantingToday& planting : bed.plantings) {
    if (planting.soil_checks.empty()) continue;
    const SoilCheck& check = planting.soil_checks.back();
    if (std::chrono::sys_days(view.today.date) - std::chrono::sys_days(check.date) > shown_for) continue;
    lines.push_back(check_line(view, planting, check));
  }
  return lines;
}

std::vector<std::string> doubt_words(const TodayView& view, const BedToday& bed) {
  std::vector<std::string> lines;
  for (const PlantingToday& planting : bed.plantings) {
    if (const auto doubt = account_doubt(
            planting.soil_checks, view.garden.sprinklers[view.garden.beds[bed.bed].sprinkler].rate.basis))
      lines.push_back(doubt_line(view, bed, planting, *doubt));
  }
  return lines;
}

std::string open_question_words(const TodayView& view, const BedToday& bed) {
  if (!bed.open_question) return {};
  const OpenQuestion& open = *bed.open_question;
  const QuantityText text = view.text();
  return say(view, CheckPhrase::open_question,
             {{"runs", runs_words(view, open.runs)},
              {"crop", crop_words(view, bed.plantings[open.planting])},
              {"if_done", text.depth(open.dr_if_done_mm)},
              {"if_not", text.depth(open.dr_if_not_done_mm)}}) +
         settling_words(view, bed);
}

std::string ran_today_words(const TodayView& view, const BedToday& bed) {
  if (bed.minutes_run_today <= 0) return {};
  const bool rest = bed.driver.has_value();
  const Sprinkler& sprinkler = view.garden.sprinklers[view.garden.beds[bed.bed].sprinkler];
  if (sprinkler.kind == WettingKind::hand) {
    const CheckPhrase id = is_missing(bed.planned_litres)
                               ? (rest ? CheckPhrase::poured_too : CheckPhrase::poured)
                               : (rest ? CheckPhrase::part_poured_rest : CheckPhrase::part_poured);
    return say(view, id,
               {{"ran", by_hand_words(view, bed, bed.litres_run_today)},
                {"planned", is_missing(bed.planned_litres) ? std::string{}
                                                           : by_hand_words(view, bed, bed.planned_litres)}});
  }
  const CheckPhrase id = is_missing(bed.planned_minutes)
                             ? (rest ? CheckPhrase::already_ran_too : CheckPhrase::already_ran)
                             : (rest ? CheckPhrase::part_ran_rest : CheckPhrase::part_ran);
  return say(view, id,
             {{"ran", view.text().number(bed.minutes_run_today, 0)},
              {"planned", view.text().number(bed.planned_minutes, 0)}});
}

}  // namespace v1
}  // namespace noonleaf
