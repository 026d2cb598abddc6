// The numbers of the C interface's choices are promised; those of the C++ enumerations are cast to them and back.
#include "noonleaf/balance/daily_step.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/heat/wilt.hpp"
#include "noonleaf/noonleaf.h"
#include "noonleaf/reference/penman_monteith.hpp"
#include "noonleaf/report/phrases.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf::c_interface {
namespace {

template <class Enum>
constexpr bool is(Enum value, int number) {
  return static_cast<int>(value) == number;
}

static_assert(is(Equation::fao56, noonleaf_fao56) && is(Equation::asce, noonleaf_asce));
static_assert(is(Surface::short_crop, noonleaf_short_crop) && is(Surface::tall_crop, noonleaf_tall_crop));
static_assert(is(Dryness::humid, noonleaf_humid) && is(Dryness::arid, noonleaf_arid));
static_assert(is(PlantingStart::sown, noonleaf_sown) &&
              is(PlantingStart::transplanted, noonleaf_transplanted));
static_assert(is(RootingDepth::irrigated, noonleaf_irrigated) && is(RootingDepth::rainfed, noonleaf_rainfed));
static_assert(is(CoefficientMethod::dual, noonleaf_dual) && is(CoefficientMethod::single, noonleaf_single));
static_assert(is(DepletionFraction::adjusted_daily, noonleaf_adjusted_daily) &&
              is(DepletionFraction::fixed, noonleaf_fixed));
static_assert(is(SurfaceAccount::coupled, noonleaf_coupled) &&
              is(SurfaceAccount::as_printed, noonleaf_as_printed));
static_assert(is(TopLayerRoots::ignored, noonleaf_roots_ignored) &&
              is(TopLayerRoots::drawn, noonleaf_roots_drawn));
static_assert(is(EmitterPlace::open, noonleaf_emitters_open) &&
              is(EmitterPlace::under_canopy, noonleaf_emitters_under_canopy));
static_assert(is(RateBasis::cans_in_bed, noonleaf_cans_in_bed) &&
              is(RateBasis::flow_and_area, noonleaf_flow_and_area) &&
              is(RateBasis::bucket, noonleaf_bucket) && is(RateBasis::drip_spacing, noonleaf_drip_spacing) &&
              is(RateBasis::guess, noonleaf_guess));
static_assert(is(WateredArea::beds_only, noonleaf_beds_only) &&
              is(WateredArea::all_wetted, noonleaf_all_wetted));
static_assert(is(MultiplierRule::even, noonleaf_even) &&
              is(MultiplierRule::lower_half, noonleaf_lower_half) &&
              is(MultiplierRule::lower_half_capped, noonleaf_lower_half_capped));
static_assert(is(RunLimit::none, noonleaf_no_limit) && is(RunLimit::not_needed, noonleaf_not_needed) &&
              is(RunLimit::raised_to_shortest, noonleaf_raised_to_shortest) &&
              is(RunLimit::cut_to_longest, noonleaf_cut_to_longest));
static_assert(is(DawnLook::not_looked, noonleaf_not_looked) && is(DawnLook::upright, noonleaf_upright) &&
              is(DawnLook::hanging, noonleaf_hanging));
static_assert(is(WiltVerdict::comfortable, noonleaf_comfortable) && is(WiltVerdict::droop, noonleaf_droop) &&
              is(WiltVerdict::stress, noonleaf_stress) &&
              is(WiltVerdict::dry_soil_wilt, noonleaf_dry_soil_wilt) &&
              is(WiltVerdict::wet_soil_droop, noonleaf_wet_soil_droop) &&
              is(WiltVerdict::unknown, noonleaf_unknown));
static_assert(is(WaterAdvice::leave_alone, noonleaf_leave_alone) &&
              is(WaterAdvice::wait_and_look, noonleaf_wait_and_look) &&
              is(WaterAdvice::water_next_run, noonleaf_water_next_run) &&
              is(WaterAdvice::water_at_once, noonleaf_water_at_once) &&
              is(WaterAdvice::look_at_the_roots, noonleaf_look_at_the_roots) &&
              is(WaterAdvice::unknown, noonleaf_no_advice));
static_assert(is(Language::en, noonleaf_english) && is(Language::es, noonleaf_spanish));

}  // namespace
}  // namespace noonleaf::c_interface
