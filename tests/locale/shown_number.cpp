// How this program's locale writes a number: "1,5 1.234.567,5" in the locale of these tests. Were it "1.5", the tests in
// this folder would prove nothing.
#include <cstdio>
#include <iomanip>
#include <iostream>

int main() {
  std::printf("%.1f ", 1.5);
  std::fflush(stdout);
  std::cout.imbue(std::locale());
  std::cout << std::fixed << std::setprecision(1) << 1234567.5 << "\n";
}
