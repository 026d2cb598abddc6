#include "noonleaf/weather/csv_table.hpp"

#include <algorithm>
#include <cstring>
#include <utility>

#include "noonleaf/missing.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/weather/cell_ends.hpp"
#include "noonleaf/weather/decimal_number.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::int64_t day_s = 86'400;
constexpr std::size_t values_listed = 50;

constexpr WeatherValues all_missing() {
  WeatherValues values{};
  for (double& value : values) value = missing;
  return values;
}
constexpr WeatherValues no_values = all_missing();

const char* line_end(const char* place, const char* limit) {
  return static_cast<const char*>(std::memchr(place, '\n', static_cast<std::size_t>(limit - place)));
}

}  // namespace

CsvTable::CsvTable(std::unique_ptr<TextSource> source, const WeatherOptions& options)
    : source_(std::move(source)), options_(options) {
  if (options_.where) wanted_ = std::string(trimmed(options_.where->value));
  read_header();
  choose_step();
  prepare_fast_columns();
}

// Passes comments and empty lines; false at the end of the file.
bool CsvTable::skip_to_row() {
  while (source_->cursor() != source_->limit() || source_->refill()) {
    const char* place = source_->cursor();
    const bool empty = *place == '\n' || (*place == '\r' && place[1] == '\n');
    if (!empty && *place != '#') return true;
    const char* const end = line_end(place, source_->limit());
    if (!empty && !is_remark({place, static_cast<std::size_t>(end - place)})) return true;
    source_->advance(line_end(place, source_->limit()) + 1, 1);
  }
  return false;
}

void CsvTable::read_header() {
  if (!skip_to_row())
    throw Error(source_->problem(0, "the file holds no header and no rows",
                                 "put a header line like date,tmin_c,tmax_c"));
  header_place_ = {source_->line(), source_->offset(source_->cursor())};
  const char* begin = source_->cursor();
  const std::string_view line(begin, static_cast<std::size_t>(line_end(begin, source_->limit()) - begin));
  const char separator = separator_of(line);
  const CsvRecord record = split_record(begin, source_->limit(), separator);
  plan_ = plan_table(record, separator, header_place_.line, source_->line_text(header_place_.offset),
                     *source_, options_);
  mark_ = separator == ',' ? '.' : '\0';
  source_->advance(record.end, record.lines);
}

// A column `time` may hold dates or stamps; the first row tells.
void CsvTable::choose_step() {
  if (!skip_to_row()) refuse_no_rows();
  const auto stamp = plan_.find(ColumnRole::stamp);
  if (plan_.find(ColumnRole::date)) {
    step_ = plan_.find(ColumnRole::clock) ? WeatherStep::hour : WeatherStep::day;
  } else if (stamp) {
    const CsvRecord first = split_record(source_->cursor(), source_->limit(), plan_.separator);
    const bool dates = *stamp < first.cells.size() && first.cells[*stamp].text.find(':') == std::string::npos;
    step_ = dates ? WeatherStep::day : WeatherStep::hour;
    if (dates) plan_.columns[*stamp].role = ColumnRole::date;
  } else {
    step_ = WeatherStep::hour;
  }
  const auto radiation = plan_.find(WeatherQuantity::rs);
  if (step_ == WeatherStep::hour && radiation)
    plan_.columns[*radiation].conversion = {};  // needs the rows' length
}

void CsvTable::prepare_fast_columns() {
  const bool clock = plan_.find(ColumnRole::clock).has_value();
  const auto station = plan_.find(ColumnRole::station);
  const bool filtered = plan_.find(ColumnRole::filter).has_value();
  for (std::size_t index = 0; index < plan_.columns.size(); ++index) {
    const PlannedColumn& column = plan_.columns[index];
    FastColumn fast;
    switch (column.role) {
      case ColumnRole::ignored:
        fast.kind = Kind::skip;
        break;
      case ColumnRole::date:
        fast.kind = clock ? Kind::slow : Kind::date;
        break;
      case ColumnRole::clock:
        fast.kind = Kind::slow;
        break;
      case ColumnRole::stamp:
      case ColumnRole::stamp_begin:
        fast.kind = Kind::stamp;
        break;
      case ColumnRole::stamp_end:
        fast.kind = plan_.find(ColumnRole::stamp_begin) ? Kind::end_stamp : Kind::stamp;
        break;
      case ColumnRole::value:
        fast.kind = column.conversion.changes() ? Kind::converted : Kind::value;
        break;
      case ColumnRole::filter:
        fast.kind = Kind::filter;
        break;
      case ColumnRole::station:
        fast.kind = index == *station && !filtered ? Kind::station : Kind::skip;
        break;
    }
    fast.slot = static_cast<std::size_t>(column.quantity);
    fast.conversion = column.conversion;
    fast.last = index + 1 == plan_.columns.size();
    fast_.push_back(fast);
  }
}

