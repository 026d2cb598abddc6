#pragma once

#include <string>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

/// Text for HTML and SVG, line breaks kept: nothing in it can begin a tag, an entity or the end of an
/// attribute.
std::string escaped_text(std::string_view text);

/// The same for text of one line: control characters become spaces.
std::string markup_text(std::string_view text);

/// A length in points for an attribute or a style: "12.5".
std::string points(double value);

}  // namespace v1
}  // namespace noonleaf
