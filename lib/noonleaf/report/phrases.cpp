#include "noonleaf/report/phrases.hpp"

#include "noonleaf/report/phrases_en.hpp"
#include "noonleaf/report/phrases_es.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

static_assert(phrase_count_of<Phrase> == phrase_count);
static_assert(is_complete(phrases_en), "an English phrase is missing, empty or out of order");
static_assert(is_complete(phrases_es), "a Spanish phrase is missing, empty or out of order");
static_assert(fill_the_same(phrases_en, phrases_es),
              "a Spanish phrase fills in other things than its English");

}  // namespace

std::string_view code(Language language) { return language == Language::en ? "en" : "es"; }

std::string_view phrase(Language language, Phrase id) {
  const PhraseTable<Phrase>& table = language == Language::en ? phrases_en : phrases_es;
  return table[static_cast<std::size_t>(id)].text;
}

std::string fill(Language language, Phrase id, std::initializer_list<Filling> fillings) {
  return filled_text(phrase(language, id), fillings);
}

std::string filled_text(std::string_view text, std::initializer_list<Filling> fillings) {
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
    if (result.ends_with('.') && text.starts_with('.')) text.remove_prefix(1);
  }
  return result += text;
}

}  // namespace v1
}  // namespace noonleaf