bool CsvTable::next(TableRow& row) {
  while (true) {
    if (!skip_to_row()) break;
    const char* place = source_->cursor();
    row.place = {source_->line(), source_->offset(place)};
    row.values = no_values;
    row.end_stamp.reset();
    Outcome outcome =
        several_stations_ && other_values_.size() > values_listed ? Outcome::skipped : fast_row(place, row);
    if (outcome == Outcome::unclear) {
      outcome = slow_row(row);
    } else {
      source_->advance(place, 1);
    }
    if (outcome == Outcome::taken) {
      any_row_ = true;
      if (!several_stations_) return true;
    }
    if (several_stations_ && other_values_.size() >= values_listed) refuse_several_stations();
  }
  if (several_stations_) refuse_several_stations();
  if (!any_row_ && problems_counted_ == 0) refuse_no_rows();
  return false;
}

CsvTable::Outcome CsvTable::fast_row(const char*& place, TableRow& row) {
  CellEnds ends(place, plan_.separator);
  const char* cell = place;
  for (const FastColumn& column : fast_) {
    const char* const mark = ends.next();
    if (*mark != (column.last ? '\n' : plan_.separator)) return Outcome::unclear;
    const char* const end = mark - (column.last && mark != cell && mark[-1] == '\r' ? 1 : 0);
    switch (column.kind) {
      case Kind::skip:
        break;
      case Kind::value:
      case Kind::converted: {
        if (cell == end) break;
        double value = 0.0;
        if (!plain_decimal(cell, end, mark_, value)) return Outcome::unclear;
        row.values[column.slot] = column.kind == Kind::value ? value : column.conversion.to_library(value);
        break;
      }
      case Kind::date:
      case Kind::stamp:
      case Kind::end_stamp:
        if (!fast_key(column.kind, cell, end, row)) return Outcome::unclear;
        break;
      case Kind::filter:
      case Kind::station: {
        const Outcome outcome = fast_choice(column.kind, cell, end);
        if (outcome == Outcome::skipped) place = line_end(end, source_->limit()) + 1;
        if (outcome != Outcome::taken) return outcome;
        break;
      }
      case Kind::slow:
        return Outcome::unclear;
    }
    cell = mark + 1;
  }
  place = cell;
  return Outcome::taken;
}

bool CsvTable::fast_key(Kind kind, const char* cell, const char* end, TableRow& row) {
  if (kind == Kind::date) {
    std::int32_t day = 0;
    const bool plain = plain_iso_date(cell, day) == end;
    row.stamp.seconds = day * day_s;
    return plain;
  }
  if (kind == Kind::end_stamp) row.end_stamp.emplace();
  return plain_iso_stamp(cell, kind == Kind::end_stamp ? *row.end_stamp : row.stamp) == end;
}

// Filter or station: whether the row is wanted.
CsvTable::Outcome CsvTable::fast_choice(Kind kind, const char* cell, const char* end) {
  const std::string_view text(cell, static_cast<std::size_t>(end - cell));
  if (text.empty() || text.front() == ' ' || text.back() == ' ') return Outcome::unclear;
  const bool wanted = kind == Kind::filter ? text == wanted_ : text == station_;
  if (wanted) return Outcome::taken;
  const char* newline = line_end(end, source_->limit());
  if (std::memchr(end, '"', static_cast<std::size_t>(newline - end)) != nullptr) return Outcome::unclear;
  if (kind == Kind::station && note_station(text)) return Outcome::taken;
  if (kind == Kind::filter && other_values_.size() < values_listed &&
      std::find(other_values_.begin(), other_values_.end(), text) == other_values_.end())
    other_values_.emplace_back(text);
  return Outcome::skipped;
}

// True for the file's first station; the names of others are collected for the message.
bool CsvTable::note_station(std::string_view station) {
  if (station_.empty()) station_ = station;
  if (station == station_) return true;
  several_stations_ = true;
  if (std::find(other_values_.begin(), other_values_.end(), station) == other_values_.end())
    other_values_.emplace_back(station);
  return false;
}

