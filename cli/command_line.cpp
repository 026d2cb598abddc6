#include "command_line.hpp"

#include <charconv>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf::cli {

std::string check_date(const std::string& text) {
  return parse_iso_date(text) ? std::string{} : "\"" + text + "\" is not a date; write it like 2025-07-16";
}

std::string check_clock(const std::string& text) {
  return parse_clock_text(text) ? std::string{}
                                : "\"" + text + "\" is not a time of day; write it like 07:30";
}

std::string check_pair(const std::string& text) {
  const std::size_t equals = text.find('=');
  const bool good = equals != std::string::npos && equals > 0 && equals + 1 < text.size();
  return good ? std::string{} : "\"" + text + "\" is not NAME=VALUE";
}

std::function<std::string(const std::string&)> within(double low, double high) {
  return [low, high](const std::string& text) {
    double value = missing;
    const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool is_number = code == std::errc{} && end == text.data() + text.size();
    if (is_number && value >= low && value <= high) return std::string{};
    return "\"" + text + "\" is not a number from " + number_text(low) + " to " + number_text(high);
  };
}

void add_format(CLI::App& command, OutputFormat& format) {
  add_choice(command, "--format", format, {{"text", OutputFormat::text}, {"json", OutputFormat::json}},
             "how to print the answer");
}

void add_language(CLI::App& command, Language& language) {
  add_choice(command, "--lang", language, {{"en", Language::en}, {"es", Language::es}}, "in which language");
}

std::optional<double> number_with_unit(const std::string& text, const NumberUnits& units) {
  double value = missing;
  const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (code != std::errc{} || !(value > 0)) return std::nullopt;
  const std::string_view word(end, static_cast<std::size_t>(text.data() + text.size() - end));
  if (word.empty()) return value;
  for (const NumberUnit& unit : units)
    if (unit.word == word) return value * unit.factor;
  return std::nullopt;
}

std::function<std::string(const std::string&)> with_unit(const NumberUnits& units, std::string what,
                                                         std::string example) {
  return [&units, what = std::move(what), example = std::move(example)](const std::string& text) {
    return number_with_unit(text, units) ? std::string{}
                                         : "\"" + text + "\" is not " + what + "; write it like " + example;
  };
}

}  // namespace noonleaf::cli
