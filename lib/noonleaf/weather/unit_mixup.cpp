#include "noonleaf/weather/unit_mixup.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/rounded_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Q = WeatherQuantity;

constexpr std::size_t fewest_for_doubt = 3, fewest_for_refusal = 10;

// A median beyond `impossible` is beyond every garden on Earth; one beyond `doubtful` is rare. The hottest
// stretches on record: ten days of 51 °C highest, 36 °C lowest temperature (Death Valley); dew points of 30
// °C (Persian Gulf).
struct Rule {
  Q quantity;
  double doubtful, impossible;
  std::string_view guess;
};
constexpr Rule day_rules[] = {
    {Q::t_max, 47, 52, "°F (name it tmax_f) or K"},
    {Q::t_min, 34, 38, "°F (name it tmin_f) or K"},
    {Q::t_mean, 40, 45, "°F (name it tmean_f) or K"},
    {Q::t_dew, 29, 33, "°F (name it tdew_f) or K"},
    {Q::wind, 10, 25, "km/h, mph or kn (wind_km_h, wind_mph, wind_kn)"},
    {Q::rs, 36, 45, "W/m2 (name it rs_w_m2)"},
    {Q::sunshine, 20, 24, "minutes"},
    {Q::pressure, 109, 110, "hPa (name it pressure_hpa) or mmHg"},
    {Q::ea, 4.5, 8, "hPa"},
};

constexpr double least_pressure_kpa = 50.0;  // below: inHg named kPa, or kPa named hPa

struct Middle {
  std::size_t count = 0;
  double median = missing, largest = missing;
};

Middle middle_of(std::span<const TableRow> rows, Q quantity) {
  std::vector<double> values;
  for (const TableRow& row : rows) {
    const double value = row.values[static_cast<std::size_t>(quantity)];
    const bool nothing = (quantity == Q::rain || quantity == Q::rs) && !(value > 0);  // dry days, nights
    if (is_known(value) && !nothing) values.push_back(value);
  }
  if (values.empty()) return {};
  const auto half = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), half, values.end());
  return {values.size(), *half, *std::max_element(values.begin(), values.end())};
}

class Search {
 public:
  Search(std::span<const TableRow> rows, WeatherStep step, const ValueLocator& locator, FindingList& findings)
      : rows_(rows), step_(step), locator_(locator), findings_(findings) {}

  WeatherQuantities run() {
    for (const Rule& rule : day_rules) apply(rule);
    for (const Q quantity : {Q::rh_max, Q::rh_min, Q::rh_mean}) look_for_share(quantity);
    look_for_low_pressure();
    look_for_rain_in_mm();
    return found_;
  }

 private:
  void apply(const Rule& rule) {
    const Middle middle = middle_of(rows_, rule.quantity);
    const double scale = step_ == WeatherStep::hour && rule.quantity == Q::rs ? 0.1 : 1.0;
    judge(rule.quantity, middle, middle.median > rule.impossible * scale,
          middle.median > rule.doubtful * scale, rule.guess);
  }

  void look_for_share(Q quantity) {
    const Middle middle = middle_of(rows_, quantity);
    const bool share = middle.count >= fewest_for_doubt && middle.largest <= 1.0 && middle.median > 0.0;
    judge(quantity, middle, share, share, "a share of 1 instead of per cent");
  }

  void look_for_low_pressure() {
    const Middle middle = middle_of(rows_, Q::pressure);
    const bool low = middle.median < least_pressure_kpa;
    judge(Q::pressure, middle, low, low, "inHg (pressure_inhg) or kPa (pressure_kpa)");
  }

  void look_for_rain_in_mm() {
    if (locator_.unit(Q::rain) != "in" || step_ == WeatherStep::hour) return;
    const Middle middle = middle_of(rows_, Q::rain);
    judge(Q::rain, middle, middle.median > 100, middle.median > 50, "mm (name it rain_mm)");
  }

  void judge(Q quantity, const Middle& middle, bool impossible, bool doubtful, std::string_view guess) {
    if (!doubtful || middle.count < fewest_for_doubt) return;
    const std::string unit = locator_.unit(quantity);
    const double in_file = locator_.conversion(quantity).to_file(middle.median);
    const std::string what = "the middle of the values is " + rounded_text(in_file, 3) + " " + unit;
    const std::string fix = "check the unit: it looks like " + std::string(guess);
    if (impossible && middle.count >= fewest_for_refusal) {
      const bool dropped = findings_.set_aside("unit_mixup", [&] {
        return locator_.at_column(quantity, what + ", which cannot be; the whole column is taken as missing",
                                  fix);
      });
      if (dropped) found_.set(static_cast<std::size_t>(quantity));
      return;
    }
    findings_.doubt("unit_mixup",
                    [&] { return locator_.at_column(quantity, what + ", which is rare; used", fix); });
  }

  std::span<const TableRow> rows_;
  WeatherStep step_;
  const ValueLocator& locator_;
  FindingList& findings_;
  WeatherQuantities found_;
};

}  // namespace

WeatherQuantities find_unit_mixups(std::span<const TableRow> first_rows, WeatherStep step,
                                   const ValueLocator& locator, FindingList& findings) {
  return Search(first_rows, step, locator, findings).run();
}

}  // namespace v1
}  // namespace noonleaf
