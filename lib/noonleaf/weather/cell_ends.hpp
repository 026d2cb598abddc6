#pragma once

#include <bit>
#include <cstdint>
#include <cstring>

#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace noonleaf {
inline namespace v1 {

/// One bit for each of the 64 bytes from `place` on that ends a cell: separator, newline, or a quote (after
/// which the row is not plain). All 64 must be readable.
[[gnu::always_inline]] inline std::uint64_t cell_ends_in_64(const char* place, char separator) {
  std::uint64_t ends = 0;
#if defined(__SSE2__)
  const __m128i separators = _mm_set1_epi8(separator), newlines = _mm_set1_epi8('\n'),
                quotes = _mm_set1_epi8('"');
  for (std::size_t part = 0; part < 4; ++part) {
    const __m128i bytes = _mm_loadu_si128(reinterpret_cast<const __m128i*>(place + 16 * part));
    const __m128i found =
        _mm_or_si128(_mm_or_si128(_mm_cmpeq_epi8(bytes, separators), _mm_cmpeq_epi8(bytes, newlines)),
                     _mm_cmpeq_epi8(bytes, quotes));
    ends |= std::uint64_t{static_cast<std::uint32_t>(_mm_movemask_epi8(found))} << (16 * part);
  }
#else
  for (unsigned index = 0; index < 64; ++index) {
    const char letter = place[index];
    ends |= std::uint64_t{letter == separator || letter == '\n' || letter == '"'} << index;
  }
#endif
  return ends;
}

/// The ends of the cells of one row, one after the other. They are found ahead of the parsing, so that the
/// processor works on several cells at once: a parser that walks from cell to cell waits for each.
class CellEnds {
 public:
  CellEnds(const char* row, char separator)
      : window_(row), separator_(separator), ends_(cell_ends_in_64(row, separator)) {}

  /// The next byte that ends a cell. Not to be called behind the newline of the row.
  [[gnu::always_inline]] const char* next() {
    while (ends_ == 0) {
      window_ += 64;
      ends_ = cell_ends_in_64(window_, separator_);
    }
    const char* end = window_ + std::countr_zero(ends_);
    ends_ &= ends_ - 1;
    return end;
  }

 private:
  const char* window_;
  char separator_;
  std::uint64_t ends_;
};

}  // namespace v1
}  // namespace noonleaf
