#pragma once

#include <array>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The languages of the printed sheet.
enum class Language { en, es };

inline constexpr std::size_t language_count = 2;  ///< en and es

/// "en", "es"
std::string_view code(Language language);

/// Everything that the sheet can say. Each language has a table with a row for each; a row that is missing,
/// empty, out of order, or that fills in other things than its English is a build error (phrases.cpp).
enum class Phrase : std::size_t {
  sheet_title,
  sheet_dates,
  valid_until,
  made_on,
  page_of,
  continued,
  demo_note,
  column_bed,
  column_open,
  column_close,
  column_minutes,
  column_rain,
  by_hand,
  by_hand_cans,
  by_hand_can,
  column_ran,
  column_by,
  same_opens_closes,
  opens_closes,
  no_backup,
  total_runs,
  total_run,
  no_runs,
  no_run_possible,
  two_parts,
  one_bed,
  several_beds,
  more_on_next_page,
  rules_on_page,
  skip_title,
  skip_rain,
  skip_rain_metric,
  skip_rain_now,
  skip_wind,
  skip_frost,
  write_codes,
  forecast_rain,
  soil_title,
  soil_check,
  soil_check_metric,
  soil_seed,
  droop_title,
  droop_noon,
  droop_morning,
  found_title,
  found,
  found_cost,
  at_least,
  never_title,
  never,
  tell_title,
  tell,
  care_title,
  care_hot_hose,
  care_backflow,
  care_slips,
  care_electricity,
  care_lightning,
  care_bees,
  care_reclaimed,
  care_heat,
  care_local,
  estimated_title,
  estimate_note,
  estimate_weather,
  estimate_weather_one,
  estimate_journal,
  estimate_sprinkler,
  estimate_crop,
  estimate_soil_start,
  beds_title,
  beds_of_sprinkler,
  sketch_title,
  sketch_tap,
  changed_title,
  changed_nothing,
  changed_added,
  changed_dropped,
  changed_time,
  changed_minutes,
  changed_closer,
  educator_title,
  educator_note,
  driest_quarter,
  taken_as_done,
  alerts_title,
  alert_do,
  alert_helps,
  sure_title,
  sure_note,
  sure_letters,
  sure_no_hours,
  sure_untried,
  sure_range,
  sure_range_of,
  sure_limit,
  chart_alt,
  chart_missing,
  chart_limit,
  chart_run,
  chart_rain,
  chart_risk,
  risk_droops,
  risk_dry,
  risk_wilts,
  lasts_to,
  lasts_beyond,
  lasts_not,
  bare_ground,
  missed_title,
  missed_none,
  missed_slightly,
  missed_dry,
  missed_dry_day,
  missed_seed,
  missed_seed_day,
  limit_nobody_on_site,
  limit_allowed_hours,
  limit_quiet_hours,
  limit_restriction,
  limit_tap_taken,
  limit_longest_run,
  limit_tap_flow,
  limit_wind,
  limit_frost,
  limit_ground_closed,
  limit_reclaimed_on_food,
  limit_reclaimed_children,
  limit_no_time_left,
  limit_clock_change,
  limit_already_dry,
  help_cheapest,
  help_or,
  help_come_then,
  help_anybody,
  help_allow_hours,
  help_move_quiet_time,
  help_allow_weekday,
  help_water_by_hand,
  help_move_to_drip,
  help_longer_run,
  help_second_tap,
  help_smaller_sprinkler,
  help_drinking_water,
  help_say_children_hours,
  calendar_summary,
  calendar_text,
  calendar_alarm,
  calendar_alarm_open,
  unknown_value,
  last_phrase = unknown_value
};

/// How many there are in each language.
inline constexpr std::size_t phrase_count = static_cast<std::size_t>(Phrase::last_phrase) + 1;

/// A name in braces and what stands for it.
using Filling = std::pair<std::string_view, std::string_view>;

/// The phrase as it stands in the table.
std::string_view phrase(Language language, Phrase id);

/// The phrase with its braces filled: fill(Language::en, Phrase::page_of, {{"page", "1"}, {"pages", "2"}}).
/// Note      What is filled in is not looked through for braces again.
std::string fill(Language language, Phrase id, std::initializer_list<Filling> fillings);

}  // namespace v1
}  // namespace noonleaf
