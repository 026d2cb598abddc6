#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include <boost/test/unit_test.hpp>

/// Compares with tests/report/golden/NAME; with NOONLEAF_WRITE_GOLDEN set it writes the file instead, for a
/// person to read before it is committed.
inline void check_golden(const std::string& name, const std::string& text) {
  const std::filesystem::path path = std::filesystem::path(NOONLEAF_GOLDEN_FOLDER) / name;
  if (std::getenv("NOONLEAF_WRITE_GOLDEN") != nullptr) {
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path, std::ios::binary) << text;
    return;
  }
  std::ifstream stream(path, std::ios::binary);
  BOOST_REQUIRE_MESSAGE(stream, "no golden file " << path);
  std::ostringstream expected;
  expected << stream.rdbuf();
  BOOST_TEST((text == expected.str()), name << " differs; now:\n" << text);
}
