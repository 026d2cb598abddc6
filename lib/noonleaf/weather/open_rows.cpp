#include <memory>
#include <utility>

#include "noonleaf/weather/gathered_rows.hpp"
#include "noonleaf/weather/row_source.hpp"

namespace noonleaf {
inline namespace v1 {

std::unique_ptr<RowSource> open_rows(const std::filesystem::path& file, std::string shown_name,
                                     const WeatherOptions& options, FindingList& findings) {
  auto source = std::make_unique<TextSource>(file, std::move(shown_name));
  const std::string_view bytes = source->bytes_at_hand();
  const WeatherKind kind = weather_kind(file);
  if (is_forecast_json(bytes)) return read_forecast_json(std::move(source));
  if (is_ghcn_daily(bytes)) return read_ghcn_daily(std::move(source), kind, options, findings);
  if (is_surface_hourly(bytes)) return read_surface_hourly(std::move(source), kind, options, findings);
  return std::make_unique<CsvRows>(std::move(source), kind, options);
}

}  // namespace v1
}  // namespace noonleaf
