#pragma once

#include <chrono>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include "noonleaf/plan/away.hpp"
#include "noonleaf/report/away_phrases.hpp"
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

/// Whether the bed gets through under every sky with that help.
bool gets_through_with(const AwayBed& bed, AwayHelp help);

}  // namespace v1
}  // namespace noonleaf
