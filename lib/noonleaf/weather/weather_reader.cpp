#include "noonleaf/weather/weather_reader.hpp"

#include <optional>
#include <utility>

#include "noonleaf/weather/checked_rows.hpp"
#include "noonleaf/weather/day_builder.hpp"
#include "noonleaf/weather/hour_builder.hpp"
#include "noonleaf/weather/resolved_hours.hpp"
#include "noonleaf/weather/row_series.hpp"
#include "noonleaf/weather/sequence_checks.hpp"

namespace noonleaf {
inline namespace v1 {

class WeatherReader::Source {
 public:
  Source(const std::filesystem::path& file, std::string shown_name, const WeatherOptions& options)
      : options_(options),
        checked_(file, std::move(shown_name), options_),
        resolved_(checked_, options_),
        sequence_(86'400, checked_.source(), checked_.findings()) {
    note();
  }

  const RowSource& rows() const { return checked_.source(); }
  const FindingList& findings() const { return checked_.findings(); }
  const std::vector<std::string>& notes() const { return notes_; }

  std::span<const DailyWeather> next_days() {
    days_.clear();
    while (days_.empty() && !ended_) {
      if (rows().step() == WeatherStep::day) {
        take_days();
      } else {
        take_days_of_hours();
      }
    }
    return days_;
  }

  std::span<const HourlyWeather> next_hours() {
    if (rows().step() == WeatherStep::day)
      throw Error(rows().at({}, std::nullopt, "the file holds days; hours are wanted here",
                            "give a file with a column time_begin or time_end"));
    hours_.clear();
    while (hours_.empty() && !ended_) take_hours();
    return hours_;
  }

  void read_through() {
    std::vector<Problem> problems;
    const bool hours = rows().step() == WeatherStep::hour;
    while (!ended_) {
      try {
        hours_.clear();
        days_.clear();
        hours ? take_hours() : take_days();
      } catch (const Error& refused) {
        for (const Problem& problem : refused.problems())
          if (problems.size() < problems_kept) problems.push_back(problem);
        if (stopped_) break;
      }
    }
    if (!problems.empty()) throw Error(std::move(problems));
  }

 private:
  // Throws what refuses the rows of the block just read, and what strictness does not let pass.
  void refuse(std::vector<Problem> problems) {
    if (problems.empty()) problems = findings().refusals();
    if (!problems.empty()) throw Error(std::move(problems));
  }

  template <class Rows>
  bool next_block(Rows& source) {
    stopped_ = true;  // unless reading gets through: a fault of the file itself ends it
    const bool more = source.next_block(block_);
    stopped_ = false;
    ended_ = !more;
    return more;
  }

  // Calls `use` with each row whose successor is known to be another day or hour; the last of the block
  // waits.
  template <class Use>
  void settle(const Use& use) {
    TableRow* pending = waiting_ ? &*waiting_ : nullptr;
    for (TableRow& row : block_) {
      if (pending != nullptr && pending->stamp.seconds == row.stamp.seconds) {
        settle_duplicate(*pending, row, rows(), checked_.findings());
        continue;
      }
      if (pending != nullptr) use(*pending);
      pending = &row;
    }
    if (ended_ && pending != nullptr) use(*pending);
    if (ended_ || pending == nullptr) {
      waiting_.reset();
    } else if (!waiting_ || pending != &*waiting_) {
      waiting_ = *pending;
    }
  }

  void take_days() {
    if (!next_block(checked_)) block_.clear();
    settle([this](const TableRow& row) {
      sequence_.push(row.stamp.seconds, row.values, row.place);
      days_.push_back(daily_weather(row));
    });
    if (ended_) sequence_.finish();
    note();
    refuse(checked_.take_problems());
  }

  void take_hours() {
    if (!next_block(resolved_)) block_.clear();
    if (!hour_builder_) hour_builder_.emplace(checked_.length(), options_, rows(), checked_.findings());
    settle([this](const TableRow& row) { hour_builder_->push(row, hours_); });
    if (ended_) hour_builder_->finish(hours_);
    note();
    refuse(resolved_.take_problems());
  }

  void take_days_of_hours() {
    if (!day_builder_) day_builder_.emplace(options_.zone);
    hours_.clear();
    take_hours();
    for (const HourlyWeather& hour : hours_) day_builder_->push(hour, days_);
    if (ended_) day_builder_->finish(days_);
    note_incomplete_days(day_builder_->take_incomplete(), rows(), checked_.findings());
  }

  void note() { notes_ = checked_.notes(); }

  WeatherOptions options_;
  CheckedRows checked_;
  ResolvedHours resolved_;
  SequenceChecks sequence_;
  std::optional<HourBuilder> hour_builder_;
  std::optional<DayBuilder> day_builder_;
  std::vector<TableRow> block_;
  std::optional<TableRow> waiting_;
  std::vector<DailyWeather> days_;
  std::vector<HourlyWeather> hours_;
  std::vector<std::string> notes_;
  bool ended_ = false, stopped_ = false;
};

WeatherReader::WeatherReader(const std::filesystem::path& file, std::string shown_name,
                             const WeatherOptions& options)
    : source_(std::make_unique<Source>(file, std::move(shown_name), options)) {}
WeatherReader::~WeatherReader() = default;
WeatherReader::WeatherReader(WeatherReader&&) noexcept = default;
WeatherReader& WeatherReader::operator=(WeatherReader&&) noexcept = default;

WeatherStep WeatherReader::step() const { return source_->rows().step(); }
std::string WeatherReader::format() const { return source_->rows().format(); }
std::span<const DailyWeather> WeatherReader::next_days() { return source_->next_days(); }
std::span<const HourlyWeather> WeatherReader::next_hours() { return source_->next_hours(); }
void WeatherReader::read_through() { source_->read_through(); }
ReadProgress WeatherReader::progress() const { return source_->rows().progress(); }
const std::vector<std::string>& WeatherReader::notes() const { return source_->notes(); }
const std::vector<Finding>& WeatherReader::set_aside() const { return source_->findings().set_aside(); }
const std::vector<Finding>& WeatherReader::doubts() const { return source_->findings().doubts(); }

}  // namespace v1
}  // namespace noonleaf
