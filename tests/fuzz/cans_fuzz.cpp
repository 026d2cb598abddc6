// The sheet of a catch-can test, with and without the width of its cans.
#include <cmath>

#include "noonleaf/report/cans_file.hpp"

#include "fuzz_target.hpp"

namespace {

using fuzz::require;

void check_estimate(const noonleaf::CanEstimate& estimate) {
  require(std::isfinite(estimate.value), "a result is a number");
  require(fuzz::missing_or_finite(estimate.low) && fuzz::missing_or_finite(estimate.high),
          "an interval has ends");
  require(!(estimate.low > estimate.value) && !(estimate.high < estimate.value),
          "a result lies in its interval");
}

void check_sheet(const noonleaf::CanSheet& sheet) {
  const noonleaf::CanResult& result = sheet.result;
  require(result.can_count == sheet.test.cans.size(), "every can counts");
  require(result.area_share.size() == result.can_count, "every can has its ground");
  double ground = 0;
  for (const double share : result.area_share) ground += share;
  require(std::abs(ground - 1) < 1e-6, "the ground of all cans is all the ground");
  check_estimate(result.rate_mm_h);
  check_estimate(result.du_lq_frac);
  check_estimate(result.cu_frac);
  require(result.du_lq_frac.value >= 0 && result.du_lq_frac.value <= 1 + 1e-9, "DU lies in 0 to 1");
  require(result.cu_frac.value <= 1 + 1e-9, "CU is at most 1");
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  const fuzz::InputFile file(bytes);
  for (const noonleaf::CanSheetFacts& facts :
       {noonleaf::CanSheetFacts{15, noonleaf::missing}, noonleaf::CanSheetFacts{20, 83}})
    fuzz::done(bytes, [&] { check_sheet(noonleaf::read_can_sheet(file.path(), "cans.csv", facts)); });
  return 0;
}
