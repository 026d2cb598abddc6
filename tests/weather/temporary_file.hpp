#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "workplace.hpp"

/// A file with given bytes in a folder of its own, gone at the end of the test.
class TemporaryFile {
 public:
  explicit TemporaryFile(std::string_view bytes, const std::string& name = "weather.csv")
      : path_(place_.folder() / name) {
    place_.write(name, bytes);
  }

  const std::filesystem::path& path() const { return path_; }
  const std::filesystem::path& folder() const { return place_.folder(); }

 private:
  Workplace place_;
  std::filesystem::path path_;
};
