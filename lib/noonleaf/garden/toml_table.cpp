#include "noonleaf/garden/toml_table.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>
#include <utility>

#include <fmt/format.h>

#include "noonleaf/nearest_name.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

std::string node_text(const toml::node& node) {
  if (const auto text = node.value<std::string>()) return *text;
  std::ostringstream written;
  written.imbue(std::locale::classic());
  node.visit([&](const auto& value) {
    if constexpr (!toml::is_container<decltype(value)>) written << value;
  });
  return written.str();
}

bool holds_control_character(const std::string& text) {
  return std::any_of(text.begin(), text.end(), [](char byte) {
    const auto code = static_cast<unsigned char>(byte);
    return code < 0x20U || code == 0x7FU;
  });
}

std::string join(std::span<const std::string_view> words) {
  std::string text;
  for (const std::string_view word : words) {
    if (!text.empty()) text += ", ";
    text += "\"" + std::string(word) + "\"";
  }
  return text;
}

bool below(double value, const AcceptedRange& range) {
  return range.low_kind == AcceptedRange::Low::excluded ? value <= range.low : value < range.low;
}

/// "_gal_min" is read as "gal/min".
std::string unit_of(std::string_view suffix) {
  std::string unit(suffix.substr(suffix.empty() ? 0 : 1));
  std::replace(unit.begin(), unit.end(), '_', '/');
  return unit;
}

std::string bound_text(double value) {
  return std::abs(value) >= 1000 ? fmt::format("{:.0f}", value) : fmt::format("{:.4g}", value);
}

std::string range_text(const AcceptedRange& range, double si_per_unit, const std::string& unit) {
  const std::string low = bound_text(range.low / si_per_unit), high = bound_text(range.high / si_per_unit);
  const std::string unit_text = unit.empty() ? unit : " " + unit;
  if (range.low_kind == AcceptedRange::Low::excluded)
    return "more than " + low + " and at most " + high + unit_text;
  return low + " to " + high + unit_text;
}

}  // namespace

TomlDocument::TomlDocument(std::string shown_name, std::string text)
    : shown_name_(std::move(shown_name)), text_(std::move(text)) {}

std::string TomlDocument::line_text(std::size_t line) const {
  std::size_t begin = 0;
  for (std::size_t index = 1; index < line && begin != std::string::npos; ++index) {
    begin = text_.find('\n', begin);
    if (begin != std::string::npos) ++begin;
  }
  if (begin == std::string::npos) return {};
  std::string text = text_.substr(begin, text_.find('\n', begin) - begin);
  if (!text.empty() && text.back() == '\r') text.pop_back();
  return text;
}

void TomlDocument::refuse(const toml::source_region& place, std::string field, std::string found,
                          std::string message, std::string fix) {
  Problem problem;
  problem.file = shown_name_;
  problem.line = place.begin.line;
  problem.column = place.begin.column;
  problem.field = std::move(field);
  problem.text = std::move(found);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  problem.excerpt = line_text(problem.line);
  const auto said = [&problem](const Problem& other) {
    return other.line == problem.line && other.column == problem.column && other.message == problem.message;
  };
  if (std::any_of(problems_.all().begin(), problems_.all().end(), said)) return;
  problems_.add(std::move(problem));
}

TomlTable::TomlTable(TomlDocument& document, const toml::table& table, std::string name)
    : document_(&document), table_(&table), name_(std::move(name)) {}

const toml::node* TomlTable::find(std::string_view key) {
  known_keys_.emplace(key);
  return table_->get(key);
}

void TomlTable::refuse_node(const toml::node& node, std::string_view key, std::string message,
                            std::string fix) {
  const std::string field = name_.empty() ? std::string(key) : name_ + "." + std::string(key);
  document_->refuse(node.source(), field, node_text(node), std::move(message), std::move(fix));
}

void TomlTable::refuse(std::string_view key, std::string message, std::string fix) {
  if (const toml::node* node = find(key)) {
    refuse_node(*node, key, std::move(message), std::move(fix));
  } else {
    refuse_table(std::move(message), std::move(fix));
  }
}

