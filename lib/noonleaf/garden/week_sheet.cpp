#include "noonleaf/garden/week_sheet.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/journal_columns.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/garden/week_sheet_columns.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/decimal_number.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double longest_min = 1440;

/// A sheet while it is read.
class SheetReader {
 public:
  SheetReader(std::string_view text, std::string_view shown_name, const Garden& garden)
      : text_(text), shown_name_(shown_name), garden_(garden), separator_(journal_separator(text)) {
    if (!text_.ends_with('\n')) text_ += '\n';  // split_record wants a newline at the end
  }

  std::vector<FilledRun> read() {
    const char* place = text_.data();
    const char* const limit = text_.data() + text_.size();
    bool header_read = false;
    while (place < limit) {
      const CsvRecord record = split_record(place, limit, separator_);
      line_text_ = {place, static_cast<std::size_t>(record.end - place)};
      if (!is_blank_line(line_text_)) {
        header_read ? read_row(record) : read_header(record);
        header_read = true;
      }
      line_ += record.lines;
      place = record.end;
    }
    if (!header_read)
      refuse_line("the sheet is empty",
                  "begin it with the line date,bed,run,actual_minutes,who,not_done_because");
    if (!problems_.empty()) throw Error(std::move(problems_));
    return std::move(rows_);
  }

 private:
  void read_header(const CsvRecord& record) {
    for (const CsvCell& cell : record.cells) {
      const std::string name(trimmed(cell.text));
      const auto found = std::find(week_sheet_columns.begin(), week_sheet_columns.end(), name);
      if (found == week_sheet_columns.end()) {
        const std::string nearest = nearest_name(name, week_sheet_columns);
        if (!nearest.empty())
          refuse(cell, "header", "\"" + name + "\" is not a column of the sheet",
                 "did you mean " + nearest + "?");
        columns_.push_back(std::nullopt);
        continue;
      }
      columns_.push_back(static_cast<WeekSheetColumn>(found - week_sheet_columns.begin()));
    }
    for (const WeekSheetColumn needed :
         {WeekSheetColumn::date, WeekSheetColumn::bed, WeekSheetColumn::actual_minutes}) {
      if (std::count(columns_.begin(), columns_.end(), needed) == 1) continue;
      refuse_line("the column \"" + std::string(name_of(needed)) + "\" has to be there once",
                  "mend the first line");
    }
  }

  void read_row(const CsvRecord& record) {
    const std::size_t before = problems_.size();
    FilledRun row;
    row.line = line_;
    for (std::size_t index = 0; index < std::min(columns_.size(), record.cells.size()); ++index) {
      if (columns_[index]) read_cell(*columns_[index], record.cells[index], row);
    }
    if (record.cells.size() > columns_.size()) {
      refuse_line("this line has more cells than the header",
                  "put quotation marks around a text with a comma in it");
    }
    if (problems_.size() == before && (row.bed.empty() || !row.date.ok())) {
      refuse_line("this row needs a date and a bed", "fill in the columns date and bed");
    }
    if (row.actual_minutes > 0 && !row.not_done_because.empty()) {
      refuse_line("this row was run and not done at once",
                  "clear actual_minutes or not_done_because; 0 minutes is not run");
    }
    if (problems_.size() == before) rows_.push_back(std::move(row));
  }

  void read_cell(WeekSheetColumn column, const CsvCell& cell, FilledRun& row) {
    const std::string text(trimmed(cell.text));
    switch (column) {
      case WeekSheetColumn::date:
        if (const auto date = parse_iso_date(text)) {
          row.date = *date;
        } else {
          refuse(cell, "date", "\"" + text + "\" is not a date like 2025-07-16",
                 "write year-month-day, like 2025-07-16");
        }
        break;
      case WeekSheetColumn::bed:
        read_bed(cell, text, row);
        break;
      case WeekSheetColumn::run:
        row.run = text;
        break;
      case WeekSheetColumn::open_at:
        row.open_at = parse_clock_text(text.size() == 4 && text[1] == ':' ? "0" + text : text);
        if (!text.empty() && !row.open_at)
          refuse(cell, "open_at", "\"" + text + "\" is not a time of day", "write it like 07:30");
        break;
      case WeekSheetColumn::planned_minutes:
        read_minutes(cell, text, "planned_minutes", row.planned_minutes);
        break;
      case WeekSheetColumn::actual_minutes:
        read_minutes(cell, text, "actual_minutes", row.actual_minutes);
        break;
      case WeekSheetColumn::who:
        row.who = text;
        break;
      case WeekSheetColumn::not_done_because:
        row.not_done_because = text;
        break;
      case WeekSheetColumn::close_at:
        break;
    }
  }

