#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/report/today_words.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What an alert is about.
enum class AlertKind { look_at_the_roots, dry_soil_wilt, stress, droop, blocked_run, crop_heat, frost };

/// An alert as a person reads it: what, why, and one thing to do.
struct Alert {
  AlertKind kind = AlertKind::droop;  ///< what it is about
  std::size_t bed = 0;                ///< index into Garden::beds
  std::string sentence{};             ///< what will be seen, when
  std::string evidence{};             ///< the numbers behind it
  std::string action{};               ///< one thing to do
  double likelihood =
      missing;  ///< share of the members in which it comes true today; missing = seen, or not tried
};

/// "dry_soil_wilt", for programs. Never to change.
std::string_view code(AlertKind kind);

/// All alerts of the day in the view's language, what wilts first first.
std::vector<Alert> alerts_of(const TodayView& view);

/// The alerts of the day on which a plan is made, in the words of its sheet; none where it begins on another day.
/// Throws    as plan_today
std::vector<Alert> alerts_beside(const WeekPlan& plan, std::chrono::year_month_day made, const Garden& garden,
                                 const Journal& journal, const Sky& sky, Language language);

}  // namespace v1
}  // namespace noonleaf
