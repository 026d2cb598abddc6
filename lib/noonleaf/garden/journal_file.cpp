#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <system_error>
#include <utility>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/folder_boundary.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/garden/journal_columns.hpp"
#include "noonleaf/garden/journal_needs.hpp"
#include "noonleaf/garden/journal_undo.hpp"
#include "noonleaf/garden/line_problems.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/units.hpp"
#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/decimal_number.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// A column whose cells are numbers: what they mean, from where to where, and what its unit is worth.
struct NumberCell {
  JournalColumn column;
  double JournalEntry::*member;
  double low, high, si_per_unit = 1;
};
constexpr std::array number_cells{
    NumberCell{JournalColumn::minutes, &JournalEntry::minutes, 0, 2880},
    NumberCell{JournalColumn::litres, &JournalEntry::litres, 0, 1e6},
    NumberCell{JournalColumn::gallons, &JournalEntry::litres, 0, 264172, litres_per_gallon},
    NumberCell{JournalColumn::rain_mm, &JournalEntry::rain_mm, 0, 1000},
    NumberCell{JournalColumn::rain_in, &JournalEntry::rain_mm, 0, 40, mm_per_inch},
    NumberCell{JournalColumn::share_pct, &JournalEntry::share_pct, 0, 100},
    NumberCell{JournalColumn::water_pct, &JournalEntry::water_pct, 0, 100},
    NumberCell{JournalColumn::tension_kpa, &JournalEntry::tension_kpa, 0, 100000},
    NumberCell{JournalColumn::covered_pct, &JournalEntry::covered_pct, 0, 100},
    NumberCell{JournalColumn::organic_pct, &JournalEntry::organic_pct, 0, 8},
    NumberCell{JournalColumn::field_capacity_pct, &JournalEntry::field_capacity_pct, 1, 90},
    NumberCell{JournalColumn::wilting_point_pct, &JournalEntry::wilting_point_pct, 0.1, 90},
};

/// A column whose cells are kept as they are written.
struct TextCell {
  JournalColumn column;
  std::string JournalEntry::*member;
};
constexpr std::array text_cells{
    TextCell{JournalColumn::id, &JournalEntry::id},
    TextCell{JournalColumn::stage, &JournalEntry::stage},
    TextCell{JournalColumn::undoes, &JournalEntry::undoes},
    TextCell{JournalColumn::who, &JournalEntry::who},
    TextCell{JournalColumn::note, &JournalEntry::note},
};

/// A journal while it is read.
class JournalReader {
 public:
  JournalReader(std::string_view text, std::string_view shown_name, const Garden* garden)
      : text_(text), shown_name_(shown_name), garden_(garden), problems_(shown_name) {
    ends_with_line_ = text_.ends_with('\n');
    if (!ends_with_line_) text_ += '\n';  // split_record wants a newline at the end
  }

  Journal read() {
    const char* place = text_.data();
    const char* const limit = text_.data() + text_.size();
    bool header_read = false;
    separator_ = journal_separator(text_);
    while (place < limit) {
      const CsvRecord record = split_record(place, limit, separator_);
      const std::string_view line(place, static_cast<std::size_t>(record.end - place));
      problems_.set_line(line_, line);
      at_open_end_ = record.end == limit && !ends_with_line_;
      if (!is_blank_line(line)) {
        if (header_read) {
          read_entry(record);
        } else {
          read_header(record);
          header_read = true;
        }
      }
      line_ += record.lines;
      place = record.end;
    }
    if (!header_read) {
      problems_.set_line(0, {});
      problems_.refuse_line("the journal is empty",
                            "begin it with the line id,date,time,event,bed,minutes,who,note");
    }
    problems_.throw_if_any();
    return without_undone(std::move(journal_), shown_name_);
  }

 private:
  void read_header(const CsvRecord& record) {
    for (const CsvCell& cell : record.cells) {
      const std::string name(trimmed(cell.text));
      const auto found = std::find(column_names.begin(), column_names.end(), name);
      if (found == column_names.end()) {
        const std::string nearest = nearest_name(name, column_names);
        problems_.refuse(cell, "header", in_quotes(name) + " is not a column of the journal",
                         nearest.empty() ? "take the column out; docs/garden.md lists the columns"
                                         : "did you mean " + nearest + "?");
        fields_.push_back(JournalColumn::note);
        continue;
      }
      fields_.push_back(static_cast<JournalColumn>(found - column_names.begin()));
    }
    for (const JournalColumn needed : {JournalColumn::date, JournalColumn::event}) {
      if (std::count(fields_.begin(), fields_.end(), needed) > 0) continue;
      const std::string name(name_of(needed));
      problems_.refuse_line("the column \"" + name + "\" is missing", "add it to the first line");
    }
  }

