#include <string>

#include "noonleaf/report/soil_words.hpp"

#include "commands.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

/// The line for garden.toml stands by itself and unbroken, so that it can be copied.
std::string answer_text(const SoilAnswer& answer) {
  return bold(answer.name) + "\n" + wrapped(soil_words(answer), 2) + "\nFor the bed in garden.toml:\n\n" +
         answer.garden_line + "\n";
}

bool nothing_weighed(const PotWeights& pot) {
  return is_missing(pot.soil_volume_l) && is_missing(pot.soaked_kg) && is_missing(pot.drained_kg) &&
         is_missing(pot.wilted_kg) && is_missing(pot.dry_kg);
}

std::string pot_text(const PotWeights& pot) {
  if (!nothing_weighed(pot)) {
    const SoilAnswer answer = soil_answer(pot);
    return bold("WORKED OUT") + "\n" + pot_form_text(pot) + "\n" + answer_text(answer);
  }
  const PotWeights example{
      .soil_volume_l = 5, .soaked_kg = 5.15, .drained_kg = 4.35, .wilted_kg = 3.1, .dry_kg = 2.45};
  return bold("WEIGH A POT: what a mix holds where no table covers it") + "\n" + wrapped(pot_steps(), 2) +
         "\n" + bold("YOUR FORM") + "\n" + pot_form_text(pot) + "\n" +
         bold("AN EXAMPLE, WORKED OUT (invented weights)") + "\n" + pot_form_text(example) + "\n" +
         bold("THEN") + "\n" +
         wrapped(
             "noonleaf soils --pot --volume 5l --soaked 5.15kg --drained 4.35kg --wilted 3.1kg --dry 2.45kg "
             "works "
             "yours out; 9.6lb and 1.3gal do as well.",
             2);
}

}  // namespace

int run(const SoilsArguments& arguments) {
  const bool json = arguments.format == OutputFormat::json;
  if (arguments.by_pot) {
    print(json ? soil_json(soil_answer(arguments.pot)) : pot_text(arguments.pot));
  } else if (arguments.by_particles) {
    const SoilAnswer answer = soil_answer(arguments.particles);
    print(json ? soil_json(answer) : answer_text(answer));
  } else if (!arguments.texture.empty()) {
    const SoilAnswer answer = soil_answer(find_texture(arguments.texture));
    print(json ? soil_json(answer) : answer_text(answer));
  } else {
    print(json ? soils_json() : soil_table_text() + wrapped(soil_table_words(), 2));
  }
  return 0;
}

}  // namespace noonleaf::cli
