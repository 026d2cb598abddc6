#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <system_error>
#include <utility>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/file_problems.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/garden/journal_columns.hpp"
#include "noonleaf/garden/journal_undo.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/units.hpp"
#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/decimal_number.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// A journal while it is read.
class JournalReader {
 public:
  JournalReader(std::string_view text, std::string_view shown_name, const Garden* garden)
      : text_(text), shown_name_(shown_name), garden_(garden) {
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
      at_open_end_ = record.end == limit && !ends_with_line_;
      if (!is_blank_line(line)) {
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
    if (!header_read) {
      line_ = 0;  // of the file as a whole
      refuse_line({}, "the journal is empty",
                  "begin it with the line id,date,time,event,bed,minutes,who,note");
    }
    problems_.throw_if_any();
    return without_undone(std::move(journal_), shown_name_);
  }

 private:
  void read_header(const CsvRecord& record, std::string_view line) {
    for (const CsvCell& cell : record.cells) {
      const std::string name(trimmed(cell.text));
      const auto found = std::find(column_names.begin(), column_names.end(), name);
      if (found == column_names.end()) {
        const std::string nearest = nearest_name(name, column_names);
        refuse(cell, line, "header", in_quotes(name) + " is not a column of the journal",
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
      refuse(record.cells.back(), line, {}, "a quotation mark is opened and never closed",
             "add the second one");
      return;
    }
    if (is_cut_off(record)) {
      refuse(record.cells.back(), line, {},
             "this line ends in the middle: it was cut off while it was written",
             "finish it and end it with a new line, or take it out and log it again");
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

  /// Whether nobody finished writing the line: it carries the mark, or it is short and no line end follows.
  bool is_cut_off(const CsvRecord& record) const {
    const bool marked = std::any_of(record.cells.begin(), record.cells.end(), [](const CsvCell& cell) {
      return trimmed(cell.text).ends_with(cut_off_mark);
    });
    return marked || (at_open_end_ && record.cells.size() < fields_.size());
  }

  void read_cell(JournalColumn field, const CsvCell& cell, std::string_view line, JournalEntry& entry) {
    const std::string text = text_of(cell);
    const auto name = std::string(name_of(field));
    switch (field) {
      case JournalColumn::id:
        entry.id = text;
        break;
      case JournalColumn::date:
        read_date(cell, line, text, entry);
        break;
      case JournalColumn::time:
        read_time(cell, line, text, entry);
        break;
      case JournalColumn::event:
        read_event(cell, line, text, entry);
        break;
      case JournalColumn::bed:
        read_bed(cell, line, text, entry);
        break;
      case JournalColumn::crop:
        read_crop(cell, line, text, entry);
        break;
      case JournalColumn::minutes:
        read_number(cell, line, name, {0, 2880}, 1.0, entry.minutes);
        break;
      case JournalColumn::litres:
        read_number(cell, line, name, {0, 1e6}, 1.0, entry.litres);
        break;
      case JournalColumn::gallons:
        read_number(cell, line, name, {0, 264172}, litres_per_gallon, entry.litres);
        break;
      case JournalColumn::rain_mm:
        read_number(cell, line, name, {0, 1000}, 1.0, entry.rain_mm);
        break;
      case JournalColumn::rain_in:
        read_number(cell, line, name, {0, 40}, mm_per_inch, entry.rain_mm);
        break;
      case JournalColumn::share_pct:
        read_number(cell, line, name, {0, 100}, 1.0, entry.share_pct);
        break;
      case JournalColumn::stage:
        entry.stage = text;
        break;
      case JournalColumn::feel:
        read_feel(cell, line, text, entry);
        break;
      case JournalColumn::water_pct:
        read_number(cell, line, name, {0, 100}, 1.0, entry.water_pct);
        break;
      case JournalColumn::tension_kpa:
        read_number(cell, line, name, {0, 100000}, 1.0, entry.tension_kpa);
        break;
      case JournalColumn::recovered:
        read_recovered(cell, line, text, entry);
        break;
      case JournalColumn::mulch:
        read_mulch(cell, line, text, entry);
        break;
      case JournalColumn::covered_pct:
        read_number(cell, line, name, {0, 100}, 1.0, entry.covered_pct);
        break;
      case JournalColumn::organic_pct:
        read_number(cell, line, name, {0, 8}, 1.0, entry.organic_pct);
        break;
      case JournalColumn::field_capacity_pct:
        read_number(cell, line, name, {1, 90}, 1.0, entry.field_capacity_pct);
        break;
      case JournalColumn::wilting_point_pct:
        read_number(cell, line, name, {0.1, 90}, 1.0, entry.wilting_point_pct);
        break;
      case JournalColumn::undoes:
        entry.undoes = text;
        break;
      case JournalColumn::who:
        entry.who = text;
        break;
      case JournalColumn::note:
        entry.note = text;
        break;
    }
  }

  void read_date(const CsvCell& cell, std::string_view line, const std::string& text, JournalEntry& entry) {
    if (const auto date = parse_iso_date(text)) {
      entry.date = *date;
    } else {
      refuse(cell, line, "date", in_quotes(text) + " is not a date that exists",
             "write year-month-day, like 2025-07-16");
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
    refuse(
        cell, line, "event", in_quotes(text) + " is not an event",
        nearest.empty()
            ? "use water, rain, sow, transplant, pull, stage, amend, mulch, feel, probe, droop, note or undo"
            : "did you mean " + nearest + "?");
  }

  void read_feel(const CsvCell& cell, std::string_view line, const std::string& text, JournalEntry& entry) {
    if (text.empty()) return;
    const auto found = std::find(feel_words.begin(), feel_words.end(), text);
    if (found != feel_words.end()) {
      entry.feel = static_cast<SoilFeel>(found - feel_words.begin());
      return;
    }
    refuse(cell, line, "feel", in_quotes(text) + " is not a class of soil feel",
           "use dry, slightly_moist, moist, wet or field_capacity");
  }

  void read_recovered(const CsvCell& cell, std::string_view line, const std::string& text,
                      JournalEntry& entry) {
    if (text.empty()) return;
    const auto found = std::find(yes_no_words.begin(), yes_no_words.end(), text);
    if (found == yes_no_words.end())
      refuse(cell, line, "recovered", in_quotes(text) + " is neither yes nor no", "write yes or no");
    entry.recovered = text == "yes";
  }

  void read_mulch(const CsvCell& cell, std::string_view line, const std::string& text, JournalEntry& entry) {
    if (text.empty()) return;
    const auto found = std::find(mulch_words.begin(), mulch_words.end(), text);
    if (found != mulch_words.end()) {
      entry.mulch = static_cast<MulchKind>(found - mulch_words.begin());
      return;
    }
    refuse(cell, line, "mulch", in_quotes(text) + " is not a kind of mulch",
           "use organic (straw, leaves, chips), plastic, or none where it was taken off");
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
    const char mark = separator_ == ',' || text.find(',') == std::string_view::npos ? '.' : ',';
    const auto value = parse_decimal(text, mark);
    if (!value) {
      const NumberFault fault = number_fault(text, mark);
      refuse(cell, line, name, fault.message, fault.fix);
    } else if (*value < limits.low || *value > limits.high) {
      refuse(cell, line, name,
             in_quotes(text) + " is outside " + number_text(limits.low) + " to " + number_text(limits.high),
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
        need(is_known(entry.minutes) || is_known(entry.litres), "how long it ran",
             "the column minutes, or litres or gallons by the meter or the cans");
        check_litres(line, entry);
        break;
      case JournalEvent::rain:
        need(is_known(entry.rain_mm), "what the gauge held", "rain_mm or rain_in");
        if (!entry.bed.empty()) {
          refuse_line(line, "rain falls on every bed",
                      "leave the cell bed empty; water from a can or a hose is \"water\"");
        }
        break;
      case JournalEvent::sow:
      case JournalEvent::transplant:
        need(!entry.bed.empty(), "a bed", "the column bed");
        need(!entry.crop.empty(), "a crop", "the column crop");
        break;
      case JournalEvent::stage: {
        need(!entry.bed.empty(), "a bed", "the column bed");
        const bool known =
            std::find(stage_words.begin(), stage_words.end(), entry.stage) != stage_words.end();
        need(known, "a stage", "the column stage: development, mid_season, late_season or over");
        break;
      }
      case JournalEvent::pull:
        need(!entry.bed.empty(), "a bed", "the column bed");
        break;
      case JournalEvent::feel:
        need(!entry.bed.empty(), "a bed", "the column bed");
        need(entry.feel.has_value(), "how the soil feels",
             "the column feel: dry, slightly_moist, moist, wet or field_capacity");
        break;
      case JournalEvent::probe:
        need(!entry.bed.empty(), "a bed", "the column bed");
        need(is_known(entry.water_pct) != is_known(entry.tension_kpa), "one reading",
             "either water_pct or tension_kpa");
        break;
      case JournalEvent::mulch:
        need(!entry.mulch || !entry.bed.empty(), "a bed", "the column bed");
        break;
      case JournalEvent::amend: {
        const bool measured = is_known(entry.field_capacity_pct), wilting = is_known(entry.wilting_point_pct);
        need(measured == wilting, "both numbers or none",
             "field_capacity_pct and wilting_point_pct together; `noonleaf soils --pot` tells how to get "
             "them");
        need(!(entry.field_capacity_pct <= entry.wilting_point_pct), "field capacity above the wilting point",
             "the two the other way round");
        need(!(measured || is_known(entry.organic_pct)) || !entry.bed.empty(), "a bed", "the column bed");
        break;
      }
      case JournalEvent::undo:
        need(!entry.undoes.empty(), "the id of an entry", "the column undoes");
        break;
      default:
        break;
    }
  }

  /// Litres of a sprinkler tell its depth only where its flow is known; with minutes beside them they need
  /// not.
  void check_litres(std::string_view line, const JournalEntry& entry) {
    if (garden_ == nullptr || is_missing(entry.litres) || is_known(entry.minutes)) return;
    const Bed* bed = find_bed(*garden_, entry.bed);
    if (bed == nullptr || bed->sprinkler >= garden_->sprinklers.size()) return;
    const Sprinkler& sprinkler = garden_->sprinklers[bed->sprinkler];
    if (sprinkler.kind == WettingKind::hand || is_known(sprinkler.rate.flow_l_min)) return;
    refuse_line(
        line, "the flow of " + sprinkler.name + " is not known: its litres do not tell the depth",
        "write the minutes as well, or give the sprinkler its flow_l_min or flow_gal_min in garden.toml");
  }

  /// The text of a cell, without the apostrophe that keeps a spreadsheet from taking it for a formula.
  static std::string text_of(const CsvCell& cell) {
    std::string_view text = trimmed(cell.text);
    if (text.starts_with('\'') && looks_like_formula(text.substr(1))) text.remove_prefix(1);
    return std::string(text);
  }

  void refuse(const CsvCell& cell, std::string_view line, std::string field, std::string message,
              std::string fix) {
    Problem problem = line_problem(line, std::move(message), std::move(fix));
    problem.line += cell.line;
    problem.column = cell.column;
    problem.field = std::move(field);
    problem.text = valid_utf8(cell.raw);
    problems_.add(std::move(problem));
  }

  void refuse_line(std::string_view line, std::string message, std::string fix) {
    problems_.add(line_problem(line, std::move(message), std::move(fix)));
  }

  Problem line_problem(std::string_view line, std::string message, std::string fix) const {
    Problem problem;
    problem.file = shown_name_;
    problem.line = line_;
    problem.message = std::move(message);
    problem.fix = std::move(fix);
    problem.excerpt = excerpt_of(line);
    return problem;
  }

  std::string text_;
  std::string shown_name_;
  const Garden* garden_;
  char separator_ = ',';
  bool ends_with_line_ = true, at_open_end_ = false;
  std::size_t line_ = 1;
  std::vector<JournalColumn> fields_;
  Journal journal_;
  FileProblems problems_;
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
  return parse_journal(read_text_file(file, shown_name, largest_journal_bytes), shown_name, garden);
}

}  // namespace v1
}  // namespace noonleaf
