// Writes what is installed beside the command: pages man|bash|zsh, to standard output.
#include <cstdio>
#include <string_view>

#include "option_list.hpp"

int main(int count, char** words) {
  using namespace noonleaf::cli;
  const std::string_view page = count == 2 ? words[1] : "";
  std::string text;
  if (page == "man") text = man_page(all_commands());
  if (page == "bash") text = bash_completion(all_commands());
  if (page == "zsh") text = zsh_completion(all_commands());
  if (text.empty()) {
    std::fputs("usage: pages man|bash|zsh\n", stderr);
    return 2;
  }
  return std::fwrite(text.data(), 1, text.size(), stdout) == text.size() ? 0 : 1;
}
