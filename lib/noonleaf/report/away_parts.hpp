#pragma once

#include <chrono>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include "noonleaf/plan/away.hpp"
#include "noonleaf/report/away_phrases.hpp"
#include "noonleaf/report/away_words.hpp"
#include "noonleaf/report/likelihood_words.hpp"
#include "noonleaf/report/phrases.hpp"

namespace noonleaf {
inline namespace v1 {

// What the answer for whoever goes away and the sheet for whoever comes once have in common.

inline const AwayPhrases& away_phrases(Language language) {
  return language == Language::es ? away_spanish : away_english;
}

/// A phrase with its braces filled, in their order.
template <class... Values>
std::string filled(std::string_view phrase, const Values&... values) {
  return fmt::format(fmt::runtime(phrase), values...);
}

/// "Sat 19 Jul", "sáb 19 jul".
std::string away_day(std::chrono::year_month_day date, Language language);

/// The likelihood of the absence, with the water that it reckons with. Throws std::bad_optional_access without one.
LikelihoodView tried_in(const AwayView& view, Language language);

/// What whoever comes once has to know of a bed that this does not save for certain: "One visit is not enough:
/// somebody has to come every 2 days."; empty where it does.
std::string visit_doubt(const Away& away, const AwayBed& bed, Language language);

/// Whether the bed needs nobody: it gets through under every sky, and not in two of ten or more of the weathers and
/// gardens that were tried (ours) does it wilt.
bool gets_through_alone(const Away& away, const AwayBed& bed);

}  // namespace v1
}  // namespace noonleaf
