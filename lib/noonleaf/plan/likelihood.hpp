#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/member_sky.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/water_account.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How wrong what is known of the garden may be, one standard deviation each. All ours; those of rate and
/// crop are account_doubt's, those of the soil check soil_check's.
inline constexpr double available_water_texture_log = 0.20;   ///< FC - WP by texture class or fractions
inline constexpr double available_water_measured_log = 0.08;  ///< FC and WP given as measured
inline constexpr double wilting_point_log = 0.10;             ///< WP itself
inline constexpr double rate_cans_log = 0.15;                 ///< rate by cans in the bed
inline constexpr double rate_flow_log = 0.25;                 ///< rate by flow and area
inline constexpr double rate_guess_log = 0.70;                ///< rate that nobody measured
inline constexpr double evenness_measured_log = 0.20;         ///< of 1 - DU, by cans
inline constexpr double evenness_guess_log = 0.45;            ///< of 1 - DU, where nobody measured
inline constexpr double rain_gauge_log =
    0.10;  ///< rain in the bed, with a gauge's reading in the last 30 days
inline constexpr double rain_station_log = 0.25;    ///< without
inline constexpr double crop_use_log = 0.15;        ///< Kc and ET0 together
inline constexpr double start_known_frac = 0.05;    ///< of TAW: the soil was seen full
inline constexpr double start_assumed_frac = 0.25;  ///< of TAW: taken to be full
inline constexpr double start_later_frac = 0.10;    ///< of TAW

/// One day of one planting over all members.
struct DayLikelihood {
  std::chrono::year_month_day date{};            ///< the day
  MemberDayFrom from = MemberDayFrom::forecast;  ///< where its weather comes from
  double beyond_frac = missing;                  ///< share of members with Dr beyond RAW at the day's close
  double left_frac = missing;                    ///< share that have been beyond on this day or one before it
  double droop_frac = missing;                   ///< share whose leaves hang at some hour of the day
  double stress_frac = missing;                  ///< share with stress or worse (wilt.hpp)
  double wilt_frac = missing;                    ///< share with dry-soil wilt
  double wilted_frac = missing;                  ///< share that had it on this day or one before it
  double half_frac = missing;    ///< share whose roots give less than half of the day's demand: `away` takes a
                                 ///< plant to wilt for good then
  double halved_frac = missing;  ///< share of which that held on this day or one before it
  double dr10_mm = missing;      ///< depletion at the close, a tenth of the members is below
  double dr50_mm = missing;      ///< half are below
  double dr90_mm = missing;      ///< nine tenths are below
};

/// One planting: the whole bed, and where its sprinkler brings least.
struct PlantingLikelihood {
  std::size_t planting = 0;                       ///< index into Bed::plantings
  std::vector<DayLikelihood> days{};              ///< of the whole bed
  std::vector<DayLikelihood> low_quarter_days{};  ///< where its sprinkler brings least
};

/// The minutes of a run of today, over all members.
struct MinutesDoubt {
  std::size_t bed = 0;       ///< index into Garden::beds
  double minutes = missing;  ///< the run's own, before rounding
  double p10_min = missing;  ///< a tenth of the members needs less
  double p50_min = missing;  ///< half need less
  double p90_min = missing;  ///< nine tenths need less
};

/// What could be measured in a quarter of an hour.
enum class CheapMeasurement {
  cans_test,    ///< cans in the bed: rate and evenness
  bucket_test,  ///< bucket and stopwatch: the flow
  feel_test,    ///< a handful of soil from the bed
  rain_gauge    ///< a gauge in the garden
};

/// What one measurement would do to today's doubt about the minutes.
///
/// Equation  variance explained = cov(minutes, x)² / (var x + e²) for each input x that the measurement tells
///           with error e (best linear estimate); of a cans test rate and evenness together. Summed over the
///           beds that are opened today
struct MeasurementGain {
  CheapMeasurement what = CheapMeasurement::feel_test;  ///< which measurement
  std::size_t bed = 0;        ///< where; for cans and bucket the bed of its sprinkler that gains most
  double explained_frac = 0;  ///< of the variance of all minutes of today
  MinutesDoubt now{};         ///< of that bed, as it stands
  MinutesDoubt then{};        ///< and with the measurement
};

