#include "noonleaf/weather/gathered_rows.hpp"

#include <algorithm>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {

GatheredRows::GatheredRows(std::unique_ptr<TextSource> source, std::string format, WeatherStep step,
                           WeatherKind kind)
    : source_(std::move(source)), format_(std::move(format)), step_(step), kind_(kind) {}

bool GatheredRows::next_block(std::vector<TableRow>& rows) {
  const std::size_t count = std::min(rows_in_first_block, rows_.size() - given_);
  const auto first = rows_.begin() + static_cast<std::ptrdiff_t>(given_);
  rows.assign(first, first + static_cast<std::ptrdiff_t>(count));
  given_ += count;
  return given_ < rows_.size();
}

ReadProgress GatheredRows::progress() const { return {source_->bytes_read(), source_->bytes_in_file()}; }

std::optional<std::chrono::seconds> GatheredRows::length() const {
  return std::chrono::seconds{step_ == WeatherStep::day ? 86'400 : 3600};
}

Problem GatheredRows::at(RowPlace place, std::optional<WeatherQuantity> quantity, std::string message,
                         std::string fix) const {
  if (quantity) {
    const auto known = places_.find({place.line, *quantity});
    if (known != places_.end()) place = known->second;
  }
  Problem found = source_->problem(place.line, std::move(message), std::move(fix));
  if (place.line > 0) found.excerpt = source_->line_text(place.offset);
  if (quantity) found.field = canonical_name(*quantity);
  return found;
}

Problem GatheredRows::at_column(WeatherQuantity quantity, std::string message, std::string fix) const {
  Problem found = source_->problem(0, std::move(message), std::move(fix));
  found.field = canonical_name(quantity);
  return found;
}

WeatherQuantities GatheredRows::quantities() const {
  WeatherQuantities quantities;
  for (const TableRow& row : rows_)
    for (std::size_t index = 0; index < row.values.size(); ++index)
      if (is_known(row.values[index])) quantities.set(index);
  return quantities;
}

std::string GatheredRows::unit(WeatherQuantity quantity) const {
  for (const WeatherColumn& column : weather_columns())
    if (column.name == canonical_name(quantity)) return std::string(column.unit);
  return {};
}

std::string GatheredRows::wanted_station(const WeatherOptions& options, const std::string& column) const {
  if (!options.where) return {};
  if (lower_case(trimmed(options.where->column)) == lower_case(column))
    return std::string(trimmed(options.where->value));
  if (options.absent_headers == AbsentHeader::ignored) return {};
  Problem found = source_->problem(0, "rows of this format are chosen by " + column + " only",
                                   "write it like --where " + column + "=" + in_quotes("USW00094846"));
  found.field = "--where";
  throw Error(std::move(found));
}

void GatheredRows::require_whole_quotes(const CsvRecord& record, RowPlace place) const {
  const auto broken = std::find_if(record.cells.begin(), record.cells.end(),
                                   [](const CsvCell& cell) { return !cell.closed || cell.text_behind; });
  if (broken == record.cells.end()) return;
  Problem found = source_->problem(
      place.line + broken->line,
      broken->closed ? "text stands behind the closing quote of this cell: a quote is missing"
                     : "a quote is opened here and never closed",
      "fetch the file again");
  found.column = broken->column;
  found.text = "\"";
  if (broken->line == 0) found.excerpt = source_->line_text(place.offset);
  throw Error(std::move(found));
}

void GatheredRows::refuse(Problem problem) {
  if (problems_.size() < problems_kept) problems_.push_back(std::move(problem));
}

void GatheredRows::remember(RowPlace row, WeatherQuantity quantity, RowPlace value) {
  if (row.line != value.line) places_[{row.line, quantity}] = value;
}

}  // namespace v1
}  // namespace noonleaf
