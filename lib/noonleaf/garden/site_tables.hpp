#pragma once

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/toml_table.hpp"

namespace noonleaf {
inline namespace v1 {

// The tables of garden.toml that say where the garden is, who looks after it and what water it has.
// Each reads its own keys, refuses the rest, and leaves what is wrong in the document's list.
Site read_site(TomlTable& table);
WeatherOptions read_weather_options(TomlTable& table, Site& site);
Caretaker read_caretaker(TomlTable& table);
Tap read_tap(TomlTable& table);
WaterPrice read_water_price(TomlTable& table);

}  // namespace v1
}  // namespace noonleaf
