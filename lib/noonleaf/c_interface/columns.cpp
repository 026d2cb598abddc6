#include "noonleaf/c_interface/columns.hpp"

#include <string>

#include "noonleaf/c_interface/guarded.hpp"

namespace noonleaf::c_interface {
namespace {

void require_rows(std::size_t count, std::size_t rows, const char* member) {
  if (count == rows) return;
  throw CallRefused(member, "has " + std::to_string(count) + " values for " + std::to_string(rows) + " rows",
                    "give one value a row, or stride 0 to repeat one");
}

constexpr int32_t first_year = 1, last_year = 9999;

}  // namespace

ConstColumn column_of(const noonleaf_column& column, std::size_t rows, const char* member) {
  if (column.data == nullptr) return {};
  require_rows(column.count, rows, member);
  return {column.data, column.stride};
}

MutableColumn result_of(const noonleaf_result_column& column, std::size_t rows, const char* member) {
  if (column.data == nullptr) return {};
  require_rows(column.count, rows, member);
  if (column.stride == 0 && rows > 1)
    throw CallRefused(member, "has stride 0: every row would overwrite the one before",
                      "give the distance between neighbours, in values");
  return {column.data, column.stride};
}

MutableColumn required_result(const noonleaf_result_column& column, const char* member) {
  if (column.data == nullptr && column.count > 0)
    throw CallRefused(member, "is a null pointer", "give memory for one value a row");
  return result_of(column, column.count, member);
}

double value_at(const ConstColumn& column, std::size_t i, double otherwise) {
  return column.data == nullptr ? otherwise : column.data[static_cast<std::ptrdiff_t>(i) * column.stride];
}

void put(const MutableColumn& column, std::size_t i, double value) {
  if (column.data != nullptr) column.data[static_cast<std::ptrdiff_t>(i) * column.stride] = value;
}

std::chrono::year_month_day day_of(const noonleaf_date& date, const char* member) {
  using namespace std::chrono;
  const year_month_day day{year{date.year}, month{static_cast<unsigned>(date.month)},
                           std::chrono::day{static_cast<unsigned>(date.day)}};
  const bool in_range = date.year >= first_year && date.year <= last_year && date.month >= 1 && date.day >= 1;
  if (!in_range || !day.ok())
    throw CallRefused(member,
                      std::to_string(date.year) + "-" + std::to_string(date.month) + "-" +
                          std::to_string(date.day) + " is no day of the years 1 to 9999",
                      "give year, month from 1 and day from 1");
  return day;
}

bool is_no_day(const noonleaf_date& date) { return date.year == 0 && date.month == 0 && date.day == 0; }

}  // namespace noonleaf::c_interface
