#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

#include "noonleaf/garden/garden_start.hpp"

namespace noonleaf::cli {

// What questions and options of `new` read alike, beside the answers of garden_start.hpp.

/// An IANA zone.
Answer<std::string> parse_zone(std::string_view text);

/// One of a few words.
Answer<std::string> parse_word(std::string_view text, std::initializer_list<std::string_view> words);

}  // namespace noonleaf::cli
