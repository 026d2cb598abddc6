#include "noonleaf/report/round_words.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/report/likelihood_words.hpp"
#include "noonleaf/report/quantity_text.hpp"
#include "noonleaf/report/wrapped_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::array<std::string_view, 5> need_codes{"cannot_tell", "person_needed", "run_today", "lasts",
                                                     "nothing_grows"};
constexpr std::size_t garden_width = 28;

/// Cut to a number of characters, never within one.
std::string cut(std::string_view text, std::size_t width) {
  std::string result;
  std::size_t characters = 0;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = at + 1;
    while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xc0U) == 0x80U) ++end;
    if (characters == width) break;
    const bool is_control = static_cast<unsigned char>(text[at]) < 0x20U || text[at] == 0x7f;
    result += is_control ? " " : std::string(text.substr(at, end - at));
    ++characters;
    at = end;
  }
  return result + std::string(width - characters, ' ');
}

std::string who_words(const RoundEntry& entry) {
  if (!entry.next_chance) return "Nobody comes within a week: send somebody.";
  return fmt::format("Nobody comes before {}.", day_name(*entry.next_chance));
}

std::string state_words(const RoundEntry& entry) {
  const std::string crop = entry.seedbed ? entry.crop + " seed" : entry.crop;
  return fmt::format("Bed {} ({})", entry.letter, crop);
}

/// "Short of water before Thursday 17 July: in 7 of 10."; nothing where the bed was not tried.
std::string how_likely(const RoundEntry& entry) {
  const RoundBed* const bed = worst_of_round(entry);
  if (bed == nullptr) return {};
  const std::string share = share_words(bed->leaves_range_frac, Language::en);
  return bed->before ? fmt::format("Short of water before {}: {}.", day_name(*bed->before), share)
                     : fmt::format("Short of water within a week: {}.", share);
}

std::vector<std::string> reasons(const RoundEntry& entry) {
  switch (entry.need) {
    case RoundNeed::cannot_tell:
      return {"Look at its files: " + entry.problem};
    case RoundNeed::person_needed:
      return {fmt::format("{} is short of water from {}.", state_words(entry), day_name(*entry.beyond_on)),
              who_words(entry)};
    case RoundNeed::run_today:
      return {fmt::format("{} has to be watered today; somebody is there.", state_words(entry))};
    case RoundNeed::lasts:
      return {entry.beyond_on
                  ? fmt::format("{} lasts until {}.", state_words(entry), day_name(*entry.beyond_on))
                  : std::string("Every bed lasts the week.")};
    case RoundNeed::nothing_grows:
      return {"Nothing grows that asks for water."};
  }
  return {};
}

std::vector<std::string> why(const RoundEntry& entry) {
  std::vector<std::string> sentences = reasons(entry);
  std::string likely = how_likely(entry);
  if (!likely.empty()) sentences.push_back(std::move(likely));
  return sentences;
}

/// What the shares are of; nothing where no row has one.
std::string tried_words(std::span<const RoundRow> rows) {
  for (const RoundRow& row : rows)
    if (worst_of_round(row.entry) != nullptr)
      return wrapped_text(
          fmt::format(
              "Short of water: the share of {} weathers and gardens, each as wrong as forecasts, tables "
              "and guesses may be, without watering and with the rain that may come.",
              row.entry.members),
          {});
  return {};
}

std::string_view heading(RoundNeed need) {
  constexpr std::array<std::string_view, 5> headings{"LOOK", "GO", "water", "-", "-"};
  return headings[static_cast<std::size_t>(need)];
}

/// A garden without a name, or with that of another one, goes by its folder.
bool is_name_enough(const RoundRow& row, std::span<const RoundRow> rows) {
  const auto same = std::count_if(rows.begin(), rows.end(), [&](const RoundRow& other) {
    return other.entry.garden == row.entry.garden;
  });
  return !row.entry.garden.empty() && same == 1;
}

}  // namespace

std::string round_text(std::span<const RoundRow> rows, const RoundCounts& counts) {
  std::string text = fmt::format("{} gardens: {} need a person, {} water today, {} cannot be told\n\n",
                                 counts.gardens, counts.person_needed, counts.run_today, counts.cannot_tell);
  text += fmt::format("{:>3}  {:<6} {} {}\n", "", "what", cut("garden", garden_width), "why");
  std::size_t place = 0;
  for (const RoundRow& row : rows) {
    const std::string& name = is_name_enough(row, rows) ? row.entry.garden : row.folder;
    constexpr std::size_t why_width = 80 - 13 - garden_width - 1;
    bool first = true;
    std::vector<std::string> lines;
    for (const std::string& sentence : why(row.entry)) {
      std::string line;
      for (std::size_t at = 0; at < sentence.size();) {
        const std::size_t end = std::min(sentence.find(' ', at), sentence.size());
        const std::string word = sentence.substr(at, end - at);
        if (!line.empty() && line.size() + 1 + word.size() > why_width) {
          lines.push_back(line);
          line.clear();
        }
        line += (line.empty() ? "" : " ") + word;
        at = end + 1;
      }
      lines.push_back(line);
    }
    ++place;
    for (const std::string& line : lines) {
      text += first ? fmt::format("{:>3}  {:<6} {} {}\n", place, heading(row.entry.need),
                                  cut(name, garden_width), line)
                    : fmt::format("{:<13}{} {}\n", "", std::string(garden_width - 1, ' '), line);
      first = false;
    }
  }
  const std::string tried = tried_words(rows);
  if (!tried.empty()) text += "\n" + tried;
  if (rows.size() < counts.gardens)
    text += fmt::format("\nand {} gardens that can wait longer (--top N shows more)\n",
                        counts.gardens - rows.size());
  return text;
}

std::string round_json(const RoundRow& row) {
  using Json = nlohmann::ordered_json;
  const auto date = [](const auto& day) { return day ? Json(iso_date(*day)) : Json(nullptr); };
  const auto number = [](double value) { return is_missing(value) ? Json(nullptr) : Json(value); };
  const RoundEntry& entry = row.entry;
  Json likelihoods = Json::array();
  for (const RoundBed& bed : entry.likelihoods)
    likelihoods.push_back({{"bed", bed.bed},
                           {"letter", bed.letter},
                           {"before", date(bed.before)},
                           {"leaves_range_frac", number(bed.leaves_range_frac)}});
  const RoundBed* const worst = worst_of_round(entry);
  const Json json{{"shape", "noonleaf.round"},
                  {"version", 1},
                  {"folder", row.folder},
                  {"garden", entry.garden},
                  {"need", need_codes[static_cast<std::size_t>(entry.need)]},
                  {"bed", entry.bed},
                  {"letter", entry.letter},
                  {"crop", entry.crop},
                  {"seedbed", entry.seedbed},
                  {"depletion_mm", number(entry.depletion_mm)},
                  {"limit_mm", number(entry.limit_mm)},
                  {"beds", entry.beds},
                  {"beds_beyond", entry.beds_beyond},
                  {"beyond_on", date(entry.beyond_on)},
                  {"next_chance", date(entry.next_chance)},
                  {"dry_days", entry.dry_days},
                  {"litres", number(entry.litres)},
                  {"members", entry.members},
                  {"leaves_range_frac", worst != nullptr ? number(worst->leaves_range_frac) : Json(nullptr)},
                  {"likelihoods", std::move(likelihoods)},
                  {"problem", entry.problem}};
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace v1
}  // namespace noonleaf
