#pragma once

#include <string_view>

#include "noonleaf/garden/journal.hpp"

namespace noonleaf {
inline namespace v1 {

/// The entries that stand: those that an undo names are left out, and so are the undos. An undo that is
/// itself undone has no effect.
///
/// Throws    Error, field "undoes", when an undo names no entry, one of several with that id, or runs in a
/// circle
Journal without_undone(Journal entries, std::string_view shown_name);

}  // namespace v1
}  // namespace noonleaf
