#include <string>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/week_text.hpp"

#include "commands.hpp"
#include "site_day.hpp"
#include "terminal.hpp"
#include "whole_files.hpp"

namespace noonleaf::cli {
namespace {

constexpr std::size_t largest_plan_bytes = 4UL * 1024 * 1024;

WeekQuestion question_of(const WeekArguments& arguments, const LocalTime& now) {
  WeekQuestion question{.first = arguments.from.value_or(now.date), .days = arguments.days};
  if (question.first == now.date) question.from = now.time_of_day;
  return question;
}

void compare_with_earlier(WeekView& view, const std::string& file) {
  const auto before = read_planned_runs(read_text_file(file, file, largest_plan_bytes), file);
  const auto now = planned_runs(view.garden, view.plan);
  view.changes = changes_between(before, now, view.plan.first);
  view.dropped = dropped_openings(before, now, view.plan.first);
}

std::string answer(const WeekView& view, WeekArguments::Format format) {
  switch (format) {
    case WeekArguments::Format::text:
      return week_text(view);
    case WeekArguments::Format::html:
      return week_html(view);
    case WeekArguments::Format::csv:
      return week_csv(view);
    case WeekArguments::Format::json:
      return week_json(view);
    case WeekArguments::Format::ics:
      return week_ics(view);
  }
  return {};
}

/// The table of runs and the calendar say nothing of how sure the plan is.
bool says_how_sure(WeekArguments::Format format) {
  return format != WeekArguments::Format::csv && format != WeekArguments::Format::ics;
}

}  // namespace

int run(const WeekArguments& arguments) {
  const GardenFolder folder = read_garden_folder(arguments.folder, arguments.folder);
  const Sky sky = sky_over(folder.garden.site, folder.weather);
  const LocalTime now = moment_at(folder.garden.site);
  WeekPlan plan = plan_week(folder.garden, folder.journal, sky, question_of(arguments, now));
  if (says_how_sure(arguments.format))
    plan.likelihood = likelihood_of_week(folder.garden, folder.journal, sky, plan);
  WeekView view{.garden = folder.garden, .plan = plan, .language = arguments.language, .made = now};
  if (says_how_sure(arguments.format))
    view.alerts = alerts_beside(plan, now.date, folder.garden, folder.journal, sky, arguments.language);
  if (!arguments.since.empty()) compare_with_earlier(view, arguments.since);
  const std::string text = answer(view, arguments.format);
  if (arguments.out.empty()) {
    print(text);
  } else {
    write_whole_file(arguments.out, text);
    print("Wrote " + arguments.out + "\n");
  }
  return 0;
}

}  // namespace noonleaf::cli
