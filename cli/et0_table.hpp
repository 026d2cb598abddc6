#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "arguments.hpp"

namespace noonleaf::cli {

/// One row of the answer of `et0`.
struct Et0Row {
  std::string key{};  ///< the day, or the begin of the hour
  double et0_mm = missing;
  std::string estimated{};
  std::vector<double> detail{};  ///< one value per detail column
};

/// Writes the answer of `et0` as CSV or JSON, a block at a time.
class Et0Table {
 public:
  /// What the table is called, and its columns beyond the first three.
  struct Heading {
    std::string_view key;   ///< "date", "time"
    std::string_view rows;  ///< name of the list in JSON: "days", "hours"
    std::vector<std::string_view> detail{};
  };

  Et0Table(const Et0Arguments& arguments, Heading heading);

  void add(const Et0Row& row);
  void end();

 private:
  void add_csv(const Et0Row& row);
  void add_json(const Et0Row& row);
  std::string number(double value) const;
  void flush();

  const Et0Arguments& arguments_;
  Heading heading_;
  std::string block_;
  std::string_view between_ = "\n";
};

}  // namespace noonleaf::cli