  void read_entry(const CsvRecord& record) {
    const std::size_t before = problems_.size();
    if (record.cells.size() > fields_.size()) {
      problems_.refuse(record.cells[fields_.size()], {}, "this line has more cells than the header",
                       "put quotation marks around a text with a comma in it");
      return;
    }
    if (!record.cells.back().closed) {
      problems_.refuse(record.cells.back(), {}, "a quotation mark is opened and never closed",
                       "add the second one");
      return;
    }
    if (is_cut_off(record)) {
      problems_.refuse(record.cells.back(), {},
                       "this line ends in the middle: it was cut off while it was written",
                       "finish it and end it with a new line, or take it out and log it again");
      return;
    }
    JournalEntry entry;
    entry.line = line_;
    for (std::size_t index = 0; index < record.cells.size(); ++index) {
      read_cell(fields_[index], record.cells[index], entry);
    }
    if (problems_.size() == before) check_needs(entry, garden_, problems_);
    if (problems_.size() == before) journal_.push_back(std::move(entry));
  }

  /// Whether nobody finished writing the line: it carries the mark, or it is short and no line end follows.
  bool is_cut_off(const CsvRecord& record) const {
    const bool marked = std::any_of(record.cells.begin(), record.cells.end(), [](const CsvCell& cell) {
      return trimmed(cell.text).ends_with(cut_off_mark);
    });
    return marked || (at_open_end_ && record.cells.size() < fields_.size());
  }

  void read_cell(JournalColumn column, const CsvCell& cell, JournalEntry& entry) {
    for (const NumberCell& number : number_cells)
      if (number.column == column) return read_number(cell, number, entry);
    const std::string text = text_of(cell);
    for (const TextCell& plain : text_cells)
      if (plain.column == column) entry.*plain.member = text;
    switch (column) {
      case JournalColumn::date:
        return read_date(cell, text, entry);
      case JournalColumn::time:
        return read_time(cell, text, entry);
      case JournalColumn::event:
        return read_event(cell, text, entry);
      case JournalColumn::bed:
        entry.bed = text;
        if (garden_ != nullptr) problems_.require_bed(cell, text, *garden_);
        return;
      case JournalColumn::crop:
        return read_crop(cell, text, entry);
      case JournalColumn::feel:
        return read_feel(cell, text, entry);
      case JournalColumn::recovered:
        return read_recovered(cell, text, entry);
      case JournalColumn::mulch:
        return read_mulch(cell, text, entry);
      default:
        return;
    }
  }

  void read_date(const CsvCell& cell, const std::string& text, JournalEntry& entry) {
    if (const auto date = parse_iso_date(text)) {
      entry.date = *date;
    } else {
      problems_.refuse(cell, "date", in_quotes(text) + " is not a date that exists",
                       "write year-month-day, like 2025-07-16");
    }
  }

  void read_time(const CsvCell& cell, const std::string& text, JournalEntry& entry) {
    if (text.empty()) return;
    entry.time_of_day = parse_clock_text(text.size() == 4 && text[1] == ':' ? "0" + text : text);
    if (!entry.time_of_day) {
      problems_.refuse(cell, "time", in_quotes(text) + " is not a time of day",
                       "write it like 07:30 or 19:05");
    }
  }

  void read_event(const CsvCell& cell, const std::string& text, JournalEntry& entry) {
    const auto found = std::find(event_words.begin(), event_words.end(), text);
    if (found != event_words.end()) {
      entry.event = static_cast<JournalEvent>(found - event_words.begin());
      return;
    }
    const std::string nearest = nearest_name(text, event_words);
    problems_.refuse(
        cell, "event", in_quotes(text) + " is not an event",
        nearest.empty()
            ? "use water, rain, sow, transplant, pull, stage, amend, mulch, feel, probe, droop, note or undo"
            : "did you mean " + nearest + "?");
  }

