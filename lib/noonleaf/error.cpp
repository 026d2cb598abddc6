#include "noonleaf/error.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>
#include <string_view>
#include <utility>

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t excerpt_width = 100;  // characters shown of a long source line

bool starts_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }

std::size_t character_count(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_character));
}

std::string_view characters(std::string_view text, std::size_t first, std::size_t count) {
  std::size_t index = 0, begin = text.size(), end = text.size();
  for (std::size_t byte = 0; byte < text.size(); ++byte) {
    if (!starts_character(text[byte])) continue;
    if (index == first) begin = byte;
    if (index == first + count) {
      end = byte;
      break;
    }
    ++index;
  }
  return begin < end ? text.substr(begin, end - begin) : std::string_view{};
}

std::string printable(std::string_view text) {
  std::string shown;
  for (const char byte : text) {
    const auto code = static_cast<unsigned char>(byte);
    if (byte == '\t') {
      shown += ' ';  // one column each, so that the caret stays under its text
    } else if (code < 0x20U || code == 0x7FU) {
      shown += "·";
    } else {
      shown += byte;
    }
  }
  return shown;
}

std::string excerpt_with_caret(const Problem& problem) {
  const std::size_t caret = problem.column == 0 ? 0 : problem.column - 1;
  const std::size_t first = caret > excerpt_width * 3 / 4 ? caret - excerpt_width / 2 : 0;
  std::string shown = "  " + printable(characters(problem.excerpt, first, excerpt_width));
  if (problem.column == 0) return shown + "\n";
  const std::size_t room = excerpt_width - std::min(excerpt_width, caret - first);
  const std::size_t marks =
      std::clamp<std::size_t>(character_count(problem.text), 1, std::max<std::size_t>(room, 1));
  return shown + "\n  " + std::string(caret - first, ' ') + std::string(marks, '^') + "\n";
}

/// How many problems of one kind are shown in full: the rest of a column is wrong in the same way.
constexpr std::size_t most_alike_shown = 2;

struct AlikeProblems {
  std::size_t count = 0, shown = 0, last_line = 0;
};

/// What stays of a problem when the row's own words and numbers are taken out.
std::string kind_of(const Problem& problem) {
  std::string kind = problem.file + '\n' + problem.field + '\n';
  bool in_quotes = false;
  for (const char letter : problem.message) {
    if (letter == '"') in_quotes = !in_quotes;
    if (!in_quotes && (letter < '0' || letter > '9')) kind += letter;
  }
  return kind;
}

std::string summary_of(const std::vector<Problem>& problems) {
  if (problems.empty()) return "unknown problem";
  std::string text = headline(problems.front());
  if (problems.size() > 1) text += " (and " + std::to_string(problems.size() - 1) + " more)";
  return text;
}

}  // namespace

Error::Error(Problem problem) : Error(std::vector<Problem>{std::move(problem)}) {}

Error::Error(std::vector<Problem> problems)
    : problems_(std::move(problems)), summary_(summary_of(problems_)) {}

std::string headline(const Problem& problem) {
  std::string place = printable(problem.file);
  if (problem.line > 0) {
    if (!place.empty()) place += ":";
    place += std::to_string(problem.line);
    if (problem.column > 0) place += ":" + std::to_string(problem.column);
  }
  std::string text;
  for (const std::string& part : {place, printable(problem.field), printable(problem.message)}) {
    if (part.empty()) continue;
    if (!text.empty()) text += ": ";
    text += part;
  }
  return text;
}

std::string describe(const Problem& problem) {
  std::string text = headline(problem) + "\n";
  if (!problem.excerpt.empty()) text += excerpt_with_caret(problem);
  if (!problem.fix.empty()) text += "  fix: " + printable(problem.fix) + "\n";
  return text;
}

std::string describe(const std::vector<Problem>& problems) {
  std::map<std::string, AlikeProblems> alike;
  for (const Problem& problem : problems) {
    AlikeProblems& group = alike[kind_of(problem)];
    ++group.count;
    group.last_line = problem.line;
  }
  std::string text;
  std::size_t told = 0, shown = 0;
  for (const Problem& problem : problems) {
    AlikeProblems& group = alike[kind_of(problem)];
    const bool many = problem.line > 0 && group.count > most_alike_shown + 1;
    if (many && group.shown == most_alike_shown) continue;
    if (shown == problems_shown) break;
    text += describe(problem);
    ++shown;
    ++told;
    if (!many || ++group.shown < most_alike_shown) continue;
    text += "  … and " + std::to_string(group.count - group.shown) + " more like it, the last in line " +
            std::to_string(group.last_line) + "\n";
    told += group.count - group.shown;
  }
  if (problems.size() > told) text += "… and " + std::to_string(problems.size() - told) + " more problems\n";
  return text;
}

std::string number_text(double value) {
  if (std::isnan(value)) return "missing";
  char buffer[32];
  const auto [end, code] = std::to_chars(buffer, buffer + sizeof buffer, value);
  return code == std::errc{} ? std::string(buffer, end) : std::string("a number");
}

}  // namespace v1
}  // namespace noonleaf
