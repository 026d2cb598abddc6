#include <cstdio>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/plan/away.hpp"
#include "noonleaf/plan/sky.hpp"

int main(int, char** words) {
  using namespace std::chrono_literals;
  const noonleaf::GardenFolder folder = noonleaf::read_garden_folder(words[1], words[1]);
  const noonleaf::Sky sky = noonleaf::sky_over(folder.garden.site, folder.weather);
  const noonleaf::Away away =
      noonleaf::plan_away(folder.garden, folder.journal, sky,
                          {.today = 2025y / 7 / 16, .from = 2025y / 7 / 19, .to = 2025y / 8 / 8});
  for (const noonleaf::AwayBed& bed : away.beds) {
    if (bed.nothing_grows) continue;
    const noonleaf::AwayOutlook& left_alone = bed.outlooks.front();
    std::printf("bed %s: ", folder.garden.beds[bed.bed].id.c_str());
    if (left_alone.middle.wilts) {
      std::printf("wilts on %s\n", noonleaf::iso_date(*left_alone.middle.wilts).c_str());
    } else {
      std::printf("lasts\n");
    }
  }
}