void TomlTable::refuse_table(std::string message, std::string fix) {
  document_->refuse(table_->source(), name_, {}, std::move(message), std::move(fix));
}

std::optional<std::string> TomlTable::text(std::string_view key) {
  const toml::node* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* text = node->as_string()) {
    if (!holds_control_character(text->get())) return text->get();
    refuse_node(*node, key, "the text holds a character that cannot be seen", "type it again, on one line");
    return std::nullopt;
  }
  refuse_node(*node, key, "this must be text in quotation marks", "write " + std::string(key) + " = \"…\"");
  return std::nullopt;
}

std::string TomlTable::required_text(std::string_view key, std::string_view example) {
  if (find(key) == nullptr) {
    refuse_table("\"" + std::string(key) + "\" is missing",
                 "add a line like " + std::string(key) + " = \"" + std::string(example) + "\"");
    return {};
  }
  std::string value = text(key).value_or(std::string{});
  if (value.empty() && table_->get(key)->is_string()) {
    refuse(key, "this must not be empty",
           "write " + std::string(key) + " = \"" + std::string(example) + "\"");
  }
  return value;
}

std::optional<double> TomlTable::in_range(const toml::node& node, const std::string& key,
                                          const UnitSuffix& written, const AcceptedRange& range) {
  const auto [suffix, si_per_unit] = written;
  const auto value = node.is_number() ? node.value<double>() : std::nullopt;
  if (!value || !std::isfinite(*value)) {
    refuse_node(node, key, "\"" + node_text(node) + "\" is not a number",
                "write a number without quotation marks or unit, like " + key + " = " +
                    number_text(std::ceil(std::max(range.low, 0.0) / si_per_unit) + 1));
    return std::nullopt;
  }
  const double si = *value * si_per_unit;
  if (!below(si, range) && !(si > range.high)) return si;
  const std::string unit = suffix.empty() ? std::string(range.unit) : unit_of(suffix);
  refuse_node(
      node, key, number_text(*value) + " is outside the range: " + range_text(range, si_per_unit, unit),
      "check the number" + std::string(suffix.empty() ? "" : "; the unit is the end of the name " + key));
  return std::nullopt;
}

std::optional<double> TomlTable::number(std::string_view key, const AcceptedRange& range) {
  const toml::node* node = find(key);
  return node == nullptr ? std::nullopt : in_range(*node, std::string(key), {"", 1.0}, range);
}

std::optional<bool> TomlTable::yes_or_no(std::string_view key) {
  const toml::node* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* flag = node->as_boolean()) return flag->get();
  refuse_node(*node, key, "this must be true or false", "write " + std::string(key) + " = true");
  return std::nullopt;
}

std::optional<std::chrono::year_month_day> TomlTable::date(std::string_view key) {
  const toml::node* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* value = node->as_date()) {
    const toml::date day = value->get();
    return std::chrono::year_month_day(std::chrono::year(day.year), std::chrono::month(day.month),
                                       std::chrono::day(day.day));
  }
  refuse_node(*node, key, "\"" + node_text(*node) + "\" is not a date",
              "write year-month-day without quotation marks, like " + std::string(key) + " = 2025-05-10");
  return std::nullopt;
}

std::vector<std::string> TomlTable::texts(std::string_view key) {
  std::vector<std::string> result;
  const toml::node* node = find(key);
  if (node == nullptr) return result;
  const auto* list = node->as_array();
  if (list == nullptr) {
    refuse_node(*node, key, "this must be a list of texts",
                "write " + std::string(key) + " = [\"…\", \"…\"]");
    return result;
  }
  for (const toml::node& item : *list) {
    if (const auto* text = item.as_string()) {
      result.push_back(text->get());
    } else {
      refuse_node(item, key, "this must be text in quotation marks",
                  "write " + std::string(key) + " = [\"…\"]");
    }
  }
  return result;
}

