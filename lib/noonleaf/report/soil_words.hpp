#pragma once

#include <string>
#include <vector>

#include "noonleaf/soil/pot.hpp"
#include "noonleaf/soil/saxton_rawls.hpp"
#include "noonleaf/soil/texture.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The texture classes, a line each, 80 columns wide.
std::string soil_table_text();

/// What the columns of that table are and where they come from.
std::vector<std::string> soil_table_words();

/// One soil, however it was found.
struct SoilAnswer {
  std::string name{};         ///< "loam", "loam by the texture triangle", "pot"
  SoilWater soil{};           ///< water contents
  std::string confidence{};   ///< "high", "medium", "low", as in the crop table
  std::string doubt{};        ///< why not higher; empty = nothing to say
  std::string garden_line{};  ///< for garden.toml
};
/// By texture class.
SoilAnswer soil_answer(const TextureClass& texture);
/// Throws    Error as saxton_rawls
SoilAnswer soil_answer(const SoilParticles& particles);
/// Throws    Error as soil_of(PotWeights)
SoilAnswer soil_answer(const PotWeights& pot);

/// The numbers of one soil as sentences, metric and US.
std::vector<std::string> soil_words(const SoilAnswer& answer);

/// How to weigh a pot, step by step.
std::vector<std::string> pot_steps();

/// The form to fill in while weighing, or the same worked out with the weights given, a line each, 80 columns
/// wide. A missing weight leaves its line blank.
std::string pot_form_text(const PotWeights& pot);

/// For programs: shape "noonleaf.soils" or "noonleaf.soil", version 1 (docs/json.md).
std::string soils_json();
/// One soil, likewise.
std::string soil_json(const SoilAnswer& answer);

}  // namespace v1
}  // namespace noonleaf
