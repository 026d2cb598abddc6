#pragma once

#include <chrono>
#include <optional>
#include <string>

#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {

// What every answer for programs is made of.

inline nlohmann::ordered_json number_or_null(double value) {
  return is_missing(value) ? nlohmann::ordered_json(nullptr) : nlohmann::ordered_json(value);
}

/// A day as 2025-07-16; null where there is none.
inline nlohmann::ordered_json date_or_null(const std::optional<std::chrono::year_month_day>& date) {
  return date && date->ok() ? nlohmann::ordered_json(iso_date(*date)) : nlohmann::ordered_json(nullptr);
}

/// An answer as text, indented, with a line end. Bytes of a file name that are no UTF-8 become U+FFFD.
inline std::string json_text(const nlohmann::ordered_json& answer) {
  return answer.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace v1
}  // namespace noonleaf
