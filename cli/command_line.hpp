#pragma once

// What the files that add commands share. They and arguments.cpp are the only ones that include CLI11: it
// costs seconds to compile.
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <CLI/CLI.hpp>

#include "noonleaf/nearest_name.hpp"
#include "noonleaf/units.hpp"

#include "arguments.hpp"

namespace noonleaf::cli {

/// A command line in the making: the commands added so far, and what each of them asks for once it is parsed.
struct CommandLine {
  CLI::App& app;
  std::map<std::string, std::function<Arguments()>> asked{};

  /// A command whose options are its arguments.
  template <class CommandArguments>
  void add(CLI::App* (*add_to)(CLI::App&, CommandArguments&)) {
    const auto kept = std::make_shared<CommandArguments>();
    asked[add_to(app, *kept)->get_name()] = [kept] { return Arguments(*kept); };
  }

  /// A command with options whose text is read after parsing.
  template <class CommandArguments, class Texts>
  void add(CLI::App* (*add_to)(CLI::App&, CommandArguments&, Texts&),
           CommandArguments (*read)(CommandArguments, const Texts&)) {
    const auto kept = std::make_shared<std::pair<CommandArguments, Texts>>();
    asked[add_to(app, kept->first, kept->second)->get_name()] = [kept, read] {
      return Arguments(read(kept->first, kept->second));
    };
  }
};

void add_garden_commands(CommandLine& line);  ///< those that take a garden folder
void add_log_command(CommandLine& line);
void add_table_commands(CommandLine& line);  ///< those that need no garden

// ---- checks of one option's text: empty = good, else what is wrong ----------------------------------------
std::string check_date(const std::string& text);
std::string check_clock(const std::string& text);
std::string check_pair(const std::string& text);

/// A check that the number lies within a range, in words that name it.
std::function<std::string(const std::string&)> within(double low, double high);

/// "csv|json|text": how help shows what may stand there, and what completions offer.
template <class Choice>
std::string words_of(const std::map<std::string, Choice>& choices) {
  std::string list;
  for (const auto& [word, choice] : choices) list += (list.empty() ? "" : "|") + word;
  return list;
}

/// A check that the text is one of the words, with the nearest of them.
template <class Choice>
std::function<std::string(const std::string&)> one_of(const std::map<std::string, Choice>& choices,
                                                      const std::string& what) {
  return [&choices, what](const std::string& text) {
    if (choices.contains(text)) return std::string{};
    std::vector<std::string> words;
    std::string list;
    for (const auto& [word, choice] : choices) {
      words.push_back(word);
      list += (list.empty() ? "" : ", ") + word;
    }
    const std::string nearest = nearest_name(text, words);
    return "\"" + text + "\" is not " + what + "; " +
           (nearest.empty() ? "use " + list : "did you mean " + nearest + "?");
  };
}

template <class Choice>
CLI::Option* add_choice(CLI::App& command, const std::string& name, Choice& choice,
                        const std::map<std::string, Choice>& words, const std::string& help) {
  return command.add_option(name, choice, help)
      ->transform(CLI::CheckedTransformer(words).description(words_of(words)));
}

void add_format(CLI::App& command, OutputFormat& format);
void add_language(CLI::App& command, Language& language);

/// A unit that may follow a number, and what it is worth in the first of its kind.
struct NumberUnit {
  std::string_view word;
  double factor;
};
using NumberUnits = std::vector<NumberUnit>;

/// A number above 0 with one of the units behind it, or none for the first; nothing when it is not that.
std::optional<double> number_with_unit(const std::string& text, const NumberUnits& units);

/// A check for number_with_unit: `example` shows how it is written.
std::function<std::string(const std::string&)> with_unit(const NumberUnits& units, std::string what,
                                                         std::string example);

}  // namespace noonleaf::cli
