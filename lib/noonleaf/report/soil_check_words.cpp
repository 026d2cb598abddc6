#include "noonleaf/report/soil_check_words.hpp"

#include <cmath>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/plan/account_doubt.hpp"
#include "noonleaf/report/quantity_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::chrono::days shown_for{3};

std::string method_words(const SoilCheck& check) {
  if (check.method != JournalEvent::feel) return "by probe";
  return check.feel ? "by feel: " + std::string(label(*check.feel)) : std::string("by feel");
}

}  // namespace

std::vector<std::string> soil_check_words(const TodayView& view, const BedToday& bed) {
  const QuantityText text(view.garden.site.units);
  std::vector<std::string> lines;
  for (const PlantingToday& planting : bed.plantings) {
    if (planting.soil_checks.empty()) continue;
    const SoilCheck& check = planting.soil_checks.back();
    if (std::chrono::sys_days(view.today.date) - std::chrono::sys_days(check.date) > shown_for) continue;
    lines.push_back(fmt::format(
        "Soil check on {}, {}. The account had {} down {} (±{}), the check says {} (±{}); {} is taken, each "
        "weighed by "
        "how sure it is.",
        day_name(check.date), method_words(check), planting.crop->name_en, text.depth(check.before.dr_mm),
        text.depth(check.before.sd_mm), text.depth(check.found.dr_mm), text.depth(check.found.sd_mm),
        text.depth(check.after.dr_mm)));
  }
  return lines;
}

namespace {

/// "14 and 15 July", "3 runs since 8 July"
std::string runs_words(const std::vector<UnloggedRun>& runs) {
  const auto day = [](const UnloggedRun& run) { return day_name(run.date); };
  const auto minutes = [](const UnloggedRun& run) { return fmt::format("{:.0f}", run.minutes); };
  if (runs.size() == 1) return fmt::format("the run of {} ({} minutes)", day(runs[0]), minutes(runs[0]));
  if (runs.size() == 2)
    return fmt::format("the runs of {} and {} ({} and {} minutes)", day(runs[0]), day(runs[1]),
                       minutes(runs[0]), minutes(runs[1]));
  double sum = 0;
  for (const UnloggedRun& run : runs) sum += run.minutes;
  return fmt::format("{} runs from {} to {} ({:.0f} minutes together)", runs.size(), day(runs.front()),
                     day(runs.back()), sum);
}

std::string percent_words(double share) {
  return fmt::format("{:.0f} % {}", std::abs(100 * share), share < 0 ? "less" : "more");
}

/// What it would mean, and the one thing that settles it.
std::string suspect_words(const TodayView& view, const BedToday& bed, const Suspect& suspect) {
  const Bed& where = view.garden.beds[bed.bed];
  const std::string share = percent_words(suspect.share);
  switch (suspect.culprit) {
    case Culprit::rate:
      return fmt::format("the {} brings about {} than its rate says. Set cans out in the bed: noonleaf cans",
                         view.garden.sprinklers[where.sprinkler].name, share);
    case Culprit::crop_stage:
      return fmt::format(
          "the plants use about {} than reckoned. Write down the stage you see: noonleaf log DIR stage {}",
          share, where.id);
    default:
      return fmt::format(
          "the soil holds about {} than its class says. Measure it with a pot: noonleaf soils --pot", share);
  }
}

std::string_view name_of(Culprit culprit) {
  switch (culprit) {
    case Culprit::rate:
      return "the rate";
    case Culprit::crop_stage:
      return "the crop";
    default:
      return "the soil";
  }
}

std::string doubt_line(const TodayView& view, const BedToday& bed, const PlantingToday& planting,
                       const AccountDoubt& doubt) {
  const QuantityText text(view.garden.site.units);
  const bool drier = doubt.most_difference_mm > 0;
  std::string line = fmt::format(
      "Doubt: {} soil checks since {} all found {} {} than the account, by {} to {}. ",
      doubt.entry_ids.size(), day_name(doubt.first), planting.crop->name_en, drier ? "drier" : "wetter",
      text.depth(std::abs(doubt.least_difference_mm)), text.depth(std::abs(doubt.most_difference_mm)));
  const Suspect& first = doubt.suspects.front();
  if (!(first.explained_frac > 0))
    return line + "No single reason fits: look at the bed, the sprinkler and the soil.";
  line += fmt::format("Likeliest: {}. That explains {:.0f} % of it", suspect_words(view, bed, first),
                      100 * first.explained_frac);
  std::string others;
  for (std::size_t index = 1; index < doubt.suspects.size(); ++index) {
    const Suspect& other = doubt.suspects[index];
    if (!(other.explained_frac > 0)) continue;
    others += fmt::format("{}{} {} than thought, {:.0f} %", others.empty() ? "; less likely: " : ", ",
                          name_of(other.culprit), percent_words(other.share), 100 * other.explained_frac);
  }
  return line + others + ".";
}

}  // namespace

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
  const QuantityText text(view.garden.site.units);
  const std::string crop(bed.plantings[open.planting].crop->name_en);
  std::string line = fmt::format("Not in the journal, done or not: {}. {} is down {} if so, {} if not. ",
                                 runs_words(open.runs), crop, text.depth(open.dr_if_done_mm),
                                 text.depth(open.dr_if_not_done_mm));
  const double all_min = open.run_if_not_done.minutes;
  if (bed.driver) {
    line += fmt::format("{:.0f} minutes are right either way", bed.run.minutes);
    line += all_min > bed.run.minutes
                ? fmt::format("; feel the soil at finger depth: if it is dry, {:.0f}.", all_min)
                : ".";
  } else if (bed.reason == BedReason::look_first) {
    line += fmt::format("Feel the soil at finger depth. Moist: leave it. Dry: {:.0f} minutes", all_min);
    if (bed.later_slot) {
      line += fmt::format(" from {}, closed by the {}", clock_text(bed.later_slot->begin),
                          view.garden.caretakers[bed.later_slot->closer].role);
    }
    line += ".";
  } else {
    line += "It lasts either way.";
  }
  return line;
}

std::string ran_today_words(const BedToday& bed) {
  if (bed.minutes_run_today <= 0) return {};
  if (is_missing(bed.planned_minutes)) {
    return fmt::format("{:.0f} minutes already ran today{}.", bed.minutes_run_today,
                       bed.driver ? "; this is on top of that" : "");
  }
  return fmt::format("{:.0f} of the planned {:.0f} minutes ran today{}.", bed.minutes_run_today,
                     bed.planned_minutes, bed.driver ? "; this is the rest" : "");
}

}  // namespace v1
}  // namespace noonleaf
