// NOAA GHCN-Daily by station. Bytes that are not recognised get the format's header.
#include "noonleaf/weather/gathered_rows.hpp"

#include "fuzz_target.hpp"
#include "weather_checks.hpp"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string bytes(fuzz::text_of(data, size));
  if (!noonleaf::is_ghcn_daily(bytes))
    bytes.insert(0, "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n");
  auto options = fuzz::weather_options();
  fuzz::read_as_days(bytes, options);
  options.strictness = noonleaf::Strictness::strict;
  options.where = noonleaf::RowFilter{"ID", "USW00094846"};
  fuzz::read_as_days(bytes, options);
  return 0;
}
