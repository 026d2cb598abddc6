#pragma once

#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

/// Rows of a table of published values beside the tests: no quotes, `#` starts a comment, the first line names the
/// columns and is left out.
inline std::vector<std::vector<std::string>> csv_rows(const std::string& file) {
  std::ifstream in(std::filesystem::path(NOONLEAF_SOURCE_DIR) / "tests" / file);
  if (!in) throw std::runtime_error("cannot read tests/" + file);
  std::vector<std::vector<std::string>> rows;
  std::string line;
  while (std::getline(in, line)) {
    if (line.empty() || line[0] == '#') continue;
    std::vector<std::string> cells;
    std::istringstream text(line);
    for (std::string cell; std::getline(text, cell, ',');) cells.push_back(cell);
    rows.push_back(std::move(cells));
  }
  rows.erase(rows.begin());
  return rows;
}
