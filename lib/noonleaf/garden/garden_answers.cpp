// Reads single answers of a person into what garden_start_text needs.
#include <algorithm>
#include <array>
#include <charconv>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_start.hpp"
#include "noonleaf/soil/texture.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

std::vector<std::string_view> split(std::string_view text, std::string_view separators) {
  std::vector<std::string_view> parts;
  while (!text.empty()) {
    const std::size_t end = text.find_first_of(separators);
    const std::string_view part = trimmed(text.substr(0, end));
    if (!part.empty()) parts.push_back(part);
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  return parts;
}

/// The ids of crops whose id or names hold the word.
std::vector<std::string> crops_like(const std::string& word) {
  std::vector<std::string> ids;
  for (const Crop& crop : crop_table()) {
    const bool fits = lower_case(crop.id).find(word) != std::string::npos ||
                      lower_case(crop.name_en).find(word) != std::string::npos ||
                      lower_case(crop.name_es).find(word) != std::string::npos;
    if (fits) ids.emplace_back(crop.id);
  }
  return ids;
}

}  // namespace

Answer<double> parse_answer_number(std::string_view text, double low, double high) {
  const std::string_view word = trimmed(text);
  double value = missing;
  const auto [end, code] = std::from_chars(word.data(), word.data() + word.size(), value);
  if (code == std::errc{} && end == word.data() + word.size() && value >= low && value <= high)
    return {value, {}};
  return {{}, in_quotes(word) + " is not a number from " + number_text(low) + " to " + number_text(high)};
}

Answer<Place> parse_place(std::string_view text) {
  const auto parts = split(text, ", ");
  if (parts.size() != 2) return {{}, "write two numbers, like 46.07, -118.33 (north and east are positive)"};
  const auto latitude = parse_answer_number(parts[0], -90, 90);
  if (!latitude.value) return {{}, "latitude: " + latitude.refusal};
  const auto longitude = parse_answer_number(parts[1], -180, 180);
  if (!longitude.value) return {{}, "longitude: " + longitude.refusal};
  return {Place{*latitude.value, *longitude.value}, {}};
}

Answer<std::vector<std::string>> parse_answer_hours(std::string_view text) {
  std::vector<std::string> hours;
  for (const std::string_view part : split(text, ";")) {
    const std::string written = lower_case(part);
    if (!parse_weekly_hours(written)) {
      return {{}, in_quotes(part) + " does not say days and hours; write it like mon-fri 06:00-14:30"};
    }
    hours.push_back(written);
  }
  if (hours.empty()) return {{}, "write days and hours, like mon-fri 06:00-14:30; sat 08:00-12:00"};
  return {hours, {}};
}

Answer<Sides> parse_sides(std::string_view text) {
  const auto parts = split(text, "xX*");
  if (parts.size() != 2) return {{}, "write length x width, like 24 x 4"};
  const auto length = parse_answer_number(parts[0], 0.1, 1000);
  const auto width = parse_answer_number(parts[1], 0.1, 1000);
  if (!length.value) return {{}, "length: " + length.refusal};
  if (!width.value) return {{}, "width: " + width.refusal};
  return {Sides{*length.value, *width.value}, {}};
}

Answer<std::vector<double>> parse_can_depths(std::string_view text) {
  std::vector<double> depths;
  for (const std::string_view part : split(text, ", ")) {
    const auto depth = parse_answer_number(part, 0, 200);
    if (!depth.value) return {{}, depth.refusal};
    depths.push_back(*depth.value);
  }
  if (depths.size() < 2) return {{}, "two cans at least, like 0.22 0.25 0.19"};
  return {depths, {}};
}

Answer<std::string> parse_soil(std::string_view text) {
  constexpr std::array<std::string_view, 4> by_ribbon{"loamy_sand", "loam", "clay_loam", "clay"};
  const std::string_view word = trimmed(text);
  if (word.size() == 1 && word[0] >= '1' && word[0] <= '4')
    return {std::string(by_ribbon[static_cast<std::size_t>(word[0] - '1')]), {}};
  try {
    return {std::string(find_texture(word).id), {}};
  } catch (const Error& refused) {
    return {{}, refused.problems().front().message + "; " + refused.problems().front().fix};
  }
}

Answer<std::string> parse_crop(std::string_view text) {
  const std::string_view word = trimmed(text);
  if (word.empty()) return {{}, "name a crop, like tomato"};
  for (const Crop& crop : crop_table()) {
    if (lower_case(crop.name_en) == lower_case(word) || lower_case(crop.name_es) == lower_case(word))
      return {std::string(crop.id), {}};
  }
  try {
    return {std::string(find_crop(word).id), {}};
  } catch (const Error& refused) {
    const auto like = crops_like(lower_case(word));
    if (like.size() == 1) return {like.front(), {}};
    if (like.empty()) return {{}, refused.problems().front().message + "; " + refused.problems().front().fix};
    std::string list;
    for (const std::string& id : like) list += (list.empty() ? "" : ", ") + id;
    return {{}, in_quotes(word) + " fits several crops: " + list};
  }
}

Answer<PlantingBegin> parse_begin(std::string_view text) {
  const auto parts = split(text, " ");
  constexpr std::array<std::string_view, 3> words{"sown", "transplanted", "established"};
  if (parts.size() == 2) {
    const std::string word = lower_case(parts[0]);
    const auto date = parse_iso_date(parts[1]);
    if (date && std::find(words.begin(), words.end(), word) != words.end())
      return {PlantingBegin{word, *date}, {}};
  }
  return {{},
          in_quotes(trimmed(text)) +
              " does not say how and when it began; write it like sown 2025-05-17, transplanted 2025-05-17, "
              "or established 2022-04-01 for a perennial"};
}

}  // namespace v1
}  // namespace noonleaf
