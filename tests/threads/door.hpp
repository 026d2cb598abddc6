#pragma once

#include <cstdio>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

/// What a call answered, to be compared between threads: every bit of a number, every letter of a text.
class Print {
 public:
  template <class Value>
  Print& operator<<(const Value& value) {
    if constexpr (std::is_convertible_v<Value, std::string_view>) {
      text_ += std::string_view(value);
    } else {
      char number[40];
      std::snprintf(number, sizeof number, "%a", static_cast<double>(value));
      text_ += number;
    }
    text_ += ' ';
    return *this;
  }
  template <class Value>
  Print& operator<<(const std::vector<Value>& values) {
    for (const Value& value : values) *this << value;
    return *this;
  }
  std::string text() const { return text_; }

 private:
  std::string text_;
};

/// One way into the library, called by every thread at once.
struct Door {
  const char* name;
  std::string (*call)();
};

std::vector<Door> science_doors();
std::vector<Door> block_doors();
std::vector<Door> garden_doors();
std::vector<Door> file_doors();
std::vector<Door> words_doors();
std::vector<Door> c_doors();
