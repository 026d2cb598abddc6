#include "noonleaf/weather/checked_rows.hpp"

#include <utility>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/stamp_resolver.hpp"
#include "noonleaf/weather/unit_mixup.hpp"

namespace noonleaf {
inline namespace v1 {

CheckedRows::CheckedRows(const std::filesystem::path& file, std::string shown_name,
                         const WeatherOptions& options)
    : findings_(options),
      source_(open_rows(file, std::move(shown_name), options, findings_)),
      site_(options.site),
      checks_(source_->step(), *source_, findings_),
      day_sun_(site_, 86'400, *source_, findings_) {}

bool CheckedRows::next_block(std::vector<TableRow>& rows) {
  if (ended_) {
    rows.clear();
    return false;
  }
  ended_ = !source_->next_block(rows);
  if (std::exchange(first_block_, false)) {
    look_at_first_block(rows);
  } else {
    convert_radiation(rows);
  }
  const bool days = source_->step() == WeatherStep::day;
  for (TableRow& row : rows) {
    for (std::size_t index = 0; mixed_up_.any() && index < row.values.size(); ++index)
      if (mixed_up_.test(index)) row.values[index] = missing;
    checks_.check(row.values, row.place);
    if (days) day_sun_.check(row);
  }
  if (ended_) checks_.finish();
  if (ended_ && days) day_sun_.finish();
  return !rows.empty() || !ended_;
}

void CheckedRows::look_at_first_block(std::vector<TableRow>& rows) {
  if (source_->step() == WeatherStep::hour) {
    length_ = period_length(rows, *source_);
    source_->set_length(length_);
  }
  convert_radiation(rows);
  check_pressure(site_, rows, *source_, findings_);
  mixed_up_ = find_unit_mixups(rows, source_->step(), *source_, findings_);
}

void CheckedRows::convert_radiation(std::vector<TableRow>& rows) const {
  if (source_->step() != WeatherStep::hour) return;
  const UnitConversion conversion = source_->conversion(WeatherQuantity::rs);
  for (TableRow& row : rows) {
    double& rs = row.values[static_cast<std::size_t>(WeatherQuantity::rs)];
    rs = conversion.to_library(rs);
  }
}

std::vector<std::string> CheckedRows::notes() const {
  std::vector<std::string> notes = source_->notes();
  const bool sun = source_->quantities().test(static_cast<std::size_t>(WeatherQuantity::rs)) ||
                   source_->quantities().test(static_cast<std::size_t>(WeatherQuantity::sunshine));
  if (sun && (is_missing(site_.latitude_deg) || is_missing(site_.elevation_m)))
    notes.push_back("radiation and sunshine were not held against the sun: the place is not known");
  for (std::string& note : findings_.notes()) notes.push_back(std::move(note));
  return notes;
}

}  // namespace v1
}  // namespace noonleaf
