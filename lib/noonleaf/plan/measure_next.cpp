// Compiled with -ffp-contract=off: the same advice on every processor.
#include "noonleaf/plan/measure_next.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/balance/draws.hpp"
#include "noonleaf/plan/quantile.hpp"
#include "noonleaf/plan/soil_check.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// What a measurement leaves open, one standard deviation of the logarithm; all ours. Cans: a dozen of them.
// Bucket: the flow is then known to a few per cent, but not the ground it falls on nor the spray that is lost.
constexpr double cans_error_log = 0.12, cans_evenness_error_log = 0.20, bucket_error_log = 0.20,
                 gauge_error_log = rain_gauge_log;
constexpr double least_explained_frac = 0.05;  // less is not worth the walk

struct Sums {
  double mean_x = 0, mean_y = 0, var_x = 0, var_y = 0, cov = 0;
};

Sums sums_of(const std::vector<double>& x, const std::vector<double>& y) {
  Sums out;
  const double n = static_cast<double>(y.size());
  for (std::size_t m = 0; m < y.size(); ++m) {
    out.mean_x += x[m] / n;
    out.mean_y += y[m] / n;
  }
  for (std::size_t m = 0; m < y.size(); ++m) {
    const double dx = x[m] - out.mean_x, dy = y[m] - out.mean_y;
    out.var_x += dx * dx / n;
    out.var_y += dy * dy / n;
    out.cov += dx * dy / n;
  }
  return out;
}

/// Variance of the minutes that knowing x to within `error` explains.
double explained(const std::vector<double>& x, const std::vector<double>& minutes, double error) {
  const Sums sums = sums_of(x, minutes);
  return sums.var_x > 0 ? sums.cov * sums.cov / (sums.var_x + error * error) : 0;
}

std::vector<double> logs(const std::vector<double>& values) {
  std::vector<double> out;
  out.reserve(values.size());
  for (const double value : values) out.push_back(std::log(value));
  return out;
}

std::vector<double> log_unevenness(const BedDraws& draws) {
  std::vector<double> out;
  for (const double du : draws.du_lq) out.push_back(std::log(std::max(1e-6, 1 - du)));
  return out;
}

double variance(const DoubtedRun& run) { return sums_of(run.minutes, run.minutes).var_y; }

/// Of one bed's variance, what a measurement at `where` tells. 0 where it tells nothing of this bed.
double explained_of(const Garden& garden, const DoubtedRun& run, CheapMeasurement what, std::size_t where) {
  const bool same_sprinkler = garden.beds[run.run.bed].sprinkler == garden.beds[where].sprinkler;
  switch (what) {
    case CheapMeasurement::cans_test:
      if (!same_sprinkler) return 0;
      return explained(logs(run.draws->rate), run.minutes, cans_error_log) +
             explained(log_unevenness(*run.draws), run.minutes, cans_evenness_error_log);
    case CheapMeasurement::bucket_test:
      return same_sprinkler ? explained(logs(run.draws->rate), run.minutes, bucket_error_log) : 0;
    case CheapMeasurement::feel_test:
      return run.run.bed == where ? explained(run.dr_mm, run.minutes, feel_sd_frac * run.taw_mm) : 0;
    case CheapMeasurement::rain_gauge:
      return explained(logs(run.draws->rain), run.minutes, gauge_error_log);
  }
  return 0;
}

bool makes_sense(const Garden& garden, const DoubtedRun& run, CheapMeasurement what) {
  const Sprinkler& sprinkler = garden.sprinklers[garden.beds[run.run.bed].sprinkler];
  const RateBasis basis = sprinkler.rate.basis;
  const bool by_hand = sprinkler.kind == WettingKind::hand;
  switch (what) {
    case CheapMeasurement::cans_test:
      return sprinkler.kind == WettingKind::sprinkler && basis != RateBasis::cans_in_bed;
    case CheapMeasurement::bucket_test:
      return !by_hand && (basis == RateBasis::guess || basis == RateBasis::flow_and_area);
    case CheapMeasurement::feel_test:
      return true;
    case CheapMeasurement::rain_gauge:
      return run.draws->rain_log > rain_gauge_log;
  }
  return false;
}

MeasurementGain gain_of(const Garden& garden, const std::vector<DoubtedRun>& runs, CheapMeasurement what,
                        const DoubtedRun& at) {
  MeasurementGain gain{.what = what, .bed = at.run.bed};
  double all = 0, told = 0, most = -1;
  for (const DoubtedRun& run : runs) {
    const double of_run = variance(run);
    const double tells = std::min(of_run, explained_of(garden, run, what, at.run.bed));
    all += of_run;
    told += tells;
    if (tells <= most) continue;
    most = tells;
    gain.bed = run.run.bed;
    gain.now = gain.then = minutes_doubt(run);
    const double left = of_run > 0 ? std::sqrt(1 - tells / of_run) : 1;
    gain.then.p10_min = gain.now.p50_min - left * (gain.now.p50_min - gain.now.p10_min);
    gain.then.p90_min = gain.now.p50_min + left * (gain.now.p90_min - gain.now.p50_min);
  }
  gain.explained_frac = all > 0 ? told / all : 0;
  return gain;
}

}  // namespace

std::vector<double> minutes_of(const RunInDoubt& run, const PlantingMembersTrace& trace,
                               const BedDraws& draws) {
  std::vector<double> out;
  const std::size_t members = trace.dr_dawn_mm.size() - 1;
  const double reference_mm = trace.dr_dawn_mm[members];
  const double multiplier = run_time_multiplier(draws.du_lq[members]).value;
  for (std::size_t m = 0; m < members; ++m) {
    const double more = run_time_multiplier(draws.du_lq[m]).value / multiplier;
    out.push_back(run.exact_min * (trace.dr_dawn_mm[m] / reference_mm) * more / draws.rate[m]);
  }
  return out;
}

MinutesDoubt minutes_doubt(const DoubtedRun& run) {
  return {run.run.bed, run.run.exact_min, quantile(run.minutes, 0.1), quantile(run.minutes, 0.5),
          quantile(run.minutes, 0.9)};
}

std::vector<MeasurementGain> measurement_gains(const Garden& garden, const std::vector<DoubtedRun>& runs) {
  std::vector<MeasurementGain> gains;
  for (const CheapMeasurement what : {CheapMeasurement::cans_test, CheapMeasurement::bucket_test,
                                      CheapMeasurement::feel_test, CheapMeasurement::rain_gauge}) {
    for (const DoubtedRun& run : runs) {
      if (!makes_sense(garden, run, what)) continue;
      const MeasurementGain gain = gain_of(garden, runs, what, run);
      const bool known = std::any_of(gains.begin(), gains.end(), [&](const MeasurementGain& other) {
        return other.what == gain.what && other.bed == gain.bed;
      });
      if (!known && gain.explained_frac >= least_explained_frac) gains.push_back(gain);
    }
  }
  std::stable_sort(gains.begin(), gains.end(), [](const MeasurementGain& a, const MeasurementGain& b) {
    return a.explained_frac > b.explained_frac;
  });
  return gains;
}

}  // namespace v1
}  // namespace noonleaf
