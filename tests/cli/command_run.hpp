#pragma once

#include <cstdlib>
#include <string>
#include <sys/wait.h>

#include <boost/test/unit_test.hpp>

#include "golden_text.hpp"
#include "workplace.hpp"

/// What a command printed and how it ended.
struct CommandRun {
  int exit_code = -1;
  std::string out, err;
};

/// Runs the command in the folder, as a shell would: `words` may hold quotes and redirections.
inline CommandRun run_noonleaf(const Workplace& workplace, const std::string& words) {
  const std::string line = "cd '" + workplace.folder().string() +
                           "' && env -u NO_COLOR TERM=dumb '" NOONLEAF_COMMAND "' " + words +
                           " >.out 2>.err </dev/null";
  const int status = std::system(line.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, workplace.read(".out"), workplace.read(".err")};
}

/// A folder with the invented garden in `demo`.
struct DemoPlace : Workplace {
  DemoPlace() { BOOST_REQUIRE(run_noonleaf(*this, "new demo --demo").exit_code == 0); }
};
