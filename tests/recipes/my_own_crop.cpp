#include <array>
#include <cstdio>
#include <string>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/growth.hpp"

int main() {
  using namespace std::chrono_literals;
  // Numbers of your own: their text and stage lengths must live as long as the crop.
  static constexpr std::array stages{noonleaf::StageLengths{
      .region = "our garden", .l_ini_d = 20, .l_dev_d = 30, .l_mid_d = 40, .l_late_d = 15}};
  noonleaf::Crop amaranth{.id = "amaranth_leaf", .name_en = "Leaf amaranth", .name_es = "Amaranto de hoja"};
  amaranth.kc_ini = 0.7, amaranth.kc_mid = 1.05, amaranth.kc_end = 0.95;
  amaranth.kcb_ini = 0.15, amaranth.kcb_mid = 0.95, amaranth.kcb_end = 0.85;
  amaranth.height_max_m = 0.6, amaranth.p_frac = 0.45;
  amaranth.root_depth_start_m = 0.15, amaranth.root_depth_min_m = 0.4, amaranth.root_depth_max_m = 0.6;
  amaranth.stages = stages;
  amaranth.source = "our own trial, 2024";

  const noonleaf::Planting planting{.start = 2025y / 5 / 10};
  const noonleaf::CropClimate climate{.u2_m_s = 1.5, .rh_min_pct = 35};
  for (const auto date : {2025y / 5 / 15, 2025y / 6 / 15, 2025y / 7 / 15, 2025y / 8 / 15}) {
    const noonleaf::GrowthDay day = noonleaf::growth_day(amaranth, planting, date, climate);
    std::printf("%s  %-12s Kcb %.2f  roots %.2f m\n", noonleaf::iso_date(date).c_str(),
                std::string(noonleaf::label(day.stage)).c_str(), day.kcb, day.root_depth_m);
  }
}
