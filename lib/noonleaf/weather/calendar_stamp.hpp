#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "noonleaf/weather/options.hpp"

namespace noonleaf {
inline namespace v1 {

/// A date and clock time as written, before it is known where on Earth.
struct LocalStamp {
  std::int64_t seconds = 0;                      ///< since 1970-01-01 00:00 on the clock that wrote it
  std::optional<std::chrono::seconds> offset{};  ///< of that clock from UTC, where the text says so (Z is 0)
};

/// What reading a date or stamp gave: a value, or why not and one thing to do.
template <class Value>
struct Reading {
  std::optional<Value> value{};
  std::string message{}, fix{};
};

/// Days since 1970-01-01 of a date that exists; none otherwise. Years 1 to 9999.
std::optional<std::int32_t> day_number(int year, unsigned month, unsigned day);

/// The common cases, fast: "2024-07-06" and "2024-07-06T13:00[:00][Z|+02:00]" (T or one blank), validated.
/// At least 32 bytes must be readable at `place`.
/// Result    first byte behind the text; nullptr where it is something else: read_date, read_stamp decide
/// then
const char* plain_iso_date(const char* place, std::int32_t& day);
const char* plain_iso_stamp(const char* place, LocalStamp& stamp);

/// Any date text the reader knows. Faults: not a date, a date that does not exist, an ambiguous date.
Reading<std::int32_t> read_date(std::string_view text, DateOrder order);

/// Any date with clock time the reader knows; 24:00 is midnight at the day's end; decimals of a second are
/// dropped. Faults as read_date, and a clock time that does not exist.
Reading<LocalStamp> read_stamp(std::string_view text, DateOrder order);

/// "13:00" or "13:00:00" as seconds since midnight.
Reading<std::int64_t> read_clock(std::string_view text);

/// "2024-07-06", of days since 1970-01-01.
std::string date_text(std::int32_t day);

}  // namespace v1
}  // namespace noonleaf
