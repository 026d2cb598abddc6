// How much processor time a command takes as a whole process, start to end, beside a program that does
// nothing.
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <spawn.h>
#include <string>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

#include <benchmark/benchmark.h>

extern char** environ;

namespace {

double seconds(const timeval& time) {
  return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) * 1e-6;
}

/// Processor time, user and system, of one run of the command; its output is thrown away.
double processor_seconds(const std::string& program, const std::vector<std::string>& words) {
  std::vector<std::string> all{program};
  all.insert(all.end(), words.begin(), words.end());
  std::vector<char*> arguments;
  for (std::string& word : all) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t quiet;
  posix_spawn_file_actions_init(&quiet);
  posix_spawn_file_actions_addopen(&quiet, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  pid_t child = 0;
  const int failed = posix_spawn(&child, program.c_str(), &quiet, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&quiet);
  rusage usage{};
  int status = 0;
  if (failed != 0 || wait4(child, &status, 0, &usage) < 0 || status != 0) std::abort();
  return seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

void run(benchmark::State& state, const std::string& program, const std::vector<std::string>& words) {
  for (auto step : state) {
    (void)step;
    state.SetIterationTime(processor_seconds(program, words));
  }
}

}  // namespace

int main(int count, char** words) {
  const std::string garden =
      (std::filesystem::temp_directory_path() / ("noonleaf-bench-" + std::to_string(getpid()))).string();
  processor_seconds(NOONLEAF_COMMAND, {"new", garden, "--demo"});
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
  benchmark::Initialize(&count, words);
  benchmark::RunSpecifiedBenchmarks();
  std::filesystem::remove_all(garden);
  return 0;
}
