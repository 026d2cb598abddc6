// iCalendar in: the hours of a timetable, the days of holidays.
#include "noonleaf/garden/calendar_file.hpp"
#include "noonleaf/garden/text_file.hpp"

#include "fuzz_target.hpp"

namespace {

using fuzz::require;
using namespace std::chrono_literals;

constexpr std::size_t largest_bytes = 4 * 1024 * 1024;  // as of a garden folder

const noonleaf::CalendarRange& summer() {
  static const noonleaf::CalendarRange range{std::chrono::sys_days(2025y / 7 / 1),
                                             std::chrono::sys_days(2025y / 9 / 30), "America/Chicago"};
  return range;
}

bool within(std::chrono::year_month_day date) {
  return date.ok() && std::chrono::sys_days(date) >= summer().first &&
         std::chrono::sys_days(date) <= summer().last;
}

void check_hours(const std::vector<noonleaf::DatedHours>& hours) {
  for (const noonleaf::DatedHours& each : hours) {
    require(within(each.date), "hours lie in the range");
    require(each.begin >= 0min && each.begin < each.end && each.end <= 1440min, "hours lie in their day");
  }
  for (std::size_t next = 1; next < hours.size(); ++next)
    require(hours[next - 1].date <= hours[next].date, "hours are in order");
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  const fuzz::InputFile file(bytes);
  fuzz::done(bytes, [&] {
    const std::string text = noonleaf::read_text_file(file.path(), "school.ics", largest_bytes);
    check_hours(noonleaf::parse_calendar_hours(text, "school.ics", summer()));
    for (const noonleaf::DatedSpan& span : noonleaf::parse_calendar_days(text, "school.ics", summer()))
      require(within(span.first) && within(span.last) && span.first <= span.last, "days lie in the range");
  });
  return 0;
}
