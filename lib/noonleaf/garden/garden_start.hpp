#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What a person can say about a garden with a tape measure, a can and a watch. Lengths, depths and volumes
/// are in the units that the garden is kept in (feet, inches, gallons; or metres, millimetres, litres), as
/// answered.
struct GardenStart {
  /// Who opens and closes, by role, and when on site.
  struct Person {
    std::string role{}, language = "en";
    std::vector<std::string> hours{};
  };
  /// A tap; its flow by the time that a bucket takes.
  struct Supply {
    std::string name{};
    double bucket = missing, bucket_seconds = missing;  ///< missing = not measured
  };
  /// A sprinkler, hose or drip line.
  struct Outlet {
    std::string name{}, kind = "sprinkler";
    std::size_t supply = 0;
    double minutes = missing;
    std::vector<double> can_depths{};  ///< empty = no cans yet: its rate is a guess
  };
  /// A bed and what grows on it.
  struct Patch {
    std::string name{};
    double length = missing, width = missing;
    std::size_t outlet = 0;
    std::string soil{}, crop{}, start_word{};
    std::optional<std::chrono::year_month_day> start{};
    bool framed = false;
    double rooting_depth = missing;  ///< inches or centimetres; missing = no limit
  };

  std::string name{};                        ///< of the garden
  std::string zone{};                        ///< IANA name
  UnitSystem units = UnitSystem::us;         ///< in which the numbers below are
  double latitude_deg = missing;             ///< positive to the north
  double longitude_deg = missing;            ///< positive to the east
  double elevation = missing;                ///< feet or metres above sea level
  std::vector<Person> people{};              ///< who opens and closes
  std::vector<std::string> allowed_hours{};  ///< "daily 05:00-10:00"; empty = any
  std::vector<Supply> supplies{};            ///< taps
  std::vector<Outlet> outlets{};             ///< sprinklers, hoses, drip lines
  std::vector<Patch> patches{};              ///< beds
};

/// One answer, read. On a refusal the answer is nothing and `refusal` says what to write instead.
template <class Value>
struct Answer {
  std::optional<Value> value{};  ///< nothing where the answer cannot be used
  std::string refusal{};         ///< why, and one valid answer; empty where there is a value
};

/// "46.07, -118.33"
struct Place {
  double latitude_deg = missing;   ///< -90 to 90
  double longitude_deg = missing;  ///< -180 to 180
};
/// Reads a Place.
Answer<Place> parse_place(std::string_view text);

/// A number from low to high; a decimal point, no thousands separator.
Answer<double> parse_answer_number(std::string_view text, double low, double high);

/// "mon-fri 06:00-14:30; sat 08:00-12:00"
Answer<std::vector<std::string>> parse_answer_hours(std::string_view text);

/// "24 x 4"
struct Sides {
  double length = missing;  ///< the first number, feet or metres
  double width = missing;   ///< the second
};
/// Reads Sides.
Answer<Sides> parse_sides(std::string_view text);

/// "0.22 0.25 0.19", spaces or commas between them; two cans at least
Answer<std::vector<double>> parse_can_depths(std::string_view text);

/// A texture id, or 1 to 4 for the length of the ribbon that moist soil makes between thumb and finger:
/// none, under an inch, under two, longer (docs/garden.md).
Answer<std::string> parse_soil(std::string_view text);

/// A crop id or its name in English or Spanish; a word that fits several crops lists them.
Answer<std::string> parse_crop(std::string_view text);

/// "sown 2025-05-17", "transplanted 2025-05-17", "established 2022-04-01"
struct PlantingBegin {
  std::string word{};                  ///< "sown", "transplanted" or "established"
  std::chrono::year_month_day date{};  ///< of that
};
/// Reads a PlantingBegin.
Answer<PlantingBegin> parse_begin(std::string_view text);

/// The whole of a commented garden.toml. What was not measured is said in a comment beside the line that
/// would hold it.
///
/// Note      Whether the garden can be read is for parse_garden to say: call it on the result before writing.
std::string garden_start_text(const GardenStart& start);

/// The letter (a, b, … z, bed27, …) that a bed gets as its id.
std::string bed_letter_id(std::size_t index);

/// The header line of an empty journal.
std::string empty_journal_text();

/// How to keep a weather file by hand, with its header line.
std::string weather_guide_text(UnitSystem units);

}  // namespace v1
}  // namespace noonleaf
