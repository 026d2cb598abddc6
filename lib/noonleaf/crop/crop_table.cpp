#include "noonleaf/crop/crop_table.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "noonleaf/crop/crop_rows_ornamental.hpp"
#include "noonleaf/crop/crop_rows_other.hpp"
#include "noonleaf/crop/crop_rows_vegetable.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/plain_name.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t n_crops =
    crop_rows::vegetable_rows.size() + crop_rows::other_rows.size() + crop_rows::ornamental_rows.size();

constexpr std::array<Crop, n_crops> joined() {
  std::array<Crop, n_crops> all{};
  std::size_t at = 0;
  for (const Crop& row : crop_rows::vegetable_rows) all[at++] = row;
  for (const Crop& row : crop_rows::other_rows) all[at++] = row;
  for (const Crop& row : crop_rows::ornamental_rows) all[at++] = row;
  return all;
}

constexpr std::array<Crop, n_crops> all_crops = joined();

Error unknown_crop(std::string_view id) {
  std::vector<std::string_view> ids;
  ids.reserve(all_crops.size());
  for (const Crop& crop : all_crops) ids.push_back(crop.id);
  const std::string near = nearest_name(id, ids);
  Problem problem;
  problem.field = "crop";
  problem.text = id;
  problem.message = "no crop is called \"" + std::string(id) + "\"";
  problem.fix =
      near.empty() ? "choose a crop id from the crop table (noonleaf crops)" : "did you mean " + near + "?";
  return Error(std::move(problem));
}

}  // namespace

std::span<const Crop> crop_table() { return all_crops; }

const Crop& find_crop(std::string_view id) {
  const std::string wanted = plain_name(id);
  const auto* const found =
      std::find_if(all_crops.begin(), all_crops.end(), [&](const Crop& crop) { return crop.id == wanted; });
  if (found == all_crops.end()) throw unknown_crop(id);
  return *found;
}

const Crop& bare_soil() { return all_crops.back(); }

std::string_view label(CropGroup group) {
  switch (group) {
    case CropGroup::small_vegetable:
      return "small vegetables";
    case CropGroup::solanum:
      return "tomato family";
    case CropGroup::cucumber:
      return "cucumber family";
    case CropGroup::root_tuber:
      return "roots and tubers";
    case CropGroup::legume:
      return "legumes";
    case CropGroup::perennial_vegetable:
      return "perennial vegetables";
    case CropGroup::herb:
      return "herbs";
    case CropGroup::fibre:
      return "fibre crops";
    case CropGroup::oil:
      return "oil crops";
    case CropGroup::cereal:
      return "cereals";
    case CropGroup::turf:
      return "turf";
    case CropGroup::berry:
      return "grapes and berries";
    case CropGroup::fruit_tree:
      return "fruit trees";
    case CropGroup::ornamental:
      return "ornamentals";
    case CropGroup::cover_crop:
      return "cover crops";
    case CropGroup::bare_soil:
      return "bare soil";
  }
  return "";
}

std::string_view label(Confidence confidence) {
  switch (confidence) {
    case Confidence::high:
      return "high";
    case Confidence::medium:
      return "medium";
    case Confidence::low:
      return "low";
  }
  return "";
}

}  // namespace v1
}  // namespace noonleaf
