#pragma once

#include <string>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

/// A name as all lookups compare it: capitals as small letters, spaces and `-` as `separator`.
inline std::string plain_name(std::string_view name, char separator = '_') {
  std::string plain(name);
  for (char& letter : plain) {
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    if (letter == ' ' || letter == '-' || letter == '_') letter = separator;
  }
  return plain;
}

}  // namespace v1
}  // namespace noonleaf
