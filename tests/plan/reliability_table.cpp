// Prints the reliability tables of docs/likelihood.md: cmake --build build --target reliability_table
#include <array>
#include <cstdio>
#include <string>
#include <vector>

#include "plan/reliability.hpp"

namespace {

using reliability::Event;

struct Lead {
  int first_d, last_d;
};
constexpr std::array<Lead, 3> leads{{{1, 3}, {4, 7}, {8, 10}}};

void print_score(const std::string& of, const reliability::Score& score) {
  std::printf("| %s | %zu | %zu | %.3f | %.3f |\n", of.c_str(), score.cases, score.came_true, score.brier,
              score.of_the_mean);
}

void print_bins(const std::vector<reliability::Case>& cases, Event event, const Lead& lead) {
  std::printf("| said | cases | said, mean | came true |\n|---|---|---|---|\n");
  const auto bins = reliability::bins_of(cases, event, lead.first_d, lead.last_d);
  for (std::size_t i = 0; i < bins.size(); ++i) {
    const auto& bin = bins[i];
    if (bin.cases == 0) continue;
    const double n = static_cast<double>(bin.cases);
    std::printf("| %zu to %zu %% | %zu | %.0f %% | %.0f %% |\n", 10 * i, 10 * (i + 1), bin.cases,
                100 * bin.said / n, 100 * static_cast<double>(bin.came_true) / n);
  }
}

struct Named {
  std::string name;
  std::vector<reliability::Case> cases;
};

void print_event(const char* title, Event event, const std::vector<Named>& stations) {
  std::printf("\n### %s\n\n| | cases | came true | Brier score | the mean always |\n|---|---|---|---|---|\n",
              title);
  std::vector<reliability::Case> all;
  for (const Named& station : stations) {
    print_score(station.name, reliability::score_of(station.cases, event, 1, 10));
    all.insert(all.end(), station.cases.begin(), station.cases.end());
  }
  for (const Lead& lead : leads)
    print_score("days " + std::to_string(lead.first_d) + " to " + std::to_string(lead.last_d),
                reliability::score_of(all, event, lead.first_d, lead.last_d));
  for (const Lead& lead : leads) {
    std::printf("\nDays %d to %d:\n\n", lead.first_d, lead.last_d);
    print_bins(all, event, lead);
  }
}

}  // namespace

int main(int count, char** words) {
  reliability::Settings settings;
  if (count > 1) settings.crop = words[1];
  std::vector<Named> stations;
  std::printf("depletion within 10-90 %%:");
  for (const std::string& station : reliability::stations) {
    stations.push_back({station, reliability::cases_of(station, settings)});
    std::printf(" %s %.0f %%", station.c_str(),
                100 * reliability::score_of(stations.back().cases, Event::beyond_limit, 1, 10).within_frac);
  }
  std::printf("\n");
  print_event("Beyond RAW at the day's close", Event::beyond_limit, stations);
  print_event("Leaves hang at some hour", Event::droop, stations);
  print_event("Dry-soil wilt", Event::dry_soil_wilt, stations);
  return 0;
}
