#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>

namespace fuzz {

/// Numbers, choices and texts out of bytes; behind their end all is 0.
class ByteStream {
 public:
  ByteStream(const std::uint8_t* data, std::size_t size) : next_(data), end_(data + size) {}

  bool ended() const { return next_ == end_; }
  std::uint8_t byte() { return ended() ? std::uint8_t{0} : *next_++; }

  std::uint64_t bits(int bytes) {
    std::uint64_t value = 0;
    for (int count = 0; count < bytes; ++count) value = value << 8U | byte();
    return value;
  }

  /// low to high, both included.
  int whole(int low, int high) {
    const auto range = static_cast<unsigned>(high - low) + 1U;
    return low + static_cast<int>((range <= 256 ? bits(1) : bits(2)) % range);
  }
  bool chance(int in_256) { return byte() < in_256; }
  double real(double low, double high) { return low + (high - low) * static_cast<double>(bits(2)) / 65535.0; }

  template <class Value, std::size_t count>
  const Value& one_of(const std::array<Value, count>& values) {
    return values[byte() % count];
  }

  /// Within the range as a rule, else a number that formulas trip over.
  double number(double low, double high) {
    static constexpr std::array odd{std::numeric_limits<double>::quiet_NaN(),
                                    std::numeric_limits<double>::infinity(),
                                    -std::numeric_limits<double>::infinity(),
                                    0.0,
                                    -0.0,
                                    1e308,
                                    -1e308,
                                    std::numeric_limits<double>::denorm_min(),
                                    -9999.0,
                                    1e-12};
    return chance(200) ? real(low, high) : one_of(odd);
  }

  std::string text(std::size_t longest) {
    std::string text;
    for (std::size_t length = byte() % (longest + 1); length > 0; --length) text += static_cast<char>(byte());
    return text;
  }

 private:
  const std::uint8_t* next_;
  const std::uint8_t* end_;
};

}  // namespace fuzz
