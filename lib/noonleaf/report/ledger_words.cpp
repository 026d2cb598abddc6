#include "noonleaf/report/ledger_words.hpp"

#include <algorithm>
#include <set>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/report/json_parts.hpp"
#include "noonleaf/report/ledger_units.hpp"
#include "noonleaf/report/quantity_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;
using std::chrono::year_month;

/// Numbers of the table as text; the unit stands in the heading.
struct TableNumbers {
  LedgerUnits units;
  std::string depth(double mm) const {
    return is_missing(mm) ? "?" : fmt::format("{:.{}f}", units.depth(mm), units.is_us() ? 2 : 0);
  }
  std::string volume(double litres) const {
    return is_missing(litres) ? "?" : fmt::format("{:.0f}", units.volume(litres));
  }
};

/// A number with a "?" behind it where it is not known for all days, "?" alone where it is not known at all.
std::string in_part(const std::string& number, std::size_t unknown_days) {
  return number == "?" || unknown_days == 0 ? number : number + "?";
}

std::string row_text(const TableNumbers& numbers, const std::string& name, const std::string& month,
                     const LedgerLine& line) {
  return fmt::format(
      "{:<10.10} {:<8} {:>5} {:>8.0f} {:>7} {:>8} {:>8} {:>7} {:>8}\n", name, month, line.runs, line.minutes,
      numbers.depth(line.depth_mm), numbers.volume(billed_l(line)) + (is_missing(line.from_tap_l) ? "+" : ""),
      numbers.volume(line.beside_bed_l), in_part(numbers.depth(line.rain_mm), line.days_without_weather),
      in_part(numbers.depth(line.drained_mm), line.days_without_account));
}

std::string heading_text(const TableNumbers& numbers) {
  const std::string depth = numbers.units.depth_unit(), volume = numbers.units.volume_unit();
  return fmt::format(
      "{:<10} {:<8} {:>5} {:>8} {:>7} {:>8} {:>8} {:>7} {:>8}\n{:<10} {:<8} {:>5} {:>8} {:>7} {:>8} {:>8} "
      "{:>7} {:>8}\n",
      "bed", "month", "runs", "minutes", "depth", "water", "beside", "rain", "drained", "", "", "", "", depth,
      volume, volume, depth, depth);
}

std::set<year_month> months_of(const Ledger& ledger) {
  std::set<year_month> months;
  for (const LedgerLine& line : ledger.lines) months.insert(line.month);
  return months;
}

double month_billed_l(const Ledger& ledger, year_month month) {
  double litres = 0;
  for (const LedgerLine& line : ledger.lines) litres += line.month == month ? billed_l(line) : 0;
  return litres;
}

/// Volume that drained because of watering, over all beds; missing where no bed's drainage is known.
double drained_l(const LedgerView& view) {
  double litres = missing;
  for (const LedgerLine& line : view.ledger.lines) {
    if (is_missing(line.drained_by_watering_mm)) continue;
    litres =
        (is_known(litres) ? litres : 0.0) + line.drained_by_watering_mm * view.garden.beds[line.bed].area_m2;
  }
  return litres;
}

/// ", $1.20"; empty without a price.
std::string worth_text(const LedgerView& view, double litres) {
  const double cost = litres / 1000 * view.garden.water.price_per_m3;
  return is_known(cost) ? fmt::format(", {}{:.2f}", view.garden.water.currency, cost) : std::string{};
}

bool evenness_guessed(const LedgerView& view) {
  return std::any_of(view.ledger.lines.begin(), view.ledger.lines.end(), [&](const LedgerLine& line) {
    return line.uneven_l > 0 &&
           view.garden.sprinklers[view.garden.beds[line.bed].sprinkler].evenness_is_guess;
  });
}

