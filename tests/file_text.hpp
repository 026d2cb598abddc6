#pragma once

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

/// The bytes of a file as they are; empty when it cannot be read.
inline std::string file_text(const std::filesystem::path& path) {
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}
