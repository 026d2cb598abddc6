#pragma once

#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>
#include <unistd.h>

/// A file with given bytes, gone at the end of the test.
class TemporaryFile {
 public:
  explicit TemporaryFile(std::string_view bytes, const std::string& name = "weather.csv") {
    static int count = 0;
    folder_ = std::filesystem::temp_directory_path() /
              ("noonleaf_" + std::to_string(::getpid()) + "_" + std::to_string(count++));
    std::filesystem::create_directories(folder_);
    path_ = folder_ / name;
    std::ofstream(path_, std::ios::binary) << bytes;
  }
  ~TemporaryFile() { std::filesystem::remove_all(folder_); }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;

  const std::filesystem::path& path() const { return path_; }
  const std::filesystem::path& folder() const { return folder_; }

 private:
  std::filesystem::path folder_, path_;
};
