#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
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

/// Bytes as a file that readers can open by its path, in memory, gone with the object.
class InputFile {
 public:
  explicit InputFile(std::string_view bytes);
  ~InputFile();
  InputFile(const InputFile&) = delete;
  InputFile& operator=(const InputFile&) = delete;
  const std::string& path() const { return path_; }

 private:
  int descriptor_ = -1;
  std::string path_{};
};

/// A refusal as a person needs it: at least one problem, each with what is wrong and how to mend it, in a
/// line that the input has, and no byte that steers a terminal.
void check_refusal(const noonleaf::Error& refused, std::string_view input);

/// Reads; whether that was done. A refusal is checked, any other exception ends the program.
template <class Read>
bool done(std::string_view input, const Read& read) {
  try {
    read();
    return true;
  } catch (const noonleaf::Error& refused) {
    check_refusal(refused, input);
    return false;
  }
}

/// Missing, or a number that is one.
bool missing_or_finite(double value);

}  // namespace fuzz
