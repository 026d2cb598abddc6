#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/toml_table.hpp"

namespace noonleaf {
inline namespace v1 {

// The tables and keys of garden.toml that say when water may run and where things stand on the sketch.
WateringRules read_rules(TomlTable& table);
std::vector<WeeklyHours> read_hours(TomlTable& table, std::string_view key);
std::vector<DatedSpan> read_spans(TomlTable& table, std::string_view key);
std::optional<SketchPlace> read_place(TomlTable& table);
Landmark read_landmark(TomlTable& table);

}  // namespace v1
}  // namespace noonleaf
