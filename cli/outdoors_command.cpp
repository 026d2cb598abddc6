#include <string>

#include "noonleaf/report/outdoors_words.hpp"

#include "commands.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
int run(const OutdoorsArguments& arguments) {
  const OutdoorAnswer answer = outdoor_answer(arguments.reading);
  if (arguments.format == OutputFormat::json) {
    print(outdoor_json(answer));
  } else {
    print(bold("OUTSIDE") + "\n" + wrapped(outdoor_words(answer), 2) + "\n" + bold("TAKE CARE") + "\n" +
          wrapped(outdoor_cautions(answer), 2));
  }
  return 0;
}

}  // namespace noonleaf::cli
