#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace noonleaf::cli {

/// Writes to stdout.
/// Throws    Error when the disk is full; StoppedReading when the reader of the pipe has gone
void print(std::string_view text);

/// What print throws when the last write failed, as `errno` says.
[[noreturn]] void refuse_answer();

/// Nobody reads what we print any more (`noonleaf … | head`): end quietly.
struct StoppedReading {};

/// Whether stdout takes colour: a terminal, TERM not "dumb", NO_COLOR not set.
bool has_colour();

/// Text in bold on a terminal that takes it; never the only sign of anything.
std::string bold(std::string_view text);

/// Breaks text at spaces into lines of `terminal_width` characters; every line starts with `indent` spaces.
std::string wrapped(std::string_view text, std::size_t indent);
/// Each text of a list on lines of its own.
std::string wrapped(const std::vector<std::string>& texts, std::size_t indent);

inline constexpr std::size_t terminal_width = 80;

}  // namespace noonleaf::cli
