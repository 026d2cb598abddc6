#pragma once

#include <chrono>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <toml++/toml.h>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/file_problems.hpp"

namespace noonleaf {
inline namespace v1 {

/// The text of one TOML file, and what has been found wrong in it so far.
class TomlDocument {
 public:
  TomlDocument(std::string shown_name, std::string text);

  /// Adds a problem at a place of the file, with the source line beside it.
  void refuse(const toml::source_region& place, std::string field, std::string found, std::string message,
              std::string fix);

  const std::string& text() const { return text_; }
  const std::string& shown_name() const { return shown_name_; }
  const std::vector<Problem>& problems() const { return problems_.all(); }

 private:
  std::string line_text(std::size_t line) const;

  std::string shown_name_, text_;
  FileProblems problems_;
};

/// A unit that a key may carry as its suffix, and what it is worth in SI: value_si = value × factor.
struct UnitSuffix {
  std::string_view suffix;
  double si_per_unit;
};

/// The range that a value must lie in, in SI; `low_excluded` for an area, which must be above 0.
struct AcceptedRange {
  double low, high;
  std::string_view unit;
  enum class Low { included, excluded } low_kind = Low::included;
};

/// One table of the file. Every read marks its key as known; what nobody asked for is refused at the end,
/// so that a slip of the pen (`are_ft2`) never passes in silence.
class TomlTable {
 public:
  TomlTable(TomlDocument& document, const toml::table& table, std::string name);

  std::optional<std::string> text(std::string_view key);
  std::string required_text(std::string_view key, std::string_view example);
  std::optional<double> number(std::string_view key, const AcceptedRange& range);
  std::optional<bool> yes_or_no(std::string_view key);
  std::optional<std::chrono::year_month_day> date(std::string_view key);
  std::vector<std::string> texts(std::string_view key);
  std::vector<std::pair<std::string, std::string>> text_pairs(std::string_view key);

  /// A quantity whose key ends in its unit (`area_m2` or `area_ft2`), in SI. Two units at once are refused.
  std::optional<double> quantity(std::string_view stem, std::span<const UnitSuffix> units,
                                 const AcceptedRange& range);
  std::vector<double> quantities(std::string_view stem, std::span<const UnitSuffix> units,
                                 const AcceptedRange& range);

  /// One of a few words. The first is the value when the key is absent.
  std::size_t choice(std::string_view key, std::span<const std::string_view> words);

  bool has(std::string_view key) const { return table_->contains(key); }
  bool is_text(std::string_view key) const { return has(key) && table_->get(key)->is_string(); }
  std::optional<TomlTable> table(std::string_view key);
  std::vector<TomlTable> tables(std::string_view key);

  void refuse(std::string_view key, std::string message, std::string fix);
  void refuse_table(std::string message, std::string fix);
  void refuse_unknown_keys();

 private:
  const toml::node* find(std::string_view key);
  const toml::node* find_quantity(std::string_view stem, std::span<const UnitSuffix> units,
                                  UnitSuffix& written, std::string& key);
  std::optional<double> in_range(const toml::node& node, const std::string& key, const UnitSuffix& written,
                                 const AcceptedRange& range);
  void refuse_node(const toml::node& node, std::string_view key, std::string message, std::string fix);

  TomlDocument* document_;
  const toml::table* table_;
  std::string name_;
  std::set<std::string, std::less<>> known_keys_;
};

}  // namespace v1
}  // namespace noonleaf
