#include <set>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/report/bar_chart.hpp"
#include "noonleaf/report/ledger_units.hpp"
#include "noonleaf/report/ledger_words.hpp"
#include "noonleaf/report/markup.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

BarChart months_chart(const LedgerView& view, const LedgerUnits& units) {
  BarChart chart{.title = view.ledger.volume_is_least ? "Water by month, at least" : "Water by month",
                 .unit = units.volume_unit()};
  std::set<std::chrono::year_month> months;
  for (const LedgerLine& line : view.ledger.lines) months.insert(line.month);
  BarSeries billed{.name = "water used"}, beside{.name = "of it beside the beds, where known"},
      uneven{.name = "of it saved by even sprinklers"};
  for (const std::chrono::year_month month : months) {
    double billed_sum_l = 0, beside_l = 0, uneven_l = 0;
    for (const LedgerLine& line : view.ledger.lines) {
      if (line.month != month) continue;
      billed_sum_l += billed_l(line);
      if (is_known(line.beside_bed_l)) beside_l += line.beside_bed_l;
      uneven_l += line.uneven_l;
    }
    chart.groups.push_back(month_text(month));
    billed.values.push_back(units.volume(billed_sum_l));
    beside.values.push_back(units.volume(beside_l));
    uneven.values.push_back(units.volume(uneven_l));
  }
  chart.series = {billed, beside, uneven};
  if (is_known(view.garden.water.monthly_allowance_l)) {
    chart.limit = units.volume(view.garden.water.monthly_allowance_l);
    chart.limit_name = fmt::format("allowed: {:.0f} {}", chart.limit, units.volume_unit());
  }
  return chart;
}

BarChart beds_chart(const LedgerView& view, const LedgerUnits& units) {
  BarChart chart{.title = "Depth on each bed, whole period",
                 .unit = units.depth_unit(),
                 .digits = units.is_us() ? 1 : 0};
  BarSeries watered{.name = "watered"}, rain{.name = "rain"}, drained{.name = "drained because of watering"};
  for (std::size_t bed = 0; bed < view.garden.beds.size(); ++bed) {
    std::vector<LedgerLine> lines;
    for (const LedgerLine& line : view.ledger.lines) {
      if (line.bed == bed) lines.push_back(line);
    }
    const LedgerLine sum = sum_of(lines);
    chart.groups.push_back(view.garden.beds[bed].name);
    watered.values.push_back(units.depth(sum.depth_mm));
    rain.values.push_back(units.depth(sum.rain_mm));
    drained.values.push_back(units.depth(sum.drained_by_watering_mm));
  }
  chart.series = {watered, rain, drained};
  return chart;
}

}  // namespace

std::string ledger_html(const LedgerView& view) {
  const LedgerUnits units{view.garden.site.units};
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Water ledger, {0}</title>\n"
      "<style>body{{font-family:sans-serif;max-width:46em;margin:1.5em auto;padding:0 1em}}"
      "svg{{width:100%;height:auto;margin:1em 0}}pre{{overflow-x:auto;font-size:13px}}"
      "@media print{{body{{margin:0}}}}</style></head>\n<body>\n<h1>Water ledger</h1>\n<p>{0}, {1} to "
      "{2}</p>\n{3}{4}<pre>{5}</pre>\n"
      "</body></html>\n",
      escaped_text(view.garden.site.name), iso_date(view.ledger.from), iso_date(view.ledger.to),
      bar_chart_svg(months_chart(view, units)), bar_chart_svg(beds_chart(view, units)),
      escaped_text(ledger_text(view)));
}

}  // namespace v1
}  // namespace noonleaf
