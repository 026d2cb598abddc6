#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/options.hpp"
#include "noonleaf/weather/text_source.hpp"
#include "noonleaf/weather/unit_conversion.hpp"

namespace noonleaf {
inline namespace v1 {

/// The most columns a table may have.
inline constexpr std::size_t most_columns = 1000;

/// What the reader does with a column of the file.
enum class ColumnRole { ignored, date, clock, stamp, stamp_begin, stamp_end, value, filter, station };

/// One column of the file.
struct PlannedColumn {
  ColumnRole role = ColumnRole::ignored;
  std::string header{};  ///< as in the file, trimmed
  std::string name{};    ///< canonical, with the unit of the file ("tmax_f"); else the header
  WeatherQuantity quantity = WeatherQuantity::t_max;  ///< where role is value
  std::string unit{};
  UnitConversion conversion{};
};

/// How to read the rows of a table.
struct TablePlan {
  char separator = ',';
  std::vector<PlannedColumn> columns{};
  std::vector<std::string> notes{};

  std::optional<std::size_t> find(ColumnRole role) const;
  /// The column that holds a quantity.
  std::optional<std::size_t> find(WeatherQuantity quantity) const;
};

/// What the header line means under the user's options.
/// Input     record  the header, at line `line` of `source`
/// Throws    Error with every problem of the header
TablePlan plan_table(const CsvRecord& record, char separator, std::size_t line, const std::string& excerpt,
                     const TextSource& source, const WeatherOptions& options);

}  // namespace v1
}  // namespace noonleaf
