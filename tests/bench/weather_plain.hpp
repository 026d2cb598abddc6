#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

/// Other ways to read the same weather table, for comparison. Each returns the sum of all values, so that
/// nothing can be left out, and checks nothing beyond what its parser does by itself.
namespace plain {

struct Read {
  std::size_t rows = 0;
  double sum = 0.0;
};

/// std::getline, then a std::stringstream per line with operator>>.
Read getline_stringstream(const std::string& path);
/// std::getline, then strtod from cell to cell.
Read getline_strtod(const std::string& path);
/// The file mapped, std::from_chars from cell to cell, no checks, values kept in rows as the reader keeps
/// them.
Read mapped_from_chars(const std::string& path);
/// read() in blocks; the sum of the bytes.
Read bytes_alone(const std::string& path);

}  // namespace plain