  void read_bed(const CsvCell& cell, const std::string& text, FilledRun& row) {
    row.bed = text;
    if (text.empty() || find_bed(garden_, text) != nullptr) return;
    std::vector<std::string> ids;
    for (const Bed& bed : garden_.beds) ids.push_back(bed.id);
    const std::string nearest = nearest_name(text, ids);
    refuse(cell, "bed", "there is no bed with the id \"" + text + "\"",
           nearest.empty() ? "use an id of garden.toml" : "did you mean \"" + nearest + "\"?");
  }

  void read_minutes(const CsvCell& cell, const std::string& text, const std::string& name, double& target) {
    if (text.empty()) return;
    const char mark = separator_ == ',' || text.find(',') == std::string::npos ? '.' : ',';
    const auto value = parse_decimal(text, mark);
    if (!value) {
      const NumberFault fault = number_fault(text, mark);
      refuse(cell, name, fault.message, fault.fix);
    } else if (*value < 0 || *value > longest_min) {
      refuse(cell, name, "\"" + text + "\" is outside 0 to " + number_text(longest_min),
             "write the minutes that it ran; 0 if it did not");
    } else {
      target = *value;
    }
  }

  void refuse(const CsvCell& cell, std::string field, std::string message, std::string fix) {
    Problem problem = line_problem(std::move(message), std::move(fix));
    problem.line += cell.line;
    problem.column = cell.column;
    problem.field = std::move(field);
    problem.text = valid_utf8(cell.raw);
    problems_.push_back(std::move(problem));
  }

  void refuse_line(std::string message, std::string fix) {
    problems_.push_back(line_problem(std::move(message), std::move(fix)));
  }

  Problem line_problem(std::string message, std::string fix) const {
    std::string_view line = line_text_;
    while (!line.empty() && (line.back() == '\n' || line.back() == '\r')) line.remove_suffix(1);
    Problem problem;
    problem.file = shown_name_;
    problem.line = line_;
    problem.message = std::move(message);
    problem.fix = std::move(fix);
    problem.excerpt = valid_utf8(line);
    return problem;
  }

  std::string text_, shown_name_;
  const Garden& garden_;
  char separator_;
  std::string_view line_text_{};
  std::size_t line_ = 1;
  std::vector<std::optional<WeekSheetColumn>> columns_;
  std::vector<FilledRun> rows_;
  std::vector<Problem> problems_;
};

/// By what a row is known again in the journal.
std::string mark_of(const FilledRun& row) {
  return "week sheet, run " + (row.run.empty() ? std::string("?") : row.run);
}

JournalEntry entry_of(const FilledRun& row) {
  JournalEntry entry;
  entry.date = row.date;
  entry.time_of_day = row.open_at;
  entry.event = JournalEvent::water;
  entry.bed = row.bed;
  entry.who = row.who;
  entry.minutes = is_known(row.actual_minutes) ? row.actual_minutes : 0.0;
  entry.note = mark_of(row);
  if (!row.not_done_because.empty()) entry.note += "; not run: " + row.not_done_because;
  return entry;
}

/// The entry of the journal that keeps a row out, if there is one.
std::optional<LeftRow> kept_out(const FilledRun& row, const Journal& journal) {
  for (const JournalEntry& entry : journal) {
    if (entry.event != JournalEvent::water || entry.bed != row.bed || entry.date != row.date) continue;
    const std::string mark = mark_of(row);
    if (entry.note == mark || entry.note.starts_with(mark + ";"))
      return LeftRow{row, RowLeftOut::already_brought_in, entry.id};
    if (!entry.note.starts_with("week sheet, run "))
      return LeftRow{row, RowLeftOut::already_logged, entry.id};
  }
  return std::nullopt;
}

}  // namespace

std::vector<FilledRun> parse_week_sheet(std::string_view text, std::string_view shown_name,
                                        const Garden& garden) {
  return SheetReader(text, shown_name, garden).read();
}

std::vector<FilledRun> read_week_sheet(const std::filesystem::path& file, std::string_view shown_name,
                                       const Garden& garden) {
  constexpr std::size_t largest_sheet_bytes = 1024UL * 1024;
  return parse_week_sheet(read_text_file(file, shown_name, largest_sheet_bytes), shown_name, garden);
}

SheetEntries entries_of_sheet(const std::vector<FilledRun>& rows, const Journal& journal) {
  SheetEntries result;
  Journal known = journal;
  for (const FilledRun& row : rows) {
    const bool written = is_known(row.actual_minutes) || !row.not_done_because.empty();
    if (!written) {
      result.left_out.push_back(
          {row, row.who.empty() ? RowLeftOut::nothing_written : RowLeftOut::initials_only, {}});
    } else if (auto left = kept_out(row, known)) {
      result.left_out.push_back(*std::move(left));
    } else {
      result.entries.push_back(entry_of(row));
      known.push_back(result.entries.back());
    }
  }
  return result;
}

}  // namespace v1
}  // namespace noonleaf
