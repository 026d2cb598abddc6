#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/plan/ledger.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/report/ledger_words.hpp"

#include "commands.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {

int run(const LedgerArguments& arguments) {
  const GardenFolder folder = read_garden_folder(arguments.folder, arguments.folder);
  const Sky sky = sky_over(folder.garden.site, folder.weather);
  const Ledger ledger = water_ledger(folder.garden, folder.journal, sky, arguments.from, arguments.to);
  const LedgerView view{folder.garden, ledger};
  switch (arguments.format) {
    case LedgerArguments::Format::text:
      print(ledger_text(view));
      break;
    case LedgerArguments::Format::csv:
      print(ledger_csv(view));
      break;
    case LedgerArguments::Format::html:
      print(ledger_html(view));
      break;
    case LedgerArguments::Format::json:
      print(ledger_json(view));
      break;
  }
  return 0;
}

}  // namespace noonleaf::cli
