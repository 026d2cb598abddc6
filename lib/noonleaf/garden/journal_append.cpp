#include "noonleaf/garden/journal_append.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <map>
#include <span>
#include <system_error>
#include <utility>
#include <vector>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/garden/folder_boundary.hpp"
#include "noonleaf/garden/journal_columns.hpp"
#include "noonleaf/garden/locked_file.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/units.hpp"
#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// What an appender has to know of a journal, read without judging its entries.
struct JournalShape {
  std::string text{};                  ///< as it stands in the file
  std::vector<std::string> columns{};  ///< headers in the file's order; empty = there is no header yet
  char separator = ',';
  std::string line_end = "\n";
  std::uint64_t highest_id = 0;
  std::vector<std::string> ids{};
  std::size_t lines = 0;      ///< that the text covers
  std::size_t last_line = 0;  ///< on which the last record begins
  std::string last_record{};
  std::size_t last_cells = 0;
  bool quote_open = false;  ///< the last record opens a quotation mark and never closes it
};

std::uint64_t number_of_id(std::string_view id) {
  std::uint64_t number = 0;
  const auto [end, fault] = std::from_chars(id.data(), id.data() + id.size(), number);
  return fault == std::errc() && end == id.data() + id.size() && number < UINT64_MAX ? number : 0;
}

void add_record(JournalShape& shape, const CsvRecord& record, std::string_view line) {
  if (is_blank_line(line)) return;
  if (shape.columns.empty()) {
    for (const CsvCell& cell : record.cells) shape.columns.emplace_back(trimmed(cell.text));
    if (line.ends_with("\r\n")) shape.line_end = "\r\n";
    return;
  }
  const auto id_column = std::find(shape.columns.begin(), shape.columns.end(), name_of(JournalColumn::id));
  const auto index = static_cast<std::size_t>(id_column - shape.columns.begin());
  if (index >= record.cells.size()) return;
  const std::string id(trimmed(record.cells[index].text));
  shape.highest_id = std::max(shape.highest_id, number_of_id(id));
  shape.ids.push_back(id);
}

JournalShape shape_of(std::string text) {
  JournalShape shape;
  shape.separator = journal_separator(text);
  shape.text = std::move(text);
  std::string ended = shape.text;
  if (!ended.ends_with('\n')) ended += '\n';  // split_record wants a newline at the end
  const char* place = ended.data();
  const char* const limit = ended.data() + ended.size();
  while (place < limit && !shape.text.empty()) {
    const CsvRecord record = split_record(place, limit, shape.separator);
    add_record(shape, record, {place, static_cast<std::size_t>(record.end - place)});
    shape.last_line = shape.lines + 1;
    shape.lines += record.lines;
    if (record.end >= limit) {
      shape.last_record = shape.text.substr(static_cast<std::size_t>(place - ended.data()));
      shape.last_cells = record.cells.size();
      shape.quote_open = !record.cells.back().closed;
    }
    place = record.end;
  }
  return shape;
}

/// The header of a journal that begins now.
std::vector<std::string> first_columns(UnitSystem units) {
  std::vector<std::string> columns;
  const bool us = units == UnitSystem::us;
  const JournalColumn other_rain = us ? JournalColumn::rain_mm : JournalColumn::rain_in;
  const JournalColumn other_volume = us ? JournalColumn::litres : JournalColumn::gallons;
  for (const std::string_view name : column_names) {
    if (name != name_of(other_rain) && name != name_of(other_volume)) columns.emplace_back(name);
  }
  return columns;
}

std::string rounded_text(double value, double steps_per_unit) {
  return number_text(std::round(value * steps_per_unit) / steps_per_unit);
}

using Cells = std::map<std::string, std::string, std::less<>>;

void set(Cells& cells, JournalColumn column, std::string text) {
  if (!text.empty()) cells[std::string(name_of(column))] = std::move(text);
}

/// Whether a quantity goes into its US column: of the one that the file has, of two the one of the site's
/// units.
bool in_us_column(const JournalShape& shape, UnitSystem units, JournalColumn us, JournalColumn metric) {
  const auto has = [&](JournalColumn column) {
    return std::find(shape.columns.begin(), shape.columns.end(), name_of(column)) != shape.columns.end();
  };
  return has(us) && (units == UnitSystem::us || !has(metric));
}

