#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/weather/calendar_stamp.hpp"
#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/options.hpp"
#include "noonleaf/weather/quantity.hpp"
#include "noonleaf/weather/table_plan.hpp"
#include "noonleaf/weather/text_source.hpp"
#include "noonleaf/weather/weather_reader.hpp"

namespace noonleaf {
inline namespace v1 {

/// Where a row stands in its file.
struct RowPlace {
  std::size_t line = 0;
  std::uint64_t offset = 0;  ///< of its first byte
};

/// One value per quantity, in the library's units; the index is the WeatherQuantity.
using WeatherValues = std::array<double, weather_quantity_count>;

/// One row of a weather table.
struct TableRow {
  LocalStamp stamp{};                     ///< of a daily row: midnight at the day's begin
  std::optional<LocalStamp> end_stamp{};  ///< where the table has time_begin and time_end
  RowPlace place{};
  WeatherValues values{};
};

/// How many problems of one file are kept; the rest are counted.
inline constexpr std::size_t problems_kept = 10'000;

/// The rows of a weather CSV, one after the other. Cells that are plain take a fast path that looks at each
/// byte once; anything unusual (quotes, blanks, plus signs, faults) goes through split_record, which explains
/// it.
class CsvTable {
 public:
  /// Throws    Error: of the header (plan_table), or no rows
  CsvTable(std::unique_ptr<TextSource> source, const WeatherOptions& options);

  /// The next row. Rows that cannot be read are left out and their problems kept.
  /// Result    false at the end of the file
  /// Throws    Error: a fault after which reading makes no sense; several stations without a filter
  bool next(TableRow& row);

  WeatherStep step() const { return step_; }
  const TablePlan& plan() const { return plan_; }
  const TextSource& source() const { return *source_; }
  std::size_t header_line() const { return header_place_.line; }

  /// Problems of rows so far; taking empties the list.
  std::vector<Problem> take_problems();

  /// A problem of the cell that holds `quantity` in the row at `place`, with its text and excerpt; of the
  /// whole row without a quantity.
  Problem problem(RowPlace place, std::optional<WeatherQuantity> quantity, std::string message,
                  std::string fix) const;
  /// A problem of the column that holds `quantity`, at its header.
  Problem column_problem(WeatherQuantity quantity, std::string message, std::string fix) const;

 private:
  enum class Outcome { taken, skipped, unclear };
  enum class Kind : unsigned char { skip, value, converted, date, stamp, end_stamp, filter, station, slow };
  struct FastColumn {
    Kind kind = Kind::skip;
    bool last = false;
    std::size_t slot = 0;
    UnitConversion conversion{};
  };

  void read_header();
  void choose_step();
  void prepare_fast_columns();
  bool skip_to_row();
  Outcome fast_row(const char*& place, TableRow& row);
  static bool fast_key(Kind kind, const char* cell, const char* end, TableRow& row);
  Outcome fast_choice(Kind kind, const char* cell, const char* end);
  Outcome slow_row(TableRow& row);
  CsvRecord whole_record();
  bool take_cell(std::size_t index, const CsvCell& cell, TableRow& row);
  bool take_value(std::size_t index, const CsvCell& cell, std::string_view text, TableRow& row);
  bool take_key(std::size_t index, const CsvCell& cell, std::string_view text, TableRow& row);
  bool is_wanted(const CsvRecord& record);
  bool has_right_shape(const CsvRecord& record);
  bool note_station(std::string_view station);
  void learn_decimal_mark(std::string_view text);
  void refuse_cell(const CsvCell& cell, std::string_view field, std::string message, std::string fix);
  void keep(Problem problem);
  [[noreturn]] void refuse_several_stations();
  void refuse_no_rows() const;

  std::unique_ptr<TextSource> source_;
  WeatherOptions options_;
  TablePlan plan_;
  WeatherStep step_ = WeatherStep::day;
  RowPlace header_place_;
  std::vector<FastColumn> fast_;
  char mark_ = '\0';    // '\0': not seen yet (semicolon and tab files)
  std::string wanted_;  // value of the filter
  std::string station_;
  std::vector<std::string> other_values_;  // stations or filter values that were left out
  bool any_row_ = false, several_stations_ = false;
  std::vector<Problem> problems_;
  std::size_t problems_counted_ = 0;
};

}  // namespace v1
}  // namespace noonleaf
