#pragma once

#include <string>
#include <vector>

namespace noonleaf::cli {

/// An option or a place of a command, as the parser knows it.
struct OptionEntry {
  std::vector<std::string> names;    ///< "--format"; empty for what is told by its place
  std::string value;                 ///< what is written for it: "DIR", "NUMBER"; empty for a flag
  std::vector<std::string> choices;  ///< the words that may stand there; empty = any text
  std::string purpose, default_value;
  bool required = false, repeated = false;
};

/// A command with its options in the order of its help, places first.
struct CommandEntry {
  std::string name, purpose, example;
  std::vector<OptionEntry> options;
};

/// What the man page and the completions are made of: the options themselves.
std::vector<CommandEntry> all_commands();

/// Each writes one file that is installed beside the command.
std::string man_page(const std::vector<CommandEntry>& commands);
std::string bash_completion(const std::vector<CommandEntry>& commands);
std::string zsh_completion(const std::vector<CommandEntry>& commands);

}  // namespace noonleaf::cli
