#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/plan/away.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/report/away_words.hpp"

#include "commands.hpp"
#include "site_day.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {

int run(const AwayArguments& arguments) {
  const GardenFolder folder = read_garden_folder(arguments.folder, arguments.folder);
  const Sky sky = sky_over(folder.garden.site, folder.weather);
  const Away away = plan_away(
      folder.garden, folder.journal, sky,
      {day_at(folder.garden.site, arguments.date), arguments.from, arguments.to, MemberOptions{}.members});
  const AwayView view{folder.garden, away};
  switch (arguments.format) {
    case AwayArguments::Format::text:
      print(away_text(view, arguments.language));
      break;
    case AwayArguments::Format::json:
      print(away_json(view));
      break;
    case AwayArguments::Format::html:
      print(away_sheet_html(view, arguments.language));
      break;
    case AwayArguments::Format::sheet:
      print(away_sheet_text(view, arguments.language));
      break;
  }
  return 0;
}

}  // namespace noonleaf::cli
