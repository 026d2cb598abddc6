// Preloaded into a program, it makes the program adopt the locale of its environment, in C and in C++: what a graphical
// program or another language does before it calls the library.
#include <clocale>
#include <locale>

namespace {

struct AdoptLocale {
  AdoptLocale() {
    std::setlocale(LC_ALL, "");
    std::locale::global(std::locale(""));
  }
};

const AdoptLocale adopted;

}  // namespace
