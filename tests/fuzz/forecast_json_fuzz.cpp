// Saved forecasts in JSON: hourly periods and the raw grid.
#include "noonleaf/weather/gathered_rows.hpp"

#include "fuzz_target.hpp"
#include "weather_checks.hpp"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string bytes(fuzz::text_of(data, size));
  if (!noonleaf::is_forecast_json(bytes)) bytes.insert(0, "{");
  fuzz::read_as_hours(bytes, fuzz::weather_options());
  return 0;
}
