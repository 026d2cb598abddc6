#include "noonleaf/garden/journal.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <system_error>
#include <utility>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/units.hpp"
#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/decimal_number.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t largest_file_bytes = 256UL * 1024 * 1024;

constexpr std::array<std::string_view, 12> event_words{"water", "rain",  "sow",  "transplant", "pull",  "stage",
                                                       "amend", "mulch", "feel", "probe",      "droop", "note"};
constexpr std::array<std::string_view, 4> stage_words{"development", "mid_season", "late_season", "over"};

/// What a column of the journal holds.
enum class Field { id, date, time, event, bed, crop, minutes, rain_mm, rain_in, share_pct, stage, who, note };

constexpr std::array<std::string_view, 13> field_names{"id",      "date",    "time",      "event", "bed", "crop", "minutes",
                                                       "rain_mm", "rain_in", "share_pct", "stage", "who", "note"};

/// A journal while it is read.
class JournalReader {
 public:
  JournalReader(std::string_view text, std::string_view shown_name, const Garden* garden)
      : text_(text), shown_name_(shown_name), garden_(garden) {
    if (text_.empty() || text_.back() != '\n') text_ += '\n';  // split_record wants a newline at the end
  }

  Journal read() {
    const char* place = text_.data();
    const char* const limit = text_.data() + text_.size();
    bool header_read = false;
    while (place < limit) {
      const CsvRecord record = split_record(place, limit, ',');
      const std::string_view line(place, static_cast<std::size_t>(record.end - place));
      if (!is_blank(line)) {
        if (header_read) {
          read_entry(record, line);
        } else {
          read_header(record, line);
          header_read = true;
        }
      }
      line_ += record.lines;
      place = record.end;
    }
    if (!header_read) refuse_line({}, "the journal is empty", "begin it with the line id,date,time,event,bed,minutes,who,note");
    if (!problems_.empty()) throw Error(std::move(problems_));
    return std::move(journal_);
  }

 private:
  static bool is_blank(std::string_view line) {
    const bool empty = line.find_first_not_of(", \t\r\n") == std::string_view::npos;
    return empty || line.front() == '#';
  }

  void read_header(const CsvRecord& record, std::string_view line) {
    for (const CsvCell& cell : record.cells) {
      const std::string name(trimmed(cell.text));
      const auto found = std::find(field_names.begin(), field_names.end(), name);
      if (found == field_names.end()) {
        const std::string nearest = nearest_name(name, field_names);
        refuse(cell, line, "header", in_quotes(name) + " is not a column of the journal",
               nearest.empty() ? "take the column out; docs/garden.md lists the columns" : "did you mean " + nearest + "?");
        fields_.push_back(Field::note);
        continue;
      }
      fields_.push_back(static_cast<Field>(found - field_names.begin()));
    }
    for (const Field needed : {Field::date, Field::event}) {
      if (std::count(fields_.begin(), fields_.end(), needed) > 0) continue;
      const std::string name(field_names[static_cast<std::size_t>(needed)]);
      refuse_line(line, "the column \"" + name + "\" is missing", "add it to the first line");
    }
  }

  void read_entry(const CsvRecord& record, std::string_view line) {
    const std::size_t before = problems_.size();
    if (record.cells.size() > fields_.size()) {
      refuse(record.cells[fields_.size()], line, {}, "this line has more cells than the header",
             "put quotation marks around a text with a comma in it");
      return;
    }
    if (!record.cells.back().closed) {
      refuse(record.cells.back(), line, {}, "a quotation mark is opened and never closed", "add the second one");
      return;
    }
    JournalEntry entry;
    entry.line = line_;
    for (std::size_t index = 0; index < record.cells.size(); ++index) {
      read_cell(fields_[index], record.cells[index], line, entry);
    }
    if (problems_.size() == before) check_entry(line, entry);
    if (problems_.size() == before) journal_.push_back(std::move(entry));
  }

  void read_cell(Field field, const CsvCell& cell, std::string_view line, JournalEntry& entry) {
    const std::string text(trimmed(cell.text));
    const auto name = std::string(field_names[static_cast<std::size_t>(field)]);
    switch (field) {
      case Field::id: entry.id = text; break;
      case Field::date: read_date(cell, line, text, entry); break;
      case Field::time: read_time(cell, line, text, entry); break;
      case Field::event: read_event(cell, line, text, entry); break;
      case Field::bed: read_bed(cell, line, text, entry); break;
      case Field::crop: read_crop(cell, line, text, entry); break;
      case Field::minutes: read_number(cell, line, name, {0, 2880}, 1.0, entry.minutes); break;
      case Field::rain_mm: read_number(cell, line, name, {0, 1000}, 1.0, entry.rain_mm); break;
      case Field::rain_in: read_number(cell, line, name, {0, 40}, mm_per_inch, entry.rain_mm); break;
      case Field::share_pct: read_number(cell, line, name, {0, 100}, 1.0, entry.share_pct); break;
      case Field::stage: entry.stage = text; break;
      case Field::who: entry.who = text; break;
      case Field::note: entry.note = text; break;
    }
  }

  void read_date(const CsvCell& cell, std::string_view line, const std::string& text, JournalEntry& entry) {
    if (const auto date = parse_iso_date(text)) {
      entry.date = *date;
    } else {
      refuse(cell, line, "date", in_quotes(text) + " is not a date that exists", "write year-month-day, like 2025-07-16");
    }
  }

