#pragma once

#include <filesystem>
#include <fstream>
#include <string>
#include <system_error>
#include <unistd.h>

#include <boost/test/unit_test.hpp>

#include "file_text.hpp"

/// An empty folder of its own, removed at the end.
class Workplace {
 public:
  Workplace() {
    std::string name = (std::filesystem::temp_directory_path() / "noonleaf-test-XXXXXX").string();
    BOOST_REQUIRE(::mkdtemp(name.data()) != nullptr);
    folder_ = name;
  }
  ~Workplace() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }
  Workplace(const Workplace&) = delete;
  Workplace& operator=(const Workplace&) = delete;

  const std::filesystem::path& folder() const { return folder_; }

  void write(const std::string& name, std::string_view text) const {
    std::filesystem::create_directories((folder_ / name).parent_path());
    std::ofstream(folder_ / name, std::ios::binary) << text;
  }

  std::string read(const std::string& name) const { return file_text(folder_ / name); }

  /// Replaces the first `what` in a file; it must be there.
  void replace(const std::string& name, const std::string& what, const std::string& with) const {
    std::string text = read(name);
    const std::size_t place = text.find(what);
    BOOST_REQUIRE_MESSAGE(place != std::string::npos, what << " is not in " << name);
    write(name, text.replace(place, what.size(), with));
  }

 private:
  std::filesystem::path folder_;
};
