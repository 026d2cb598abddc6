#pragma once

#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The instruction set that the batch kernels run with on this processor.
///
/// Result    "x86-64-v4 (AVX-512)", "x86-64-v3 (AVX2, FMA)", or "as compiled" where nothing is chosen at run
///           time (NOONLEAF_DISPATCH off, another processor family, a compiler without the means)
std::string_view batch_instruction_set();

/// Vector lanes of double that this instruction set has: 8, 4, or what the compiler was told to assume.
int batch_lanes();

}  // namespace v1
}  // namespace noonleaf
