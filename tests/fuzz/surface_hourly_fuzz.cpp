// Integrated Surface Database, global-hourly CSV. Bytes that are not recognised get a header of the format.
#include "noonleaf/weather/gathered_rows.hpp"

#include "fuzz_target.hpp"
#include "weather_checks.hpp"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string bytes(fuzz::text_of(data, size));
  if (!noonleaf::is_surface_hourly(bytes))
    bytes.insert(0, "\"STATION\",\"DATE\",\"REPORT_TYPE\",\"WND\",\"TMP\",\"DEW\",\"AA1\",\"MA1\"\n");
  fuzz::read_as_hours(bytes, fuzz::weather_options());
  return 0;
}
