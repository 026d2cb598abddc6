#pragma once

#include <string>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

/// Text as HTML and SVG show it: nothing in it can begin a tag, an entity or the end of an attribute; control
/// characters become spaces.
std::string markup_text(std::string_view text);

/// A length in points for an attribute or a style: "12.5".
std::string points(double value);

}  // namespace v1
}  // namespace noonleaf
