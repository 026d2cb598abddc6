#include "bench/ratios.hpp"

#include <algorithm>
#include <fstream>
#include <string_view>

namespace bench {

bool names_rows_only(int argc, char** argv) {
  return std::any_of(argv, argv + argc, [](const char* word) { return std::string_view(word) == "--rows"; });
}

void Keeper::run() {
  if (!rows_only_) benchmark::RunSpecifiedBenchmarks(this);
}

void Keeper::ReportRuns(const std::vector<Run>& runs) {
  ConsoleReporter::ReportRuns(runs);
  for (const Run& run : runs) {
    if (run.run_type != Run::RT_Iteration || run.error_occurred) continue;
    const auto items = run.counters.find("items_per_second");
    if (items == run.counters.end()) continue;
    ns_[run.run_name.function_name].push_back(1e9 / items->second);
  }
}

double Keeper::median_ns(const std::string& name) const {
  if (rows_only_) return 1.0;
  const auto found = ns_.find(name);
  if (found == ns_.end()) return 0.0;
  std::vector<double> sorted = found->second;
  std::sort(sorted.begin(), sorted.end());
  return sorted[sorted.size() / 2];
}

std::string machine() {
  std::ifstream info("/proc/cpuinfo");
  std::string model = "unknown processor";
  for (std::string line; std::getline(info, line);) {
    if (line.rfind("model name", 0) != 0) continue;
    model = line.substr(line.find(':') + 2);
    break;
  }
#if defined(__clang__)
  return model + ", clang " __clang_version__;
#else
  return model + ", g++ " __VERSION__;
#endif
}

}  // namespace bench
