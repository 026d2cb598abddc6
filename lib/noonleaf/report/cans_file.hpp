#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/sprinkler/catch_cans.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What the sheet of a catch-can test does not say itself.
struct CanSheetFacts {
  double minutes = missing;          ///< how long the sprinkler ran
  double can_diameter_mm = missing;  ///< inside, at the rim; needed where the sheet holds millilitres
};

/// A catch-can test as somebody wrote it down, worked out.
struct CanSheet {
  CatchCanTest test{};                    ///< as written down
  CanResult result{};                     ///< worked out of it
  std::vector<std::size_t> lines{};       ///< of the file, one a can
  UnitSystem units = UnitSystem::metric;  ///< of the depths in the sheet
  bool has_places = false;                ///< positions were given
};

/// Reads a sheet of catch cans: one can a row, a header with `depth_mm`, `depth_in` or `caught_ml`, and if
/// they were measured `x_m` and `y_m`, or `x_ft` and `y_ft` (x to the east, y to the north). Columns `can`
/// and `note` are for people.
///
/// Throws    Error with every problem and its line: of the sheet, and as catch_can_result
CanSheet parse_can_sheet(std::string_view text, std::string_view shown_name, const CanSheetFacts& facts);

/// Reads the file of that name.
CanSheet read_can_sheet(const std::filesystem::path& file, std::string_view shown_name,
                        const CanSheetFacts& facts);

}  // namespace v1
}  // namespace noonleaf