/// One bed.
struct BedLikelihood {
  std::size_t bed = 0;                          ///< index into Garden::beds
  std::vector<PlantingLikelihood> plantings{};  ///< those that grow and are no seed any more
};

/// How sure.
struct Likelihood {
  std::size_t members = 0;  ///< how many
  std::uint64_t seed = 0;   ///< of their draws
  int past_years = 0;       ///< years that the traces behind the forecast were taken from
  MemberDayFrom behind_forecast = MemberDayFrom::last_days;  ///< what stands for the days behind it
  std::chrono::year_month_day forecast_to{};    ///< last day that measurements or a forecast cover
  std::vector<BedLikelihood> beds{};            ///< as in the garden file
  std::vector<MinutesDoubt> minutes{};          ///< of the beds opened today
  std::vector<MeasurementGain> measurements{};  ///< the one that helps most first
};

/// A run of today whose minutes are in doubt.
struct RunInDoubt {
  std::size_t bed = 0;            ///< index into Garden::beds
  std::size_t planting = 0;       ///< index into Bed::plantings: the one that asks for it
  double exact_min = missing;     ///< before rounding and limits
  double net_depth_mm = missing;  ///< what it is to bring
};

/// Water that a plan gives a bed on a day to come.
struct PlannedWater {
  std::size_t bed = 0;   ///< index into Garden::beds
  std::size_t day = 0;   ///< days after the first
  double mean_mm = 0;    ///< that infiltrates
  bool evening = false;  ///< after the day's demand
};

/// How much is worked out of every member.
enum class LikelihoodScope {
  hours_and_driest_quarter,  ///< all of DayLikelihood, for the mean bed and its low quarter
  balance_alone  ///< no hours (droop, stress and wilt stay missing) and no low quarter (no days there)
};

/// What is asked of the members.
struct LikelihoodQuestion {
  std::chrono::year_month_day date{};   ///< the first day
  std::size_t n_days = days_ahead;      ///< how many days from it on
  MemberOptions options{};              ///< how many members, which seed
  std::vector<RunInDoubt> runs{};       ///< of the first day; may be empty
  std::vector<PlannedWater> planned{};  ///< of the days to come; may be empty
  std::size_t count_from = 0;           ///< left_frac and wilted_frac count from this day on
  std::size_t follow_days = 0;  ///< go through so many of the days only, with the numbers that they have in
                                ///< the answer for all; 0 = all
  LikelihoodScope scope = LikelihoodScope::hours_and_driest_quarter;  ///< what is worked out of each member
};

/// How likely each bed is to leave its comfortable range and to wilt, day by day, if it gets no more water
/// than is planned.
///
/// Method    Each member has one weather (member_sky) for all beds, and draws for each bed, sprinkler and
///           planting of its own: available water and wilting point of the soil, rate and evenness of the
///           sprinkler, rain that reaches the bed, water use of the crop, the water at the start of the
///           account. Its account runs (run_ensemble) over the last 40 days, or from the last soil check or
///           known start, with what the journal says, and is set so that the member without any error has the
///           depletion of the garden's own account this morning. From there it runs through the days to come
///           with what was watered today, the planned water times the member's error of rate and evenness, and
///           rain: forecast rain counts here, at its chance. Hours of droop and wilt by wilt_members. The low
///           quarter is a second trace, as in the account.
/// Note      What all members share is not in it: the equations, the journal's omissions, pests. Plantings
///           that are seed, over, or under snow or frost are left out.
/// Throws    as accounts_of_bed
Likelihood likelihood_of(const Garden& garden, const Journal& journal, const Sky& sky,
                         const LikelihoodQuestion& question);

}  // namespace v1
}  // namespace noonleaf
