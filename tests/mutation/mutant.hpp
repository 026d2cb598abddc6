#pragma once

// What rewrite.py puts into a mutated copy of the library; see mutate.py. No part of the library and of no test.
//
// Each constant, sign and comparison of the copy asks is(its number): one build holds every mutant, and the
// environment variable MUTANT says which one is active. An operator is rewritten in place, `a < b` to
// `a < mutant::Less{17} < b`: the named operator has the precedence of the one it stands for, so no operand has to
// be found.

#include <cstdio>
#include <cstdlib>
#include <string>
#include <type_traits>
#include <unistd.h>

namespace mutant {

inline constexpr int most = 8192;
inline constexpr int not_a_mutant_code = 77;

inline int number_in_environment() {
  const char* text = std::getenv("MUTANT");
  return text == nullptr ? 0 : std::atoi(text);
}

inline const int active = number_in_environment();
inline unsigned char reached[most] = {};   // 1: asked, 2: asked where the mutation makes no sense
inline bool somebody_else_writes = false;  // a test program writes what each of its cases reached

/// What a program that is no test program has reached (the command, run by a test), for its test to add to its own.
struct WriteAtExit {
  ~WriteAtExit() {
    const char* path = std::getenv("MUTANT_TRACE");
    if (path == nullptr || somebody_else_writes) return;
    std::FILE* file = std::fopen((std::string(path) + ".child").c_str(), "a");
    if (file == nullptr) return;
    for (int id = 0; id < most; ++id) {
      if (reached[id] != 0) std::fprintf(file, "%d %d\n", id, reached[id]);
    }
    std::fclose(file);
  }
};
inline const WriteAtExit write_at_exit;

[[gnu::always_inline]] inline bool is(int id) {
  reached[id] |= 1;
  return active == id;
}

/// A sign or comparison of something that has no other one: joined texts, the distance of two iterators.
inline void not_a_mutant(int id) {
  reached[id] |= 2;
  if (active != id) return;
  if (const char* path = std::getenv("MUTANT_MARK")) {
    if (std::FILE* file = std::fopen(path, "w")) std::fclose(file);
  }
  std::_Exit(not_a_mutant_code);
}

/// A number: 10 % more for a real one (0 becomes 1), 1 more for a whole one.
template <class T>
[[gnu::always_inline]] inline T number(int id, T x) {
  if constexpr (std::is_floating_point_v<T>) {
    return is(id) ? (x == T(0) ? T(1) : x * T(1.1)) : x;
  } else {
    return is(id) ? static_cast<T>(x + 1) : x;
  }
}

template <class Name, class A>
struct Left {
  const A& a;
  int id;
};

#define MUTANT_OPERATOR(Name, op, other)                                                                  \
  struct Name {                                                                                           \
    int id;                                                                                               \
  };                                                                                                      \
  template <class A>                                                                                      \
  [[gnu::always_inline]] inline Left<Name, A> operator op(const A& a, Name name) {                        \
    return {a, name.id};                                                                                  \
  }                                                                                                       \
  template <class A, class B>                                                                             \
  [[gnu::always_inline]] inline auto operator op(Left<Name, A> left, const B& b)->decltype(left.a op b) { \
    using Result = decltype(left.a op b);                                                                 \
    if constexpr (requires { static_cast<Result>(left.a other b); }) {                                    \
      return is(left.id) ? static_cast<Result>(left.a other b) : left.a op b;                             \
    } else {                                                                                              \
      not_a_mutant(left.id);                                                                              \
      return left.a op b;                                                                                 \
    }                                                                                                     \
  }

MUTANT_OPERATOR(Plus, +, -)
MUTANT_OPERATOR(Minus, -, +)
MUTANT_OPERATOR(Less, <, >=)
MUTANT_OPERATOR(GreaterEqual, >=, <)
MUTANT_OPERATOR(Greater, >, <=)
MUTANT_OPERATOR(LessEqual, <=, >)
MUTANT_OPERATOR(Equal, ==, !=)
MUTANT_OPERATOR(NotEqual, !=, ==)
#undef MUTANT_OPERATOR

template <class Name, class B>
struct Right {
  const B& b;
  int id;
};

#define MUTANT_ASSIGNMENT(Name, op, other)                                               \
  struct Name {                                                                          \
    int id;                                                                              \
  };                                                                                     \
  template <class B>                                                                     \
  [[gnu::always_inline]] inline Right<Name, B> operator op(Name name, const B& b) {      \
    return {b, name.id};                                                                 \
  }                                                                                      \
  template <class A, class B>                                                            \
  [[gnu::always_inline]] inline decltype(auto) operator op(A& a, Right<Name, B> right) { \
    if constexpr (requires { a other right.b; }) {                                       \
      if (is(right.id)) {                                                                \
        a other right.b;                                                                 \
        return a;                                                                        \
      }                                                                                  \
    } else {                                                                             \
      not_a_mutant(right.id);                                                            \
    }                                                                                    \
    a op right.b;                                                                        \
    return a;                                                                            \
  }

MUTANT_ASSIGNMENT(PlusAssign, +=, -=)
MUTANT_ASSIGNMENT(MinusAssign, -=, +=)
#undef MUTANT_ASSIGNMENT

/// A minus before one value, as `mutant::Negative{17}->*x`: ->* binds more tightly than every operator of two values.
struct Negative {
  int id;
};
template <class X>
[[gnu::always_inline]] inline auto operator->*(Negative minus, const X& x) -> decltype(-x) {
  using Result = decltype(-x);
  return is(minus.id) ? static_cast<Result>(x) : -x;
}

}  // namespace mutant
