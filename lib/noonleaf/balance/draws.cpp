// Compiled with -ffp-contract=off: the same bits whatever the processor can fuse.
#include "noonleaf/balance/draws.hpp"

#include <Random123/philox.h>

#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

template <std::size_t n>
double polynomial(const double (&highest_first)[n], double x) {
  double sum = highest_first[0];
  for (std::size_t i = 1; i < n; ++i) sum = sum * x + highest_first[i];
  return sum;
}

// AS 241, PPND16; digits as printed, highest power first.
constexpr double middle_above[] = {2509.0809287301226727, 33430.575583588128105, 67265.770927008700853,
                                   45921.953931549871457, 13731.693765509461125, 1971.5909503065514427,
                                   133.14166789178437745, 3.387132872796366608};
constexpr double middle_below[] = {
    5226.495278852854561,  28729.085735721942674, 39307.89580009271061,  21213.794301586595867,
    5394.1960214247511077, 687.1870074920579083,  42.313330701600911252, 1.0};
constexpr double outer_above[] = {7.7454501427834140764e-4, 0.0227238449892691845833, 0.24178072517745061177,
                                  1.27045825245236838258,   3.64784832476320460504,   5.7694972214606914055,
                                  4.6303378461565452959,    1.42343711074968357734};
constexpr double outer_below[] = {
    1.05075007164441684324e-9, 5.475938084995344946e-4, 0.0151986665636164571966, 0.14810397642748007459,
    0.68976733498510000455,    1.6763848301838038494,   2.05319162663775882187,   1.0};
constexpr double far_above[] = {
    2.01033439929228813265e-7, 2.71155556874348757815e-5, 0.0012426609473880784386, 0.026532189526576123093,
    0.29656057182850489123,    1.7848265399172913358,     5.4637849111641143699,    6.6579046435011037772};
constexpr double far_below[] = {
    2.04426310338993978564e-15, 1.4215117583164458887e-7, 1.8463183175100546818e-5, 7.868691311456132591e-4,
    0.0148753612908506148525,   0.13692988092273580531,   0.59983220655588793769,   1.0};

}  // namespace

double uniform_draw(const DrawAddress& address) {
  using Philox = r123::Philox4x32;  // ten rounds
  const Philox::ctr_type counter{{address.member, address.what, address.place, 0}};
  const Philox::key_type key{
      {static_cast<std::uint32_t>(address.seed), static_cast<std::uint32_t>(address.seed >> 32)}};
  const Philox::ctr_type words = Philox()(counter, key);
  const std::uint64_t bits = static_cast<std::uint64_t>(words[1]) << 32 | words[0];
  return (static_cast<double>(bits >> 12) + 0.5) * 0x1p-52;
}

double standard_normal_quantile(double p) {
  if (!(p > 0 && p < 1)) return missing;
  const double q = p - 0.5;
  if (q >= -0.425 && q <= 0.425) {
    const double r = 0.180625 - q * q;
    return q * polynomial(middle_above, r) / polynomial(middle_below, r);
  }
  const double r = BatchMath::sqrt(-BatchMath::log(q < 0 ? p : 1 - p));
  const double size = r <= 5 ? polynomial(outer_above, r - 1.6) / polynomial(outer_below, r - 1.6)
                             : polynomial(far_above, r - 5) / polynomial(far_below, r - 5);
  return q < 0 ? -size : size;
}

double normal_draw(const DrawAddress& address) { return standard_normal_quantile(uniform_draw(address)); }

void normal_draws(const DrawAddress& first, std::span<double> out) {
  DrawAddress address = first;
  for (double& draw : out) {
    draw = normal_draw(address);
    ++address.member;
  }
}

double fixed_exp(double z) { return BatchMath::exp(z); }

}  // namespace v1
}  // namespace noonleaf
