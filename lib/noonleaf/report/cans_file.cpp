#include "noonleaf/report/cans_file.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/file_problems.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/units.hpp"
#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/decimal_number.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t largest_file_bytes = 1024UL * 1024;

enum class Column { depth_mm, depth_in, caught_ml, x_m, y_m, x_ft, y_ft, can, note };

constexpr std::array<std::string_view, 9> column_words{"depth_mm", "depth_in", "caught_ml", "x_m", "y_m",
                                                       "x_ft",     "y_ft",     "can",       "note"};

bool is_blank(std::string_view line) {
  return line.find_first_not_of(",; \t\r\n") == std::string_view::npos || is_remark(line);
}

/// A sheet while it is read.
class SheetReader {
 public:
  SheetReader(std::string_view text, std::string_view shown_name, const CanSheetFacts& facts)
      : text_(std::string(text) + "\n"), shown_name_(shown_name), facts_(facts) {}

  CanSheet read() {
    const char* place = text_.data();
    const char* const limit = text_.data() + text_.size();
    while (place < limit) {
      const std::string_view rest(place, static_cast<std::size_t>(limit - place));
      if (columns_.empty()) separator_ = separator_of(rest.substr(0, rest.find('\n')));
      const CsvRecord record = split_record(place, limit, separator_);
      line_text_ = std::string_view(place, static_cast<std::size_t>(record.end - place));
      if (!is_blank(line_text_)) columns_.empty() ? read_header(record) : read_can(record);
      line_ += record.lines;
      place = record.end;
    }
    if (columns_.empty()) {
      line_ = 0;  // of the file as a whole
      line_text_ = {};
      refuse(nullptr, {}, "there are no cans in this file",
             "begin it with the line depth_mm, then one can a line");
    }
    problems_.throw_if_any();
    work_out();
    return std::move(sheet_);
  }

 private:
  bool has(Column column) const {
    return std::find(columns_.begin(), columns_.end(), column) != columns_.end();
  }

  void read_header(const CsvRecord& record) {
    for (const CsvCell& cell : record.cells) {
      const std::string name(trimmed(cell.text));
      const auto found = std::find(column_words.begin(), column_words.end(), name);
      if (found != column_words.end()) {
        columns_.push_back(static_cast<Column>(found - column_words.begin()));
        continue;
      }
      const std::string nearest = nearest_name(name, column_words);
      refuse(&cell, "header", in_quotes(name) + " is not a column of a can sheet",
             nearest.empty() ? "use depth_mm, depth_in or caught_ml, and x_m, y_m or x_ft, y_ft"
                             : "did you mean " + nearest + "?");
      columns_.push_back(Column::note);
    }
    const int depths = has(Column::depth_mm) + has(Column::depth_in) + has(Column::caught_ml);
    if (depths != 1) {
      refuse(nullptr, "header",
             depths == 0 ? "no column holds what the cans caught" : "two columns hold what the cans caught",
             "have one of depth_mm, depth_in and caught_ml");
    }
    if (has(Column::x_m) != has(Column::y_m) || has(Column::x_ft) != has(Column::y_ft) ||
        (has(Column::x_m) && has(Column::x_ft))) {
      refuse(nullptr, "header", "a place needs two numbers in one unit",
             "have x_m and y_m, or x_ft and y_ft, or neither");
    }
    if (has(Column::caught_ml) && is_missing(facts_.can_diameter_mm)) {
      refuse(nullptr, "caught_ml", "millilitres say no depth without the width of the can",
             "add --can-diameter, its inner diameter at the rim: 83mm, 8.3cm or 3.25in");
    }
    sheet_.has_places = has(Column::x_m) || has(Column::x_ft);
    sheet_.units = has(Column::depth_in) || has(Column::x_ft) ? UnitSystem::us : UnitSystem::metric;
  }

