#include <string>

#include "noonleaf/report/cans_words.hpp"

#include "commands.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

std::string answer_text(const CanSheet& sheet) {
  const std::string map = can_map_text(sheet);
  return bold("MEASURED") + "\n" + wrapped(can_result_words(sheet), 2) +
         (map.empty() ? map : "\n" + bold("MAP") + "\n" + map) + "\n" + bold("WHAT TO DO") + "\n" +
         wrapped(can_advice_words(sheet), 2);
}

}  // namespace

int run(const CansArguments& arguments) {
  const CanSheet sheet =
      read_can_sheet(arguments.file, arguments.file,
                     {.minutes = arguments.minutes, .can_diameter_mm = arguments.can_diameter_mm});
  switch (arguments.format) {
    case CansArguments::Format::text:
      print(answer_text(sheet));
      break;
    case CansArguments::Format::json:
      print(can_json(sheet, arguments.file));
      break;
    case CansArguments::Format::svg:
      print(can_map_svg(sheet, "Catch cans: " + arguments.file));
      break;
  }
  return 0;
}

}  // namespace noonleaf::cli