  void read_feel(const CsvCell& cell, const std::string& text, JournalEntry& entry) {
    if (text.empty()) return;
    const auto found = std::find(feel_words.begin(), feel_words.end(), text);
    if (found != feel_words.end()) {
      entry.feel = static_cast<SoilFeel>(found - feel_words.begin());
      return;
    }
    problems_.refuse(cell, "feel", in_quotes(text) + " is not a class of soil feel",
                     "use dry, slightly_moist, moist, wet or field_capacity");
  }

  void read_recovered(const CsvCell& cell, const std::string& text, JournalEntry& entry) {
    if (text.empty()) return;
    const auto found = std::find(yes_no_words.begin(), yes_no_words.end(), text);
    if (found == yes_no_words.end())
      problems_.refuse(cell, "recovered", in_quotes(text) + " is neither yes nor no", "write yes or no");
    entry.recovered = text == "yes";
  }

  void read_mulch(const CsvCell& cell, const std::string& text, JournalEntry& entry) {
    if (text.empty()) return;
    const auto found = std::find(mulch_words.begin(), mulch_words.end(), text);
    if (found != mulch_words.end()) {
      entry.mulch = static_cast<MulchKind>(found - mulch_words.begin());
      return;
    }
    problems_.refuse(cell, "mulch", in_quotes(text) + " is not a kind of mulch",
                     "use organic (straw, leaves, chips), plastic, or none where it was taken off");
  }

  void read_crop(const CsvCell& cell, const std::string& text, JournalEntry& entry) {
    if (text.empty()) return;
    try {
      entry.crop = find_crop(text).id;
    } catch (const Error& refused) {
      problems_.refuse(cell, "crop", refused.problems().front().message, refused.problems().front().fix);
    }
  }

  void read_number(const CsvCell& cell, const NumberCell& number, JournalEntry& entry) {
    const std::string_view text = trimmed(cell.text);
    if (text.empty()) return;
    const std::string name(name_of(number.column));
    const char mark = separator_ == ',' || text.find(',') == std::string_view::npos ? '.' : ',';
    const auto value = parse_decimal(text, mark);
    if (!value) {
      const NumberFault fault = number_fault(text, mark);
      problems_.refuse(cell, name, fault.message, fault.fix);
    } else if (*value < number.low || *value > number.high) {
      problems_.refuse(
          cell, name,
          in_quotes(text) + " is outside " + number_text(number.low) + " to " + number_text(number.high),
          "check the number and its unit");
    } else {
      entry.*number.member = *value * number.si_per_unit;
    }
  }

  /// The text of a cell, without the apostrophe that keeps a spreadsheet from taking it for a formula.
  static std::string text_of(const CsvCell& cell) {
    std::string_view text = trimmed(cell.text);
    if (text.starts_with('\'') && looks_like_formula(text.substr(1))) text.remove_prefix(1);
    return std::string(text);
  }

  std::string text_;
  std::string shown_name_;
  const Garden* garden_;
  char separator_ = ',';
  bool ends_with_line_ = true, at_open_end_ = false;
  std::size_t line_ = 1;
  std::vector<JournalColumn> fields_;
  Journal journal_;
  LineProblems problems_;
};

}  // namespace

char journal_separator(std::string_view text) {
  while (!text.empty()) {
    const std::string_view line = text.substr(0, text.find('\n'));
    if (!is_blank_line(line)) return separator_of(line);
    text.remove_prefix(std::min(text.size(), line.size() + 1));
  }
  return ',';
}

bool is_blank_line(std::string_view line) {
  const bool empty = line.find_first_not_of(",; \t\r\n") == std::string_view::npos;
  return empty || is_remark(line);
}

Journal parse_journal(std::string_view text, std::string_view shown_name, const Garden* garden) {
  return JournalReader(text, shown_name, garden).read();
}

Journal read_journal(const std::filesystem::path& file, std::string_view shown_name, const Garden* garden) {
  if (is_nothing_there(file)) return {};
  require_in_its_folder(file, shown_name);
  return parse_journal(read_text_file(file, shown_name, largest_journal_bytes), shown_name, garden);
}

}  // namespace v1
}  // namespace noonleaf
