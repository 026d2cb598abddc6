#include <string>
#include <vector>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/report/explain_steps.hpp"
#include "noonleaf/report/quantity_text.hpp"

#include "commands.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

std::size_t bed_index(const Garden& garden, const std::string& id) {
  std::vector<std::string> ids;
  std::string all;
  for (std::size_t index = 0; index < garden.beds.size(); ++index) {
    if (garden.beds[index].id == id) return index;
    ids.push_back(garden.beds[index].id);
    all += (all.empty() ? "" : ", ") + garden.beds[index].id;
  }
  const std::string nearest = nearest_name(id, ids);
  Problem problem;
  problem.field = "BED";
  problem.text = id;
  problem.message = "there is no bed with the id \"" + id + "\"";
  problem.fix = nearest.empty() ? "use one of: " + all : "did you mean " + nearest + "?";
  throw Error(std::move(problem));
}

std::string value_text(const ExplainStep& step) {
  return significant_text(step.value) + (step.unit.empty() ? "" : " " + step.unit);
}

std::string step_text(const ExplainStep& step) {
  const bool one_name = step.symbol.empty() || step.symbol == step.meaning;
  const std::string name = one_name ? step.meaning : step.symbol + ": " + step.meaning;
  if (step.equation.empty())
    return wrapped(fmt::format("{} = {}  [{}]", name, value_text(step), step.source), 2);
  std::string text =
      wrapped(fmt::format("{}  [{}]", name, step.source), 2) + wrapped("= " + step.equation, 6);
  const bool repeats = step.numbers == value_text(step);
  if (!step.numbers.empty() && !repeats) text += wrapped("= " + step.numbers, 6);
  return text + bold(wrapped("= " + value_text(step), 6));
}

std::string explanation_text(const ExplainView& view) {
  const Bed& bed = view.garden.beds[view.explanation.bed];
  std::string text =
      bold(fmt::format("{} (bed {}), {}", bed.name, bed.id, long_date(view.explanation.today.date))) + "\n";
  text += wrapped(
      "Each number with its equation and where that stands in print. Numbers are shown to four digits; the "
      "calculation keeps all of them. SI units; 25.4 mm are 1 inch, and 1 mm on 1 m2 is 1 litre.",
      0);
  int number = 0;
  for (const ExplainPart& part : explain_parts(view)) {
    text += "\n" + bold(fmt::format("{}. {}", ++number, part.title)) + "\n";
    for (const std::string& sentence : part.sentences) text += wrapped(sentence, 2);
    if (!part.steps.empty()) text += "\n";
    for (const ExplainStep& step : part.steps) text += step_text(step);
  }
  text += "\n" + bold("NOT MEASURED") + "\n";
  for (const std::string& line : explain_estimates(view)) text += wrapped("- " + line, 2);
  return text;
}

}  // namespace

int run(const ExplainArguments& arguments) {
  const GardenFolder folder = read_garden_folder(arguments.folder, arguments.folder);
  const Sky sky = sky_over(folder.garden.site, folder.weather);
  const DayExplanation explanation = explain_day(folder.garden, folder.journal, sky,
                                                 bed_index(folder.garden, arguments.bed), arguments.date);
  const ExplainView view{folder.garden, explanation};
  print(arguments.format == OutputFormat::json ? explain_json(view) : explanation_text(view));
  return 0;
}

}  // namespace noonleaf::cli
