#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/file_problems.hpp"
#include "noonleaf/garden/garden.hpp"
#include "noonleaf/weather/csv_record.hpp"

namespace noonleaf {
inline namespace v1 {

/// What is wrong in a CSV file of the garden folder, with the line that is being read.
class LineProblems {
 public:
  explicit LineProblems(std::string_view shown_name) : shown_name_(shown_name) {}

  /// The record that is read now begins here. Line 0 stands for the file as a whole.
  void set_line(std::size_t line, std::string_view text) {
    line_ = line;
    text_ = text;
  }

  void refuse(const CsvCell& cell, std::string field, std::string message, std::string fix);
  void refuse_line(std::string message, std::string fix);

  /// A cell that names a bed which the garden does not have.
  void require_bed(const CsvCell& cell, const std::string& id, const Garden& garden);

  std::size_t size() const { return problems_.size(); }
  void throw_if_any() { problems_.throw_if_any(); }

 private:
  Problem line_problem(std::string message, std::string fix) const;

  std::string shown_name_;
  std::size_t line_ = 0;
  std::string_view text_{};
  FileProblems problems_;
};

}  // namespace v1
}  // namespace noonleaf
