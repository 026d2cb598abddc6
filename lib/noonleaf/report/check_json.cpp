#include "noonleaf/report/check_json.hpp"

#include <nlohmann/json.hpp>

#include "noonleaf/garden/garden_doubts.hpp"
#include "noonleaf/report/json_parts.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;

Json problem_json(const Problem& problem) {
  return {{"file", problem.file},   {"line", problem.line}, {"column", problem.column},
          {"field", problem.field}, {"text", problem.text}, {"message", problem.message},
          {"fix", problem.fix}};
}

Json finding_json(const Finding& finding) {
  Json json = problem_json(finding.problem);
  json["check"] = finding.check;
  return json;
}

template <class Items, class ToJson>
Json list(const Items& items, ToJson to_json) {
  Json result = Json::array();
  for (const auto& item : items) result.push_back(to_json(item));
  return result;
}

Json file_json(const WeatherFile& file) {
  Json json{{"name", file.name},
            {"kind", file.kind == WeatherKind::forecast ? "forecast" : "measured"},
            {"format", file.format},
            {"days", file.days.size()}};
  json["first"] = file.days.empty() ? Json(nullptr) : date_or_null(file.days.front().date);
  json["last"] = file.days.empty() ? Json(nullptr) : date_or_null(file.days.back().date);
  json["notes"] = file.notes;
  json["set_aside"] = list(file.set_aside, finding_json);
  json["doubts"] = list(file.doubts, finding_json);
  return json;
}

Json doubt_json(const GardenDoubt& doubt) { return {{"message", doubt.message}, {"fix", doubt.fix}}; }

}  // namespace

std::string check_json(const GardenFolder& folder) {
  return json_text({{"shape", "noonleaf.check"},
                    {"version", 1},
                    {"ok", true},
                    {"beds", folder.garden.beds.size()},
                    {"journal_entries", folder.journal.size()},
                    {"weather", list(folder.weather_files, file_json)},
                    {"conflicts", list(folder.weather.conflicts, finding_json)},
                    {"doubts", list(garden_doubts(folder.garden), doubt_json)},
                    {"problems", Json::array()}});
}

std::string check_json(const std::vector<Problem>& problems) {
  return json_text({{"shape", "noonleaf.check"},
                    {"version", 1},
                    {"ok", false},
                    {"problems", list(problems, problem_json)}});
}

}  // namespace v1
}  // namespace noonleaf
