#include "fuzz_target.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>
#include <system_error>
#include <unistd.h>

#include "noonleaf/weather/utf8_text.hpp"

namespace fuzz {

void require(bool holds, std::string_view what) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %.*s\n", static_cast<int>(what.size()), what.data());
  std::abort();
}

namespace {

/// Of this process, gone when it ends by itself.
class InputFolder {
 public:
  InputFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "noonleaf-fuzz-XXXXXX").string();
    require(::mkdtemp(name.data()) != nullptr, "a folder can be made");
    path_ = name;
  }
  ~InputFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  InputFolder(const InputFolder&) = delete;
  InputFolder& operator=(const InputFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace

InputFile::InputFile(std::string_view bytes) {
  static const InputFolder folder;
  path_ = folder.path() / "input";
  require(!std::filesystem::exists(path_), "one input at a time");
  std::ofstream stream(path_, std::ios::binary);
  stream.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  require(stream.flush().good(), "the input can be written");
}

InputFile::~InputFile() {
  std::error_code ignored;
  std::filesystem::remove(path_, ignored);
}

Answers& answers() {
  static Answers counted;
  return counted;
}

void check_refusal(const noonleaf::Error& refused, std::string_view input) {
  const auto& problems = refused.problems();
  require(!problems.empty(), "a refusal has a problem");
  const auto lines = static_cast<std::size_t>(std::count(input.begin(), input.end(), '\n')) + 1;
  for (const noonleaf::Problem& problem : problems) {
    require(!problem.message.empty(), "a problem has a message");
    require(!problem.fix.empty(), "a problem has a fix");
    require(problem.line <= lines, "a problem lies in the file");
    require(problem.line > 0 || problem.column == 0, "a column has its line");
  }
  const std::string said = noonleaf::describe(problems);
  require(noonleaf::valid_utf8(said) == said, "what is said is UTF-8");
  const bool steers = std::any_of(said.begin(), said.end(), [](char byte) {
    const auto code = static_cast<unsigned char>(byte);
    return (code < 0x20U && byte != '\n') || code == 0x7FU;
  });
  require(!steers, "what is said steers no terminal");
}

bool missing_or_finite(double value) { return std::isnan(value) || std::isfinite(value); }

}  // namespace fuzz
