#pragma once

#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <optional>
#include <string>
#include <vector>

/// A file of open weather that stays beside the project (docs/sources.md): in the folder that the environment
/// variable NOONLEAF_OPEN_WEATHER names, else in a folder `weather_open` in a neighbour of the project or of the
/// folder that holds it. Where it is not, a line says that what needs it was skipped.
inline std::optional<std::filesystem::path> open_weather_file(const std::string& name) {
  namespace fs = std::filesystem;
  std::vector<fs::path> folders;
  if (const char* given = std::getenv("NOONLEAF_OPEN_WEATHER")) {
    folders.emplace_back(given);
  } else {
    const fs::path beside = fs::path(NOONLEAF_SOURCE_DIR).parent_path();
    for (const fs::path& around : {beside, beside.parent_path()}) {
      std::error_code ignored;
      for (const fs::directory_entry& neighbour : fs::directory_iterator(around, ignored))
        folders.push_back(neighbour.path() / "weather_open");
    }
  }
  for (const fs::path& folder : folders) {
    std::error_code ignored;
    if (fs::exists(folder / name, ignored)) return folder / name;
  }
  std::cout << "SKIPPED, nothing was checked: " << name
            << " is not beside the project (NOONLEAF_OPEN_WEATHER names its folder)\n";
  return std::nullopt;
}
