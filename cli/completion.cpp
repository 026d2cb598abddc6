#include "option_list.hpp"

namespace noonleaf::cli {
namespace {

enum class Kind { words, folders, files, free_text };

/// What can be offered for a value, by how the help calls it.
Kind kind_of(const OptionEntry& option) {
  if (!option.choices.empty()) return Kind::words;
  if (option.value == "DIR") return Kind::folders;
  const bool is_file = option.value.find("FILE") != std::string::npos || option.value.ends_with(".csv") ||
                       option.value.ends_with(".json");
  return is_file ? Kind::files : Kind::free_text;
}

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

/// What the shell function below takes: "folders", "files", "nothing", or "words" and the words.
std::string offer(const OptionEntry& option) {
  switch (kind_of(option)) {
    case Kind::words:
      return "words " + joined(option.choices);
    case Kind::folders:
      return "folders";
    case Kind::files:
      return "files";
    case Kind::free_text:
      break;
  }
  return "nothing";
}

constexpr const char* bash_function = R"bash(
_noonleaf() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} command=${COMP_WORDS[1]}
  local i place=1 offer
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "$_noonleaf_commands --help --version" -- "$word"))
    return
  fi
  if [ "$word" = "=" ]; then word=; elif [ "$before" = "=" ]; then before=${COMP_WORDS[COMP_CWORD-2]}; fi
  if ! offer=$(_noonleaf_value "$command" "$before"); then
    if [[ $word == -* ]]; then
      offer="words $(_noonleaf_options "$command")"
    else
      for ((i = 2; i < COMP_CWORD; i++)); do
        if _noonleaf_value "$command" "${COMP_WORDS[i]}" >/dev/null; then
          [ "${COMP_WORDS[i+1]}" = "=" ] && ((i++))
          ((i++))
        elif [[ ${COMP_WORDS[i]} != -* ]]; then
          ((place++))
        fi
      done
      offer=$(_noonleaf_place "$command" "$place")
    fi
  fi
  case $offer in
    folders) COMPREPLY=($(compgen -d -- "$word")) ;;
    files) COMPREPLY=($(compgen -f -- "$word")) ;;
    words*) COMPREPLY=($(compgen -W "${offer#words }" -- "$word")) ;;
  esac
}
complete -o filenames -F _noonleaf noonleaf
)bash";

/// Text between single quotes within _arguments, where brackets and colons have a meaning too.
std::string zsh_text(const std::string& text) {
  std::string out;
  for (const char letter : text) {
    if (letter == '\'') {
      out += "'\\''";
    } else {
      if (letter == '[' || letter == ']' || letter == ':' || letter == '\\') out += '\\';
      out += letter;
    }
  }
  return out;
}

std::string zsh_action(const OptionEntry& option) {
  switch (kind_of(option)) {
    case Kind::words:
      return "(" + joined(option.choices) + ")";
    case Kind::folders:
      return "_directories";
    case Kind::files:
      return "_files";
    case Kind::free_text:
      break;
  }
  return " ";
}

std::string zsh_argument(const OptionEntry& option) {
  if (option.names.empty()) {
    const std::string position = option.repeated ? "*:" : option.required ? ":" : "::";
    return "'" + position + zsh_text(option.value) + ":" + zsh_action(option) + "'";
  }
  const std::string value =
      option.value.empty() ? "" : ":" + zsh_text(option.value) + ":" + zsh_action(option);
  return "'" + std::string(option.repeated ? "*" : "") + option.names.back() + "[" +
         zsh_text(option.purpose) + "]" + value + "'";
}

}  // namespace

std::string bash_completion(const std::vector<CommandEntry>& commands) {
  std::string names, options, values, places;
  for (const CommandEntry& command : commands) {
    names += (names.empty() ? "" : " ") + command.name;
    std::string all;
    std::size_t place = 1;
    for (const OptionEntry& option : command.options) {
      if (option.names.empty()) {
        places += "    '" + command.name + " " + (option.repeated ? "'*" : std::to_string(place++) + "'") +
                  ") echo '" + offer(option) + "' ;;\n";
        continue;
      }
      all += (all.empty() ? "" : " ") + option.names.back();
      if (!option.value.empty())
        values += "    '" + command.name + " " + option.names.back() + "') echo '" + offer(option) + "' ;;\n";
    }
    options += "    " + command.name + ") echo '" + all + "' ;;\n";
  }
  return "# Completion of noonleaf for bash; made from the options of the command.\n_noonleaf_commands='" +
         names + "'\n_noonleaf_options() {\n  case $1 in\n" + options +
         "  esac\n}\n_noonleaf_value() {\n  case \"$1 $2\" in\n" + values +
         "    *) return 1 ;;\n  esac\n}\n_noonleaf_place() {\n  case \"$1 $2\" in\n" + places + "  esac\n}" +
         bash_function;
}

std::string zsh_completion(const std::vector<CommandEntry>& commands) {
  std::string list, cases;
  for (const CommandEntry& command : commands) {
    list += "    '" + command.name + ":" + zsh_text(command.purpose) + "'\n";
    cases += "    " + command.name + ")\n      _arguments";
    for (const OptionEntry& option : command.options) cases += " \\\n        " + zsh_argument(option);
    cases += " ;;\n";
  }
  return "#compdef noonleaf\n# Completion of noonleaf for zsh; made from the options of the command.\n"
         "_noonleaf() {\n  local line state\n  local -a commands\n  commands=(\n" +
         list +
         "  )\n  _arguments -C '--help[what there is]' '--version[version and build]' '1: :->command' "
         "'*:: :->argument'\n"
         "  case $state in\n    command) _describe command commands; return ;;\n  esac\n"
         "  case $line[1] in\n" +
         cases + "  esac\n}\n_noonleaf \"$@\"\n";
}

}  // namespace noonleaf::cli
