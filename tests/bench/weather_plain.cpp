#include "bench/weather_plain.hpp"

#include <array>
#include <charconv>
#include <cstdlib>
#include <fcntl.h>
#include <fstream>
#include <numeric>
#include <sstream>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>
#include <vector>

namespace plain {
namespace {

constexpr std::size_t block_rows = 1024;

struct Row {
  int year = 0, month = 0, day = 0, hour = 0, minute = 0;
  std::array<double, 13> values{};
};

}  // namespace

Read getline_stringstream(const std::string& path) {
  Read read;
  std::ifstream file(path);
  std::vector<Row> rows(block_rows);
  std::string line;
  std::getline(file, line);
  while (std::getline(file, line)) {
    Row& row = rows[read.rows++ % block_rows];
    std::stringstream cells(line);
    char mark = 0;
    cells >> row.year >> mark >> row.month >> mark >> row.day;
    if (cells.peek() == 'T') cells >> mark >> row.hour >> mark >> row.minute >> mark;
    std::size_t index = 0;
    while (cells >> mark >> row.values[index]) read.sum += row.values[index++];
  }
  return read;
}

Read getline_strtod(const std::string& path) {
  Read read;
  std::ifstream file(path);
  std::vector<Row> rows(block_rows);
  std::string line;
  std::getline(file, line);
  while (std::getline(file, line)) {
    Row& row = rows[read.rows++ % block_rows];
    char* place = nullptr;
    row.year = static_cast<int>(std::strtol(line.c_str(), &place, 10));
    row.month = static_cast<int>(std::strtol(place + 1, &place, 10));
    row.day = static_cast<int>(std::strtol(place + 1, &place, 10));
    if (*place == 'T') {
      row.hour = static_cast<int>(std::strtol(place + 1, &place, 10));
      row.minute = static_cast<int>(std::strtol(place + 1, &place, 10));
      if (*place == 'Z') ++place;
    }
    std::size_t index = 0;
    while (*place == ',') {
      row.values[index] = std::strtod(place + 1, &place);
      read.sum += row.values[index++];
    }
  }
  return read;
}

Read mapped_from_chars(const std::string& path) {
  Read read;
  const int file = ::open(path.c_str(), O_RDONLY);
  struct stat about {};
  ::fstat(file, &about);
  const auto size = static_cast<std::size_t>(about.st_size);
  void* map = ::mmap(nullptr, size, PROT_READ, MAP_PRIVATE, file, 0);
  const char* place = static_cast<const char*>(map);
  const char* const end = place + size;
  std::vector<Row> rows(block_rows);
  while (*place != '\n') ++place;
  ++place;
  while (place < end) {
    Row& row = rows[read.rows++ % block_rows];
    place = std::from_chars(place, end, row.year).ptr + 1;
    place = std::from_chars(place, end, row.month).ptr + 1;
    place = std::from_chars(place, end, row.day).ptr;
    if (*place == 'T') {
      place = std::from_chars(place + 1, end, row.hour).ptr + 1;
      place = std::from_chars(place, end, row.minute).ptr;
      if (*place == 'Z') ++place;
    }
    std::size_t index = 0;
    while (*place == ',') {
      double value = 0.0;
      place = std::from_chars(place + 1, end, value).ptr;
      row.values[index++] = value;
      read.sum += value;
    }
    ++place;
  }
  ::munmap(map, size);
  ::close(file);
  return read;
}

Read bytes_alone(const std::string& path) {
  Read read;
  const int file = ::open(path.c_str(), O_RDONLY);
  std::vector<char> buffer(std::size_t{1} << 18U);
  std::uint64_t sum = 0;
  for (ssize_t got = 0; (got = ::read(file, buffer.data(), buffer.size())) > 0;) {
    sum = std::accumulate(buffer.begin(), buffer.begin() + got, sum);
    read.rows += static_cast<std::size_t>(got);
  }
  ::close(file);
  read.sum = static_cast<double>(sum);
  return read;
}

}  // namespace plain