void set_litres(Cells& cells, const JournalShape& shape, UnitSystem units, double litres) {
  if (in_us_column(shape, units, JournalColumn::gallons, JournalColumn::litres)) {
    set(cells, JournalColumn::gallons, rounded_text(gallons_from_litres(litres), 1e3));
  } else {
    set(cells, JournalColumn::litres, rounded_text(litres, 1e2));
  }
}

void set_rain(Cells& cells, const JournalShape& shape, UnitSystem units, double rain_mm) {
  if (in_us_column(shape, units, JournalColumn::rain_in, JournalColumn::rain_mm)) {
    set(cells, JournalColumn::rain_in, rounded_text(inches_from_mm(rain_mm), 1e4));
  } else {
    set(cells, JournalColumn::rain_mm, rounded_text(rain_mm, 1e3));
  }
}

Cells cells_of(const JournalEntry& entry, const JournalShape& shape, UnitSystem units) {
  Cells cells;
  set(cells, JournalColumn::id, std::to_string(shape.highest_id + 1));
  set(cells, JournalColumn::date, iso_date(entry.date));
  if (entry.time_of_day) set(cells, JournalColumn::time, clock_text(*entry.time_of_day));
  set(cells, JournalColumn::event, std::string(event_words[static_cast<std::size_t>(entry.event)]));
  set(cells, JournalColumn::bed, entry.bed);
  set(cells, JournalColumn::crop, entry.crop);
  if (is_known(entry.minutes)) set(cells, JournalColumn::minutes, number_text(entry.minutes));
  if (is_known(entry.litres)) set_litres(cells, shape, units, entry.litres);
  if (is_known(entry.rain_mm)) set_rain(cells, shape, units, entry.rain_mm);
  if (is_known(entry.share_pct)) set(cells, JournalColumn::share_pct, number_text(entry.share_pct));
  set(cells, JournalColumn::stage, entry.stage);
  if (entry.feel)
    set(cells, JournalColumn::feel, std::string(feel_words[static_cast<std::size_t>(*entry.feel)]));
  if (is_known(entry.water_pct)) set(cells, JournalColumn::water_pct, number_text(entry.water_pct));
  if (entry.mulch)
    set(cells, JournalColumn::mulch, std::string(mulch_words[static_cast<std::size_t>(*entry.mulch)]));
  if (is_known(entry.covered_pct)) set(cells, JournalColumn::covered_pct, number_text(entry.covered_pct));
  if (is_known(entry.organic_pct)) set(cells, JournalColumn::organic_pct, number_text(entry.organic_pct));
  if (is_known(entry.field_capacity_pct))
    set(cells, JournalColumn::field_capacity_pct, number_text(entry.field_capacity_pct));
  if (is_known(entry.wilting_point_pct))
    set(cells, JournalColumn::wilting_point_pct, number_text(entry.wilting_point_pct));
  if (is_known(entry.tension_kpa)) set(cells, JournalColumn::tension_kpa, number_text(entry.tension_kpa));
  if (entry.recovered)
    set(cells, JournalColumn::recovered, std::string(yes_no_words[*entry.recovered ? 1 : 0]));
  set(cells, JournalColumn::undoes, entry.undoes);
  set(cells, JournalColumn::who, entry.who);
  set(cells, JournalColumn::note, entry.note);
  return cells;
}

Problem problem_of(std::string field, std::string text, std::string message, std::string fix) {
  Problem problem;
  problem.field = std::move(field);
  problem.text = std::move(text);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  return problem;
}

