#include <CLI/CLI.hpp>

int main(int count, char** words) {
  CLI::App app{"noonleaf: water for garden beds", "noonleaf"};
  app.require_subcommand(1);
  CLI11_PARSE(app, count, words);
  return 0;
}
