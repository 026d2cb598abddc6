#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "noonleaf/plan/likelihood.hpp"

/// How often what was called likely came true: leave one year out over the open weather of Seattle and New
/// York, with forecasts made from the truth by adding errors. Model against model: the truth is one more
/// member that the others do not know, no plant was watched.
namespace reliability {

struct Case {
  int lead_d = 0;   ///< 1 = the day of the morning
  double said = 0;  ///< share of members beyond RAW at the day's close
  bool came_true = false;
  bool within = false;  ///< the true depletion lies between the 10 and the 90 % of the members
};

struct Bin {
  std::size_t cases = 0, came_true = 0;
  double said = 0;  ///< sum
};

struct Settings {
  std::size_t members = 400;
  int first_day = 0, last_day = 90, step_d = 6;  ///< starts, days after 1 June
};

/// All cases of one station.
std::vector<Case> cases_of(const std::string& station, const Settings& settings);

/// Ten bins of what was said, 0 to 10 %, ..., 90 to 100 %.
std::array<Bin, 10> bins_of(const std::vector<Case>& cases, int first_lead, int last_lead);

/// Brier score: mean square of share less outcome; and of saying the mean outcome always.
struct Score {
  std::size_t cases = 0;
  double brier = 0, of_the_mean = 0, within_frac = 0;
};
Score score_of(const std::vector<Case>& cases, int first_lead, int last_lead);

}  // namespace reliability