/// Where water went that no plant had.
std::string losses_text(const LedgerView& view) {
  const QuantityText quantity(view.garden.site.units);
  const LedgerLine sum = sum_of(view.ledger.lines);
  std::string text;
  const double drained = drained_l(view);
  if (drained > 0)
    text += fmt::format("Drained below the roots because of watering{}: {}{}.\n",
                        sum.days_without_account > 0 ? ", on the days known" : "", quantity.volume(drained),
                        worth_text(view, drained));
  double beside_l = 0, paving_l = missing;
  for (const LedgerLine& line : view.ledger.lines) {
    if (is_known(line.beside_bed_l)) beside_l += line.beside_bed_l;
    if (is_known(line.paving_l)) paving_l = (is_known(paving_l) ? paving_l : 0.0) + line.paving_l;
  }
  if (beside_l > 0) {
    text += fmt::format("Beside the beds, where the flow is known: {}{}.\n", quantity.volume(beside_l),
                        worth_text(view, beside_l));
  }
  if (paving_l > 0)
    text += fmt::format("Of that on paving: {}{}.\n", quantity.volume(paving_l), worth_text(view, paving_l));
  if (sum.uneven_l > 0) {
    text += fmt::format("Sprinklers with a DU of {:.2f} would have saved about {}{}.\n", ledger_good_du,
                        quantity.volume(sum.uneven_l), worth_text(view, sum.uneven_l));
    if (evenness_guessed(view)) text += "That is a guess: not all sprinklers were measured with cans.\n";
  }
  return text;
}

std::string sums_text(const LedgerView& view) {
  const QuantityText quantity(view.garden.site.units);
  const WaterPrice& water = view.garden.water;
  const std::string least = view.ledger.volume_is_least ? "at least " : "";
  std::string text = fmt::format("\nIn all: {}{}", least, quantity.volume(view.ledger.billed_l));
  text +=
      is_known(view.ledger.cost)
          ? fmt::format(", {}{}{:.2f}.\n", least, water.currency, view.ledger.cost)
          : ". No price: put price_per_ccf, price_per_m3 or\nprice_per_gal into [water] of garden.toml.\n";
  if (is_known(water.monthly_allowance_l)) {
    for (const year_month month : months_of(view.ledger)) {
      const double used_l = month_billed_l(view.ledger, month);
      text += fmt::format("{}: {}{} of the {} allowed{}.\n", month_text(month), least,
                          quantity.volume(used_l), quantity.volume(water.monthly_allowance_l),
                          used_l > water.monthly_allowance_l ? ": OVER the allowance" : "");
    }
  }
  return text + losses_text(view);
}

/// What "?" under rain and drained stands for.
std::string unknown_days_text(const std::vector<LedgerLine>& lines) {
  const auto any = [&lines](auto is_so) { return std::any_of(lines.begin(), lines.end(), is_so); };
  std::string text;
  if (any([](const LedgerLine& line) { return line.days_without_weather > 0; }))
    text += "? Days without weather: rain and drainage are not known for all of it.\n";
  if (any([](const LedgerLine& line) { return line.days_without_account > line.days_without_weather; }))
    text +=
        "? \"drained\" is not known before the water account begins, which is after the\n"
        "last longer gap in the weather, nor of a bed in which nothing grows at the end.\n";
  return text;
}

std::string unknown_text(const LedgerView& view) {
  std::string text = "\nOnly runs that are in the journal are counted.\n";
  if (view.ledger.volume_is_least)
    text += "+ ? A sprinkler's flow is not known: what fell beside the bed is not in it.\n";
  for (std::size_t bed = 0; bed < view.garden.beds.size(); ++bed) {
    const Sprinkler& sprinkler = view.garden.sprinklers[view.garden.beds[bed].sprinkler];
    const bool ran = std::any_of(view.ledger.lines.begin(), view.ledger.lines.end(),
                                 [&](const LedgerLine& line) { return line.bed == bed && line.runs > 0; });
    const bool by_cans = sprinkler.kind == WettingKind::hand && is_known(sprinkler.can_l);
    if (ran && sprinkler.rate.basis == RateBasis::guess && !by_cans)
      text +=
          fmt::format("Bed {}: its rate is a guess, and so are depth and water.\n", view.garden.beds[bed].id);
  }
  text += unknown_days_text(view.ledger.lines);
  return text + "\"drained\" is what left the reach of the roots, of rain and watering together.\n";
}

