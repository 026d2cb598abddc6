#pragma once

#include <cstddef>
#include <exception>
#include <string>
#include <vector>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One thing that is wrong, and where, in words that a person can act on.
struct Problem {
  std::string file{};      ///< as the user typed it; empty when no file is involved
  std::size_t row = 0;     ///< index in a batch
  std::size_t line = 0;    ///< 1-based; 0 = none
  std::size_t column = 0;  ///< 1-based, counts characters, so that an editor jumps there; 0 = none
  std::string field{};     ///< column or option name (tmax_c)
  std::string text{};      ///< offending text exactly as found
  std::string message{};   ///< what is wrong, with the permitted range
  std::string fix{};       ///< one thing to do next
  std::string excerpt{};   ///< the whole source line as found, for the caret; empty when there is none
};

/// The only exception type that noonleaf throws: one or more problems.
class Error : public std::exception {
 public:
  /// One problem.
  explicit Error(Problem problem);
  /// Several problems.
  explicit Error(std::vector<Problem> problems);

  /// All problems, in the order in which they were found.
  const std::vector<Problem>& problems() const noexcept { return problems_; }

  /// The first problem in one line, and how many follow.
  const char* what() const noexcept override { return summary_.c_str(); }

 private:
  std::vector<Problem> problems_;
  std::string summary_;
};

/// How many problems a reader lists before it only counts them.
inline constexpr std::size_t problems_shown = 20;

/// `file:line:column: field: message`, leaving out what is not known.
std::string headline(const Problem& problem);

/// The problem as a person reads it: headline, source line with a caret under the offending text, fix.
/// Control characters of the source line are shown as a middle dot: no input reaches the terminal raw.
/// Example
///   july.csv:17:12: tmax_c: "61.4" is outside -40 to 60 °C
///     2024-07-06,61.4,12.3
///                ^^^^
///     fix: check the logger's unit; 61.4 °F would be 16.3 °C
std::string describe(const Problem& problem);

/// Many problems: each described, `problems_shown` at most, then a count of the rest.
std::string describe(const std::vector<Problem>& problems);

/// Shortest text that reads back as the same number ("0.1", "12", "-40"); "missing" for NaN. Ignores the
/// locale.
std::string number_text(double value);

}  // namespace v1
}  // namespace noonleaf
