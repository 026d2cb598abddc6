#pragma once

#include <string>
#include <vector>

namespace noonleaf {
inline namespace v1 {

/// "a.m." and "pulg." end a sentence without a second full stop.
inline std::string with_full_stop(std::string sentence) {
  if (!sentence.ends_with('.')) sentence += '.';
  return sentence;
}

/// One behind the other, with `between` between two.
inline std::string joined(const std::vector<std::string>& parts, const std::string& between) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : between) + part;
  return text;
}

}  // namespace v1
}  // namespace noonleaf
