#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {

/// How many problems of one file are listed; a file with more is another kind of file.
inline constexpr std::size_t most_file_problems = 1'000;

/// Longest line that is shown beside a problem: a line of a megabyte would be kept once for each of its
/// cells.
inline constexpr std::size_t longest_excerpt_bytes = 4096;

/// A line without its end, as it is shown beside a problem; empty when it is too long for that.
inline std::string excerpt_of(std::string_view line) {
  while (!line.empty() && (line.back() == '\n' || line.back() == '\r')) line.remove_suffix(1);
  return line.size() > longest_excerpt_bytes ? std::string{} : valid_utf8(line);
}

/// What is wrong in one file, while it is read.
class FileProblems {
 public:
  /// Throws    Error with all of them when there are more than are listed
  void add(Problem problem) {
    if (problems_.size() == most_file_problems) {
      Problem more;
      more.file = problem.file;
      more.message =
          "there are more problems than " + grouped(most_file_problems) + "; the rest is not listed";
      more.fix = "correct these first";
      problems_.push_back(std::move(more));
      throw Error(std::move(problems_));
    }
    problems_.push_back(std::move(problem));
  }

  std::size_t size() const { return problems_.size(); }
  const std::vector<Problem>& all() const { return problems_; }

  void throw_if_any() {
    if (!problems_.empty()) throw Error(std::move(problems_));
  }

 private:
  std::vector<Problem> problems_{};
};

}  // namespace v1
}  // namespace noonleaf
