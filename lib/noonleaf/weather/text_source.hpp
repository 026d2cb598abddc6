#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {

/// The longest line a table may have; one that is longer is no table.
inline constexpr std::size_t longest_line_bytes = std::size_t{1} << 20U;

/// A text file a window of whole lines at a time, in constant memory; pipes work as files do.
///
/// Reads into one buffer instead of mapping the file: mapped pages count as memory of the process, a file
/// that shrinks under a map kills it, and the copy costs less than the page faults.
///
/// The window [cursor, limit) always ends after a newline; a last line without one is given one. Behind limit
/// there are `readable_behind` more bytes that may be read (not understood), so that parsers need no bound.
class TextSource {
 public:
  static constexpr std::size_t readable_behind = 64;

  /// The window holds the whole lines of the first read, perhaps none.
  /// Throws    Error: not found, a directory, not readable, empty, UTF-16, a packed file
  TextSource(const std::filesystem::path& file, std::string shown_name);
  ~TextSource();
  TextSource(const TextSource&) = delete;
  TextSource& operator=(const TextSource&) = delete;

  const std::string& name() const { return name_; }

  /// The bytes at hand from the cursor on, whole lines or not: enough to recognise a format.
  std::string_view bytes_at_hand() const;

  /// Everything from the cursor on, for formats that are no tables; the source is at its end afterwards.
  /// Throws    Error when that is more than `most_bytes`
  std::string take_all(std::size_t most_bytes);

  const char* cursor() const { return cursor_; }
  const char* limit() const { return limit_; }
  std::size_t line() const { return line_; }  ///< number of the line at the cursor, 1-based

  /// Moves the cursor to `next` within the window, `lines` further down.
  void advance(const char* next, std::size_t lines) {
    cursor_ = next;
    line_ += lines;
  }

  /// Reads more, keeping everything from the cursor on; pointers into the window end their life.
  /// Result    whether the window grew
  /// Throws    Error: a line too long, a byte 0, a read error
  bool refill();

  std::uint64_t offset(const char* place) const {
    return window_offset_ + static_cast<std::uint64_t>(place - buffer_.data());
  }
  std::uint64_t bytes_read() const { return offset(cursor_); }
  std::optional<std::uint64_t> bytes_in_file() const { return size_; }

  /// Line of the file that begins at `offset`, without its end, for an excerpt; empty when it can no longer
  /// be read (a pipe) or is too long to show.
  std::string line_text(std::uint64_t offset) const;

  /// A problem of this file at a line.
  Problem problem(std::size_t line, std::string message, std::string fix) const;

 private:
  void open(const std::filesystem::path& file);
  void refuse_foreign_bytes() const;
  void refuse_zero_byte(const char* begin, const char* end) const;
  std::size_t read_some();
  void make_room();
  void set_limit();

  std::string name_;
  int descriptor_ = -1;
  std::optional<std::uint64_t> size_;
  std::vector<char> buffer_;
  std::size_t filled_ = 0;           // bytes of the buffer in use
  std::uint64_t window_offset_ = 0;  // offset of buffer_[0] in the file
  const char* cursor_ = nullptr;
  const char* limit_ = nullptr;
  std::size_t line_ = 1;
  enum class End { not_reached, reached, closed } end_ = End::not_reached;  // closed: newline given
};

}  // namespace v1
}  // namespace noonleaf
