#include "today_text.hpp"

#include <cctype>
#include <vector>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/likelihood_words.hpp"
#include "noonleaf/report/quantity_text.hpp"
#include "noonleaf/report/soil_check_words.hpp"

#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

constexpr std::size_t indent = 4;

std::string heading(std::string_view text) { return "\n" + bold(text) + "\n"; }

std::string bed_title(const TodayView& view, const BedToday& bed) {
  const Bed& where = view.garden.beds[bed.bed];
  return fmt::format("{} (bed {})", where.name, where.id);
}

std::string header(const TodayView& view) {
  const Today& today = view.today;
  const QuantityText text(view.garden.site.units);
  std::string lines = bold(view.garden.site.name) + "\n" + bold(long_date(today.date)) + "\n";
  if (view.garden.site.demo_date == today.date) {
    lines += "A demo garden: this is the day of its invented weather, not today.\n";
  }
  if (is_missing(today.sky.estimate.t_max_c)) return lines + "No temperature for this day.\n";
  std::string sky = fmt::format("{} to {}", text.temperature(today.sky.estimate.t_min_c),
                                text.temperature(today.sky.estimate.t_max_c));
  if (is_known(today.sky.weather.rain_mm)) sky += ", rain " + text.depth(today.sky.weather.rain_mm);
  sky += fmt::format(", grass would use {} (ET0)", text.depth(today.sky.et0_mm_d));
  if (today.sky.origin == DayOrigin::forecast) sky += "; a forecast";
  return lines + wrapped(sky + ".", 0);
}

std::string open_block(const TodayView& view, const BedToday& bed) {
  const QuantityText text(view.garden.site.units);
  std::string lines = bold(fmt::format("  {} to {}  {}, {:.0f} minutes", clock_text(bed.slot->begin),
                                       clock_text(bed.slot->end), bed_title(view, bed), bed.run.minutes)) +
                      "\n";
  std::string water = fmt::format("{}. {} and {} on the bed", sprinkler_words(view, bed),
                                  text.depth(bed.run.mean_depth_mm), text.volume(bed.run.litres_in_bed));
  if (is_known(bed.run.litres_from_tap))
    water += ", " + text.volume(bed.run.litres_from_tap) + " from the tap";
  lines += wrapped(water + ".", indent);
  const std::string hand = hand_words(view, bed);
  if (!hand.empty()) lines += wrapped(hand, indent);
  lines += wrapped(people_words(view, bed), indent);
  const std::string cycles = cycle_words(view, bed);
  if (!cycles.empty()) lines += wrapped(cycles, indent);
  if (bed.minutes_run_today > 0) lines += wrapped(ran_today_words(bed), indent);
  lines += wrapped(why_words(view, bed), indent);
  const std::string multiplier = multiplier_words(view, bed);
  if (!multiplier.empty()) lines += wrapped(multiplier, indent);
  const std::string left_over = left_over_words(view, bed);
  if (!left_over.empty()) lines += wrapped(left_over, indent);
  const std::string seedbed = seedbed_words(view, bed);
  if (!seedbed.empty()) lines += wrapped(seedbed, indent);
  const std::string salt = salt_words(view, bed);
  if (!salt.empty()) lines += wrapped(salt, indent);
  const std::string overflow = overflow_words(view, bed);
  return overflow.empty() ? lines : lines + wrapped(overflow, indent);
}

std::string blocked_block(const TodayView& view, const BedToday& bed) {
  return bold(fmt::format("  {}, {:.0f} minutes", bed_title(view, bed), bed.run.minutes)) + "\n" +
         wrapped(why_words(view, bed), indent) + wrapped("But " + obstacle_words(view, bed), indent);
}

std::string left_block(const TodayView& view, const BedToday& bed) {
  std::string lines = bold("  " + bed_title(view, bed)) + "\n";
  if (bed.minutes_run_today > 0) lines += wrapped(ran_today_words(bed), indent);
  lines += wrapped(why_words(view, bed), indent);
  const std::string seedbed = seedbed_words(view, bed);
  return seedbed.empty() ? lines : lines + wrapped(seedbed, indent);
}

