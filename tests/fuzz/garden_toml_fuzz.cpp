// garden.toml, through its file; what is accepted has to hold together.
#include <cmath>

#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/missing.hpp"

#include "fuzz_target.hpp"

namespace {

using fuzz::require;

void check_numbers(const noonleaf::Garden& garden) {
  require(std::abs(garden.site.location.latitude_deg) <= 90, "a site lies on the globe");
  require(!garden.site.zone.empty(), "a site has its zone");
  for (const noonleaf::Tap& tap : garden.taps)
    require(fuzz::missing_or_finite(tap.flow_l_min), "a flow is a number");
  for (const noonleaf::Bed& bed : garden.beds) {
    require(bed.area_m2 > 0 && std::isfinite(bed.area_m2), "a bed has an area");
    double share = 0;
    for (const noonleaf::BedPlanting& planting : bed.plantings) {
      require(planting.share_frac >= 0 && planting.share_frac <= 1, "a share is a share");
      require(!planting.crop.empty(), "a planting has its crop");
      share += planting.share_frac;
    }
    require(std::isfinite(share), "shares add up to a number");
  }
}

void check_references(const noonleaf::Garden& garden) {
  require(!garden.beds.empty(), "a garden has a bed");
  for (const noonleaf::Sprinkler& sprinkler : garden.sprinklers)
    require(sprinkler.tap < garden.taps.size(), "a sprinkler has its tap");
  for (const noonleaf::Bed& bed : garden.beds) {
    require(bed.sprinkler < garden.sprinklers.size(), "a bed has its sprinkler");
    require(noonleaf::find_bed(garden, bed.id) == &bed, "a bed is found by its id");
  }
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  const fuzz::InputFile file(bytes);
  fuzz::done(bytes, [&] {
    const noonleaf::Garden garden = noonleaf::read_garden(file.path(), "garden.toml");
    check_references(garden);
    check_numbers(garden);
  });
  return 0;
}
