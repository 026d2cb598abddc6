#include "noonleaf/garden/week_sheet.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/journal_columns.hpp"
#include "noonleaf/garden/line_problems.hpp"
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

constexpr std::chrono::days longest_sheet{14};

struct DateParts {
  unsigned first = 0, second = 0;
  int year = 0;
};

/// "7/16/2025", "16.7.25": three numbers, the year last.
std::optional<DateParts> spreadsheet_date(std::string_view text) {
  std::array<unsigned, 3> numbers{};
  std::size_t part = 0, digits = 0;
  char mark = 0;
  for (const char letter : text) {
    if (letter >= '0' && letter <= '9' && digits < 4) {
      numbers[part] = numbers[part] * 10 + static_cast<unsigned>(letter - '0');
      ++digits;
    } else if ((letter == '/' || letter == '.' || letter == '-') && digits > 0 && digits < 3 && part < 2 &&
               (mark == 0 || mark == letter)) {
      mark = letter;
      ++part;
      digits = 0;
    } else {
      return std::nullopt;
    }
  }
  if (part != 2 || (digits != 2 && digits != 4)) return std::nullopt;
  return DateParts{numbers[0], numbers[1], static_cast<int>(numbers[2]) + (digits == 2 ? 2000 : 0)};
}

/// The letters that the sheet offers, in English and in Spanish.
std::string_view reason_of_letter(char letter) {
  switch (letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter) {
    case 'R':
    case 'L':
      return "rain";
    case 'W':
    case 'V':
      return "wind";
    case 'M':
      return "soil moist";
    case 'F':
    case 'H':
      return "frost";
    case 'O':
      return "other";
    default:
      return {};
  }
}

/// A sheet while it is read.
class SheetReader {
 public:
  SheetReader(std::string_view text, std::string_view shown_name, const Garden& garden)
      : text_(text), garden_(garden), separator_(journal_separator(text)), problems_(shown_name) {
    if (!text_.ends_with('\n')) text_ += '\n';  // split_record wants a newline at the end
  }

