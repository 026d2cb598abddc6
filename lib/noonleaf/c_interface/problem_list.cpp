#include <string>

#include "noonleaf/c_interface/sized_struct.hpp"
#include "noonleaf/version.hpp"

using namespace noonleaf::c_interface;

namespace {

const std::string& version_text() {
  static const std::string text = std::to_string(noonleaf::version_major) + "." +
                                  std::to_string(noonleaf::version_minor) + "." +
                                  std::to_string(noonleaf::version_patch);
  return text;
}

/// A problem in words, or the row alone.
noonleaf_problem problem_at(const noonleaf_problems& list, std::size_t index) {
  noonleaf_problem out{sizeof(noonleaf_problem), "", 0, 0, 0, "", "", "", ""};
  if (index >= list.problems.size()) {
    out.row = list.more_rows[index - list.problems.size()];
    out.message = "a value of this row is outside its accepted range";
    out.fix = "look at the first rows of this list: often one unit is wrong throughout";
    return out;
  }
  const noonleaf::Problem& problem = list.problems[index];
  out.file = problem.file.c_str();
  out.row = problem.row;
  out.line = problem.line;
  out.column = problem.column;
  out.field = problem.field.c_str();
  out.text = problem.text.c_str();
  out.message = problem.message.c_str();
  out.fix = problem.fix.c_str();
  return out;
}

}  // namespace

int32_t noonleaf_interface_number(void) { return noonleaf_interface; }

const char* noonleaf_version(void) { return version_text().c_str(); }

void noonleaf_text_free(char* text) { delete[] text; }

size_t noonleaf_problems_count(const noonleaf_problems* problems) {
  return problems == nullptr ? 0 : problems->problems.size() + problems->more_rows.size();
}

noonleaf_status noonleaf_problems_at(const noonleaf_problems* problems, size_t index,
                                     noonleaf_problem* problem) {
  return guarded(nullptr, [&] {
    require_fillable(problem, "problem");
    if (index >= noonleaf_problems_count(problems))
      throw CallRefused("index", "is beyond the list", "stay below noonleaf_problems_count");
    fill(problem, problem_at(*problems, index));
    return noonleaf_status{noonleaf_done};
  });
}

noonleaf_status noonleaf_problems_text(const noonleaf_problems* problems, char** text) {
  return guarded(nullptr, [&] {
    required(text, "text") = nullptr;
    const noonleaf_problems& list = required(problems, "problems");
    std::string words = noonleaf::describe(list.problems);
    if (!list.more_rows.empty())
      words += "and " + std::to_string(list.more_rows.size()) + " more rows outside their accepted ranges\n";
    *text = text_for_caller(words);
    return noonleaf_status{noonleaf_done};
  });
}

void noonleaf_problems_free(noonleaf_problems* problems) { delete problems; }