/// Texts that would break the line or the terminal, and cells that the file has no column for.
std::vector<Problem> faults_of(const Cells& cells, const JournalShape& shape, const std::string& shown_name) {
  std::vector<Problem> problems;
  for (const auto& [name, text] : cells) {
    const bool control = std::any_of(text.begin(), text.end(), [](char byte) {
      return static_cast<unsigned char>(byte) < 0x20 || byte == 0x7F;
    });
    if (control || valid_utf8(text) != text) {
      problems.push_back(problem_of(name, {},
                                    "this text holds a line end, a tab or bytes that are no UTF-8 text",
                                    "write it in one plain line"));
    }
    if (text.ends_with(cut_off_mark)) {
      problems.push_back(problem_of(
          name, text, "a text cannot end in " + std::string(cut_off_mark) + ", the mark of a broken line",
          "write it in other words"));
    }
    if (std::find(shape.columns.begin(), shape.columns.end(), name) == shape.columns.end()) {
      Problem problem =
          problem_of("header", {}, "there is no column \"" + name + "\" to write \"" + text + "\" into",
                     "put " + std::string(1, shape.separator) + name +
                         " at the end of the first line; the lines below may stay as they are");
      problem.file = shown_name;
      problem.line = 1;
      problems.push_back(std::move(problem));
    }
  }
  return problems;
}

std::string csv_quoted(std::string_view text) {
  std::string result = "\"";
  for (const char letter : text) result += letter == '"' ? std::string("\"\"") : std::string(1, letter);
  return result + "\"";
}

std::string cell_text(const std::string& text, char separator) {
  if (looks_like_formula(text)) return csv_quoted("'" + text);
  const bool special = text.find_first_of("\"#,;\t") != std::string::npos ||
                       text.find(separator) != std::string::npos || trimmed(text) != text;
  return special ? csv_quoted(text) : text;
}

std::string joined(const std::vector<std::string>& texts, char separator) {
  std::string line;
  for (const std::string& text : texts)
    line += (&text == texts.data() ? "" : std::string(1, separator)) + text;
  return line;
}

std::string line_of(const Cells& cells, const JournalShape& shape) {
  std::vector<std::string> texts;
  for (const std::string& column : shape.columns) {
    const auto found = cells.find(column);
    texts.push_back(found == cells.end() ? std::string{} : cell_text(found->second, shape.separator));
  }
  return joined(texts, shape.separator) + shape.line_end;
}

/// What goes between the last line of the file and the new one.
struct Join {
  std::string bytes{};
  std::optional<Problem> cut_off{};
};

Join join_to(const JournalShape& shape, const std::string& shown_name) {
  Join join;
  if (shape.text.empty() || shape.text.ends_with('\n')) return join;
  const bool short_line = shape.last_cells < shape.columns.size();
  if ((shape.quote_open || short_line) && !is_blank_line(shape.last_record)) {
    join.bytes = " " + std::string(cut_off_mark) + (shape.quote_open ? "\"" : "");
    Problem problem = problem_of(
        {}, {},
        "this line ends in the middle: it was cut off while it was written. It is marked and left as it is",
        "finish it, or take it out; if that entry is wanted, log it again");
    problem.file = shown_name;
    problem.line = shape.last_line;
    problem.excerpt = valid_utf8(shape.last_record);
    join.cut_off = std::move(problem);
  }
  join.bytes += shape.line_end;
  return join;
}

/// The faults of the new entry alone, without the place in a file that it is not in yet.
std::vector<Problem> own_problems(const std::vector<Problem>& problems, std::size_t line) {
  std::vector<Problem> own;
  for (Problem problem : problems) {
    if (problem.line < line) continue;
    problem.file.clear();
    problem.excerpt.clear();
    problem.line = problem.column = 0;
    own.push_back(std::move(problem));
  }
  return own;
}

/// The journal as it would be; not read where the lines before have faults.
struct WholeJournal {
  Journal entries{};
  std::size_t other_problems = 0;
};
WholeJournal check_whole(const std::string& text, std::size_t line, const JournalTarget& target,
                         const Garden& garden) {
  try {
    WholeJournal whole{parse_journal(text, target.shown_name, &garden)};
    with_journal(garden, whole.entries, target.shown_name);
    return whole;
  } catch (const Error& refused) {
    std::vector<Problem> own = own_problems(refused.problems(), line);
    if (!own.empty()) throw Error(std::move(own));
    return {{}, refused.problems().size()};
  }
}

bool is_water(const JournalEntry& entry) {
  return entry.event == JournalEvent::water && (entry.minutes > 0 || entry.litres > 0);
}

