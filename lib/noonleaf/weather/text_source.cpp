#include "noonleaf/weather/text_source.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t window_bytes = std::size_t{1} << 18U;  // stays in the second-level cache
constexpr std::size_t longest_excerpt_bytes = 4096;

std::string system_reason(int code) { return std::generic_category().message(code); }

}  // namespace

TextSource::TextSource(const std::filesystem::path& file, std::string shown_name)
    : name_(std::move(shown_name)), buffer_(window_bytes + readable_behind) {
  try {
    open(file);
    cursor_ = buffer_.data();
    filled_ = read_some();
    refuse_foreign_bytes();
    if (std::string_view(buffer_.data(), filled_).substr(0, 3) == "\xEF\xBB\xBF") cursor_ += 3;
    refuse_zero_byte(cursor_, buffer_.data() + filled_);
    set_limit();
  } catch (...) {
    if (descriptor_ >= 0) ::close(descriptor_);
    throw;
  }
}

TextSource::~TextSource() {
  if (descriptor_ >= 0) ::close(descriptor_);
}

void TextSource::open(const std::filesystem::path& file) {
  descriptor_ = ::open(file.c_str(), O_RDONLY | O_CLOEXEC);
  if (descriptor_ < 0) {
    const int code = errno;
    if (code == ENOENT) throw Error(problem(0, "there is no such file", "check the name and the folder"));
    if (code == EACCES)
      throw Error(problem(0, "the file may not be read", "give yourself the right to read it: chmod u+r"));
    throw Error(problem(0, "the file cannot be opened: " + system_reason(code), "check the name"));
  }
  struct stat about {};
  if (::fstat(descriptor_, &about) != 0)
    throw Error(problem(0, "the file cannot be opened: " + system_reason(errno), "check the name"));
  if (S_ISDIR(about.st_mode))
    throw Error(problem(0, "this is a folder, not a weather file", "name one file in it"));
  if (S_ISREG(about.st_mode)) size_ = static_cast<std::uint64_t>(about.st_size);
}

std::size_t TextSource::read_some() {
  const std::size_t room = buffer_.size() - readable_behind - filled_;
  std::size_t got = 0;
  while (got < room) {  // a pipe gives little at a time; windows should be full
    const ssize_t bytes = ::read(descriptor_, buffer_.data() + filled_ + got, room - got);
    if (bytes < 0 && errno == EINTR) continue;
    if (bytes < 0)
      throw Error(
          problem(line_, "the file cannot be read on: " + system_reason(errno), "copy it and try again"));
    if (bytes == 0) {
      end_ = End::reached;
      break;
    }
    got += static_cast<std::size_t>(bytes);
  }
  return got;
}

void TextSource::refuse_foreign_bytes() const {
  const std::string_view head(buffer_.data(), filled_);
  if (head.empty() || head == "\xEF\xBB\xBF")
    throw Error(problem(0, "the file is empty", "put a header line and rows into it, or leave it out"));
  const auto begins = [head](std::string_view mark) { return head.substr(0, mark.size()) == mark; };
  const bool marked = begins("\xFF\xFE") || begins("\xFE\xFF");
  const bool unmarked = head.size() >= 4 && ((head[0] == '\0' && head[1] != '\0' && head[2] == '\0') ||
                                             (head[0] != '\0' && head[1] == '\0' && head[3] == '\0'));
  if (marked || unmarked)
    throw Error(problem(0, "the file is UTF-16 text, which is not read",
                        "save it again as \"CSV UTF-8\" (in an editor: encoding UTF-8)"));
  if (begins("PK\x03\x04") || begins("\x1F\x8B") || begins("\xD0\xCF\x11\xE0"))
    throw Error(problem(0, "this is a packed file or a workbook, not text",
                        "unpack it, or save the sheet as \"CSV UTF-8\""));
  if (begins("<!DOCTYPE") || begins("<!doctype") || begins("<html") || begins("<HTML"))
    throw Error(problem(0, "this is a web page, not a table",
                        "open it in a browser: it may ask for a sign-in; then download the CSV file"));
  if (begins("%PDF") || begins("\x89PNG") || begins("\xFF\xD8\xFF"))
    throw Error(
        problem(0, "this is a document or a picture, not a table", "ask the source for its CSV file"));
}

