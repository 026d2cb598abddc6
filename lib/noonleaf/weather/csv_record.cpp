#include "noonleaf/weather/csv_record.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

bool ends_line(const char* place) { return *place == '\n' || (*place == '\r' && place[1] == '\n'); }

// Reads a quoted cell; `place` is at the opening quote. Leaves it at the separator or the line end.
CsvCell quoted_cell(const char*& place, const char* limit, char separator) {
  CsvCell cell;
  cell.closed = false;
  for (++place; place != limit; ++place) {
    if (*place != '"') {
      cell.text += *place;
    } else if (place[1] == '"') {
      cell.text += *place++;
    } else {
      cell.closed = true;
      ++place;
      break;
    }
  }
  while (cell.closed && *place != separator && !ends_line(place)) {
    if (*place != ' ') cell.text_behind = true;
    ++place;
  }
  return cell;
}

CsvCell plain_cell(const char*& place, char separator) {
  const char* begin = place;
  while (*place != separator && !ends_line(place)) ++place;
  CsvCell cell;
  cell.text.assign(begin, place);
  return cell;
}

}  // namespace

CsvRecord split_record(const char* begin, const char* limit, char separator) {
  CsvRecord record;
  const char* place = begin;
  const char* counted = begin;  // characters of the line are counted once, however many cells it has
  std::size_t characters = 0;
  std::size_t line = 0;
  while (true) {
    const char* cell_begin = place;
    const char* quote = place;
    while (*quote == ' ' && separator != ' ') ++quote;
    CsvCell cell;
    if (*quote == '"') {
      place = quote;
      cell = quoted_cell(place, limit, separator);
    } else {
      cell = plain_cell(place, separator);
    }
    const char* first = *quote == '"' ? quote : cell_begin;
    cell.raw = std::string_view(first, static_cast<std::size_t>(place - first));
    cell.line = line;
    characters += character_count(std::string_view(counted, static_cast<std::size_t>(first - counted)));
    counted = first;
    cell.column = 1 + characters;
    const auto line_ends = static_cast<std::size_t>(std::count(first, place, '\n'));
    if (line_ends > 0) {
      line += line_ends;
      counted = place;
      while (counted[-1] != '\n') --counted;
      characters = 0;
    }
    const bool closed = cell.closed;
    record.cells.push_back(std::move(cell));
    if (!closed || place == limit || ends_line(place)) break;
    ++place;
  }
  while (place != limit && *place != '\n') ++place;
  record.end = place == limit ? limit : place + 1;
  record.lines = line + (place == limit ? 0 : 1);
  return record;
}

char separator_of(std::string_view header_line) {
  constexpr std::array<char, 3> separators{',', ';', '\t'};
  std::array<std::size_t, 3> counts{};
  bool quoted = false;
  for (const char letter : header_line) {
    if (letter == '"') quoted = !quoted;
    for (std::size_t index = 0; index < separators.size(); ++index)
      if (!quoted && letter == separators[index]) ++counts[index];
  }
  const auto most = std::max_element(counts.begin(), counts.end());
  return separators[static_cast<std::size_t>(most - counts.begin())];
}

bool is_remark(std::string_view line) {
  const std::size_t behind = line.find_first_not_of('#');
  if (behind == 0 || line.empty()) return false;
  const bool ends_a_cell = behind != std::string_view::npos &&
                           std::string_view(",;\t").find(line[behind]) != std::string_view::npos;
  return behind < 3 || !ends_a_cell;
}

}  // namespace v1
}  // namespace noonleaf
