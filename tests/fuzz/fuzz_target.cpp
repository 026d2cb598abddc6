#include "fuzz_target.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <sys/mman.h>
#include <unistd.h>

#include "noonleaf/weather/utf8_text.hpp"

namespace fuzz {

void require(bool holds, std::string_view what) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %.*s\n", static_cast<int>(what.size()), what.data());
  std::abort();
}

InputFile::InputFile(std::string_view bytes) : descriptor_(::memfd_create("input", MFD_CLOEXEC)) {
  require(descriptor_ >= 0, "a file in memory can be made");
  for (std::size_t written = 0; written < bytes.size();) {
    const auto more = ::write(descriptor_, bytes.data() + written, bytes.size() - written);
    require(more > 0, "a file in memory can be written");
    written += static_cast<std::size_t>(more);
  }
  path_ = "/proc/self/fd/" + std::to_string(descriptor_);
}

InputFile::~InputFile() { ::close(descriptor_); }

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
