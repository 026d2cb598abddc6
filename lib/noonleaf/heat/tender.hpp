#pragma once

namespace noonleaf {
inline namespace v1 {

/// Share of RAW at which hanging counts as stress: 1 for roots of 0.30 m, 0.5 for 0.15 m and less (wilt.hpp,
/// Tender).
double tender_raw_frac(double root_depth_m);

/// By what the cut roots of a fresh transplant multiply the plant's resistance (wilt.hpp, Tender).
double transplant_factor(double days_since_transplant);

}  // namespace v1
}  // namespace noonleaf
