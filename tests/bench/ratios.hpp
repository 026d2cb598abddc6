#pragma once

#include <map>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>

namespace bench {

/// Prints what Google Benchmark prints, and keeps the processor time per item of every repetition.
class Keeper : public benchmark::ConsoleReporter {
 public:
  Keeper() : ConsoleReporter(OO_Tabular) {}
  void ReportRuns(const std::vector<Run>& runs) override;

  /// Median over the repetitions [ns per item]; 0 where the benchmark did not run.
  double median_ns(const std::string& name) const;

 private:
  std::map<std::string, std::vector<double>> ns_;
};

/// Processor model and compiler, for the head of a report.
std::string machine();

}  // namespace bench