// The record at the cursor; reads on while a quote is open.
CsvRecord CsvTable::whole_record() {
  CsvRecord record = split_record(source_->cursor(), source_->limit(), plan_.separator);
  while (!record.cells.back().closed && source_->refill())
    record = split_record(source_->cursor(), source_->limit(), plan_.separator);
  return record;
}

CsvTable::Outcome CsvTable::slow_row(TableRow& row) {
  const CsvRecord record = whole_record();
  row.place = {source_->line(), source_->offset(source_->cursor())};
  row.values = no_values;
  row.end_stamp.reset();
  row.stamp = {};
  const auto is_blank = [](const CsvCell& cell) { return trimmed(cell.raw).empty(); };
  const bool blank = std::all_of(record.cells.begin(), record.cells.end(), is_blank);
  const bool wanted = !blank && has_right_shape(record) && is_wanted(record);
  bool good = wanted;
  for (std::size_t index = 0; wanted && index < plan_.columns.size(); ++index)
    good = take_cell(index, record.cells[index], row) && good;
  source_->advance(record.end, record.lines);
  return good ? Outcome::taken : Outcome::skipped;
}

bool CsvTable::has_right_shape(const CsvRecord& record) {
  const std::size_t expected = plan_.columns.size(), found = record.cells.size();
  for (const CsvCell& cell : record.cells) {
    if (!cell.closed)
      throw Error([&] {
        refuse_cell(cell, "", "a quote is opened here and never closed",
                    "close it, or write \"\" for a quote in a text");
        return take_problems();
      }());
    if (cell.text_behind) {
      refuse_cell(cell, "", "text stands behind the closing quote",
                  "put the whole cell between quotes, \"like this\"");
      return false;
    }
  }
  if (found == expected) return true;
  const auto extra = record.cells.begin() + static_cast<std::ptrdiff_t>(std::min(found, expected));
  const auto filled =
      std::find_if(extra, record.cells.end(), [](const CsvCell& cell) { return !trimmed(cell.raw).empty(); });
  if (found > expected && filled == record.cells.end()) return true;  // separators that a spreadsheet added
  const std::string counts = "the row has " + grouped(found) + (found == 1 ? " cell" : " cells") +
                             ", the header " + grouped(expected);
  if (found < expected) {
    refuse_cell(record.cells.back(), "", counts,
                "write every cell, an empty one as nothing between two separators");
  } else {
    refuse_cell(*filled, "", counts,
                "put quotes around a text that holds the separator, or drop the extra cell");
  }
  return false;
}

bool CsvTable::is_wanted(const CsvRecord& record) {
  for (std::size_t index = 0; index < fast_.size(); ++index) {
    const std::string_view text = trimmed(record.cells[index].text);
    if (fast_[index].kind == Kind::station && !text.empty() && !note_station(text)) return false;
    if (fast_[index].kind != Kind::filter || text == wanted_) continue;
    if (other_values_.size() < values_listed &&
        std::find(other_values_.begin(), other_values_.end(), text) == other_values_.end())
      other_values_.emplace_back(text);
    return false;
  }
  return true;
}

bool CsvTable::take_cell(std::size_t index, const CsvCell& cell, TableRow& row) {
  const std::string_view text = trimmed(cell.text);
  switch (plan_.columns[index].role) {
    case ColumnRole::value:
      return text.empty() || take_value(index, cell, text, row);
    case ColumnRole::ignored:
    case ColumnRole::filter:
    case ColumnRole::station:
      return true;
    default:
      return take_key(index, cell, text, row);
  }
}

// Semicolon and tab files: the first number with a mark decides for the file.
void CsvTable::learn_decimal_mark(std::string_view text) {
  if (mark_ != '\0') return;
  for (const char mark : {',', '.'})
    if (text.find(mark) != std::string_view::npos && parse_decimal(text, mark)) mark_ = mark;
}

bool CsvTable::take_value(std::size_t index, const CsvCell& cell, std::string_view text, TableRow& row) {
  learn_decimal_mark(text);
  const char mark = mark_ == '\0' ? '.' : mark_;
  const PlannedColumn& column = plan_.columns[index];
  const auto value = parse_decimal(text, mark);
  if (!value) {
    NumberFault fault = number_fault(text, mark);
    refuse_cell(cell, column.name, std::move(fault.message), std::move(fault.fix));
    return false;
  }
  row.values[fast_[index].slot] = column.conversion.to_library(*value);
  return true;
}

