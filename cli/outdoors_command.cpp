#include <string>

#include "noonleaf/report/outdoors_words.hpp"

#include "commands.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {

int run(const OutdoorsArguments& arguments) {
  const OutdoorAnswer answer = outdoor_answer(arguments.reading);
  const Language language = arguments.language;
  if (arguments.format == OutputFormat::json) {
    print(outdoor_json(answer, language));
  } else {
    print(bold(outdoor_title(language)) + "\n" + wrapped(outdoor_words(answer, language), 2) + "\n" +
          bold(outdoor_cautions_title(language)) + "\n" + wrapped(outdoor_cautions(answer, language), 2));
  }
  return 0;
}

}  // namespace noonleaf::cli
