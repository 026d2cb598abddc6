#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One cell of a CSV record.
struct CsvCell {
  std::string text{};        ///< without its quotes, doubled quotes made single; not trimmed
  std::string_view raw{};    ///< as it stands in the file
  std::size_t line = 0;      ///< lines below the start of the record (a quoted cell may hold line ends)
  std::size_t column = 1;    ///< 1-based character in that line
  bool closed = true;        ///< false: a quote is opened and never closed within the bytes given
  bool text_behind = false;  ///< true: something stands between the closing quote and the separator
};

/// One CSV record (RFC 4180): a line as a rule, more where a quoted cell holds line ends.
struct CsvRecord {
  std::vector<CsvCell> cells{};
  const char* end = nullptr;  ///< first byte behind the record
  std::size_t lines = 1;      ///< lines that it covers
};

/// Splits the record that begins at `begin`. The bytes must end in a newline at `limit`.
CsvRecord split_record(const char* begin, const char* limit, char separator);

/// The separator of a header line: the one of comma, semicolon and tab that is there most often outside
/// quotes; comma where there is none.
char separator_of(std::string_view header_line);

/// Whether a line is a remark, "# made by hand". "######,12.5" is none: a spreadsheet's column was too narrow
/// for its date.
bool is_remark(std::string_view line);

}  // namespace v1
}  // namespace noonleaf
