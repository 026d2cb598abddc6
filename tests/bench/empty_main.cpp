// The baseline of command_bench: what starting any C++ program costs.
#include <string>

int main(int count, char**) {
  return static_cast<int>(std::string(static_cast<std::size_t>(count - 1), 'x').size());
}
