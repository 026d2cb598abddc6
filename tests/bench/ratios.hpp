#pragma once

#include <map>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>

namespace bench {

/// Whether the program is only to name the rows of its table: `--rows`. Nothing is measured then.
bool names_rows_only(int argc, char** argv);

/// Prints what Google Benchmark prints, and keeps the processor time per item of every repetition.
class Keeper : public benchmark::ConsoleReporter {
 public:
  /// `rows_only`: nothing will run, and every median is 1.
  explicit Keeper(bool rows_only = false) : ConsoleReporter(OO_Tabular), rows_only_(rows_only) {}

  /// Runs what is registered, unless only rows are to be named.
  void run();
  void ReportRuns(const std::vector<Run>& runs) override;

  /// Median over the repetitions [ns per item]; 0 where the benchmark did not run.
  double median_ns(const std::string& name) const;

 private:
  bool rows_only_;
  std::map<std::string, std::vector<double>> ns_;
};

/// Processor model and compiler, for the head of a report.
std::string machine();

}  // namespace bench