  std::vector<FilledRun> read() {
    const char* place = text_.data();
    const char* const limit = text_.data() + text_.size();
    bool header_read = false;
    while (place < limit) {
      const CsvRecord record = split_record(place, limit, separator_);
      line_text_ = {place, static_cast<std::size_t>(record.end - place)};
      problems_.set_line(line_, line_text_);
      if (!is_blank_line(line_text_)) {
        header_read ? read_row(record) : read_header(record);
        header_read = true;
      }
      line_ += record.lines;
      place = record.end;
    }
    if (!header_read) {
      problems_.set_line(0, {});
      problems_.refuse_line("the sheet is empty",
                            "begin it with the line date,bed,run,actual_minutes,who,not_done_because");
    }
    check_respelled_dates();
    problems_.throw_if_any();
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
          problems_.refuse(cell, "header", in_quotes(name) + " is not a column of the sheet",
                           "did you mean " + nearest + "?");
        columns_.push_back(std::nullopt);
        continue;
      }
      columns_.push_back(static_cast<WeekSheetColumn>(found - week_sheet_columns.begin()));
    }
    for (const WeekSheetColumn needed :
         {WeekSheetColumn::date, WeekSheetColumn::bed, WeekSheetColumn::actual_minutes}) {
      if (std::count(columns_.begin(), columns_.end(), needed) == 1) continue;
      problems_.refuse_line("the column \"" + std::string(name_of(needed)) + "\" has to be there once",
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
    if (row.not_done_because.empty()) row.not_done_because = letter_reason_;
    letter_reason_.clear();
    if (record.cells.size() > columns_.size()) {
      problems_.refuse_line("this line has more cells than the header",
                            "put quotation marks around a text with a comma in it");
    }
    if (problems_.size() == before && (row.bed.empty() || row.date == std::chrono::year_month_day{})) {
      problems_.refuse_line("this row needs a date and a bed", "fill in the columns date and bed");
    }
    if (row.actual_minutes > 0 && !row.not_done_because.empty()) {
      problems_.refuse_line("this row was run and not done at once",
                            "clear actual_minutes or not_done_because; 0 minutes is not run");
    }
    if (problems_.size() == before) rows_.push_back(std::move(row));
  }

  void read_cell(WeekSheetColumn column, const CsvCell& cell, FilledRun& row) {
    const std::string text(trimmed(cell.text));
    switch (column) {
      case WeekSheetColumn::date:
        read_date(cell, text, row);
        break;
      case WeekSheetColumn::bed:
        row.bed = text;
        problems_.require_bed(cell, text, garden_);
        break;
      case WeekSheetColumn::run:
        row.run = text;
        break;
      case WeekSheetColumn::open_at:
        row.open_at = parse_clock_text(text.size() == 4 && text[1] == ':' ? "0" + text : text);
        if (!text.empty() && !row.open_at)
          problems_.refuse(cell, "open_at", in_quotes(text) + " is not a time of day", "write it like 07:30");
        break;
      case WeekSheetColumn::planned_minutes:
        read_minutes(cell, text, "planned_minutes", row.planned_minutes);
        break;
      case WeekSheetColumn::actual_minutes:
        read_actual(cell, text, row);
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

  /// A spreadsheet turns 2025-07-16 into 7/16/2025, in all rows alike: that is one fault, not one a row.
  void read_date(const CsvCell& cell, const std::string& text, FilledRun& row) {
    if (const auto date = parse_iso_date(text)) {
      row.date = *date;
    } else if (const auto parts = spreadsheet_date(text)) {
      const bool month_first = garden_.site.units == UnitSystem::us;
      const auto [first, second, year] = *parts;
      row.date = std::chrono::year_month_day(std::chrono::year(year),
                                             std::chrono::month(month_first ? first : second),
                                             std::chrono::day(month_first ? second : first));
      respelled_.push_back({row.date, cell, line_, line_text_});
    } else {
      problems_.refuse(cell, "date", in_quotes(text) + " is not a date like 2025-07-16",
                       "write year-month-day, like 2025-07-16");
    }
  }

  /// Read in the order that the garden's units go with, such dates have to exist and to be those of one
  /// sheet.
  void check_respelled_dates() {
    if (respelled_.empty()) return;
    const auto wrong = std::find_if(respelled_.begin(), respelled_.end(),
                                    [](const Respelled& each) { return !each.date.ok(); });
    const auto [low, high] =
        std::minmax_element(respelled_.begin(), respelled_.end(),
                            [](const Respelled& a, const Respelled& b) { return a.date < b.date; });
    const bool one_sheet =
        wrong == respelled_.end() &&
        std::chrono::sys_days(high->date) - std::chrono::sys_days(low->date) < longest_sheet;
    if (one_sheet) return;
    const Respelled& shown = wrong == respelled_.end() ? *high : *wrong;
    problems_.set_line(shown.line, shown.line_text);
    const bool month_first = garden_.site.units == UnitSystem::us;
    problems_.refuse(shown.cell, "date",
                     "dates like \"" + std::string(trimmed(shown.cell.text)) + "\" do not read as " +
                         (month_first ? "month/day/year" : "day/month/year") + " of one sheet",
                     "give the whole column the format year-month-day, like 2025-07-16, and save it again");
  }

  /// The printed box takes minutes or a letter for why not.
  void read_actual(const CsvCell& cell, const std::string& text, FilledRun& row) {
    const std::string_view reason = text.size() == 1 ? reason_of_letter(text[0]) : std::string_view{};
    if (reason.empty()) return read_minutes(cell, text, "actual_minutes", row.actual_minutes);
    row.actual_minutes = 0;
    letter_reason_ = reason;
  }

  void read_minutes(const CsvCell& cell, const std::string& text, const std::string& name, double& target) {
    if (text.empty()) return;
    const char mark = separator_ == ',' || text.find(',') == std::string::npos ? '.' : ',';
    const auto value = parse_decimal(text, mark);
    if (!value) {
      const NumberFault fault = number_fault(text, mark);
      problems_.refuse(cell, name, fault.message, fault.fix);
    } else if (*value < 0 || *value > longest_min) {
      problems_.refuse(cell, name, in_quotes(text) + " is outside 0 to " + number_text(longest_min),
                       "write the minutes that it ran; 0 if it did not");
    } else {
      target = *value;
    }
  }

  struct Respelled {
    std::chrono::year_month_day date{};
    CsvCell cell{};
    std::size_t line = 0;
    std::string_view line_text{};
  };

  std::string text_;
  const Garden& garden_;
  char separator_;
  std::string_view line_text_{};
  std::string letter_reason_{};  ///< of the row that is read
  std::size_t line_ = 1;
  std::vector<std::optional<WeekSheetColumn>> columns_;
  std::vector<FilledRun> rows_;
  std::vector<Respelled> respelled_;
  LineProblems problems_;
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
      result.rows.push_back(row);
      known.push_back(result.entries.back());
    }
  }
  return result;
}

}  // namespace v1
}  // namespace noonleaf
