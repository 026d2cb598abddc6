#include "noonleaf/weather/finding_list.hpp"

#include <algorithm>
#include <utility>

#include "noonleaf/nearest_name.hpp"
#include "noonleaf/weather/utf8_text.hpp"
#include "noonleaf/weather/weather_reader.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

Error unknown_check(const std::string& name) {
  std::vector<std::string_view> names;
  for (const QualityCheck& check : quality_checks()) names.push_back(check.name);
  const std::string near = nearest_name(name, names);
  Problem problem;
  problem.field = "--accept";
  problem.text = name;
  problem.message = in_quotes(name) + " is not the name of a quality check";
  problem.fix = near.empty() ? "the names are listed in docs/weather.md, like rh_above_100"
                             : "did you mean " + near + "?";
  return Error(std::move(problem));
}

}  // namespace

FindingList::FindingList(const WeatherOptions& options) : strictness_(options.strictness) {
  for (const std::string& name : options.accept) {
    const auto is_named = [&name](const QualityCheck& check) { return check.name == name; };
    const auto checks = quality_checks();
    if (std::none_of(checks.begin(), checks.end(), is_named)) throw unknown_check(name);
    accepted_.emplace(name, 0);
  }
}

bool FindingList::takes_note_of(std::string_view check) {
  const auto accepted = accepted_.find(check);
  if (accepted == accepted_.end()) return false;
  ++accepted->second;
  return true;
}

bool FindingList::room(std::size_t& count) const { return ++count <= findings_kept; }

std::vector<std::string> FindingList::notes() const {
  std::vector<std::string> notes;
  for (const auto& [check, count] : accepted_)
    notes.push_back("check " + check + " accepted by you: it let " + grouped(count) +
                    (count == 1 ? " value pass" : " values pass"));
  const std::size_t kept = set_aside_.size() + doubts_.size();
  const std::size_t found = set_aside_count_ + doubt_count_;
  if (found > kept)
    notes.push_back("the checks found " + grouped(found - kept) + " more; they are not listed");
  return notes;
}

std::vector<Problem> FindingList::refusals() const {
  std::vector<Problem> problems;
  if (strictness_ == Strictness::lenient) return problems;
  for (const std::vector<Finding>* findings : {&set_aside_, &doubts_}) {
    for (const Finding& finding : *findings) {
      problems.push_back(finding.problem);
      problems.back().fix += "; or let the check pass with --accept " + std::string(finding.check);
    }
  }
  return problems;
}

}  // namespace v1
}  // namespace noonleaf
