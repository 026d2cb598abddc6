#pragma once

#include "noonleaf/missing.hpp"
#include "noonleaf/soil/retention.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What calibrates the water path of a crop.
struct WaterPathCrop {
  double p_frac = missing;           ///< FAO-56 Table 22, at ETc = 5 mm/d
  double turgor_loss_mpa = missing;  ///< leaf potential at turgor loss, negative (turgor_table.hpp)
};

/// Path of the water from the soil to the leaves of one crop, per unit of ground.
struct WaterPath {
  double turgor_loss_mpa = missing;  ///< of the crop, negative
  double plant_mpa_h_mm = missing;   ///< roots, stem and leaves; the same at all times
  double soil_mpa_h_mm = missing;    ///< soil to root, at field capacity; grows as the soil dries
};

/// The soil of the calibration: silt loam, 20 % sand, 15 % clay, 2.5 % organic matter, water contents as
/// printed in Saxton & Rawls (2006), Table 3.
RetentionPoints calibration_soil();

/// Share of the day's transpiration whose loss counts as the beginning of stress in the calibration: ours,
/// for the least that the field trials behind FAO-56 Table 22 could tell from nothing.
inline constexpr double calibration_loss_frac = 0.10;

/// Share of the soil in the whole resistance at the depletion p: ours. FAO-56's correction of p by the day's
/// ETc asks for nearly all in the soil, the corn of Denmead & Shaw (1962) for nearly none.
inline constexpr double calibration_soil_share = 2.0 / 3.0;

/// The resistance of a crop, from the published depletion fraction.
///
/// Equation  supply = (psi soil - psi turgor loss) / R, R = Rplant + Rsoil (psi soil / psi 33)
///           R is fixed in closed form: on the calibration soil depleted to p TAW, a sine day of 12 hours
///           with 5 mm loses 10 % of its transpiration
/// Source    Form: Gardner (1960), Soil Sci. 89:63-73, Cowan (1965), J. Appl. Ecol. 2:221-239. p:
///           FAO-56 (Allen et al. 1998), Table 22, defined at ETc = 5 mm/d. A soil part that grows with the
///           tension is the gentlest of Gardner's conductivities (K ~ 1/psi). That it is alike at field
///           capacity on all soils is ours: Table 22 too holds for all of them, and absolute conductivities
///           from texture would make every sand wilt
/// Note      The depletion at which stress begins is then 0.04 to 0.21 above FAO-56's corrected p at 2 mm/d,
///           0.03 to 0.16 below it at 8 mm/d; one constant resistance errs by up to 0.5 (docs/heat.md).
/// Input     p_frac 0.1 to 0.8; turgor_loss_mpa -4 to -0.5
/// Missing   NaN if either is missing
/// Throws    Error, naming the field, when outside the range or when the soil at p is as dry as the
///           leaves can stand
WaterPath water_path(const WaterPathCrop& crop);

/// Flow at which the leaves just keep their turgor.
///
/// Equation  supply = (psi soil - psi turgor loss) / R, 0 where the soil is drier than the leaves can
///           stand
/// Input     depletion_frac  Dr/TAW [-], 0 up to where the soil would hold no water
/// Result    [mm h⁻¹]
/// Missing   NaN if any is missing
/// Throws    Error, field "depletion_frac", when outside the accepted range
double supply_mm_h(const WaterPath& path, const RetentionCurve& soil, double depletion_frac);

/// Leaf potential at a flow.
///
/// Equation  psi leaf = psi soil - flow R
/// Input     flow_mm_h [mm h⁻¹] 0 to 5; depletion_frac as supply_mm_h
/// Result    [MPa]. Below the turgor loss it is what the leaf would need, not what it has: stomata close
///           first
/// Missing, Throws  as supply_mm_h
double leaf_potential_mpa(const WaterPath& path, const RetentionCurve& soil, double depletion_frac,
                          double flow_mm_h);

/// A sine day of 12 hours, and how much of it may be lost.
struct SineDay {
  double etc_mm_d = 5;                       ///< total of the day; 5 is where Table 22 stands
  double loss_frac = calibration_loss_frac;  ///< 0: the first minute at noon that falls short
};

/// Depletion at which a crop begins to fall behind on a sine day: the model's answer to Table 22.
///
/// Input     etc_mm_d above 0 to 20; loss_frac 0 to 0.9
/// Result    [-] Dr/TAW; 0 where it falls behind even at field capacity
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
double depletion_frac_at_shortage(const WaterPath& path, const RetentionCurve& soil, const SineDay& day);

}  // namespace v1
}  // namespace noonleaf
