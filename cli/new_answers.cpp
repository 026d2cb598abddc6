#include "new_answers.hpp"

#include "noonleaf/error.hpp"
#include "noonleaf/garden/zone.hpp"

namespace noonleaf::cli {

Answer<std::string> parse_zone(std::string_view text) {
  try {
    require_zone(text);
    return {std::string(text), {}};
  } catch (const Error& refused) {
    return {{}, refused.problems().front().message + "; " + refused.problems().front().fix};
  }
}

Answer<std::string> parse_word(std::string_view text, std::initializer_list<std::string_view> words) {
  std::string list;
  for (const std::string_view word : words) {
    if (text == word) return {std::string(word), {}};
    list += (list.empty() ? "" : " or ") + std::string(word);
  }
  return {{}, "write " + list};
}

}  // namespace noonleaf::cli
