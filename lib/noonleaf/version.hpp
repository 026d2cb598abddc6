#pragma once

/// The version of the headers a program is compiled with. CMake reads it here, so that no other place states it.
///
/// Within a major version, code that uses the public C++ headers keeps compiling; the binary interface of the C++
/// libraries is promised between patch releases only. While `version_major` is 0, a minor version counts as a major.

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

inline constexpr int version_major = 0;  ///< raised when something is taken away or changed
inline constexpr int version_minor = 1;  ///< raised when something is added
inline constexpr int version_patch = 0;  ///< raised when something is mended

}  // namespace v1
}  // namespace noonleaf
