#include "terminal.hpp"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <unistd.h>

#include "noonleaf/error.hpp"
#include "noonleaf/report/wrapped_text.hpp"

namespace noonleaf::cli {

void print(std::string_view text) {
  const bool written =
      std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
  if (!written) refuse_answer();
}

void refuse_answer() {
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
  return wrapped_text(text, {.indent = indent, .width = terminal_width});
}

std::string wrapped(const std::vector<std::string>& texts, std::size_t indent) {
  std::string lines;
  for (const std::string& text : texts) lines += wrapped(text, indent);
  return lines;
}

}  // namespace noonleaf::cli
