#include "small_garden.hpp"

#include "noonleaf/garden/garden_file.hpp"

namespace fuzz {
namespace {

constexpr std::string_view text = R"([site]
name = "Invented"
latitude_deg = 46.07
longitude_deg = -118.33
elevation_m = 290
zone = "America/Los_Angeles"
[[caretaker]]
id = "custodian"
role = "custodian"
hours = ["mon-fri 06:00-14:30"]
[[tap]]
id = "t"
flow_l_min = 20
[[sprinkler]]
id = "s"
tap = "t"
cans_minutes = 15
cans_depth_mm = [5, 6, 5, 6]
[[sprinkler]]
id = "f"
tap = "t"
flow_l_min = 8
wetted_area_m2 = 40
[[sprinkler]]
id = "h"
kind = "hand"
tap = "t"
can_l = 10
[[bed]]
id = "a"
area_m2 = 9
sprinkler = "s"
soil = "loam"
[[bed.planting]]
crop = "tomato"
transplanted = 2025-05-17
[[bed]]
id = "b"
area_m2 = 4
sprinkler = "f"
soil = "sandy_loam"
[[bed.planting]]
crop = "carrot"
sown = 2025-07-01
[[bed]]
id = "north-east"
area_m2 = 6
sprinkler = "h"
soil = "clay_loam"
)";

}  // namespace

const noonleaf::Garden& small_garden() {
  static const noonleaf::Garden garden = noonleaf::parse_garden(text, "garden.toml");
  return garden;
}

}  // namespace fuzz
