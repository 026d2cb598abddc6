#include "noonleaf/report/working.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numbers>
#include <optional>

#include <fmt/format.h>

namespace noonleaf {
inline namespace v1 {
namespace {

bool is_word(char letter) {
  const auto byte = static_cast<unsigned char>(letter);
  return (byte >= '0' && byte <= '9') || (byte >= 'A' && byte <= 'Z') || (byte >= 'a' && byte <= 'z') ||
         byte == '_' || byte >= 0x80;
}

/// Whether a symbol that ends before `rest` really ends there: "De" does not end within "De,i-1" or "Dec".
bool ends_before(std::string_view rest) {
  if (rest.empty()) return true;
  const bool goes_on = rest[0] == ',' && rest.size() > 1 && is_word(rest[1]);
  return !is_word(rest[0]) && !goes_on && !rest.starts_with("(Tab)");
}

/// What a part of the equation comes to, and how it reads with numbers.
struct Value {
  double number = 0;
  std::string text{};
};

struct NotAFormula {};

/// Recursive descent over the equation; throws NotAFormula where it is none.
class Parser {
 public:
  Parser(std::string_view equation, const SymbolValues& known) : rest_(equation), known_(known) {}

  Working read() {
    const Value value = sum();
    if (!at_end()) throw NotAFormula{};
    return {value.text, value.number, std::move(inputs_)};
  }

 private:
  void skip_spaces() { rest_.remove_prefix(std::min(rest_.find_first_not_of(' '), rest_.size())); }
  bool at_end() {
    skip_spaces();
    return rest_.empty();
  }
  bool take(char letter) {
    skip_spaces();
    if (rest_.empty() || rest_[0] != letter) return false;
    rest_.remove_prefix(1);
    return true;
  }
  bool next_is_any_of(std::string_view letters) {
    return at_end() || letters.find(rest_[0]) != std::string_view::npos;
  }

  Value sum() {
    Value left = product();
    for (;;) {
      const bool plus = take('+');
      if (!plus && !take('-')) return left;
      const Value right = product();
      left = {plus ? left.number + right.number : left.number - right.number,
              left.text + (plus ? " + " : " - ") + right.text};
    }
  }

  Value product() {
    Value left = signed_power();
    for (;;) {
      if (take('/')) {
        const Value right = power();
        left = {left.number / right.number, left.text + " / " + right.text};
      } else if (!next_is_any_of("+-),")) {
        const Value right = power();
        left = {left.number * right.number, left.text + " × " + right.text};
      } else {
        return left;
      }
    }
  }

  Value signed_power() {
    if (!take('-')) return power();
    const Value value = power();
    return {-value.number, "-" + value.text};
  }

  Value power() {
    Value base = atom();
    if (!take('^')) return base;
    const Value exponent = atom();
    return {std::pow(base.number, exponent.number), base.text + "^" + exponent.text};
  }

  Value atom() {
    skip_spaces();
    if (take('(')) {
      const Value inside = sum();
      if (!take(')')) throw NotAFormula{};
      return {inside.number, "(" + inside.text + ")"};
    }
    if (const SymbolValue* const symbol = known_.longest_at(rest_)) return of_symbol(*symbol);
    if (const auto value = number()) return *value;
    return function_or_constant();
  }

  Value of_symbol(const SymbolValue& symbol) {
    rest_.remove_prefix(symbol.symbol.size());
    const bool said = std::any_of(inputs_.begin(), inputs_.end(),
                                  [&](const SymbolValue& each) { return each.symbol == symbol.symbol; });
    if (!said) inputs_.push_back(symbol);
    std::string text = significant_text(symbol.value);
    if (!symbol.unit.empty()) text += " " + symbol.unit;
    if (symbol.value < 0) text = "(" + text + ")";
    return {symbol.value, text};
  }

  std::optional<Value> number() {
    double value = missing;
    const auto [end, code] =
        std::from_chars(rest_.data(), rest_.data() + rest_.size(), value, std::chars_format::fixed);
    if (code != std::errc{} || rest_[0] == '-') return std::nullopt;
    const auto length = static_cast<std::size_t>(end - rest_.data());
    const std::string text(rest_.substr(0, length));
    rest_.remove_prefix(length);
    return Value{value, text};
  }

  Value function_or_constant() {
    std::size_t length = 0;
    while (length < rest_.size() && is_word(rest_[length])) ++length;
    const std::string word(rest_.substr(0, length));
    rest_.remove_prefix(length);
    if (word == "pi") return {std::numbers::pi, "pi"};
    if (rest_.empty() || rest_[0] != '(') throw NotAFormula{};
    rest_.remove_prefix(1);
    const Value first = sum();
    if (word == "min" || word == "max") {
      if (!take(',')) throw NotAFormula{};
      const Value second = sum();
      if (!take(')')) throw NotAFormula{};
      const double number =
          word == "min" ? std::min(first.number, second.number) : std::max(first.number, second.number);
      return {number, word + "(" + first.text + ", " + second.text + ")"};
    }
    if (!take(')')) throw NotAFormula{};
    return {of_one(word, first.number), word + "(" + first.text + ")"};
  }

  static double of_one(std::string_view word, double x) {
    if (word == "exp") return std::exp(x);
    if (word == "sqrt") return std::sqrt(x);
    if (word == "sin") return std::sin(x);
    if (word == "cos") return std::cos(x);
    if (word == "tan") return std::tan(x);
    if (word == "arccos") return std::acos(x);
    throw NotAFormula{};
  }

  std::string_view rest_;
  const SymbolValues& known_;
  std::vector<SymbolValue> inputs_;
};

}  // namespace

void SymbolValues::set(std::string_view symbol, double value, std::string_view unit) {
  if (symbol.empty() || is_missing(value)) return;
  const auto found = std::find_if(values_.begin(), values_.end(),
                                  [&](const SymbolValue& each) { return each.symbol == symbol; });
  if (found == values_.end()) {
    values_.push_back({std::string(symbol), value, std::string(unit)});
  } else {
    found->value = value;
    found->unit = unit;
  }
}

const SymbolValue* SymbolValues::find(std::string_view symbol) const {
  const auto found = std::find_if(values_.begin(), values_.end(),
                                  [&](const SymbolValue& each) { return each.symbol == symbol; });
  return found == values_.end() ? nullptr : &*found;
}

const SymbolValue* SymbolValues::longest_at(std::string_view text) const {
  const SymbolValue* longest = nullptr;
  for (const SymbolValue& each : values_) {
    const bool here = text.starts_with(each.symbol) && ends_before(text.substr(each.symbol.size()));
    if (here && (longest == nullptr || each.symbol.size() > longest->symbol.size())) longest = &each;
  }
  return longest;
}

Working work_out(std::string_view equation, const SymbolValues& known) {
  try {
    return Parser(equation, known).read();
  } catch (const NotAFormula&) {
    return {};
  }
}

std::string significant_text(double value) {
  if (is_missing(value)) return "unknown";
  if (std::abs(value) < 5e-7) return "0";
  const int digits = std::clamp(3 - static_cast<int>(std::floor(std::log10(std::abs(value)))), 0, 6);
  std::string text = fmt::format("{:.{}f}", value, digits);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

}  // namespace v1
}  // namespace noonleaf
