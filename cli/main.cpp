#include <cerrno>
#include <csignal>
#include <cstdio>
#include <exception>
#include <iostream>
#include <new>
#include <variant>

#include "noonleaf/error.hpp"

#include "arguments.hpp"
#include "commands.hpp"
#include "terminal.hpp"

namespace {

constexpr int done = 0, input_refused = 1;

/// What `work` answers; a refusal becomes its text on stderr and an exit code.
template <class Work>
int exit_code_of(const Work& work) {
  try {
    return work();
  } catch (const noonleaf::Error& refused) {
    std::fputs(noonleaf::describe(refused.problems()).c_str(), stderr);
  } catch (const noonleaf::cli::StoppedReading&) {
    return done;
  } catch (const std::bad_alloc&) {
    std::fputs(
        "noonleaf: there is not enough memory for this\n"
        "  fix: close other programs, or ask for less at once: fewer gardens, fewer years of weather\n",
        stderr);
  } catch (const std::exception& failed) {
    std::fprintf(stderr,
                 "noonleaf: %s\n  fix: this should not happen; please report it with the files you used\n",
                 failed.what());
  }
  return input_refused;
}

/// Help and version are printed by the parser: onto a full disk they must not look as if they were.
int answered(int exit_code) {
  errno = 0;
  if (!std::cout.flush() && errno != EPIPE) noonleaf::cli::refuse_answer();
  return exit_code;
}

}  // namespace

int main(int count, char** words) {
  std::signal(SIGPIPE, SIG_IGN);  // a closed pipe is an error code of write, not a death
  // So is a file that may not grow further: the journal is cut back to what it was.
  std::signal(SIGXFSZ, SIG_IGN);
  const auto parsed = noonleaf::cli::parse_arguments(count, words);
  return exit_code_of([&parsed] {
    if (const int* const exit_code = std::get_if<int>(&parsed)) return answered(*exit_code);
    return std::visit([](const auto& command) { return noonleaf::cli::run(command); },
                      std::get<noonleaf::cli::Arguments>(parsed));
  });
}
