#include "noonleaf/nearest_name.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

#include "noonleaf/plain_name.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t longest_compared = 64;  // no name is longer; keeps the cost of hostile input small

std::string compared(std::string_view text) { return plain_name(text.substr(0, longest_compared)); }

std::size_t edit_distance(const std::string& a, const std::string& b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replace = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, replace});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before.swap(last);
    last.swap(row);
  }
  return last[b.size()];
}

template <class Names>
std::string nearest(std::string_view typed, const Names& names) {
  const std::string wanted = compared(typed);
  std::string best;
  std::size_t best_distance = longest_compared;
  for (const auto& name : names) {
    const std::size_t distance = edit_distance(wanted, compared(name));
    const std::size_t allowed = std::max<std::size_t>(2, name.size() / 3);
    if (distance <= allowed && distance < best_distance) {
      best = name;
      best_distance = distance;
    }
  }
  return best_distance < wanted.size() ? best : std::string{};
}

}  // namespace

std::string nearest_name(std::string_view typed, std::span<const std::string_view> names) {
  return nearest(typed, names);
}

std::string nearest_name(std::string_view typed, std::span<const std::string> names) {
  return nearest(typed, names);
}

}  // namespace v1
}  // namespace noonleaf
