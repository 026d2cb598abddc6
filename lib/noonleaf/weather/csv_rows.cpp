#include <utility>

#include "noonleaf/weather/row_source.hpp"

namespace noonleaf {
inline namespace v1 {

CsvRows::CsvRows(std::unique_ptr<TextSource> source, WeatherKind kind, const WeatherOptions& options)
    : table_(std::move(source), options), kind_(kind), stamps_(stated_stamps(options)) {}

bool CsvRows::next_block(std::vector<TableRow>& rows) {
  const std::size_t wanted = std::exchange(first_block_, false) ? rows_in_first_block : rows_in_block;
  rows.resize(wanted);  // rows of the block before are overwritten in place
  for (std::size_t count = 0; count < wanted; ++count) {
    if (table_.next(rows[count])) continue;
    rows.resize(count);
    return false;
  }
  return true;
}

std::string CsvRows::format() const {
  return step() == WeatherStep::day ? "weather CSV, daily" : "weather CSV, hourly or shorter";
}

ReadProgress CsvRows::progress() const {
  return {table_.source().bytes_read(), table_.source().bytes_in_file()};
}

StampMark CsvRows::stated_stamps(const WeatherOptions& options) const {
  if (step() == WeatherStep::day || table_.plan().find(ColumnRole::stamp_begin))
    return StampMark::period_begin;
  if (table_.plan().find(ColumnRole::stamp_end)) return StampMark::period_end;
  if (options.stamps != StampMark::unstated) return options.stamps;
  Problem found = table_.source().problem(
      table_.header_line(), "it is not said whether a row's time is the begin or the end of its period",
      "name the column time_begin or time_end, or say --stamps begin or --stamps end");
  found.field = "time";
  throw Error(std::move(found));
}

// A mean in W/m2 is 0.0036 MJ/m2 per hour; a sum in MJ/m2 is one of the row's period.
void CsvRows::set_length(std::chrono::seconds length) {
  const bool mean = unit(WeatherQuantity::rs) == "W/m2";
  hourly_radiation_ = mean ? UnitConversion{0.0, 0.0036, 1.0}
                           : UnitConversion{0.0, 3600.0, static_cast<double>(length.count())};
}

Problem CsvRows::at(RowPlace place, std::optional<WeatherQuantity> quantity, std::string message,
                    std::string fix) const {
  return table_.problem(place, quantity, std::move(message), std::move(fix));
}

Problem CsvRows::at_column(WeatherQuantity quantity, std::string message, std::string fix) const {
  return table_.column_problem(quantity, std::move(message), std::move(fix));
}

WeatherQuantities CsvRows::quantities() const {
  WeatherQuantities quantities;
  for (const PlannedColumn& column : table_.plan().columns)
    if (column.role == ColumnRole::value) quantities.set(static_cast<std::size_t>(column.quantity));
  return quantities;
}

UnitConversion CsvRows::conversion(WeatherQuantity quantity) const {
  if (step() == WeatherStep::hour && quantity == WeatherQuantity::rs) return hourly_radiation_;
  const auto index = table_.plan().find(quantity);
  return index ? table_.plan().columns[*index].conversion : UnitConversion{};
}

std::string CsvRows::unit(WeatherQuantity quantity) const {
  const auto index = table_.plan().find(quantity);
  return index ? table_.plan().columns[*index].unit : std::string{};
}

}  // namespace v1
}  // namespace noonleaf
