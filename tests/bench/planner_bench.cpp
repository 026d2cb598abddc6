// The week's plan of invented gardens, from what was read to the runs: processor time, whether the search was
// finished, and how far the plan can be from the best where it was not.
#include <chrono>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <string>
#include <unistd.h>
#include <vector>

#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/plan/week.hpp"

#include "bench/invented_folder.hpp"
#include "bench/ratios.hpp"

namespace {

using namespace std::chrono_literals;

double processor_seconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

struct Case {
  const char* name;
  bench::FolderKind kind;
  int days;
};

void plan(const Case& one, const std::filesystem::path& folder) {
  bench::write_invented_folder(folder, one.kind);
  const noonleaf::GardenFolder read = noonleaf::read_garden_folder(folder, one.name);
  const noonleaf::Sky sky = noonleaf::sky_over(read.garden.site, read.weather);
  const double begin = processor_seconds();
  const noonleaf::WeekPlan week = noonleaf::plan_week(
      read.garden, read.journal, sky, {.first = 2025y / 7 / 16, .from = 5h, .days = one.days});
  const double took = processor_seconds() - begin;
  std::printf("%-52s %7.3f s %5zu runs %6zu beds solved  %s", one.name, took, week.runs.size(),
              week.proof.steps, week.proof.optimal ? "proved the best\n" : "");
  if (!week.proof.optimal)
    std::printf("loses %.1f l, none less than %.1f l\n", week.proof.stress_l, week.proof.bound_stress_l);
}

}  // namespace

int main() {
  const auto folder =
      std::filesystem::temp_directory_path() / ("noonleaf-planner-" + std::to_string(getpid()));
  std::printf("%s\nprocessor time of plan_week, one core\n", bench::machine().c_str());
  std::vector<Case> cases;
  cases.push_back({"5 beds x 7 days", {.beds = 5}, 7});
  cases.push_back({"12 beds x 7 days, 3 caretakers, a restriction", {}, 7});
  for (unsigned seed = 1; seed <= 3; ++seed)
    cases.push_back({"12 beds x 14 days, 3 caretakers, a restriction", {.seed = seed}, 14});
  cases.push_back({"12 beds x 14 days, the same, watered every 4 days", {.water_every_days = 4}, 14});
  cases.push_back({"12 beds x 14 days, the same, never watered before", {.water_every_days = 0}, 14});
  cases.push_back({"12 beds x 14 days, the same at one tap", {.taps = 1}, 14});
  for (const Case& one : cases) {
    plan(one, folder);
    std::filesystem::remove_all(folder);
  }
  return 0;
}
