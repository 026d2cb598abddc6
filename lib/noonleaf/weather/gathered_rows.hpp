#pragma once

#include <array>
#include <chrono>
#include <cstddef>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/row_source.hpp"
#include "noonleaf/weather/text_source.hpp"

namespace noonleaf {
inline namespace v1 {

/// Rows of a format that is read whole before the first is given out: the open formats. They are small by
/// nature, and some have one line per value.
class GatheredRows : public RowSource {
 public:
  bool next_block(std::vector<TableRow>& rows) override;
  std::string format() const override { return format_; }
  WeatherStep step() const override { return step_; }
  WeatherKind kind() const override { return kind_; }
  std::vector<std::string> notes() const override { return notes_; }
  std::vector<Problem> take_problems() override { return std::exchange(problems_, {}); }
  ReadProgress progress() const override;
  std::optional<std::chrono::seconds> length() const override;
  std::optional<std::chrono::sys_seconds> issued() const override { return issued_; }

  Problem at(RowPlace place, std::optional<WeatherQuantity> quantity, std::string message,
             std::string fix) const override;
  Problem at_column(WeatherQuantity quantity, std::string message, std::string fix) const override;
  WeatherQuantities quantities() const override;
  UnitConversion conversion(WeatherQuantity) const override { return {}; }
  std::string unit(WeatherQuantity quantity) const override;

 protected:
  GatheredRows(std::unique_ptr<TextSource> source, std::string format, WeatherStep step, WeatherKind kind);

  /// The station that the user's filter asks for, in a format whose station column is `column`; empty for
  /// any. Throws    Error where the filter is on another column and has to be there
  std::string wanted_station(const WeatherOptions& options, const std::string& column) const;

  /// Throws    Error where a quote of the record lacks its other half: it would swallow the cells or rows
  /// behind it
  void require_whole_quotes(const CsvRecord& record, RowPlace place) const;
  /// Keeps a problem that refuses the file.
  void refuse(Problem problem);
  /// Says from which place a value came, where a row is made of several places.
  void remember(RowPlace row, WeatherQuantity quantity, RowPlace value);

  const TextSource& source() const { return *source_; }
  TextSource& source() { return *source_; }

  std::vector<TableRow> rows_{};
  std::vector<std::string> notes_{};
  std::optional<std::chrono::sys_seconds> issued_{};

 private:
  std::unique_ptr<TextSource> source_;
  std::string format_;
  WeatherStep step_;
  WeatherKind kind_;
  std::size_t given_ = 0;
  std::vector<Problem> problems_;
  std::map<std::pair<std::size_t, WeatherQuantity>, RowPlace> places_;  // by line of the row
};

/// The rows of a NOAA GHCN-Daily by-station CSV: one line per element and day, tenths, quality flags
/// honoured. With or without its header line. True for `is_ghcn_daily` by its first bytes.
bool is_ghcn_daily(std::string_view bytes);
std::unique_ptr<RowSource> read_ghcn_daily(std::unique_ptr<TextSource> source, WeatherKind kind,
                                           const WeatherOptions& options, FindingList& findings);

/// The rows of an Integrated Surface Database "global-hourly" CSV: coded cells, quality codes honoured, one
/// report chosen per hour.
bool is_surface_hourly(std::string_view bytes);
std::unique_ptr<RowSource> read_surface_hourly(std::unique_ptr<TextSource> source, WeatherKind kind,
                                               const WeatherOptions& options, FindingList& findings);

/// The rows of a forecast of the US National Weather Service in JSON: hourly periods or raw grid.
bool is_forecast_json(std::string_view bytes);
std::unique_ptr<RowSource> read_forecast_json(std::unique_ptr<TextSource> source);

}  // namespace v1
}  // namespace noonleaf