Json line_json(const LedgerView& view, const LedgerLine& line) {
  return {{"bed", view.garden.beds[line.bed].id},
          {"month", month_text(line.month)},
          {"runs", line.runs},
          {"minutes", line.minutes},
          {"depth_mm", line.depth_mm},
          {"in_bed_l", line.in_bed_l},
          {"from_tap_l", number_or_null(line.from_tap_l)},
          {"beside_bed_l", number_or_null(line.beside_bed_l)},
          {"paving_l", number_or_null(line.paving_l)},
          {"rain_mm", number_or_null(line.rain_mm)},
          {"drained_mm", number_or_null(line.drained_mm)},
          {"drained_by_watering_mm", number_or_null(line.drained_by_watering_mm)},
          {"uneven_l", line.uneven_l},
          {"cost", number_or_null(billed_l(line) / 1000 * view.garden.water.price_per_m3)},
          {"days", line.days},
          {"days_without_weather", line.days_without_weather},
          {"days_without_account", line.days_without_account}};
}

}  // namespace

std::string ledger_text(const LedgerView& view) {
  const TableNumbers numbers{{view.garden.site.units}};
  std::string text = fmt::format("{}\nWater from {} to {}\n\n", view.garden.site.name,
                                 iso_date(view.ledger.from), iso_date(view.ledger.to));
  text += heading_text(numbers);
  for (std::size_t bed = 0; bed < view.garden.beds.size(); ++bed) {
    std::vector<LedgerLine> lines;
    for (const LedgerLine& line : view.ledger.lines) {
      if (line.bed == bed) lines.push_back(line);
    }
    for (const LedgerLine& line : lines)
      text += row_text(numbers, view.garden.beds[bed].id, month_text(line.month), line);
    if (lines.size() > 1) text += row_text(numbers, view.garden.beds[bed].id, "all", sum_of(lines));
  }
  return text + sums_text(view) + unknown_text(view);
}

std::string ledger_csv(const LedgerView& view) {
  std::string text;
  for (const LedgerLine& line : view.ledger.lines) {
    const Json json = line_json(view, line);
    std::string header, row;
    for (const auto& [key, value] : json.items()) {
      const std::string comma = header.empty() ? "" : ",";
      header += comma + key;
      row += comma + (value.is_string() ? value.get<std::string>()
                      : value.is_null() ? ""
                                        : number_text(value.get<double>()));
    }
    if (text.empty()) text = header + "\n";
    text += row + "\n";
  }
  return text;
}

std::string ledger_json(const LedgerView& view) {
  Json months = Json::array(), lines = Json::array();
  for (const LedgerLine& line : view.ledger.lines) lines.push_back(line_json(view, line));
  for (const year_month month : months_of(view.ledger)) {
    months.push_back({{"month", month_text(month)},
                      {"billed_l", month_billed_l(view.ledger, month)},
                      {"allowance_l", number_or_null(view.garden.water.monthly_allowance_l)}});
  }
  const Json json{{"shape", "noonleaf.ledger"},
                  {"version", 1},
                  {"from", iso_date(view.ledger.from)},
                  {"to", iso_date(view.ledger.to)},
                  {"billed_l", number_or_null(view.ledger.billed_l)},
                  {"volume_is_least", view.ledger.volume_is_least},
                  {"cost", number_or_null(view.ledger.cost)},
                  {"currency", view.garden.water.currency},
                  {"months", std::move(months)},
                  {"lines", std::move(lines)}};
  return json_text(json);
}

}  // namespace v1
}  // namespace noonleaf
