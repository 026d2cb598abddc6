#include "noonleaf/weather/decimal_number.hpp"

#include <algorithm>
#include <charconv>
#include <system_error>

#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t longest_number = 64;  // more digits than any instrument writes

bool is_one_of(const std::string& word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// "1O2" and "l2.5" with the letters read as the digits they resemble.
std::string with_digits_for_letters(std::string_view text) {
  std::string digits(text);
  for (char& letter : digits) {
    if (letter == 'O' || letter == 'o') letter = '0';
    if (letter == 'l' || letter == 'I') letter = '1';
  }
  return digits;
}

}  // namespace

bool long_decimal(const char* begin, const char* end, char mark, double& magnitude) {
  constexpr std::ptrdiff_t most_digits = 15;
  if (begin == end || end - begin > most_digits + 1) return false;
  std::uint64_t digits = 0;
  const char* after_mark = nullptr;
  for (const char* place = begin; place != end; ++place) {
    if (is_digit(*place)) {
      digits = digits * 10 + static_cast<std::uint64_t>(*place - '0');
    } else if (*place == mark && after_mark == nullptr) {
      after_mark = place + 1;
    } else {
      return false;
    }
  }
  const std::ptrdiff_t count = end - begin - (after_mark == nullptr ? 0 : 1);
  if (count == 0 || count > most_digits) return false;
  magnitude = static_cast<double>(static_cast<std::int64_t>(digits)) /
              exact_powers_of_ten[static_cast<std::size_t>(after_mark == nullptr ? 0 : end - after_mark)];
  return true;
}

std::optional<double> parse_decimal(std::string_view text, char mark) {
  if (text.empty() || text.size() > longest_number) return std::nullopt;
  const bool plus = text.front() == '+';
  std::string plain(text.substr(plus ? 1 : 0));
  if (plus && (plain.empty() || plain.front() == '-')) return std::nullopt;
  for (char& letter : plain) {
    if (letter == mark) {
      letter = '.';
    } else if (!is_digit(letter) && letter != '-' && letter != '+' && letter != 'e' && letter != 'E') {
      return std::nullopt;  // also keeps out "nan" and "inf", which from_chars would take
    }
  }
  double value = 0.0;
  const char* const end = plain.data() + plain.size();
  const auto [stop, code] = std::from_chars(plain.data(), end, value);
  return stop == end && code == std::errc{} ? std::optional(value) : std::nullopt;
}

NumberFault number_fault(std::string_view text, char mark) {
  const std::string word = lower_case(text);
  const std::string shown = in_quotes(text);
  if (is_one_of(word, {"t", "trace"})) return {shown + " is not a number", "write 0 for a trace of rain"};
  if (is_one_of(word, {"na", "n/a", "nan", "null", "none", "m", "-", "--", "---", "inf", "-inf", ".",
                       "missing", "#n/a", "#value!", "#ref!", "#div/0!", "#num!", "#name?"}))
    return {shown + " is not a number", "leave the cell empty where the value is missing"};
  if (text.find("\xE2\x88\x92") != std::string_view::npos ||
      text.find("\xE2\x80\x93") != std::string_view::npos)
    return {shown + " is not a number: its minus sign is not the one of the keyboard",
            "write it with -, like -2.5"};
  if (text.find_first_not_of('#') == std::string_view::npos)
    return {shown + " is what a spreadsheet shows in a column that is too narrow",
            "widen the column and export the file again"};
  if (!text.empty() && text.front() == '=')
    return {shown + " is a formula, not a number", "export the values: \"CSV UTF-8\" does"};
  if (text.find("\xC2\xA0") != std::string_view::npos || text.find("\xE2\x80\x8B") != std::string_view::npos)
    return {shown + " holds a space that cannot be seen", "type the number again, without spaces"};
  const std::size_t unit = text.find_first_not_of("0123456789.,-+");
  if (unit != std::string_view::npos && unit > 0 && parse_decimal(trimmed(text.substr(0, unit)), mark) &&
      is_one_of(std::string(trimmed(std::string_view(word).substr(unit))),
                {"%", "c", "°c", "f", "°f", "mm", "in", "m/s", "mph", "km/h", "kn", "mj", "w", "kpa", "hpa"}))
    return {shown + " has its unit beside it, which belongs in the header",
            "write the number alone, like " + std::string(trimmed(text.substr(0, unit)))};
  const char other = mark == '.' ? ',' : '.';
  const bool has_other = text.find(other) != std::string_view::npos;
  if (has_other && text.find(mark) == std::string_view::npos && parse_decimal(text, other)) {
    std::string fix =
        mark == '.' ? "write the decimal point as ., like 12.5; decimal commas need semicolons between cells"
                    : "write the decimal comma here too, like 12,5";
    return {shown + " uses another decimal mark than the rest of the file", std::move(fix)};
  }
  if (has_other && parse_decimal(text.substr(text.find(other) + 1), mark))
    return {shown + " is not a number: it has a thousands separator", "write it without, like 1013.2"};
  const std::string guess = with_digits_for_letters(text);
  if (guess != text && parse_decimal(guess, mark))
    return {shown + " is not a number", "write digits only, like " + guess};
  if (text.size() > 15 && text.find_first_not_of("0123456789.,+-eE") == std::string_view::npos)
    return {shown + " is not a number that can be read", "write it with 15 digits at most, like 12.5"};
  return {shown + " is not a number", mark == '.' ? "write a number like 12.5, or leave the cell empty"
                                                  : "write a number like 12,5, or leave the cell empty"};
}

}  // namespace v1
}  // namespace noonleaf