/// The same run typed twice would count twice: the id of water that the bed already has on that day.
std::string other_water(const JournalEntry& entry, const std::string& id, const Journal& journal) {
  if (!is_water(entry)) return {};
  const auto other = std::find_if(journal.begin(), journal.end(), [&](const JournalEntry& each) {
    return is_water(each) && each.id != id && each.bed == entry.bed && each.date == entry.date;
  });
  return other == journal.end() ? std::string{} : other->id;
}

/// A quotation mark that swallows whole lines would swallow the new one as well.
void require_closed_quotes(const JournalShape& shape, const std::string& shown_name) {
  const bool cut_in_a_line = shape.last_record.find('\n') == std::string::npos;
  if (!shape.quote_open || cut_in_a_line) return;
  Problem problem =
      problem_of({}, {}, "a quotation mark is opened here and never closed; nothing was written",
                 "add the second one, then log it again");
  problem.file = shown_name;
  problem.line = shape.last_line;
  problem.excerpt = valid_utf8(std::string_view(shape.last_record).substr(0, shape.last_record.find('\n')));
  throw Error(std::move(problem));
}

void require_known_id(const JournalEntry& entry, const JournalShape& shape) {
  if (entry.event != JournalEvent::undo || entry.undoes.empty()) return;
  if (std::find(shape.ids.begin(), shape.ids.end(), entry.undoes) != shape.ids.end()) return;
  throw Error(problem_of("undoes", entry.undoes, "no entry has the id \"" + entry.undoes + "\"",
                         "take the id from journal.csv"));
}

/// Adds entries to a journal whose lock is held.
std::vector<AppendedEntry> append_locked(const JournalTarget& target, const Garden& garden,
                                         JournalShape shape, std::span<const JournalEntry> entries) {
  require_closed_quotes(shape, target.shown_name);
  Join join = join_to(shape, target.shown_name);
  std::size_t line = shape.lines + 1;
  if (shape.columns.empty()) {
    shape.columns = first_columns(garden.site.units);
    join.bytes += joined(shape.columns, shape.separator) + shape.line_end;
    ++line;
  }
  std::string bytes = join.bytes;
  std::vector<AppendedEntry> added;
  for (const JournalEntry& entry : entries) {
    const Cells cells = cells_of(entry, shape, garden.site.units);
    if (auto problems = faults_of(cells, shape, target.shown_name); !problems.empty())
      throw Error(std::move(problems));
    require_known_id(entry, shape);
    bytes += line_of(cells, shape);
    ++shape.highest_id;
    added.push_back({.id = cells.find(name_of(JournalColumn::id))->second, .line = line + added.size()});
  }
  const WholeJournal whole = check_whole(shape.text + bytes, line, target, garden);
  append_durably(target.file, target.shown_name, bytes);
  for (std::size_t index = 0; index < added.size(); ++index) {
    added[index].other_problems = whole.other_problems;
    added[index].other_water = other_water(entries[index], added[index].id, whole.entries);
  }
  added.front().cut_off = std::move(join.cut_off);
  return added;
}

FileLock lock_of(const JournalTarget& target) {
  std::filesystem::path lock_file = target.file;
  lock_file += ".lock";
  return FileLock(lock_file, target.shown_name + ".lock", target.longest_wait);
}

JournalShape shape_in(const JournalTarget& target) {
  if (is_nothing_there(target.file)) return {};
  require_in_its_folder(target.file, target.shown_name);
  return shape_of(read_text_file(target.file, target.shown_name, largest_journal_bytes));
}

}  // namespace

AppendedEntry append_to_journal(const JournalTarget& target, const Garden& garden,
                                const JournalEntry& entry) {
  const FileLock lock = lock_of(target);
  return append_locked(target, garden, shape_in(target), {&entry, 1}).front();
}

std::vector<AppendedEntry> append_chosen_to_journal(const JournalTarget& target, const Garden& garden,
                                                    const EntryChooser& chooser) {
  const FileLock lock = lock_of(target);
  JournalShape shape = shape_in(target);
  const std::vector<JournalEntry> entries =
      chooser(shape.text.empty() ? Journal{} : parse_journal(shape.text, target.shown_name, &garden));
  if (entries.empty()) return {};
  return append_locked(target, garden, std::move(shape), entries);
}

}  // namespace v1
}  // namespace noonleaf
