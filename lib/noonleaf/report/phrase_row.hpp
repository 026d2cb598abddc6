#pragma once

#include <string_view>

#include "noonleaf/report/phrases.hpp"

namespace noonleaf {
inline namespace v1 {

/// One phrase of one language. `{name}` stands for what is filled in.
struct PhraseRow {
  Phrase id;
  std::string_view text;
};

}  // namespace v1
}  // namespace noonleaf
