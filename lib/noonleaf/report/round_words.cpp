#include "noonleaf/report/round_words.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/report/json_parts.hpp"
#include "noonleaf/report/likelihood_words.hpp"
#include "noonleaf/report/quantity_text.hpp"
#include "noonleaf/report/wrapped_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::array<std::string_view, 5> need_codes{"cannot_tell", "person_needed", "run_today", "lasts",
                                                     "nothing_grows"};
constexpr std::size_t garden_width = 28, why_column = 13 + garden_width;

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

/// "Short of water before Thursday 17 July in 7 of 10 that were tried."; nothing where none was.
std::string how_likely(const RoundEntry& entry) {
  const RoundBed* const bed = worst_of_round(entry);
  if (bed == nullptr) return {};
  const std::string share = share_words(bed->leaves_range_frac, Language::en);
  const std::string until = bed->before ? "before " + day_name(*bed->before) : std::string("within a week");
  return fmt::format("Short of water {} {} that were tried.", until, share);
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
      if (entry.done_today)
        return {fmt::format("{} has had today's run; no more today.", state_words(entry))};
      return {entry.beyond_on
                  ? fmt::format("{} lasts until {}.", state_words(entry), day_name(*entry.beyond_on))
                  : std::string("Every bed lasts the week.")};
    case RoundNeed::nothing_grows:
      return {"Nothing grows that asks for water."};
  }
  return {};
}

/// Its sentences below each other, in the last column of the table.
std::string why_text(const RoundEntry& entry) {
  std::string text;
  for (const std::string& sentence : reasons(entry))
    text += wrapped_text(plain_text(sentence), {.indent = why_column});
  const std::string likely = how_likely(entry);
  return likely.empty() ? text : text + wrapped_text(likely, {.indent = why_column});
}

/// What the shares are of; nothing where no row has one.
std::string tried_words(std::span<const RoundRow> rows) {
  for (const RoundRow& row : rows)
    if (worst_of_round(row.entry) != nullptr)
      return wrapped_text(fmt::format("Tried: {} weathers and gardens, each as wrong as forecasts, tables "
                                      "and guesses may be, without "
                                      "watering and with the rain that may come.",
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
  std::string text =
      fmt::format("{} garden{}: {} need a person, {} water today, {} cannot be told\n\n", counts.gardens,
                  counts.gardens == 1 ? "" : "s", counts.person_needed, counts.run_today, counts.cannot_tell);
  text += fmt::format("{:>3}  {:<6} {} {}\n", "", "what", cut("garden", garden_width), "why");
  std::size_t place = 0;
  for (const RoundRow& row : rows) {
    const std::string& name = is_name_enough(row, rows) ? row.entry.garden : row.folder;
    const std::string words = why_text(row.entry);
    text += fmt::format("{:>3}  {:<6} {} {}", ++place, heading(row.entry.need), cut(name, garden_width),
                        words.substr(why_column));
  }
  const std::string tried = tried_words(rows);
  if (!tried.empty()) text += "\n" + tried;
  if (rows.size() < counts.gardens)
    text += fmt::format("\nand {} more that can wait longer (--top N shows more)\n",
                        counts.gardens - rows.size());
  return text;
}

std::string round_json(const RoundRow& row) {
  using Json = nlohmann::ordered_json;
  const RoundEntry& entry = row.entry;
  Json likelihoods = Json::array();
  for (const RoundBed& bed : entry.likelihoods)
    likelihoods.push_back({{"bed", bed.bed},
                           {"letter", bed.letter},
                           {"before", date_or_null(bed.before)},
                           {"leaves_range_frac", number_or_null(bed.leaves_range_frac)}});
  const RoundBed* const worst = worst_of_round(entry);
  const Json json{
      {"shape", "noonleaf.round"},
      {"version", 1},
      {"folder", row.folder},
      {"garden", entry.garden},
      {"need", need_codes[static_cast<std::size_t>(entry.need)]},
      {"bed", entry.bed},
      {"letter", entry.letter},
      {"crop", entry.crop},
      {"seedbed", entry.seedbed},
      {"depletion_mm", number_or_null(entry.depletion_mm)},
      {"limit_mm", number_or_null(entry.limit_mm)},
      {"beds", entry.beds},
      {"beds_beyond", entry.beds_beyond},
      {"beyond_on", date_or_null(entry.beyond_on)},
      {"next_chance", date_or_null(entry.next_chance)},
      {"dry_days", entry.dry_days},
      {"litres", number_or_null(entry.litres)},
      {"members", entry.members},
      {"leaves_range_frac", worst != nullptr ? number_or_null(worst->leaves_range_frac) : Json(nullptr)},
      {"likelihoods", std::move(likelihoods)},
      {"done_today", entry.done_today},
      {"problem", entry.problem}};
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace v1
}  // namespace noonleaf
