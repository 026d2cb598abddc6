#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "noonleaf/plan/likelihood.hpp"

/// How often what was called likely came true: leave one year out over open weather, with forecasts made from
/// the truth by adding errors. Model against model: the truth is one more member that the others do not know,
/// no plant was watched.
namespace reliability {

/// What is asked of each day.
enum class Event {
  beyond_limit,  ///< Dr beyond RAW at the day's close
  droop,         ///< leaves hang at some hour
  dry_soil_wilt  ///< no turgor at the next dawn
};
inline constexpr std::size_t event_count = 3;

struct Said {
  double share = 0;  ///< of the members
  bool came_true = false;
};

struct Case {
  int lead_d = 0;  ///< 1 = the day of the morning
  std::array<Said, event_count> events{};
  bool within = false;  ///< the true depletion lies between the 10 and the 90 % of the members

  const Said& of(Event event) const { return events[static_cast<std::size_t>(event)]; }
};

struct Bin {
  std::size_t cases = 0, came_true = 0;
  double said = 0;  ///< sum
};

struct Settings {
  std::size_t members = 400;
  int first_day = 0, last_day = 90, step_d = 6;  ///< starts, days after 1 June
  int step_years = 1;
  std::string crop = "tomato";
};

/// Places whose years are in weather_samples. Seattle and New York: 2012 to 2015, with rain. Chicago: 2002 to
/// 2015, whose table has no day's rain: there the bed is under a roof, which no rain reaches.
inline const std::vector<std::string> stations{"Seattle", "New York", "Chicago"};

/// All cases of one station.
std::vector<Case> cases_of(const std::string& station, const Settings& settings);

/// Ten bins of what was said, 0 to 10 %, ..., 90 to 100 %.
std::array<Bin, 10> bins_of(const std::vector<Case>& cases, Event event, int first_lead, int last_lead);

/// Brier score: mean square of share less outcome; and of saying the mean outcome always.
struct Score {
  std::size_t cases = 0, came_true = 0;
  double brier = 0, of_the_mean = 0, within_frac = 0;
};
Score score_of(const std::vector<Case>& cases, Event event, int first_lead, int last_lead);

}  // namespace reliability
