// A program of somebody else: the science alone, through installed headers. It runs every Eigen door with columns of
// several lengths, whole and strided, and compares them with the scalar doors. Built with -march=native as well: Eigen
// then aligns its arrays differently from the portable library, which must not matter.
#include <chrono>
#include <cmath>
#include <cstdio>

#include <Eigen/Core>

#include <noonleaf/atmosphere/vapour.hpp>
#include <noonleaf/atmosphere/vapour_batch.hpp>
#include <noonleaf/error.hpp>
#include <noonleaf/reference/daily_batch.hpp>
#include <noonleaf/reference/hourly_batch.hpp>
#include <noonleaf/version.hpp>

namespace {

using Eigen::ArrayXd;
using Column = Eigen::Ref<const ArrayXd>;

const noonleaf::Location uccle{.latitude_deg = 50.8, .longitude_deg = 4.35, .elevation_m = 100};
int failures = 0;

void expect(bool holds, const char* what, Eigen::Index rows) {
  if (holds) return;
  std::printf("FAILED: %s with %ld rows\n", what, static_cast<long>(rows));
  ++failures;
}

bool near(double one, double other, double tolerance) { return std::abs(one - other) <= tolerance; }

void vapour_doors(const Column& t_c) {
  const ArrayXd es_kpa = noonleaf::saturation_vapour_pressure_kpa(t_c);
  const ArrayXd delta_kpa_c = noonleaf::saturation_slope_kpa_c(t_c);
  for (Eigen::Index i = 0; i < t_c.size(); ++i) {
    expect(near(es_kpa[i] / noonleaf::saturation_vapour_pressure_kpa(t_c[i]), 1, 1e-14), "es", t_c.size());
    expect(near(delta_kpa_c[i] / noonleaf::saturation_slope_kpa_c(t_c[i]), 1, 1e-14), "delta", t_c.size());
  }
}

void daily_door(const Column& t_max_c) {
  const std::chrono::sys_days first = std::chrono::year{2023} / 7 / 6;
  const Eigen::Index rows = t_max_c.size();
  const ArrayXd t_min_c = t_max_c - 9.2, ea_kpa = ArrayXd::Constant(rows, 1.1);
  const ArrayXd rs_mj_m2_d = ArrayXd::LinSpaced(rows, 22.07, 18.0), u2_m_s = ArrayXd::Constant(rows, 2.078);
  const ArrayXd et0 = noonleaf::daily_et0_mm_d(noonleaf::daily_site(uccle), first,
                                               {t_max_c, t_min_c, ea_kpa, rs_mj_m2_d, u2_m_s});
  for (Eigen::Index i = 0; i < rows; ++i) {
    const double alone = noonleaf::daily_et0_mm_d({.date = first + std::chrono::days{i},
                                                   .latitude_deg = uccle.latitude_deg,
                                                   .elevation_m = uccle.elevation_m,
                                                   .t_max_c = t_max_c[i],
                                                   .t_min_c = t_min_c[i],
                                                   .ea_kpa = ea_kpa[i],
                                                   .rs_mj_m2_d = rs_mj_m2_d[i],
                                                   .u2_m_s = u2_m_s[i]});
    expect(near(et0[i], alone, 1e-12), "daily ET0", rows);
  }
}

void hourly_door(const Column& t_c) {
  const std::chrono::sys_seconds begin = std::chrono::sys_days{std::chrono::year{2023} / 7 / 6};
  const Eigen::Index rows = t_c.size();
  const ArrayXd ea_kpa = ArrayXd::Constant(rows, 1.1), u2_m_s = ArrayXd::Constant(rows, 2.0);
  ArrayXd rs_mj_m2_h(rows);
  for (Eigen::Index i = 0; i < rows; ++i) rs_mj_m2_h[i] = i % 24 > 6 && i % 24 < 18 ? 2.0 : 0.0;
  const ArrayXd et0 = noonleaf::hourly_et0_mm_h(noonleaf::hourly_site(uccle, begin), begin,
                                                {t_c, ea_kpa, rs_mj_m2_h, u2_m_s});
  noonleaf::HourlySeries alone(uccle);
  for (Eigen::Index i = 0; i < rows; ++i) {
    const noonleaf::HourlyInputs hour{.begin = begin + std::chrono::hours{i},
                                      .t_c = t_c[i],
                                      .ea_kpa = ea_kpa[i],
                                      .rs_mj_m2_h = rs_mj_m2_h[i],
                                      .u2_m_s = u2_m_s[i]};
    expect(near(et0[i], alone.next(hour).et0_mm_h, 1e-12), "hourly ET0", rows);
  }
}

void every_door(const Column& t_c) {
  vapour_doors(t_c);
  daily_door(t_c);
  hourly_door(t_c);
}

/// An exception of the library must be caught by its type on this side.
void refusal() {
  bool refused = false;
  try {
    noonleaf::saturation_vapour_pressure_kpa(451.0);
  } catch (const noonleaf::Error& error) {
    refused = error.problems().size() == 1 && error.problems().front().field == "t_c";
  }
  expect(refused, "a temperature of 451 °C is refused", 1);
}

}  // namespace

int main() {
  for (const Eigen::Index rows : {1, 2, 3, 7, 8, 9, 63, 64, 65, 1000}) {
    const ArrayXd t_c = ArrayXd::LinSpaced(rows, 21.5, 24.0);
    every_door(t_c);
    const Eigen::ArrayXXd table = t_c.replicate(1, 3).transpose();
    every_door(Eigen::Map<const ArrayXd, 0, Eigen::InnerStride<>>(table.data(), rows, Eigen::InnerStride<>(3)));
    every_door(t_c.tail(rows - rows / 2));  // begins anywhere within an aligned packet
  }
  refusal();
  if (failures > 0) return 1;
  std::printf("noonleaf %d.%d.%d: every door agrees\n", noonleaf::version_major, noonleaf::version_minor,
              noonleaf::version_patch);
}
