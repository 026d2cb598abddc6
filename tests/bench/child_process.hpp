#pragma once

#include <string>
#include <vector>

namespace bench {

/// What one run of a command took as a whole process.
struct ChildUsage {
  double processor_s = 0;  ///< user and system
  long peak_kb = 0;        ///< resident memory
};

/// Runs a command to its end; its output is thrown away. Ends this program where the command fails.
ChildUsage run_child(const std::string& program, const std::vector<std::string>& words);

}  // namespace bench
