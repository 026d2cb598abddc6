#include "noonleaf/atmosphere/instruction_set.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

struct Chosen {
  std::string_view name;
  int lanes;
};

#ifdef NOONLEAF_DISPATCH
// Versions of one function: the loader picks among them by the same test as among the clones of a kernel.
[[gnu::target("default")]] Chosen chosen() { return {"as compiled", 2}; }
[[gnu::target("arch=x86-64-v3")]] Chosen chosen() { return {"x86-64-v3 (AVX2, FMA)", 4}; }
[[gnu::target("arch=x86-64-v4")]] Chosen chosen() { return {"x86-64-v4 (AVX-512)", 8}; }
#else
Chosen chosen() {
#if defined(__AVX512F__)
  return {"as compiled", 8};
#elif defined(__AVX__)
  return {"as compiled", 4};
#elif defined(__SSE2__) || defined(__ARM_NEON)
  return {"as compiled", 2};
#else
  return {"as compiled", 1};
#endif
}
#endif

}  // namespace

std::string_view batch_instruction_set() { return chosen().name; }
int batch_lanes() { return chosen().lanes; }

}  // namespace v1
}  // namespace noonleaf