/// What is open, soil checks, and the depletions of a bed with several plantings, which one sentence cannot
/// hold.
std::string mixed_lines(const TodayView& view, const BedToday& bed) {
  std::string lines;
  const std::string open = open_question_words(view, bed);
  if (!open.empty()) lines += wrapped(open, indent);
  for (const std::string& line : soil_check_words(view, bed)) lines += wrapped(line, indent);
  for (const std::string& line : doubt_words(view, bed)) lines += wrapped(line, indent);
  if (bed.plantings.size() < 2) return lines;
  for (const std::string& line : depletion_words(view, bed)) lines += wrapped("- " + line, indent);
  return lines;
}

std::string open_section(const TodayView& view) {
  std::string lines;
  for (const std::size_t index : view.today.opening_order) {
    lines += open_block(view, view.today.beds[index]) + mixed_lines(view, view.today.beds[index]);
  }
  return lines.empty() ? heading("OPEN") + "  Nothing today.\n" : heading("OPEN") + lines;
}

/// What a person does about a bed.
enum class Section { blocked, look_first, leave_alone };

Section section_of(const BedToday& bed) {
  if (bed.action == BedAction::blocked) return Section::blocked;
  return bed.reason == BedReason::look_first ? Section::look_first : Section::leave_alone;
}

std::string section_text(const TodayView& view, Section section, std::string_view title,
                         std::string (*block)(const TodayView&, const BedToday&)) {
  std::string lines;
  for (const BedToday& bed : view.today.beds) {
    if (bed.action != BedAction::open && section_of(bed) == section)
      lines += block(view, bed) + mixed_lines(view, bed);
  }
  return lines.empty() ? lines : heading(title) + lines;
}

std::string alerts_section(const TodayView& view) {
  std::string lines;
  for (const Alert& alert : alerts_of(view)) {
    if (alert.kind == AlertKind::blocked_run) continue;  // has its own section above
    std::string sentence = alert.sentence;
    sentence[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(sentence[0])));
    const std::string stop = alert.action.ends_with('.') ? "" : ".";
    const std::string_view verb = alert.kind == AlertKind::crop_heat ? "What helps: " : "Do: ";
    lines += wrapped(sentence + ".", 2) + wrapped(std::string(verb) + alert.action + stop, indent) +
             wrapped("Why: " + alert.evidence + ".", indent);
    if (is_known(alert.likelihood))
      lines += wrapped(alert_likelihood_words(alert.likelihood, Language::en), indent);
  }
  return lines.empty() ? lines : heading("ALERTS") + lines;
}

std::string how_sure_section(const TodayView& view) {
  if (!view.today.likelihood) return {};
  const LikelihoodView sure{view.garden, *view.today.likelihood};
  const std::vector<std::string> head = likelihood_head_words(sure);
  const std::vector<std::string> beds = likelihood_bed_words(sure);
  if (beds.empty()) return {};
  std::string lines = heading("HOW SURE") + wrapped(head.front(), 2);
  for (const std::string& line : beds) lines += wrapped("- " + line, 2);
  for (const std::string& line : minutes_doubt_words(sure)) lines += wrapped("- " + line, 2);
  const std::string next = measure_next_words(sure);
  if (!next.empty()) lines += wrapped(next, 2);
  for (std::size_t index = 1; index < head.size(); ++index) lines += wrapped(head[index], 2);
  return lines;
}

std::string list_section(std::string_view title, const std::vector<std::string>& items) {
  if (items.empty()) return {};
  std::string lines = heading(title);
  for (const std::string& item : items) lines += wrapped("- " + item, 2);
  return lines;
}

}  // namespace

std::string today_text(const TodayView& view) {
  return header(view) + open_section(view) +
         section_text(view, Section::look_first, "LOOK FIRST", left_block) +
         section_text(view, Section::blocked, "NEEDS WATER, HAS NO RUN", blocked_block) +
         section_text(view, Section::leave_alone, "LEAVE ALONE", left_block) + alerts_section(view) +
         how_sure_section(view) + list_section("NOT MEASURED", estimate_words(view)) +
         list_section("TAKE CARE", caution_words(view));
}

}  // namespace noonleaf::cli