void TextSource::refuse_zero_byte(const char* begin, const char* end) const {
  const void* zero = std::memchr(begin, 0, static_cast<std::size_t>(end - begin));
  if (zero == nullptr) return;
  const auto lines_before = std::count(cursor_, static_cast<const char*>(zero), '\n');
  throw Error(problem(line_ + static_cast<std::size_t>(lines_before),
                      "the line holds a byte 0: this is not a text file",
                      "export the file again as \"CSV UTF-8\""));
}

bool TextSource::refill() {
  if (end_ == End::closed) return false;
  const auto window_before = static_cast<std::size_t>(limit_ - cursor_);
  do {
    make_room();
    const std::size_t got = read_some();
    refuse_zero_byte(buffer_.data() + filled_, buffer_.data() + filled_ + got);
    filled_ += got;
    set_limit();
  } while (limit_ == cursor_ && end_ == End::not_reached);
  return static_cast<std::size_t>(limit_ - cursor_) > window_before;
}

// Moves what is still needed to the front of the buffer; a line longer than the buffer doubles it.
void TextSource::make_room() {
  char* const data = buffer_.data();
  const auto used = static_cast<std::size_t>(cursor_ - data);
  filled_ -= used;
  if (used > 0) std::memmove(data, cursor_, filled_);
  window_offset_ += used;
  if (filled_ + readable_behind >= buffer_.size()) {
    if (filled_ >= longest_line_bytes)
      throw Error(problem(
          line_, "the line is longer than " + grouped(longest_line_bytes) + " bytes: this is no table",
          "check that lines end in a line feed and that no quote is left open"));
    buffer_.resize((buffer_.size() - readable_behind) * 2 + readable_behind);
  }
  cursor_ = limit_ = buffer_.data();
}

// The window ends behind the last newline at hand; at the end of the file it gets one if it has none.
void TextSource::set_limit() {
  if (end_ == End::reached) {
    if (filled_ > 0 && buffer_[filled_ - 1] != '\n') buffer_[filled_++] = '\n';
    end_ = End::closed;
  }
  std::memset(buffer_.data() + filled_, 0, std::min(readable_behind, buffer_.size() - filled_));
  limit_ = buffer_.data() + filled_;
  while (limit_ != cursor_ && limit_[-1] != '\n') --limit_;
}

std::string_view TextSource::bytes_at_hand() const {
  return {cursor_, static_cast<std::size_t>(buffer_.data() + filled_ - cursor_)};
}

std::string TextSource::take_all(std::size_t most_bytes) {
  std::string bytes;
  while (true) {
    bytes += bytes_at_hand();
    cursor_ = limit_ = buffer_.data();
    window_offset_ += filled_;
    filled_ = 0;
    if (bytes.size() > most_bytes)
      throw Error(problem(
          0, "the file is larger than the " + grouped(most_bytes) + " bytes that are read of its kind",
          "see whether it is the right file"));
    if (end_ != End::not_reached) break;
    filled_ = read_some();
    refuse_zero_byte(buffer_.data(), buffer_.data() + filled_);
  }
  end_ = End::closed;
  return bytes;
}

std::string TextSource::line_text(std::uint64_t offset) const {
  std::array<char, longest_excerpt_bytes> bytes{};
  std::string_view text;
  if (offset >= window_offset_ && offset < window_offset_ + filled_) {
    const auto begin = static_cast<std::size_t>(offset - window_offset_);
    text = std::string_view(buffer_.data() + begin, std::min(filled_ - begin, longest_excerpt_bytes));
  } else if (size_) {
    const ssize_t got = ::pread(descriptor_, bytes.data(), bytes.size(), static_cast<off_t>(offset));
    if (got > 0) text = std::string_view(bytes.data(), static_cast<std::size_t>(got));
  }
  const std::size_t end = text.find('\n');
  if (end == std::string_view::npos && text.size() == longest_excerpt_bytes) return {};
  text = text.substr(0, end);
  if (!text.empty() && text.back() == '\r') text.remove_suffix(1);
  return valid_utf8(text);
}

Problem TextSource::problem(std::size_t line, std::string message, std::string fix) const {
  Problem found;
  found.file = name_;
  found.line = line;
  found.message = std::move(message);
  found.fix = std::move(fix);
  return found;
}

}  // namespace v1
}  // namespace noonleaf
