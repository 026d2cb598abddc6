// Hourly and sub-hourly weather CSV, by every door; stamps that begin or end their period.
#include "fuzz_target.hpp"
#include "weather_checks.hpp"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  auto options = fuzz::weather_options();
  options.stamps = noonleaf::StampMark::period_begin;
  fuzz::read_as_hours(bytes, options);
  options.stamps = noonleaf::StampMark::period_end;
  options.date_order = noonleaf::DateOrder::day_first;
  options.accept = {"gap", "spike"};
  fuzz::read_as_days(bytes, options);
  return 0;
}
