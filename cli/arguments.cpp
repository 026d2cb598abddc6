#include "arguments.hpp"

#include <algorithm>
#include <cstdio>
#include <string_view>
#include <utility>

#include <CLI/CLI.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/nearest_name.hpp"

#include "command_line.hpp"
#include "option_list.hpp"
#include "version.hpp"

namespace noonleaf::cli {
namespace {

constexpr int wrong_usage = 2;

std::vector<std::string> option_names(const CLI::App& command) {
  std::vector<std::string> names;
  for (const CLI::Option* option : command.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  }
  return names;
}

std::vector<std::string> command_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::App* command : app.get_subcommands({})) names.push_back(command->get_name());
  return names;
}

/// The command that was being parsed when the line turned out wrong; null = it has none.
const CLI::App* parsed_command(const CLI::App& app) {
  for (const CLI::App* command : app.get_subcommands({})) {
    if (command->count() > 0) return command;
  }
  return nullptr;
}

int print_usage_problem(std::string message, std::string fix) {
  Problem problem;
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  std::fputs(describe(problem).c_str(), stderr);
  return wrong_usage;
}

int complain_without_command(const CLI::App& app, std::string_view first_word) {
  if (first_word.empty()) {
    return print_usage_problem("noonleaf: name a command",
                               "for example: noonleaf today DIR; `noonleaf --help` lists them");
  }
  const std::string nearest = nearest_name(first_word, command_names(app));
  return print_usage_problem(
      "noonleaf: \"" + std::string(first_word) + "\" is not a command",
      nearest.empty() ? "`noonleaf --help` lists them" : "did you mean " + nearest + "?");
}

int complain(const CLI::App& app, const CLI::ParseError& refused, std::string_view first_word) {
  const CLI::App* command = parsed_command(app);
  if (command == nullptr) return complain_without_command(app, first_word);
  const std::string name = "noonleaf " + command->get_name();
  const auto unknown = command->remaining();
  if (!unknown.empty()) {
    const auto option = std::find_if(unknown.begin(), unknown.end(),
                                     [](const std::string& word) { return word.starts_with("-"); });
    const std::string& word = option == unknown.end() ? unknown.front() : *option;
    const std::string nearest = nearest_name(word, option_names(*command));
    return print_usage_problem(
        name + ": \"" + word + "\" does not belong here",
        nearest.empty() ? "`" + name + " --help` shows what it takes" : "did you mean " + nearest + "?");
  }
  std::string example = command->get_footer();
  if (!example.empty()) example[0] = 'e';
  return print_usage_problem(name + ": " + refused.what(), example);
}

/// The words of "ENUM:csv|json" or "TEXT:{yes,no}", as CLI11 joins a type and its check; none for other
/// types.
std::vector<std::string> choices_of(const std::string& type) {
  const std::size_t colon = type.find(':');
  std::vector<std::string> words;
  if (colon == std::string::npos || type.find(';') != std::string::npos) return words;
  std::string word;
  for (const char letter : type.substr(colon + 1) + "|") {
    if (letter == '{' || letter == '}') continue;
    if (letter != '|' && letter != ',') {
      word += letter;
    } else if (!word.empty()) {
      words.push_back(std::exchange(word, {}));
    }
  }
  return words;
}

OptionEntry option_entry(const CLI::Option& option) {
  OptionEntry entry;
  for (const std::string& letter : option.get_snames()) entry.names.push_back("-" + letter);
  for (const std::string& name : option.get_lnames()) entry.names.push_back("--" + name);
  const std::string type = option.get_type_name();
  entry.choices = choices_of(type);
  if (option.get_positional()) {
    entry.value = option.get_name(true);
  } else if (option.get_items_expected_max() > 0) {
    entry.value = type == "FLOAT" || type == "INT" || type == "UINT" ? "NUMBER" : type;
  }
  if (!entry.choices.empty() && !option.get_positional()) entry.value = type.substr(0, type.find(':'));
  entry.purpose = option.get_description();
  entry.default_value = option.get_default_str();
  entry.required = option.get_required();
  entry.repeated = option.get_expected_max() > 1;
  return entry;
}

/// All commands, in the order in which help lists them.
CommandLine whole_line(CLI::App& app) {
  app.require_subcommand(1);
  app.get_formatter()->label("SUBCOMMAND", "COMMAND");
  app.get_formatter()->column_width(26);
  app.set_version_flag("--version", std::string(version_line));
  app.footer("It advises; it opens no valve. Local watering rules and school policy come\nfirst.");
  CommandLine line{app};
  add_garden_commands(line);
  add_log_command(line);
  add_table_commands(line);
  for (CLI::App* command : app.get_subcommands({})) command->group("Commands");
  return line;
}

constexpr const char* purpose = "What to open, for how long, and whether a droop is thirst or heat.";

}  // namespace

std::variant<Arguments, int> parse_arguments(int count, const char* const* words) {
  CLI::App app{purpose, "noonleaf"};
  const CommandLine line = whole_line(app);
  try {
    app.parse(count, words);
  } catch (const CLI::Success& answer) {
    return app.exit(answer);
  } catch (const CLI::ParseError& refused) {
    return complain(app, refused, count > 1 ? words[1] : "");
  }
  return line.asked.at(app.get_subcommands().front()->get_name())();
}

std::vector<CommandEntry> all_commands() {
  CLI::App app{purpose, "noonleaf"};
  const CommandLine line = whole_line(app);
  std::vector<CommandEntry> commands;
  for (const CLI::App* command : app.get_subcommands({})) {
    CommandEntry entry{command->get_name(), command->get_description(), command->get_footer(), {}};
    for (const CLI::Option* option : command->get_options()) entry.options.push_back(option_entry(*option));
    std::stable_partition(entry.options.begin(), entry.options.end(),
                          [](const OptionEntry& option) { return option.names.empty(); });
    commands.push_back(std::move(entry));
  }
  return commands;
}

}  // namespace noonleaf::cli