  void read_can(const CsvRecord& record) {
    if (record.cells.size() > columns_.size()) {
      refuse(&record.cells[columns_.size()], {}, "this line has more cells than the header",
             "one can a line");
      return;
    }
    CatchCan can;
    for (std::size_t index = 0; index < record.cells.size(); ++index) {
      const CsvCell& cell = record.cells[index];
      switch (columns_[index]) {
        case Column::depth_mm:
          can.depth_mm = number(cell, Column::depth_mm, 1.0);
          break;
        case Column::depth_in:
          can.depth_mm = number(cell, Column::depth_in, mm_per_inch);
          break;
        case Column::caught_ml:
          can.depth_mm = depth_of(cell);
          break;
        case Column::x_m:
          can.x_m = number(cell, Column::x_m, 1.0);
          break;
        case Column::y_m:
          can.y_m = number(cell, Column::y_m, 1.0);
          break;
        case Column::x_ft:
          can.x_m = number(cell, Column::x_ft, m_per_foot);
          break;
        case Column::y_ft:
          can.y_m = number(cell, Column::y_ft, m_per_foot);
          break;
        default:
          break;
      }
    }
    sheet_.test.cans.push_back(can);
    sheet_.lines.push_back(line_);
  }

  double number(const CsvCell& cell, Column column, double si_per_unit) {
    const std::string_view text = trimmed(cell.text);
    if (text.empty()) return missing;
    const char mark = separator_ == ',' || text.find(',') == std::string_view::npos ? '.' : ',';
    if (const auto value = parse_decimal(text, mark)) return *value * si_per_unit;
    const NumberFault fault = number_fault(text, mark);
    refuse(&cell, std::string(column_words[static_cast<std::size_t>(column)]), fault.message, fault.fix);
    return missing;
  }

  double depth_of(const CsvCell& cell) {
    const double caught_ml = number(cell, Column::caught_ml, 1.0);
    if (is_missing(caught_ml) || is_missing(facts_.can_diameter_mm)) return missing;
    try {
      return can_depth_mm({.caught_ml = caught_ml, .can_diameter_mm = facts_.can_diameter_mm});
    } catch (const Error& refused) {
      refuse(&cell, refused.problems().front().field, refused.problems().front().message,
             refused.problems().front().fix);
      return missing;
    }
  }

  void work_out() {
    sheet_.test.minutes = facts_.minutes;
    try {
      sheet_.result = catch_can_result(sheet_.test);
    } catch (const Error& refused) {
      std::vector<Problem> problems = refused.problems();
      for (Problem& problem : problems) {
        const bool of_one_can = problem.field == "depth_mm" || problem.field == "x_m, y_m";
        problem.file = shown_name_;
        if (of_one_can && problem.row < sheet_.lines.size()) problem.line = sheet_.lines[problem.row];
        problem.row = 0;
      }
      throw Error(std::move(problems));
    }
  }

  void refuse(const CsvCell* cell, std::string field, std::string message, std::string fix) {
    Problem problem;
    problem.file = shown_name_;
    problem.line = line_;
    problem.field = std::move(field);
    problem.message = std::move(message);
    problem.fix = std::move(fix);
    problem.excerpt = excerpt_of(line_text_);
    if (cell != nullptr) {
      problem.column = cell->column;
      problem.text = valid_utf8(cell->raw);
    }
    problems_.add(std::move(problem));
  }

  std::string text_, shown_name_;
  CanSheetFacts facts_;
  char separator_ = ',';
  std::size_t line_ = 1;
  std::string_view line_text_{};
  std::vector<Column> columns_{};
  CanSheet sheet_{};
  FileProblems problems_{};
};

}  // namespace

CanSheet parse_can_sheet(std::string_view text, std::string_view shown_name, const CanSheetFacts& facts) {
  return SheetReader(text, shown_name, facts).read();
}

CanSheet read_can_sheet(const std::filesystem::path& file, std::string_view shown_name,
                        const CanSheetFacts& facts) {
  return parse_can_sheet(read_text_file(file, shown_name, largest_file_bytes), shown_name, facts);
}

}  // namespace v1
}  // namespace noonleaf
