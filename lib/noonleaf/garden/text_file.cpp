#include "noonleaf/garden/text_file.hpp"

#include <algorithm>
#include <array>
#include <fstream>
#include <system_error>

#include "noonleaf/error.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

Error refusal(std::string_view shown_name, std::string message, std::string fix) {
  Problem problem;
  problem.file = shown_name;
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  return Error(std::move(problem));
}

void require_plain_file(const std::filesystem::path& file, std::string_view shown_name) {
  std::error_code code;
  const auto status = std::filesystem::status(file, code);
  if (code && !is_nothing_there(file)) {
    throw refusal(shown_name, "this file cannot be reached: " + code.message(),
                  "check where the link leads, and who may read the folder (its permissions)");
  }
  if (!std::filesystem::exists(status)) {
    throw refusal(shown_name, "there is no such file",
                  "check the name; `noonleaf new DIR --demo` makes a whole garden folder");
  }
  if (!std::filesystem::is_regular_file(status)) {
    throw refusal(shown_name, "this is not a plain file", "name a text file");
  }
}

/// Names the line, since one letter of an old encoding is hard to find.
void require_utf8(const std::string& text, std::string_view shown_name) {
  const std::string valid = valid_utf8(text);
  if (valid == text) return;
  const auto place = std::mismatch(text.begin(), text.end(), valid.begin(), valid.end()).first;
  Problem problem = refusal(shown_name, "a letter here is not UTF-8 text",
                            "save the file as UTF-8 (in a spreadsheet: \"CSV UTF-8\") and try again")
                        .problems()
                        .front();
  problem.line = static_cast<std::size_t>(std::count(text.begin(), place, '\n')) + 1;
  throw Error(std::move(problem));
}

}  // namespace

bool is_nothing_there(const std::filesystem::path& file) {
  std::error_code code;
  return std::filesystem::symlink_status(file, code).type() == std::filesystem::file_type::not_found;
}

std::string read_text_file(const std::filesystem::path& file, std::string_view shown_name,
                           std::size_t largest_bytes) {
  require_plain_file(file, shown_name);
  std::ifstream stream(file, std::ios::binary);
  if (!stream)
    throw refusal(shown_name, "this file cannot be opened", "check who may read it (its permissions)");
  std::string text;
  std::array<char, 1 << 16> block{};
  while (text.size() <= largest_bytes && stream) {
    stream.read(block.data(), block.size());
    text.append(block.data(), static_cast<std::size_t>(stream.gcount()));
  }
  if (stream.bad())
    throw refusal(shown_name, "this file cannot be read to its end", "check the disk, then try again");
  if (text.size() > largest_bytes) {
    throw refusal(shown_name, "this file is larger than " + std::to_string(largest_bytes / 1024) + " KiB",
                  "check that it is the right file");
  }
  const bool utf16 = text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF");
  if (utf16 || text.find('\0') != std::string::npos) {
    throw refusal(shown_name, "this is not plain UTF-8 text", "save it as UTF-8 text and try again");
  }
  if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);
  require_utf8(text, shown_name);
  return text;
}

}  // namespace v1
}  // namespace noonleaf
