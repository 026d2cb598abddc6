#include "bench/reference_probe.hpp"

#include <cmath>

#include "noonleaf/atmosphere/elementary.hpp"

namespace probe {

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void exponentials(const double* __restrict x, std::size_t count, double* __restrict y) {
  for (std::size_t i = 0; i < count; ++i) y[i] = noonleaf::BatchMath::exp(x[i]);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void divisions(const double* __restrict x, std::size_t count, double* __restrict y) {
  for (std::size_t i = 0; i < count; ++i) y[i] = 17.27 / x[i];
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void square_roots(const double* __restrict x, std::size_t count, double* __restrict y) {
  for (std::size_t i = 0; i < count; ++i) y[i] = std::sqrt(x[i]);
}

void plain_exponentials(const double* x, std::size_t count, double* y) {
  for (std::size_t i = 0; i < count; ++i) y[i] = std::exp(x[i]);
}

}  // namespace probe
