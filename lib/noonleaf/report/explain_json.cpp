#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/report/explain_steps.hpp"
#include "noonleaf/report/json_parts.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;

Json text_or_null(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }

Json step_json(const ExplainStep& step) {
  Json inputs = Json::array();
  for (const SymbolValue& input : step.inputs)
    inputs.push_back(
        {{"symbol", input.symbol}, {"value", number_or_null(input.value)}, {"unit", input.unit}});
  return {{"symbol", step.symbol},
          {"meaning", step.meaning},
          {"value", number_or_null(step.value)},
          {"unit", step.unit},
          {"equation", text_or_null(step.equation)},
          {"numbers", text_or_null(step.numbers)},
          {"source", step.source},
          {"inputs", std::move(inputs)}};
}

}  // namespace

std::string explain_json(const ExplainView& view) {
  Json parts = Json::array();
  for (const ExplainPart& part : explain_parts(view)) {
    Json steps = Json::array();
    for (const ExplainStep& step : part.steps) steps.push_back(step_json(step));
    parts.push_back({{"title", part.title}, {"sentences", part.sentences}, {"steps", std::move(steps)}});
  }
  const Json answer{{"shape", "noonleaf.explain"},
                    {"version", 1},
                    {"site", view.garden.site.name},
                    {"bed", view.garden.beds[view.explanation.bed].id},
                    {"date", iso_date(view.explanation.today.date)},
                    {"parts", std::move(parts)},
                    {"estimated", explain_estimates(view)}};
  return json_text(answer);
}

}  // namespace v1
}  // namespace noonleaf
