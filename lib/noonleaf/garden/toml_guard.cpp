#include "noonleaf/garden/toml_guard.hpp"

#include <algorithm>
#include <string>
#include <string_view>

#include "noonleaf/error.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

toml::source_region at(std::size_t line, std::size_t column) {
  toml::source_region place;
  place.begin.line = static_cast<toml::source_index>(line);
  place.begin.column = static_cast<toml::source_index>(column);
  return place;
}

/// What stops a line, and behind how many of its bytes.
enum class LineFault { none, key_too_deep, text_over_lines, no_table_name, sign_outside_text };
struct LineCheck {
  LineFault fault = LineFault::none;
  std::size_t bytes = 0;
};

bool begins_key(char byte) {
  const bool letter = (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
  return letter || (byte >= '0' && byte <= '9') || byte == '_' || byte == '-' || byte == '"' || byte == '\'';
}

/// Whether [ or [[ begin a line, and no name follows. The parser takes it for granted there, and an optimised
/// one does without looking.
LineCheck checked_header(std::string_view line) {
  constexpr std::string_view blanks = " \t";
  std::size_t place = std::min(line.find_first_not_of(blanks), line.size());
  if (line.substr(place, 1) != "[") return {};
  place += line.substr(place, 2) == "[[" ? 2 : 1;
  place = std::min(line.find_first_not_of(blanks, place), line.size());
  if (place < line.size() && begins_key(line[place])) return {};
  return {LineFault::no_table_name, place};
}

/// The last byte of a text in quotation marks, one or three at each end, that begins at `begin`; the line's
/// size where it does not end there.
std::size_t text_end(std::string_view line, std::size_t begin, std::size_t marks) {
  const char mark = line[begin];
  const std::string closing(marks, mark);
  for (std::size_t place = begin + marks; place < line.size(); ++place) {
    if (mark == '"' && line[place] == '\\') {
      ++place;
    } else if (line.substr(place, marks) == closing) {
      std::size_t last = place + marks - 1;
      // Up to two marks before the closing three belong to the text.
      for (int more = 0; marks == 3 && more < 2 && line.substr(last + 1, 1) == line.substr(begin, 1); ++more)
        ++last;
      return last;
    }
  }
  return line.size();
}

/// Every text ends on its line here, so that a line is understood by itself.
LineCheck checked(std::string_view line) {
  const LineCheck header = checked_header(line);
  if (header.fault != LineFault::none) return header;
  std::size_t parts = 1;
  for (std::size_t place = 0; place < line.size(); ++place) {
    const char byte = line[place];
    if (byte == '#') break;
    if (byte == '"' || byte == '\'') {
      const std::size_t begin = place, marks = line.substr(place, 3) == std::string(3, byte) ? 3 : 1;
      place = text_end(line, begin, marks);
      if (marks == 3 && place == line.size()) return {LineFault::text_over_lines, begin};
    } else if (static_cast<unsigned char>(byte) >= 0x80U) {
      return {LineFault::sign_outside_text, place};  // the parser's table of letters has gaps
    } else if (byte == '.') {
      if (++parts > most_key_parts) return {LineFault::key_too_deep, place};
    } else if (std::string_view("=,[]{}").find(byte) != std::string_view::npos) {
      parts = 1;
    }
  }
  return {};
}

struct Words {
  std::string message, fix;
};

Words words_of(LineFault fault) {
  switch (fault) {
    case LineFault::key_too_deep:
      return {"this key has more than " + std::to_string(most_key_parts) + " parts",
              "write the key alone, below its table: [site], then name = \"…\""};
    case LineFault::text_over_lines:
      return {"three quotation marks begin a text that goes on below this line",
              "write the text on one line"};
    case LineFault::sign_outside_text:
      return {"this letter or sign may stand between quotation marks only",
              "write keys in plain letters, and texts between straight quotation marks, like \"loam\""};
    default:
      return {"the name of a table is missing between the brackets",
              "write [site], or [[bed]] before each of several; begin no other line with a bracket"};
  }
}

void require_plain_line(TomlDocument& document, std::string_view line, std::size_t number) {
  if (line.size() > longest_toml_line_bytes) {
    document.refuse(at(number, 1), {}, {},
                    "this line is longer than " + std::to_string(longest_toml_line_bytes) + " bytes",
                    "break the list over several lines");
    throw Error(document.problems());
  }
  const LineCheck check = checked(line);
  if (check.fault == LineFault::none) return;
  const Words words = words_of(check.fault);
  document.refuse(at(number, character_count(line.substr(0, check.bytes)) + 1), {}, {}, words.message,
                  words.fix);
  throw Error(document.problems());
}

}  // namespace

void require_plain_toml(TomlDocument& document) {
  const std::string_view text = document.text();
  std::size_t line = 1;
  const std::size_t mark_bytes = text.substr(0, 3) == "\xEF\xBB\xBF" ? 3 : 0;  // of byte order
  for (std::size_t begin = mark_bytes; begin <= text.size(); ++line) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    require_plain_line(document, text.substr(begin, end - begin), line);
    begin = end + 1;
  }
}

}  // namespace v1
}  // namespace noonleaf
