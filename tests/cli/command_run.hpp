#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

#include <boost/test/unit_test.hpp>

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

  void write(const std::string& name, const std::string& text) const {
    std::filesystem::create_directories((folder_ / name).parent_path());
    std::ofstream(folder_ / name, std::ios::binary) << text;
  }

  std::string read(const std::string& name) const {
    std::ifstream stream(folder_ / name, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
  }

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

/// What a command printed and how it ended.
struct CommandRun {
  int exit_code = -1;
  std::string out, err;
};

/// Runs the command in the folder, as a shell would: `words` may hold quotes and redirections.
inline CommandRun run_noonleaf(const Workplace& workplace, const std::string& words) {
  const std::string line = "cd '" + workplace.folder().string() +
                           "' && env -u NO_COLOR TERM=dumb '" NOONLEAF_COMMAND "' " + words +
                           " >.out 2>.err </dev/null";
  const int status = std::system(line.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, workplace.read(".out"), workplace.read(".err")};
}

/// Compares with tests/cli/golden/NAME; with NOONLEAF_WRITE_GOLDEN set it writes the file instead, for a
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
  BOOST_TEST(text == expected.str(), name << " differs; now:\n" << text);
}
