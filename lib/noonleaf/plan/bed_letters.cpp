#include <algorithm>

#include "noonleaf/plan/week.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// A, B, ... Z, AA, AB, ...
std::string letter_of(std::size_t index) {
  std::string letter;
  for (std::size_t rest = index + 1; rest > 0; rest = (rest - 1) / 26) {
    letter.insert(letter.begin(), static_cast<char>('A' + (rest - 1) % 26));
  }
  return letter;
}

}  // namespace

std::vector<std::string> bed_letters(const Garden& garden) {
  std::vector<std::string> letters;
  for (const Bed& bed : garden.beds) letters.push_back(bed.letter);
  std::size_t next = 0;
  for (std::string& letter : letters) {
    while (letter.empty()) {
      const std::string candidate = letter_of(next++);
      if (std::find(letters.begin(), letters.end(), candidate) == letters.end()) letter = candidate;
    }
  }
  return letters;
}

}  // namespace v1
}  // namespace noonleaf
