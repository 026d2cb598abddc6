// A program of somebody else: reads a garden folder and writes the day's answer as JSON, through installed headers.
#include <chrono>
#include <cstdio>
#include <string>

#include <noonleaf/error.hpp>
#include <noonleaf/garden/garden_folder.hpp>
#include <noonleaf/plan/sky.hpp>
#include <noonleaf/plan/today.hpp>
#include <noonleaf/report/today_json.hpp>

int main(int count, char** words) {
  if (count != 2) {
    std::fputs("usage: garden DIR\n", stderr);
    return 2;
  }
  try {
    const noonleaf::GardenFolder folder = noonleaf::read_garden_folder(words[1], words[1]);
    const noonleaf::Sky sky = noonleaf::sky_over(folder.garden.site, folder.weather);
    noonleaf::Today today = noonleaf::plan_today(folder.garden, folder.journal, sky,
                                                 {.date = std::chrono::year{2025} / 7 / 16});
    today.likelihood = noonleaf::likelihood_of_today(folder.garden, folder.journal, sky, today);
    std::fputs(noonleaf::today_json({folder.garden, today}).c_str(), stdout);
  } catch (const noonleaf::Error& refused) {
    std::fputs(noonleaf::describe(refused.problems()).c_str(), stderr);
    return 1;
  }
}
