#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A symbol of a calculation with the value it has now.
struct SymbolValue {
  std::string symbol{};    ///< as the equation writes it
  double value = missing;  ///< now
  std::string unit{};      ///< as printed after the value
};

/// The symbols known so far; a symbol set again (De in the morning, De at the close) has its latest value.
class SymbolValues {
 public:
  /// Sets a symbol, or sets it again.
  void set(std::string_view symbol, double value, std::string_view unit);
  /// The symbol as it is now, or null.
  const SymbolValue* find(std::string_view symbol) const;
  /// The longest symbol that `text` begins with and that ends there, or null.
  const SymbolValue* longest_at(std::string_view text) const;

 private:
  std::vector<SymbolValue> values_;
};

/// An equation with its numbers put in, and what these come to.
struct Working {
  std::string numbers{};              ///< "1.2 × 4.5 mm/d"
  double value = missing;             ///< missing when the text is no formula or a symbol is not known
  std::vector<SymbolValue> inputs{};  ///< the symbols it uses, in their order
};

/// Works out an equation as the tables of quantities write it: + - / ^, a product by standing side by side,
/// min, max, exp, sqrt, sin, cos, tan, arccos, pi, numbers, known symbols.
///
/// Note      Used to show the numbers of a step only where they really lead to its result: an equation that
///           leaves out what a day did beyond it is then shown without numbers, never with wrong ones.
Working work_out(std::string_view equation, const SymbolValues& known);

/// Four significant digits, plain; "0" for what rounding leaves.
std::string significant_text(double value);

}  // namespace v1
}  // namespace noonleaf
