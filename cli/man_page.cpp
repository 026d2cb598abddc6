#include "option_list.hpp"
#include "version.hpp"

namespace noonleaf::cli {
namespace {

/// Text as roff reads it: a hyphen that is to be typed stays one, no line is taken for a request.
std::string roff(const std::string& text) {
  std::string out;
  for (const char letter : text) {
    if (letter == '-') {
      out += "\\-";
    } else if (letter == '\\') {
      out += "\\e";
    } else if (letter == '\'') {
      out += "\\(aq";
    } else if (letter == '.' && out.empty()) {
      out += "\\&.";
    } else {
      out += letter;
    }
  }
  return out;
}

std::string bold(const std::string& text) { return "\\fB" + roff(text) + "\\fR"; }
std::string slanted(const std::string& text) { return "\\fI" + roff(text) + "\\fR"; }

std::string joined(const std::vector<std::string>& words, const std::string& between) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : between) + word;
  return text;
}

std::string value_of(const OptionEntry& option) {
  return option.choices.empty() ? slanted(option.value) : roff(joined(option.choices, "|"));
}

std::string option_paragraph(const OptionEntry& option) {
  std::string text = ".TP\n";
  if (option.names.empty()) {
    text += slanted(option.value);
    if (!option.choices.empty()) text += ": " + roff(joined(option.choices, "|"));
  } else {
    for (const std::string& name : option.names)
      text += (name == option.names.front() ? "" : ", ") + bold(name);
    if (!option.value.empty()) text += " " + value_of(option);
  }
  text += "\n" + roff(option.purpose);
  if (!option.default_value.empty()) text += " (" + roff(option.default_value) + " where it is left out)";
  if (option.required && !option.names.empty()) text += "; required";
  return text + "\n";
}

std::string command_section(const CommandEntry& command) {
  std::string text = ".SS " + roff(command.name) + "\n" + roff(command.purpose) + ".\n.PP\n";
  text += bold("noonleaf " + command.name);
  for (const OptionEntry& option : command.options) {
    if (!option.names.empty()) continue;
    const std::string word = slanted(option.value) + (option.repeated ? "..." : "");
    text += option.required ? " " + word : " [" + word + "]";
  }
  text += " [" + slanted("OPTIONS") + "]\n";
  for (const OptionEntry& option : command.options)
    if (option.names.empty() || option.names.back() != "--help") text += option_paragraph(option);
  const std::string example = command.example.substr(command.example.find(": ") + 2);
  return text + ".PP\nExample:\n.PP\n.EX\n    " + roff(example) + "\n.EE\n";
}

constexpr const char* beginning = R"(.SH NAME
noonleaf \- how much water each bed of a garden needs, for how long each sprinkler runs, which beds hang and why
.SH SYNOPSIS
\fBnoonleaf\fR \fICOMMAND\fR [\fIOPTIONS\fR]
.br
\fBnoonleaf\fR \fICOMMAND\fR \fB\-\-help\fR
.br
\fBnoonleaf\fR \fB\-\-version\fR
.SH DESCRIPTION
From local weather files and a description of a garden, noonleaf works out how much water each bed has lost,
how long each sprinkler has to run, who opens it and who closes it, and which beds are about to wilt.
It advises; it opens no valve.
Local watering rules, the water supplier's rules and school policy come first.
.SH COMMANDS
)";

constexpr const char* ending = R"(.SH FILES
A garden folder holds
.TP
\fIgarden.toml\fR
what stays: the site, its beds, sprinklers, taps, caretakers and rules
.TP
\fIjournal.csv\fR
what happened; \fBnoonleaf log\fR adds to it
.TP
\fIweather/\fR
weather files, measured and forecast
.SH ENVIRONMENT
.TP
\fBNO_COLOR\fR
no colour, not even on a terminal
.SH "EXIT STATUS"
.TP
0
done
.TP
1
the input is wrong; standard error says where, why, and how to mend it
.TP
2
the command line is wrong
.TP
3
done, and there are alerts (\fBtoday \-\-alert\-exit\fR)
)";

}  // namespace

std::string man_page(const std::vector<CommandEntry>& commands) {
  const std::string version(version_line.substr(0, version_line.find(" (")));
  std::string text =
      ".\\\" Made from the options of the command.\n.TH NOONLEAF 1 \"\" \"" + roff(version) + "\" \"\"\n";
  text += ".hy 0\n.ad l\n";
  text += beginning;
  for (const CommandEntry& command : commands) text += command_section(command);
  return text + ending;
}

}  // namespace noonleaf::cli
