#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/today_json.hpp"

#include "commands.hpp"
#include "site_day.hpp"
#include "terminal.hpp"
#include "today_text.hpp"

namespace noonleaf::cli {
namespace {

constexpr int done_with_alerts = 3;

/// The day asked for, from its first minute on; else today, from this minute on.
TodayQuestion question_of(const TodayArguments& arguments, const Site& site) {
  const LocalTime from = arguments.date ? LocalTime{*arguments.date, {}} : moment_at(site);
  return {from.date, arguments.time_of_day.value_or(from.time_of_day)};
}

}  // namespace

int run(const TodayArguments& arguments) {
  const GardenFolder folder = read_garden_folder(arguments.folder, arguments.folder);
  const Sky sky = sky_over(folder.garden.site, folder.weather);
  Today today = plan_today(folder.garden, folder.journal, sky, question_of(arguments, folder.garden.site));
  today.likelihood = likelihood_of_today(folder.garden, folder.journal, sky, today);
  const TodayView view{folder.garden, today, arguments.language};
  print(arguments.format == OutputFormat::json ? today_json(view) : today_text(view));
  return arguments.alert_exit && !alerts_of(view).empty() ? done_with_alerts : 0;
}

}  // namespace noonleaf::cli
