// Prints the reliability tables of docs/likelihood.md: cmake --build build --target reliability_table
#include <cstdio>

#include "plan/reliability.hpp"

namespace {

void print(const std::vector<reliability::Case>& cases, int first_lead, int last_lead) {
  const auto score = reliability::score_of(cases, first_lead, last_lead);
  std::printf(
      "\ndays %d to %d: %zu cases, Brier score %.3f (the mean always: %.3f), depletion within 10-90 %%: %.0f "
      "%%\n",
      first_lead, last_lead, score.cases, score.brier, score.of_the_mean, 100 * score.within_frac);
  std::printf("| said | cases | said, mean | came true |\n|---|---|---|---|\n");
  const auto bins = reliability::bins_of(cases, first_lead, last_lead);
  for (std::size_t i = 0; i < bins.size(); ++i) {
    const auto& bin = bins[i];
    if (bin.cases == 0) continue;
    const double n = static_cast<double>(bin.cases);
    std::printf("| %zu to %zu %% | %zu | %.0f %% | %.0f %% |\n", 10 * i, 10 * (i + 1), bin.cases,
                100 * bin.said / n, 100 * static_cast<double>(bin.came_true) / n);
  }
}

}  // namespace

int main() {
  const reliability::Settings settings;
  std::vector<reliability::Case> all;
  for (const char* station : {"Seattle", "New York"}) {
    const auto cases = reliability::cases_of(station, settings);
    all.insert(all.end(), cases.begin(), cases.end());
    const auto score = reliability::score_of(cases, 1, 10);
    std::printf("%s: %zu cases, Brier score %.3f (the mean always: %.3f)\n", station, score.cases,
                score.brier, score.of_the_mean);
  }
  print(all, 1, 3);
  print(all, 4, 7);
  print(all, 8, 10);
  return 0;
}