bool CsvTable::take_key(std::size_t index, const CsvCell& cell, std::string_view text, TableRow& row) {
  const PlannedColumn& column = plan_.columns[index];
  const auto refuse = [&](std::string message, std::string fix) {
    refuse_cell(cell, column.name, std::move(message), std::move(fix));
    return false;
  };
  if (text.empty())
    return refuse("the cell is empty; every row needs it",
                  "write it, like " + std::string(column.role == ColumnRole::date    ? "2026-07-04"
                                                  : column.role == ColumnRole::clock ? "13:00"
                                                                                     : "2026-07-04T13:00"));
  if (column.role == ColumnRole::date) {
    auto date = read_date(text, options_.date_order);
    if (!date.value) return refuse(std::move(date.message), std::move(date.fix));
    row.stamp.seconds += *date.value * day_s;
    return true;
  }
  if (column.role == ColumnRole::clock) {
    auto clock = read_clock(text);
    if (!clock.value) return refuse(std::move(clock.message), std::move(clock.fix));
    row.stamp.seconds += *clock.value;
    return true;
  }
  auto stamp = read_stamp(text, options_.date_order);
  if (!stamp.value) return refuse(std::move(stamp.message), std::move(stamp.fix));
  if (fast_[index].kind == Kind::end_stamp) {
    row.end_stamp = *stamp.value;
  } else {
    row.stamp = *stamp.value;
  }
  return true;
}

void CsvTable::refuse_cell(const CsvCell& cell, std::string_view field, std::string message,
                           std::string fix) {
  Problem found = source_->problem(source_->line() + cell.line, std::move(message), std::move(fix));
  found.column = cell.column;
  found.text = valid_utf8(cell.raw);
  found.field = valid_utf8(field);
  const char* begin = cell.raw.data();
  const char* const first = source_->cursor();
  while (begin != first && begin[-1] != '\n') --begin;
  found.excerpt = source_->line_text(source_->offset(begin));
  keep(std::move(found));
}

void CsvTable::keep(Problem problem) {
  ++problems_counted_;
  if (problems_counted_ <= problems_kept) problems_.push_back(std::move(problem));
  if (problems_counted_ == problems_kept + 1)
    problems_.push_back(source_->problem(
        0, "there are more problems than " + grouped(problems_kept) + "; the rest is not listed",
        "correct these first"));
}

std::vector<Problem> CsvTable::take_problems() { return std::exchange(problems_, {}); }

Problem CsvTable::problem(RowPlace place, std::optional<WeatherQuantity> quantity, std::string message,
                          std::string fix) const {
  Problem found = source_->problem(place.line, std::move(message), std::move(fix));
  found.excerpt = source_->line_text(place.offset);
  const auto index = quantity ? plan_.find(*quantity) : std::nullopt;
  if (!index) return found;
  found.field = plan_.columns[*index].name;
  const std::string line = found.excerpt + "\n";
  const CsvRecord record = split_record(line.data(), line.data() + line.size(), plan_.separator);
  if (*index < record.cells.size()) {
    found.column = record.cells[*index].column;
    found.text = std::string(record.cells[*index].raw);
  }
  return found;
}

Problem CsvTable::column_problem(WeatherQuantity quantity, std::string message, std::string fix) const {
  return problem(header_place_, quantity, std::move(message), std::move(fix));
}

void CsvTable::refuse_several_stations() {
  std::string names = in_quotes(station_);
  const std::size_t listed = std::min<std::size_t>(other_values_.size(), 9);
  for (std::size_t index = 0; index < listed; ++index) names += ", " + in_quotes(other_values_[index]);
  if (other_values_.size() > listed) names += ", …";
  const std::string& header = plan_.columns[*plan_.find(ColumnRole::station)].header;
  Problem found = source_->problem(0, "the file holds several stations: " + names,
                                   "choose one with --where " + header + "=" + in_quotes(station_));
  found.field = header;
  throw Error(std::move(found));
}

void CsvTable::refuse_no_rows() const {
  if (!options_.where || other_values_.empty())
    throw Error(source_->problem(0, "the file has a header but no rows", "add rows, or leave the file out"));
  const std::string near = nearest_name(wanted_, other_values_);
  std::string names;
  for (std::size_t index = 0; index < std::min<std::size_t>(other_values_.size(), 10); ++index)
    names += (index == 0 ? "" : ", ") + in_quotes(other_values_[index]);
  Problem found =
      source_->problem(0, "no row has " + options_.where->column + " = " + in_quotes(wanted_),
                       near.empty() ? "the file has: " + names : "did you mean " + in_quotes(near) + "?");
  found.field = "--where";
  throw Error(std::move(found));
}

}  // namespace v1
}  // namespace noonleaf
