#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string_view>

#include "noonleaf/error.hpp"

// What the fuzz targets share. A target is one function that takes any bytes; whatever it finds wrong it
// says, and ends the program.

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace fuzz {

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

/// Ends the program with these words where something does not hold.
void require(bool holds, std::string_view what);

/// Bytes as a plain file in a folder of its own, gone with the object. No file in memory: its path is a link, and a
/// garden follows none out of its folder.
class InputFile {
 public:
  explicit InputFile(std::string_view bytes);
  ~InputFile();
  InputFile(const InputFile&) = delete;
  InputFile& operator=(const InputFile&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_{};
};

/// How often a reader took what it was given, and how often it refused. A target that is refused every kept input
/// tries nothing: the replay fails then.
struct Answers {
  std::size_t taken = 0, refused = 0;
};
Answers& answers();

/// A refusal as a person needs it: at least one problem, each with what is wrong and how to mend it, in a
/// line that the input has, and no byte that steers a terminal.
void check_refusal(const noonleaf::Error& refused, std::string_view input);

/// Reads; whether that was done. A refusal is checked, any other exception ends the program.
template <class Read>
bool done(std::string_view input, const Read& read) {
  try {
    read();
    ++answers().taken;
    return true;
  } catch (const noonleaf::Error& refused) {
    ++answers().refused;
    check_refusal(refused, input);
    return false;
  }
}

/// Missing, or a number that is one.
bool missing_or_finite(double value);

}  // namespace fuzz
