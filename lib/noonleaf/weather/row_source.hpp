#pragma once

#include <chrono>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/weather/csv_table.hpp"
#include "noonleaf/weather/daily_file.hpp"
#include "noonleaf/weather/finding_list.hpp"
#include "noonleaf/weather/value_checks.hpp"
#include "noonleaf/weather/weather_reader.hpp"

namespace noonleaf {
inline namespace v1 {

/// The rows of a weather file of any format, in the library's units, before any check but the publisher's own
/// flags. Also says where a value stands in the file.
class RowSource : public ValueLocator {
 public:
  /// Replaces `rows` by the next; false when no more follow them. Rows of a day begin at its local midnight;
  /// rows of an hour carry an offset or are in the site's zone.
  virtual bool next_block(std::vector<TableRow>& rows) = 0;

  virtual std::string format() const = 0;
  virtual WeatherStep step() const = 0;
  virtual WeatherKind kind() const = 0;
  virtual std::vector<std::string> notes() const { return {}; }
  virtual std::vector<Problem> take_problems() { return {}; }
  virtual ReadProgress progress() const = 0;
  /// Which end of its period a row's stamp marks.
  virtual StampMark stamps() const { return StampMark::period_begin; }
  /// Length of a row where the format fixes it.
  virtual std::optional<std::chrono::seconds> length() const { return std::nullopt; }
  /// Told once the length of hourly rows is known, before values are converted: radiation per period depends
  /// on it.
  virtual void set_length(std::chrono::seconds /*length*/) {}
  /// When a forecast was made.
  virtual std::optional<std::chrono::sys_seconds> issued() const { return std::nullopt; }
};

/// Rows of the first block of a file: those by which its columns are judged for their unit.
inline constexpr std::size_t rows_in_first_block = 1024;
/// Rows of a later block: few enough to stay in the cache nearest to the processor while every check looks at
/// them.
inline constexpr std::size_t rows_in_block = 128;

/// Opens a file and recognises its format by content.
/// Throws    Error as read_daily_weather
std::unique_ptr<RowSource> open_rows(const std::filesystem::path& file, std::string shown_name,
                                     const WeatherOptions& options, FindingList& findings);

/// The canonical weather CSV as a row source.
class CsvRows final : public RowSource {
 public:
  CsvRows(std::unique_ptr<TextSource> source, WeatherKind kind, const WeatherOptions& options);

  bool next_block(std::vector<TableRow>& rows) override;
  std::string format() const override;
  WeatherStep step() const override { return table_.step(); }
  WeatherKind kind() const override { return kind_; }
  std::vector<std::string> notes() const override { return table_.plan().notes; }
  std::vector<Problem> take_problems() override { return table_.take_problems(); }
  ReadProgress progress() const override;
  StampMark stamps() const override { return stamps_; }
  void set_length(std::chrono::seconds length) override;

  Problem at(RowPlace place, std::optional<WeatherQuantity> quantity, std::string message,
             std::string fix) const override;
  Problem at_column(WeatherQuantity quantity, std::string message, std::string fix) const override;
  WeatherQuantities quantities() const override;
  UnitConversion conversion(WeatherQuantity quantity) const override;
  std::string unit(WeatherQuantity quantity) const override;

 private:
  StampMark stated_stamps(const WeatherOptions& options) const;

  CsvTable table_;
  WeatherKind kind_;
  StampMark stamps_;
  bool first_block_ = true;
  UnitConversion hourly_radiation_{};  // from what one row of an hourly table holds
};

}  // namespace v1
}  // namespace noonleaf
