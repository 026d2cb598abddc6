#pragma once

#include <string>

/// The place of the gardens that tests invent, [site] of a garden.toml.
inline const std::string invented_site = R"([site]
name = "Test"
latitude_deg = 40
longitude_deg = -100
elevation_m = 300
zone = "America/Chicago"
)";
