#include "terminal.hpp"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <unistd.h>

#include "noonleaf/error.hpp"

namespace noonleaf::cli {
namespace {

std::size_t characters(std::string_view text) {
  std::size_t count = 0;
  for (const char byte : text) count += (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U ? 1 : 0;
  return count;
}

}  // namespace

void print(std::string_view text) {
  const bool written =
      std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
  if (written) return;
  if (errno == EPIPE) throw StoppedReading{};
  Problem problem;
  problem.message = std::string("the answer could not be written: ") + std::strerror(errno);
  problem.fix = "make room on the disk, or print it somewhere else";
  throw Error(std::move(problem));
}

bool has_colour() {
  const char* const no_colour = std::getenv("NO_COLOR");
  const char* const terminal = std::getenv("TERM");
  const bool refused = no_colour != nullptr && *no_colour != '\0';
  const bool dumb = terminal == nullptr || std::string_view(terminal) == "dumb";
  return !refused && !dumb && isatty(STDOUT_FILENO) == 1;
}

std::string bold(std::string_view text) {
  return has_colour() ? "\x1b[1m" + std::string(text) + "\x1b[0m" : std::string(text);
}

std::string wrapped(std::string_view text, std::size_t indent) {
  std::string result(indent, ' ');
  std::size_t width = indent;
  while (!text.empty()) {
    const std::size_t space = text.find(' ');
    const std::string_view word = text.substr(0, space);
    const std::size_t length = characters(word);
    if (width > indent && width + 1 + length > terminal_width) {
      result += "\n" + std::string(indent, ' ');
      width = indent;
    }
    if (width > indent) {
      result += ' ';
      ++width;
    }
    result += word;
    width += length;
    text.remove_prefix(space == std::string_view::npos ? text.size() : space + 1);
  }
  return result + "\n";
}

}  // namespace noonleaf::cli
