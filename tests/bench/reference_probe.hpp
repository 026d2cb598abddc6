#pragma once

#include <cstddef>

// What the machine can do at best with the instruction set that the batch kernels run with: a loop of nothing
// but the vector exp, one of nothing but divisions, one of nothing but square roots.
namespace probe {

void exponentials(const double* x, std::size_t count, double* y);
void divisions(const double* x, std::size_t count, double* y);
void square_roots(const double* x, std::size_t count, double* y);
void plain_exponentials(const double* x, std::size_t count, double* y);

}  // namespace probe
