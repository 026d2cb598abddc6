#include "noonleaf/crop/emergence.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double none = missing;
constexpr std::string_view memory = "Harrington & Minges; from memory";
constexpr std::string_view checked = "Harrington & Minges; from memory, some cells read in a reprint";

// A reprint gave asparagus 11, 19 (86, 95 °F), beet 4 and carrot 8 (95 °F) where memory has 12, 20, 5 and 9:
// the read values stand. It seems to give eggplant 13 and 8 days at 59 and 68 °F, but its blank cells made
// the columns uncertain; eggplant (minimum 60 °F) is held to have them at 68 and 77 °F.
// clang-format off: a table
constexpr std::array<EmergenceRow, 24> rows{{
    {"asparagus", {none, none, 53, 24, 15, 10, 11, 19, 28}, checked},
    {"bean, lima", {none, none, none, 31, 18, 7, 7, none, none}, memory},
    {"bean, snap", {none, none, none, 16, 11, 8, 6, 6, none}, checked},
    {"beet", {none, 42, 17, 10, 6, 5, 5, 4, none}, checked},
    {"cabbage", {none, none, 15, 9, 6, 5, 4, none, none}, memory},
    {"carrot", {none, 51, 17, 10, 7, 6, 6, 8, none}, checked},
    {"cauliflower", {none, none, 20, 10, 6, 5, 5, none, none}, memory},
    {"celery", {none, 41, 16, 12, 7, none, none, none, none}, memory},
    {"corn, sweet", {none, none, 22, 12, 7, 4, 4, 3, none}, checked},
    {"cucumber", {none, none, none, 13, 6, 4, 3, 3, none}, checked},
    {"eggplant", {none, none, none, none, 13, 8, 5, none, none}, memory},
    {"lettuce", {49, 15, 7, 4, 3, 2, 3, none, none}, checked},
    {"muskmelon", {none, none, none, none, 8, 4, 3, none, none}, checked},
    {"okra", {none, none, none, 27, 17, 13, 7, 6, 7}, memory},
    {"onion", {136, 31, 13, 7, 5, 4, 4, 13, none}, memory},
    {"parsley", {none, none, 29, 17, 14, 13, 12, none, none}, memory},
    {"parsnip", {172, 57, 27, 19, 14, 15, 32, none, none}, memory},
    {"pea", {none, 36, 14, 9, 8, 6, 6, none, none}, memory},
    {"pepper", {none, none, none, 25, 13, 8, 8, 9, none}, memory},
    {"radish", {none, 29, 11, 6, 4, 4, 3, none, none}, memory},
    {"spinach", {63, 23, 12, 7, 6, 5, 6, none, none}, memory},
    {"tomato", {none, none, 43, 14, 8, 6, 6, 9, none}, memory},
    {"turnip", {none, none, 5, 3, 2, 1, 1, 1, 3}, memory},
    {"watermelon", {none, none, none, none, 12, 5, 4, 3, none}, memory},
}};

struct SeedOf {
  std::string_view crop_id, seed;
};
constexpr std::array<SeedOf, 34> seeds{{
    {"asparagus", "asparagus"},
    {"bean_lima", "bean, lima"},
    {"bean_green", "bean, snap"},
    {"bean_dry", "bean, snap"},
    {"beet_table", "beet"},
    {"chard", "beet"},
    {"cabbage", "cabbage"},
    {"kale", "cabbage"},
    {"collard", "cabbage"},
    {"broccoli", "cabbage"},
    {"brussels_sprouts", "cabbage"},
    {"bok_choy", "cabbage"},
    {"carrot", "carrot"},
    {"cauliflower", "cauliflower"},
    {"celery", "celery"},
    {"maize_sweet", "corn, sweet"},
    {"cucumber_fresh", "cucumber"},
    {"cucumber_machine", "cucumber"},
    {"eggplant", "eggplant"},
    {"lettuce", "lettuce"},
    {"cantaloupe", "muskmelon"},
    {"okra", "okra"},
    {"onion_dry", "onion"},
    {"onion_green", "onion"},
    {"parsley", "parsley"},
    {"parsnip", "parsnip"},
    {"pea_fresh", "pea"},
    {"pea_dry", "pea"},
    {"pepper_sweet", "pepper"},
    {"radish", "radish"},
    {"spinach", "spinach"},
    {"tomato", "tomato"},
    {"turnip", "turnip"},
    {"watermelon", "watermelon"},
}};
// clang-format on

}  // namespace

std::span<const EmergenceRow> emergence_table() { return rows; }

double days_to_emergence(std::string_view crop_id, double soil_c) {
  require_within("soil_c", soil_c, -5, 50, "°C");
  const auto* const link =
      std::find_if(seeds.begin(), seeds.end(), [&](const SeedOf& one) { return one.crop_id == crop_id; });
  if (link == seeds.end() || is_missing(soil_c) || soil_c < 0 || soil_c > 40) return missing;
  const auto* const row =
      std::find_if(rows.begin(), rows.end(), [&](const EmergenceRow& one) { return one.seed == link->seed; });
  const auto lower = static_cast<std::size_t>(soil_c / 5);
  const double share = soil_c / 5 - static_cast<double>(lower);
  if (share == 0) return row->days[lower];
  const double rate = (1 - share) / row->days[lower] + share / row->days[lower + 1];
  return 1 / rate;
}

}  // namespace v1
}  // namespace noonleaf
