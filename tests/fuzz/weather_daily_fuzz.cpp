// Daily weather CSV, by every door, leniently and strictly, in both orders of slashed dates.
#include "fuzz_target.hpp"
#include "weather_checks.hpp"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  auto options = fuzz::weather_options();
  fuzz::read_as_days(bytes, options);
  options.strictness = noonleaf::Strictness::strict;
  options.date_order = noonleaf::DateOrder::month_first;
  options.columns = {{"rain_mm", "Precip (mm)"}};
  options.absent_headers = noonleaf::AbsentHeader::ignored;
  options.where = noonleaf::RowFilter{"station", "A"};
  fuzz::read_as_days(bytes, options);
  return 0;
}
