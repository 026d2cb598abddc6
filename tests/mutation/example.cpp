// What check_rewriting.py rewrites: every kind of place that rewrite.py changes, and every kind that it must not.
#include <array>
#include <cstdio>
#include <string>

namespace {

constexpr std::array<double, 3> table{1.5, 2e-1, 0x1.8p1};
constexpr int bound = 4;

template <class T>
constexpr T twice(T x) {
  return x + x;
}

double polynomial(double x, double y) { return -x * y + 3.0 * x - y + 0.5; }

enum class Kind { first = 1, second = 2 };

int number_of(Kind kind) {
  switch (kind) {
    case Kind::first:
      return 10;
    case Kind::second:
      return 20;
  }
  return 0;  // never
}

#ifdef __SIZEOF_INT__
constexpr int on_some_machines = 1 + 2;
#endif

double pick(double x) {
  static_assert(sizeof(double) == 8);
  if constexpr (sizeof(int) != 4) return 0.0;  // never
  if (x >= 2.0) return x;
  return x < 1.0 ? 5.0 : 6.0;
}

struct Account {
  double mm = 0.0;
  static constexpr double limit = 30;
  void rain(double depth) { mm += depth; }
  void use(double depth) { mm -= depth; }
  bool full() const { return mm > limit; }
};

}  // namespace

int main() {
  double cells[bound] = {7.0, 8.0, 9.0};
  Account account;
  account.rain(30.5);
  const bool full = account.full();
  account.use(2.5);
  std::string text = "table " + std::to_string(table[0] + table[1] + table[2]);
  text += " and " + std::to_string(twice<double>(cells[2] + cells[0]) + cells[1]);
  std::printf("%s\n%g %d %d %g %g %g %d %d %g\n", text.c_str(), polynomial(2.0, 7.0), number_of(Kind::first),
              number_of(Kind::second), pick(0.95), pick(1), pick(2), full, (1 << 4) == 16, account.mm);
  if (text.size() == 28 && !(account.mm <= 27.5)) return 0;
  return 1;  // never
}
