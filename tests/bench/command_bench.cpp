// How much processor time a command takes as a whole process, start to end, beside a program that does
// nothing.
#include <filesystem>
#include <string>
#include <unistd.h>
#include <vector>

#include <benchmark/benchmark.h>

#include "bench/child_process.hpp"

namespace {

void run(benchmark::State& state, const std::string& program, const std::vector<std::string>& words) {
  for (auto step : state) {
    (void)step;
    state.SetIterationTime(bench::run_child(program, words).processor_s);
  }
}

}  // namespace

int main(int count, char** words) {
  const std::string garden =
      (std::filesystem::temp_directory_path() / ("noonleaf-bench-" + std::to_string(getpid()))).string();
  bench::run_child(NOONLEAF_COMMAND, {"new", garden, "--demo"});
  const auto add = [](const char* name, const std::string& program,
                      const std::vector<std::string>& arguments) {
    benchmark::RegisterBenchmark(name, [=](benchmark::State& state) { run(state, program, arguments); })
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond)
        ->Iterations(40)
        ->Repetitions(5)
        ->ReportAggregatesOnly();
  };
  add("empty main", NOONLEAF_EMPTY_COMMAND, {});
  add("noonleaf --help", NOONLEAF_COMMAND, {"--help"});
  add("noonleaf today, demo garden", NOONLEAF_COMMAND, {"today", garden});
  add("noonleaf week, demo garden", NOONLEAF_COMMAND, {"week", garden});
  benchmark::Initialize(&count, words);
  benchmark::RunSpecifiedBenchmarks();
  std::filesystem::remove_all(garden);
  return 0;
}
