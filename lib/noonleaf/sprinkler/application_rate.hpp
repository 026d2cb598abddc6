#pragma once

#include <string_view>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Where a rate comes from. It decides which losses are still to be taken off (run_time.hpp), so that
/// nothing is counted twice.
enum class RateBasis {
  cans_in_bed,    ///< caught on the ground of the bed: only unevenness is left
  flow_and_area,  ///< flow of the sprinkler at work (meter, nameplate) over an area
  bucket,         ///< flow by bucket and stopwatch at the tap over an area; losses as flow_and_area
  drip_spacing,   ///< emitter flow over its spacing: in the bed and not through the air
  guess,          ///< nobody measured: called a guess wherever it shows; losses as cans_in_bed
};

/// "cans in the bed", "flow and area", "bucket and stopwatch", "drip spacing", "guess"
std::string_view rate_basis_text(RateBasis basis);

/// What the area under a flow is.
enum class WateredArea {
  beds_only,   ///< the ground meant to be watered; the off-target share falls beside it and is taken off
  all_wetted,  ///< every wet square metre, paving too: what falls beside the beds is in the area already
};

/// One sprinkler as the run-time formulas see it.
struct ApplicationRate {
  RateBasis basis = RateBasis::guess;         ///< how the rate is known; decides which losses are taken off
  double rate_mm_h = missing;                 ///< by the basis: in the bed, or flow over area before any loss
  double off_target_frac = 0.0;               ///< share of the water that lands beside the beds
  WateredArea area = WateredArea::beds_only;  ///< matters for flow_and_area and bucket
  double spray_loss_frac = 0.0;               ///< share lost in the air, wind and evaporation
  double du_lq_frac = 1.0;                    ///< of the low quarter; unmeasured: guessed_du_lq_frac
  double flow_l_min = missing;                ///< drawn from the tap, where known
};

/// Refuses an ApplicationRate that cannot be used.
/// Input     rate_mm_h above 0 to 1000; off_target_frac 0 to 0.95; spray_loss_frac 0 to 0.5; du_lq_frac 0.05
///           to 1; flow_l_min above 0 to 2000 or missing (all our guards)
/// Throws    Error, one problem for each field outside its range or missing
void require_usable(const ApplicationRate& rate);

/// Share of the stated rate that reaches the bed's soil surface.
///
/// Equation  cans_in_bed, guess: 1;  drip_spacing: 1 - off target;
///           flow over beds only: (1 - off target)(1 - spray loss);  flow over all wetted ground: 1 - spray
///           loss
/// Source    bookkeeping of our own: each loss once, and only where the basis has not seen it yet
double delivered_frac(const ApplicationRate& rate);

/// Rate from a flow and the area it falls on.
///
/// Equation  rate = 60 Q / A   (1 L on 1 m2 is 1 mm, exact). In US units 96.25 gpm / ft2 in inches per hour
/// Source    definition of the units
/// Input     flow_l_min above 0 to 2000; area_m2 0.01 to 100 000
/// Result    [mm/h] before any loss
/// Missing   NaN in, NaN out
/// Throws    Error, field "flow_l_min" or "area_m2", when outside the accepted range
/// Note      A mean: a lone sprinkler wets the middle and the edge differently; cans tell.
struct FlowOverArea {
  double flow_l_min = missing;  ///< of the sprinkler at work
  double area_m2 = missing;     ///< that it falls on
};
/// Equation, input, result: see FlowOverArea.
double rate_from_flow_mm_h(const FlowOverArea& flow);

/// Flow by bucket and stopwatch.
///
/// Equation  Q = 60 V / t
/// Input     bucket_l above 0 to 1000; seconds above 0 to 3600
/// Result    [L/min]
/// Missing   NaN in, NaN out
/// Throws    Error, field "bucket_l" or "seconds", when outside the accepted range
/// Note      An open hose gives more than the same hose with the sprinkler on; fill the bucket through the
///           sprinkler or read the meter if you can.
struct BucketTest {
  double bucket_l = missing;  ///< what it holds, filled to the mark
  double seconds = missing;   ///< until it was full
};
/// Equation, input, result: see BucketTest.
double bucket_flow_l_min(const BucketTest& test);

/// Flow by a water meter, everything else on it closed.
///
/// Equation  Q = (end - start) / minutes
/// Input     end_l not below start_l; minutes above 0 to 1440
/// Result    [L/min]
/// Missing   NaN in, NaN out
/// Throws    Error, field "end_l" or "minutes"
struct MeterTest {
  double start_l = missing;  ///< reading before
  double end_l = missing;    ///< reading after, not below start_l
  double minutes = missing;  ///< in between
};
/// Equation, input, result: see MeterTest.
double meter_flow_l_min(const MeterTest& test);

/// Rate of a drip line from emitter flow and spacing.
///
/// Equation  rate = q / (s_e s_l)   (L/h over m2 is mm/h, exact). In US units 1.604 gph / (ft ft), 231 gph /
///           (in in)
/// Input     emitter_flow_l_h above 0 to 100; emitter_spacing_m, line_spacing_m 0.05 to 10
/// Result    [mm/h] over the whole ground between the lines
/// Missing   NaN in, NaN out
/// Throws    Error, field named as the member, when outside the accepted range
/// Note      Drip wets only part of that ground; the balance needs the wetted fraction beside this rate.
struct DripSpacing {
  double emitter_flow_l_h = missing;   ///< of one emitter
  double emitter_spacing_m = missing;  ///< along the line
  double line_spacing_m = missing;     ///< from line to line
};
/// Equation, input, result: see DripSpacing.
double drip_rate_mm_h(const DripSpacing& drip);

/// The uniformity to use where nobody has measured one: 0.80 for drip lines, 0.60 for everything that sprays.
///
/// Source    ours, at the lower end of what audits call good (drip 0.80, rotary heads 0.70; practice, from
///           memory)
/// Note      A guess wherever it shows. Leaving du_lq_frac at 1 would claim a perfectly even sprinkler
///           instead.
double guessed_du_lq_frac(RateBasis basis);

/// The stand-in where nobody has measured: basis guess, 15 mm/h, DU of the low quarter 0.60. Ours: hose-end
/// sprinklers run from about 5 to 40 mm/h and from 0.4 to 0.8, so this can be wrong by a factor of three.
ApplicationRate guessed_application_rate();

}  // namespace v1
}  // namespace noonleaf
