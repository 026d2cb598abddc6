// Runs kept inputs through a fuzz target, in an ordinary build: every finding stays a test.
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "fuzz_target.hpp"

namespace fs = std::filesystem;

namespace {

/// All files below a folder, or the file itself, in the order of their names; `.said` are answers, not
/// inputs.
std::vector<fs::path> inputs_at(const fs::path& place) {
  if (fs::is_regular_file(place)) return {place};
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(place))
    if (entry.is_regular_file() && entry.path().extension() != ".said") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

}  // namespace

int main(int count, char** places) {
  std::size_t replayed = 0;
  for (int index = 1; index < count; ++index) {
    for (const fs::path& file : inputs_at(places[index])) {
      std::ifstream stream(file, std::ios::binary);
      const std::vector<char> bytes{std::istreambuf_iterator<char>(stream), {}};
      std::printf("%s\n", file.c_str());
      std::fflush(stdout);  // the last name is the input that ended the program
      LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
      ++replayed;
    }
  }
  const fuzz::Answers& answers = fuzz::answers();
  std::printf("%zu inputs; readers took %zu times what they got and refused %zu times\n", replayed,
              answers.taken, answers.refused);
  const bool nothing_tried = answers.taken == 0 && answers.refused > 0;
  return replayed > 0 && !nothing_tried ? 0 : 1;
}