  void read_time(const CsvCell& cell, std::string_view line, const std::string& text, JournalEntry& entry) {
    if (text.empty()) return;
    entry.time_of_day = parse_clock_text(text.size() == 4 && text[1] == ':' ? "0" + text : text);
    if (!entry.time_of_day) {
      refuse(cell, line, "time", in_quotes(text) + " is not a time of day", "write it like 07:30 or 19:05");
    }
  }

  void read_event(const CsvCell& cell, std::string_view line, const std::string& text, JournalEntry& entry) {
    const auto found = std::find(event_words.begin(), event_words.end(), text);
    if (found != event_words.end()) {
      entry.event = static_cast<JournalEvent>(found - event_words.begin());
      return;
    }
    const std::string nearest = nearest_name(text, event_words);
    refuse(cell, line, "event", in_quotes(text) + " is not an event",
           nearest.empty() ? "use water, rain, sow, transplant, pull, stage, amend, mulch, feel, probe, droop or note"
                           : "did you mean " + nearest + "?");
  }

  void read_bed(const CsvCell& cell, std::string_view line, const std::string& text, JournalEntry& entry) {
    entry.bed = text;
    if (text.empty() || garden_ == nullptr || find_bed(*garden_, text) != nullptr) return;
    std::vector<std::string> ids;
    for (const Bed& bed : garden_->beds) ids.push_back(bed.id);
    const std::string nearest = nearest_name(text, ids);
    refuse(cell, line, "bed", "there is no bed with the id " + in_quotes(text),
           nearest.empty() ? "use an id of garden.toml" : "did you mean \"" + nearest + "\"?");
  }

  void read_crop(const CsvCell& cell, std::string_view line, const std::string& text, JournalEntry& entry) {
    if (text.empty()) return;
    try {
      entry.crop = find_crop(text).id;
    } catch (const Error& refused) {
      refuse(cell, line, "crop", refused.problems().front().message, refused.problems().front().fix);
    }
  }

  struct Limits {
    double low, high;
  };

  void read_number(const CsvCell& cell, std::string_view line, const std::string& name, Limits limits,
                   double si_per_unit, double& target) {
    const std::string_view text = trimmed(cell.text);
    if (text.empty()) return;
    const auto value = parse_decimal(text, '.');
    if (!value) {
      const NumberFault fault = number_fault(text, '.');
      refuse(cell, line, name, fault.message, fault.fix);
    } else if (*value < limits.low || *value > limits.high) {
      refuse(cell, line, name, in_quotes(text) + " is outside " + number_text(limits.low) + " to " + number_text(limits.high),
             "check the number and its unit");
    } else {
      target = *value * si_per_unit;
    }
  }

  void check_entry(std::string_view line, const JournalEntry& entry) {
    const std::string event(event_words[static_cast<std::size_t>(entry.event)]);
    const auto need = [&](bool there, std::string_view what, std::string_view example) {
      if (!there) {
        refuse_line(line, "\"" + event + "\" needs " + std::string(what), "fill in " + std::string(example));
      }
    };
    switch (entry.event) {
      case JournalEvent::water:
        need(!entry.bed.empty(), "a bed", "the column bed");
        need(is_known(entry.minutes), "how long it ran", "the column minutes");
        break;
      case JournalEvent::rain: need(is_known(entry.rain_mm), "what the gauge held", "rain_mm or rain_in"); break;
      case JournalEvent::sow:
      case JournalEvent::transplant:
        need(!entry.bed.empty(), "a bed", "the column bed");
        need(!entry.crop.empty(), "a crop", "the column crop");
        break;
      case JournalEvent::stage: {
        need(!entry.bed.empty(), "a bed", "the column bed");
        const bool known = std::find(stage_words.begin(), stage_words.end(), entry.stage) != stage_words.end();
        need(known, "a stage", "the column stage: development, mid_season, late_season or over");
        break;
      }
      case JournalEvent::pull: need(!entry.bed.empty(), "a bed", "the column bed"); break;
      default: break;
    }
  }

  void refuse(const CsvCell& cell, std::string_view line, std::string field, std::string message, std::string fix) {
    Problem problem = line_problem(line, std::move(message), std::move(fix));
    problem.line += cell.line;
    problem.column = cell.column;
    problem.field = std::move(field);
    problem.text = valid_utf8(cell.raw);
    problems_.push_back(std::move(problem));
  }

  void refuse_line(std::string_view line, std::string message, std::string fix) {
    problems_.push_back(line_problem(line, std::move(message), std::move(fix)));
  }

  Problem line_problem(std::string_view line, std::string message, std::string fix) const {
    while (!line.empty() && (line.back() == '\n' || line.back() == '\r')) line.remove_suffix(1);
    Problem problem;
    problem.file = shown_name_;
    problem.line = line_;
    problem.message = std::move(message);
    problem.fix = std::move(fix);
    problem.excerpt = valid_utf8(line);
    return problem;
  }

  std::string text_;
  std::string shown_name_;
  const Garden* garden_;
  std::size_t line_ = 1;
  std::vector<Field> fields_;
  Journal journal_;
  std::vector<Problem> problems_;
};

}  // namespace

Journal parse_journal(std::string_view text, std::string_view shown_name, const Garden* garden) {
  return JournalReader(text, shown_name, garden).read();
}

Journal read_journal(const std::filesystem::path& file, std::string_view shown_name, const Garden* garden) {
  std::error_code code;
  if (!std::filesystem::exists(file, code)) return {};
  return parse_journal(read_text_file(file, shown_name, largest_file_bytes), shown_name, garden);
}

}  // namespace v1
}  // namespace noonleaf
