#include <memory>
#include <utility>

#include "noonleaf/weather/row_source.hpp"

namespace noonleaf {
inline namespace v1 {

std::unique_ptr<RowSource> open_rows(const std::filesystem::path& file, std::string shown_name,
                                     const WeatherOptions& options, FindingList& /*findings*/) {
  return std::make_unique<CsvRows>(file, std::move(shown_name), options);
}

}  // namespace v1
}  // namespace noonleaf
