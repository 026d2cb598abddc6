#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/weather/checks.hpp"
#include "noonleaf/weather/options.hpp"

namespace noonleaf {
inline namespace v1 {

/// What the checks of one file found, with the user's word on what to let pass. Problems are made only when
/// they are kept, since a file may have a million.
class FindingList {
 public:
  /// Throws    Error, field "--accept", for a name that is no check
  explicit FindingList(const WeatherOptions& options);

  /// A value that cannot be true. `make` gives the Problem.
  /// Result    whether the value is to be taken as missing (false where the user accepts the check)
  template <class Make>
  bool set_aside(std::string_view check, const Make& make) {
    if (takes_note_of(check)) return false;
    if (room(set_aside_count_)) set_aside_.push_back({check, Verdict::set_aside, make()});
    return true;
  }

  /// A value that is used and said.
  template <class Make>
  void doubt(std::string_view check, const Make& make) {
    if (takes_note_of(check)) return;
    if (room(doubt_count_)) doubts_.push_back({check, Verdict::doubtful, make()});
  }

  const std::vector<Finding>& set_aside() const { return set_aside_; }
  const std::vector<Finding>& doubts() const { return doubts_; }

  /// What the user's accepted checks let pass, and what is not listed: plain sentences.
  std::vector<std::string> notes() const;

  /// Under Strictness::strict: the findings as problems that refuse the file.
  std::vector<Problem> refusals() const;

 private:
  bool takes_note_of(std::string_view check);
  bool room(std::size_t& count) const;

  Strictness strictness_;
  std::map<std::string, std::size_t, std::less<>> accepted_;  // check, values it let pass
  std::vector<Finding> set_aside_, doubts_;
  std::size_t set_aside_count_ = 0, doubt_count_ = 0;
};

}  // namespace v1
}  // namespace noonleaf
