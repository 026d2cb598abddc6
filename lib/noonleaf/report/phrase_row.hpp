#pragma once

#include <array>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>

#include "noonleaf/report/phrases.hpp"

namespace noonleaf {
inline namespace v1 {

/// One phrase of one language. `{name}` stands for what is filled in.
template <class Id>
struct PhraseRow {
  Id id;
  std::string_view text;
};

/// All phrases of one subject in one language, in the order of the enumeration.
template <class Id>
inline constexpr std::size_t phrase_count_of = static_cast<std::size_t>(Id::last_phrase) + 1;
template <class Id>
using PhraseTable = std::array<PhraseRow<Id>, phrase_count_of<Id>>;

/// A row for every phrase, in their order, none empty.
template <class Id>
constexpr bool is_complete(const PhraseTable<Id>& table) {
  for (std::size_t index = 0; index < table.size(); ++index) {
    if (table[index].id != static_cast<Id>(index) || table[index].text.empty()) return false;
  }
  return true;
}

/// Whether every `{name}` of `text` stands in `other` too.
constexpr bool fills_within(std::string_view text, std::string_view other) {
  for (std::size_t open = text.find('{'); open != std::string_view::npos; open = text.find('{', open + 1)) {
    const std::size_t close = text.find('}', open);
    if (close == std::string_view::npos) return false;
    if (other.find(text.substr(open, close - open + 1)) == std::string_view::npos) return false;
  }
  return true;
}

/// Whether both languages fill in the same things, phrase by phrase.
template <class Id>
constexpr bool fill_the_same(const PhraseTable<Id>& a, const PhraseTable<Id>& b) {
  for (std::size_t index = 0; index < a.size(); ++index) {
    if (!fills_within(a[index].text, b[index].text) || !fills_within(b[index].text, a[index].text))
      return false;
  }
  return true;
}

/// Whether no phrase of one language stands untranslated in the other.
template <class Id>
constexpr bool all_differ(const PhraseTable<Id>& a, const PhraseTable<Id>& b) {
  for (std::size_t index = 0; index < a.size(); ++index) {
    if (a[index].text == b[index].text) return false;
  }
  return true;
}

/// A text with its braces filled.
/// Note      What is filled in is not looked through for braces again. A full stop behind what ends with one,
///           "a.m." or "pulg.", is left out.
std::string filled_text(std::string_view text, std::initializer_list<Filling> fillings);

/// A phrase of one of the two tables with its braces filled.
template <class Id>
std::string filled_row(Language language, const PhraseTable<Id>& english, const PhraseTable<Id>& spanish,
                       Id id, std::initializer_list<Filling> fillings) {
  const PhraseTable<Id>& table = language == Language::en ? english : spanish;
  return filled_text(table[static_cast<std::size_t>(id)].text, fillings);
}

}  // namespace v1
}  // namespace noonleaf
