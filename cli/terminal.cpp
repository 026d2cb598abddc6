#include "terminal.hpp"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <system_error>
#include <unistd.h>

#include "noonleaf/error.hpp"
#include "noonleaf/report/wrapped_text.hpp"

namespace noonleaf::cli {

namespace {

/// A variable of the environment; empty when it is not set.
std::string_view environment(const char* name) {
  const char* const value =
      std::getenv(name);  // NOLINT(concurrency-mt-unsafe): one thread, and none sets a variable
  return value == nullptr ? std::string_view() : std::string_view(value);
}

}  // namespace

void print(std::string_view text) {
  const bool written =
      std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
  if (!written) refuse_answer();
}

void refuse_answer() {
  if (errno == EPIPE) throw StoppedReading{};
  Problem problem;
  problem.message = "the answer could not be written: " + std::generic_category().message(errno);
  problem.fix = "make room on the disk, or print it somewhere else";
  throw Error(std::move(problem));
}

bool has_colour() {
  const bool refused = !environment("NO_COLOR").empty();
  const std::string_view terminal = environment("TERM");
  const bool dumb = terminal.empty() || terminal == "dumb";
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
