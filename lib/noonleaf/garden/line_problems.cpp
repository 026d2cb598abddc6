#include "noonleaf/garden/line_problems.hpp"

#include <utility>
#include <vector>

#include "noonleaf/nearest_name.hpp"

namespace noonleaf {
inline namespace v1 {

void LineProblems::refuse(const CsvCell& cell, std::string field, std::string message, std::string fix) {
  Problem problem = line_problem(std::move(message), std::move(fix));
  problem.line += cell.line;
  problem.column = cell.column;
  problem.field = std::move(field);
  problem.text = valid_utf8(cell.raw);
  problems_.add(std::move(problem));
}

void LineProblems::refuse_line(std::string message, std::string fix) {
  problems_.add(line_problem(std::move(message), std::move(fix)));
}

void LineProblems::require_bed(const CsvCell& cell, const std::string& id, const Garden& garden) {
  if (id.empty() || find_bed(garden, id) != nullptr) return;
  std::vector<std::string> ids;
  for (const Bed& bed : garden.beds) ids.push_back(bed.id);
  const std::string nearest = nearest_name(id, ids);
  refuse(cell, "bed", "there is no bed with the id " + in_quotes(id),
         nearest.empty() ? "use an id of garden.toml" : "did you mean \"" + nearest + "\"?");
}

Problem LineProblems::line_problem(std::string message, std::string fix) const {
  Problem problem;
  problem.file = shown_name_;
  problem.line = line_;
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  problem.excerpt = excerpt_of(text_);
  return problem;
}

}  // namespace v1
}  // namespace noonleaf
