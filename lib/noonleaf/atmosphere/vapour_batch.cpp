#include "noonleaf/atmosphere/vapour_batch.hpp"

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/batch_block.hpp"
#include "noonleaf/atmosphere/vapour_kernel.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Kernel = bool (*)(const double*, std::size_t, double*);

BadRows run(Kernel kernel, const ConstColumn& t_c, std::size_t count, const MutableColumn& result) {
  BadRows bad_rows;
  BlockBuffer input, output;
  for (std::size_t first = 0; first < count; first += block_rows) {
    const std::size_t rows = std::min(block_rows, count - first);
    const double* in = side_by_side(t_c, first, rows, input);
    const bool suspect = kernel(in, rows, output.data());
    for (std::size_t i = 0; suspect && i < rows; ++i) {
      if (!accepted::is_outside(in[i], accepted::temperature_c)) continue;
      output[i] = missing;
      bad_rows.push_back(first + i);
    }
    deliver(result, first, rows, output);
  }
  return bad_rows;
}

}  // namespace

BadRows saturation_vapour_pressure_kpa(ConstColumn t_c, std::size_t count, MutableColumn result_kpa) {
  return run(kernel::saturation_vapour_pressure, t_c, count, result_kpa);
}

BadRows saturation_slope_kpa_c(ConstColumn t_c, std::size_t count, MutableColumn result_kpa_c) {
  return run(kernel::saturation_slope, t_c, count, result_kpa_c);
}

}  // namespace v1
}  // namespace noonleaf