std::vector<std::pair<std::string, std::string>> TomlTable::text_pairs(std::string_view key) {
  std::vector<std::pair<std::string, std::string>> result;
  const toml::node* node = find(key);
  if (node == nullptr) return result;
  const auto* table = node->as_table();
  if (table == nullptr) {
    refuse_node(*node, key, "this must be a table", "write [" + name_ + "." + std::string(key) + "]");
    return result;
  }
  for (const auto& [name, value] : *table) {
    if (const auto* text = value.as_string()) {
      result.emplace_back(std::string(name.str()), text->get());
    } else {
      refuse_node(value, std::string(key) + "." + std::string(name.str()),
                  "this must be text in quotation marks", "write " + std::string(name.str()) + " = \"…\"");
    }
  }
  return result;
}

const toml::node* TomlTable::find_quantity(std::string_view stem, std::span<const UnitSuffix> units,
                                           UnitSuffix& written, std::string& key) {
  const toml::node* found = nullptr;
  for (const UnitSuffix& unit : units) {
    const std::string name = std::string(stem) + std::string(unit.suffix);
    const toml::node* node = find(name);
    if (node == nullptr) continue;
    if (found != nullptr) {
      refuse_node(*node, name, "the same quantity is given in two units",
                  "keep " + key + " or " + name + ", not both");
      continue;
    }
    found = node;
    written = unit;
    key = name;
  }
  return found;
}

std::optional<double> TomlTable::quantity(std::string_view stem, std::span<const UnitSuffix> units,
                                          const AcceptedRange& range) {
  UnitSuffix written{"", 1.0};
  std::string key;
  const toml::node* node = find_quantity(stem, units, written, key);
  return node == nullptr ? std::nullopt : in_range(*node, key, written, range);
}

std::vector<double> TomlTable::quantities(std::string_view stem, std::span<const UnitSuffix> units,
                                          const AcceptedRange& range) {
  std::vector<double> result;
  UnitSuffix written{"", 1.0};
  std::string key;
  const toml::node* node = find_quantity(stem, units, written, key);
  if (node == nullptr) return result;
  const auto* list = node->as_array();
  if (list == nullptr) {
    refuse_node(*node, key, "this must be a list of numbers", "write " + key + " = [4.0, 5.5, 5.0, 4.5]");
    return result;
  }
  for (const toml::node& item : *list) {
    if (const auto value = in_range(item, key, written, range)) result.push_back(*value);
  }
  return result;
}

std::size_t TomlTable::choice(std::string_view key, std::span<const std::string_view> words) {
  const auto word = text(key);
  if (!word) return 0;
  const auto found = std::find(words.begin(), words.end(), *word);
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  const std::string nearest = nearest_name(*word, words);
  refuse(key, "\"" + *word + "\" is not one of " + join(words),
         nearest.empty() ? "write one of them" : "did you mean \"" + nearest + "\"?");
  return 0;
}

std::optional<TomlTable> TomlTable::table(std::string_view key) {
  const toml::node* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* table = node->as_table()) return TomlTable(*document_, *table, std::string(key));
  refuse_node(*node, key, "this must be a table", "write [" + std::string(key) + "]");
  return std::nullopt;
}

std::vector<TomlTable> TomlTable::tables(std::string_view key) {
  std::vector<TomlTable> result;
  const toml::node* node = find(key);
  if (node == nullptr) return result;
  const auto* list = node->as_array();
  const bool all_tables =
      list != nullptr &&
      std::all_of(list->begin(), list->end(), [](const toml::node& item) { return item.is_table(); });
  if (!all_tables) {
    refuse_node(*node, key, "this must be a list of tables",
                "write [[" + std::string(key) + "]] before each one");
    return result;
  }
  for (const toml::node& item : *list) result.emplace_back(*document_, *item.as_table(), std::string(key));
  return result;
}

void TomlTable::refuse_unknown_keys() {
  const std::vector<std::string> known(known_keys_.begin(), known_keys_.end());
  for (const auto& [key, node] : *table_) {
    const std::string name(key.str());
    if (known_keys_.contains(name)) continue;
    const std::string nearest = nearest_name(name, known);
    document_->refuse(key.source(), name_.empty() ? name : name_ + "." + name, name,
                      "\"" + name + "\" is not a key that belongs here",
                      nearest.empty() ? "remove it, or put # before it; docs/garden.md lists the keys"
                                      : "did you mean \"" + nearest + "\"?");
  }
}

}  // namespace v1
}  // namespace noonleaf
