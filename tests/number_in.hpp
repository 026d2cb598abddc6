#pragma once

#include <charconv>
#include <stdexcept>
#include <string>
#include <string_view>
#include <system_error>

/// The number at the beginning of a text, with a decimal point whatever the locale: the tests also run in locales with
/// a comma, where std::stod would stop at the point.
inline double number_in(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  double value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ec != std::errc{}) throw std::invalid_argument("no number: " + std::string(text.substr(0, 20)));
  return value;
}
