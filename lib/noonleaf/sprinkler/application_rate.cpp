#include "noonleaf/sprinkler/application_rate.hpp"

#include "noonleaf/error.hpp"
#include "noonleaf/sprinkler/fault_list.hpp"
#include "noonleaf/sprinkler/rate_faults.hpp"

namespace noonleaf {
inline namespace v1 {

std::string_view rate_basis_text(RateBasis basis) {
  switch (basis) {
    case RateBasis::cans_in_bed:
      return "cans in the bed";
    case RateBasis::flow_and_area:
      return "flow and area";
    case RateBasis::bucket:
      return "bucket and stopwatch";
    case RateBasis::drip_spacing:
      return "drip spacing";
    case RateBasis::guess:
      break;
  }
  return "guess";
}

void add_faults(const ApplicationRate& rate, FaultList& faults) {
  faults.positive("rate_mm_h", rate.rate_mm_h, 1000.0, "mm/h");
  faults.within("off_target_frac", rate.off_target_frac, 0.0, 0.95, "");
  faults.within("spray_loss_frac", rate.spray_loss_frac, 0.0, 0.5, "");
  faults.within("du_lq_frac", rate.du_lq_frac, 0.05, 1.0, "");
  faults.positive_or_missing("flow_l_min", rate.flow_l_min, 2000.0, "L/min");
}

void require_usable(const ApplicationRate& rate) {
  FaultList faults;
  add_faults(rate, faults);
  faults.throw_if_any();
}

double delivered_frac(const ApplicationRate& rate) {
  require_usable(rate);
  const double on_target =
      rate.area == WateredArea::beds_only ? 1.0 - rate.off_target_frac : 1.0;  // else inside the area
  switch (rate.basis) {
    case RateBasis::flow_and_area:
    case RateBasis::bucket:
      return on_target * (1.0 - rate.spray_loss_frac);
    case RateBasis::drip_spacing:
      return 1.0 - rate.off_target_frac;
    case RateBasis::cans_in_bed:
    case RateBasis::guess:
      break;
  }
  return 1.0;
}

double rate_from_flow_mm_h(const FlowOverArea& flow) {
  FaultList faults;
  faults.positive_or_missing("flow_l_min", flow.flow_l_min, 2000.0, "L/min");
  faults.within_or_missing("area_m2", flow.area_m2, 0.01, 100000.0, "m2");
  faults.throw_if_any();
  return 60.0 * flow.flow_l_min / flow.area_m2;
}

double bucket_flow_l_min(const BucketTest& test) {
  FaultList faults;
  faults.positive_or_missing("bucket_l", test.bucket_l, 1000.0, "L");
  faults.positive_or_missing("seconds", test.seconds, 3600.0, "s");
  faults.throw_if_any();
  return 60.0 * test.bucket_l / test.seconds;
}

double meter_flow_l_min(const MeterTest& test) {
  FaultList faults;
  faults.positive_or_missing("minutes", test.minutes, 1440.0, "min");
  if (test.end_l < test.start_l)
    faults.add("end_l", 0,
               number_text(test.end_l) + " is below the first reading " + number_text(test.start_l),
               "give the two readings in the order in which they were taken");
  faults.throw_if_any();
  return (test.end_l - test.start_l) / test.minutes;
}

double drip_rate_mm_h(const DripSpacing& drip) {
  FaultList faults;
  faults.positive_or_missing("emitter_flow_l_h", drip.emitter_flow_l_h, 100.0, "L/h");
  faults.within_or_missing("emitter_spacing_m", drip.emitter_spacing_m, 0.05, 10.0, "m");
  faults.within_or_missing("line_spacing_m", drip.line_spacing_m, 0.05, 10.0, "m");
  faults.throw_if_any();
  return drip.emitter_flow_l_h / (drip.emitter_spacing_m * drip.line_spacing_m);
}

double guessed_du_lq_frac(RateBasis basis) { return basis == RateBasis::drip_spacing ? 0.80 : 0.60; }

ApplicationRate guessed_application_rate() {
  return {.basis = RateBasis::guess, .rate_mm_h = 15.0, .du_lq_frac = guessed_du_lq_frac(RateBasis::guess)};
}

}  // namespace v1
}  // namespace noonleaf
