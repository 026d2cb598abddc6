#include "noonleaf/report/phrases.hpp"

#include "noonleaf/report/phrases_en.hpp"
#include "noonleaf/report/phrases_es.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using PhraseTable = std::array<PhraseRow, phrase_count>;

constexpr std::array<const PhraseTable*, language_count> tables{&phrases_en, &phrases_es};

/// A row for every phrase, in their order, none empty.
constexpr bool is_complete(const PhraseTable& table) {
  for (std::size_t index = 0; index < table.size(); ++index) {
    if (table[index].id != static_cast<Phrase>(index) || table[index].text.empty()) return false;
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

constexpr bool fill_the_same(const PhraseTable& a, const PhraseTable& b) {
  for (std::size_t index = 0; index < a.size(); ++index) {
    if (!fills_within(a[index].text, b[index].text) || !fills_within(b[index].text, a[index].text))
      return false;
  }
  return true;
}

static_assert(is_complete(phrases_en), "an English phrase is missing, empty or out of order");
static_assert(is_complete(phrases_es), "a Spanish phrase is missing, empty or out of order");
static_assert(fill_the_same(phrases_en, phrases_es),
              "a Spanish phrase fills in other things than its English");

}  // namespace

std::string_view code(Language language) { return language == Language::en ? "en" : "es"; }

std::string_view phrase(Language language, Phrase id) {
  return (*tables[static_cast<std::size_t>(language)])[static_cast<std::size_t>(id)].text;
}

std::string fill(Language language, Phrase id, std::initializer_list<Filling> fillings) {
  std::string_view text = phrase(language, id);
  std::string result;
  while (!text.empty()) {
    const std::size_t open = text.find('{');
    const std::size_t close = open == std::string_view::npos ? open : text.find('}', open);
    if (close == std::string_view::npos) break;
    result += text.substr(0, open);
    const std::string_view name = text.substr(open + 1, close - open - 1);
    for (const auto& [key, value] : fillings) {
      if (key == name) result += value;
    }
    text.remove_prefix(close + 1);
  }
  return result += text;
}

}  // namespace v1
}  // namespace noonleaf
