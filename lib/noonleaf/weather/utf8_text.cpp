#include "noonleaf/weather/utf8_text.hpp"

#include <algorithm>

namespace noonleaf {
inline namespace v1 {
namespace {

unsigned byte_at(std::string_view bytes, std::size_t index) {
  return static_cast<unsigned char>(bytes[index]);
}

std::size_t length_by_lead(unsigned lead) {
  if (lead < 0x80U) return 1;
  if (lead >= 0xC2U && lead <= 0xDFU) return 2;
  if (lead >= 0xE0U && lead <= 0xEFU) return 3;
  if (lead >= 0xF0U && lead <= 0xF4U) return 4;
  return 0;
}

// Length of the valid sequence that begins at `index`, 0 when there is none (Unicode 15, table 3-7).
std::size_t sequence_length(std::string_view bytes, std::size_t index) {
  const unsigned lead = byte_at(bytes, index);
  const std::size_t length = length_by_lead(lead);
  if (length == 0 || index + length > bytes.size()) return 0;
  for (std::size_t next = 1; next < length; ++next)
    if ((byte_at(bytes, index + next) & 0xC0U) != 0x80U) return 0;
  if (length == 1) return 1;
  const unsigned second = byte_at(bytes, index + 1);
  const bool overlong = (lead == 0xE0U && second < 0xA0U) || (lead == 0xF0U && second < 0x90U);
  const bool surrogate = lead == 0xEDU && second > 0x9FU;
  const bool beyond = lead == 0xF4U && second > 0x8FU;
  return overlong || surrogate || beyond ? 0 : length;
}

}  // namespace

std::string valid_utf8(std::string_view bytes) {
  std::string text;
  text.reserve(bytes.size());
  for (std::size_t index = 0; index < bytes.size();) {
    const std::size_t length = sequence_length(bytes, index);
    if (length == 0) {
      text += "\xEF\xBF\xBD";
      ++index;
    } else {
      text.append(bytes.substr(index, length));
      index += length;
    }
  }
  return text;
}

std::size_t character_count(std::string_view bytes) {
  std::size_t count = 0;
  for (std::size_t index = 0; index < bytes.size(); ++count)
    index += std::max<std::size_t>(1, sequence_length(bytes, index));
  return count;
}

std::string_view trimmed(std::string_view text) {
  const auto is_blank = [](char letter) { return letter == ' ' || letter == '\t'; };
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

std::string lower_case(std::string_view text) {
  std::string lower(text);
  for (char& letter : lower)
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  return lower;
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t shown = 40;
  std::size_t end = 0;
  for (std::size_t count = 0; end < text.size() && count < shown; ++count)
    end += std::max<std::size_t>(1, sequence_length(text, end));
  return "\"" + valid_utf8(text.substr(0, end)) + (end < text.size() ? "…\"" : "\"");
}

std::string grouped(std::size_t value) {
  std::string digits = std::to_string(value);
  for (std::size_t place = digits.size(); place > 3; place -= 3) digits.insert(place - 3, ",");
  return digits;
}

}  // namespace v1
}  // namespace noonleaf
