#pragma once

#include <cstddef>
#include <exception>
#include <new>
#include <string>
#include <utility>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/noonleaf.h"

/// What a caller in C sees as a problem list: problems in words, and behind them rows that are only numbered.
struct noonleaf_problems {
  std::vector<noonleaf::Problem> problems{};
  std::vector<std::size_t> more_rows{};
};

namespace noonleaf::c_interface {

/// The calling program is wrong, not its data: a null pointer, a size, a choice that does not exist.
class CallRefused : public std::exception {
 public:
  CallRefused(std::string parameter, std::string message, std::string fix);
  const Problem& problem() const noexcept { return problem_; }

 private:
  Problem problem_;
};

/// Throws    CallRefused where the pointer is null
template <class T>
T& required(T* pointer, const char* parameter) {
  if (pointer == nullptr)
    throw CallRefused(parameter, "is a null pointer", "pass the address of what the call needs");
  return *pointer;
}

/// One of the first `count` values of an enumeration.
/// Throws    CallRefused for another one
template <class Enum>
Enum chosen(int32_t value, int32_t count, const char* member) {
  if (value < 0 || value >= count)
    throw CallRefused(member,
                      std::to_string(value) + " is none of its choices, 0 to " + std::to_string(count - 1),
                      "take one of the names in noonleaf.h");
  return static_cast<Enum>(value);
}

/// Hands a list over to the caller, or drops it where nobody asked.
void hand_over(noonleaf_problems** wanted, std::vector<Problem> problems);

/// The current exception as a status and, where wanted, a list. Throws nothing: without memory for the list
/// there is none.
noonleaf_status status_of_exception(noonleaf_problems** wanted) noexcept;

/// Runs the body of a call behind the C border: nothing that is thrown gets through.
///
/// Result    what `body` returns, else the status of what it threw
template <class Body>
noonleaf_status guarded(noonleaf_problems** problems, Body&& body) noexcept {
  if (problems != nullptr) *problems = nullptr;
  try {
    return std::forward<Body>(body)();
  } catch (...) {
    return status_of_exception(problems);
  }
}

/// A text in memory of its own, for noonleaf_text_free.
char* text_for_caller(const std::string& text);

}  // namespace noonleaf::c_interface
