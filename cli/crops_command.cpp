#include <string>

#include <fmt/format.h>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/report/crop_curve.hpp"
#include "noonleaf/report/crop_words.hpp"

#include "commands.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

std::string table_text() {
  return crop_table_text() + "\n" +
         wrapped(
             "Kc: plant and soil; Kcb: plant alone; m: height, and the range of root depth (the smaller "
             "where it is "
             "watered); p: share of the available water taken without harm. Trust is the lowest of the "
             "columns.",
             2) +
         wrapped("* A surrogate: no published values, a similar crop's stand in.", 2) +
         wrapped("Ornamentals have one plant factor on ET0 under \"Kc mid\"; it holds all evaporation.", 2) +
         wrapped(
             "Sources: FAO-56 (Allen et al. 1998), Tables 11, 12, 17, 22; ANSI/ASABE S623; all from memory. "
             "`noonleaf "
             "crops CROP` has the source and the doubts of each row.",
             2);
}

std::string crop_text(const Crop& crop, const StageLengths* stages) {
  std::string text = bold(fmt::format("{} ({}): {}", crop.name_en, crop.name_es, crop.id)) + "\n";
  for (const std::string& line : crop_words(crop)) text += wrapped(line, 2);
  if (stages == nullptr) return text;
  text += "\n" + bold("STAGES, days") + "\n" + crop_stages_text(crop);
  text += "\n" + bold(fmt::format("CURVE, planted {} ({})", stages->planted, stages->region)) + "\n" +
          crop_curve_text(crop, stages) + wrapped("o Kc (plant and soil), # Kcb (plant alone).", 2);
  return crop.stages.size() > 1 ? text + wrapped("Another row: --region with a word of its region.", 2)
                                : text;
}

[[noreturn]] void refuse_svg_of_all() {
  Problem problem;
  problem.field = "CROP";
  problem.message = "a picture shows one crop";
  problem.fix = "name it: noonleaf crops tomato --format svg > tomato.svg";
  throw Error(std::move(problem));
}

}  // namespace

int run(const CropsArguments& arguments) {
  using Format = CropsArguments::Format;
  if (arguments.crop.empty()) {
    if (arguments.format == Format::svg) refuse_svg_of_all();
    print(arguments.format == Format::json ? crops_json() : table_text());
    return 0;
  }
  const Crop& crop = find_crop(arguments.crop);
  const StageLengths* stages = curve_stages(crop, arguments.region);
  switch (arguments.format) {
    case Format::text:
      print(crop_text(crop, stages));
      break;
    case Format::json:
      print(crop_json(crop));
      break;
    case Format::svg:
      print(crop_curve_svg(crop, stages));
      break;
  }
  return 0;
}

}  // namespace noonleaf::cli
