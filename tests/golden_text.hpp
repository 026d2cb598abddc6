#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include <boost/test/unit_test.hpp>

#include "file_text.hpp"

/// Compares with NAME in the folder `golden` beside the test; with NOONLEAF_WRITE_GOLDEN set it writes the file
/// instead, for a person to read before it is committed.
inline void check_golden(const std::string& name, const std::string& text) {
  const std::filesystem::path path = std::filesystem::path(NOONLEAF_GOLDEN_FOLDER) / name;
  if (std::getenv("NOONLEAF_WRITE_GOLDEN") != nullptr) {
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path, std::ios::binary) << text;
    return;
  }
  BOOST_REQUIRE_MESSAGE(std::filesystem::exists(path), "no golden file " << path);
  BOOST_TEST(text == file_text(path), name << " differs; now:\n" << text);
}
