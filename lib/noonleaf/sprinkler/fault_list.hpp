#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {

/// Collects what is wrong with a request, so that a person hears all of it at once.
class FaultList {
 public:
  /// Low and high are both allowed; missing is a fault.
  void within(std::string_view field, double value, double low, double high, std::string_view unit);
  /// As within, but missing passes.
  void within_or_missing(std::string_view field, double value, double low, double high,
                         std::string_view unit);
  /// Above 0 and at most high; missing is a fault.
  void positive(std::string_view field, double value, double high, std::string_view unit);
  /// As positive, but missing passes.
  void positive_or_missing(std::string_view field, double value, double high, std::string_view unit);
  /// A fault in words, in row `row` of a batch.
  void add(std::string_view field, std::size_t row, std::string_view message, std::string_view fix);
  /// Throws    Error with everything found; does nothing when nothing was
  void throw_if_any() const;

 private:
  std::vector<Problem> problems_;
};

}  // namespace v1
}  // namespace noonleaf
