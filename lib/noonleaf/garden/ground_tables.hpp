#pragma once

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/toml_table.hpp"

namespace noonleaf {
inline namespace v1 {

// What garden.toml says of the water account and of the ground of a bed: what covers it, what falls on it,
// how salt it is, when it was last known to be full.
AccountOptions read_account_options(TomlTable& table);
void read_bed_ground(TomlTable& table, Bed& bed);
/// `landscape` of a planting: species x density x microclimate in place of a plant factor; missing without
/// it.
double read_landscape(TomlTable& planting);
double read_salinity_ds_m(TomlTable& table, std::string_view key);  ///< missing where the key is not there

}  // namespace v1
}  // namespace noonleaf
