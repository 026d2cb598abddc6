#include "noonleaf/garden/garden_file.hpp"

#include <algorithm>
#include <utility>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/bed_tables.hpp"
#include "noonleaf/garden/folder_boundary.hpp"
#include "noonleaf/garden/ground_tables.hpp"
#include "noonleaf/garden/rule_tables.hpp"
#include "noonleaf/garden/site_tables.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/garden/toml_guard.hpp"
#include "noonleaf/garden/toml_table.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t largest_file_bytes = 1024UL * 1024;

toml::table parse_toml(TomlDocument& document) {
  try {
    return toml::parse(document.text(), document.shown_name());
  } catch (const toml::parse_error& refused) {
    document.refuse(
        refused.source(), {}, {}, std::string(refused.description()),
        "mend this line; garden.toml is TOML: key = value, text in quotation marks, dates like 2025-05-10");
    throw Error(document.problems());
  }
}

Garden garden_of(TomlTable root) {
  Garden garden;
  if (auto site = root.table("site")) {
    garden.site = read_site(*site);
  } else {
    root.refuse_table("the [site] table is missing",
                      "add [site] with name, latitude_deg, longitude_deg, zone");
  }
  if (auto weather = root.table("weather")) garden.weather = read_weather_options(*weather, garden.site);
  for (TomlTable& table : root.tables("caretaker")) garden.caretakers.push_back(read_caretaker(table));
  for (TomlTable& table : root.tables("tap")) garden.taps.push_back(read_tap(table));
  for (TomlTable& table : root.tables("sprinkler"))
    garden.sprinklers.push_back(read_sprinkler(table, garden.taps));
  for (TomlTable& table : root.tables("bed")) garden.beds.push_back(read_bed(table, garden.sprinklers));
  if (auto account = root.table("account")) garden.account = read_account_options(*account);
  if (auto rules = root.table("rules")) garden.rules = read_rules(*rules);
  for (TomlTable& table : root.tables("landmark")) garden.landmarks.push_back(read_landmark(table));
  if (auto water = root.table("water")) garden.water = read_water_price(*water);
  if (garden.beds.empty() && !root.has("bed")) {
    root.refuse_table("there is no bed", "add a [[bed]] with id, area_m2 or area_ft2, sprinkler and soil");
  }
  root.refuse_unknown_keys();
  return garden;
}

void refuse_repeated_ids(const Garden& garden, TomlTable& root) {
  const auto refuse_repeats = [&root](std::string_view kind, const auto& things) {
    std::vector<TomlTable> tables = root.tables(kind);
    for (std::size_t later = 0; later < things.size(); ++later) {
      const auto same_id = [&](const auto& thing) {
        return !thing.id.empty() && thing.id == things[later].id;
      };
      if (std::find_if(things.begin(), things.begin() + static_cast<std::ptrdiff_t>(later), same_id) !=
          things.begin() + static_cast<std::ptrdiff_t>(later)) {
        tables[later].refuse("id",
                             "\"" + things[later].id + "\" is the id of an earlier " + std::string(kind),
                             "give each " + std::string(kind) + " its own id");
      }
    }
  };
  refuse_repeats("caretaker", garden.caretakers);
  refuse_repeats("tap", garden.taps);
  refuse_repeats("sprinkler", garden.sprinklers);
  refuse_repeats("bed", garden.beds);
  std::vector<TomlTable> beds = root.tables("bed");
  for (std::size_t later = 1; later < garden.beds.size(); ++later) {
    const std::string& letter = garden.beds[later].letter;
    const bool taken =
        std::any_of(garden.beds.begin(), garden.beds.begin() + static_cast<std::ptrdiff_t>(later),
                    [&](const Bed& bed) { return !letter.empty() && bed.letter == letter; });
    if (taken)
      beds[later].refuse("letter", "\"" + letter + "\" is the letter of an earlier bed",
                         "give each bed its own letter, or leave the line out");
  }
}

}  // namespace

const Bed* find_bed(const Garden& garden, std::string_view id) {
  const auto found =
      std::find_if(garden.beds.begin(), garden.beds.end(), [&](const Bed& bed) { return bed.id == id; });
  return found == garden.beds.end() ? nullptr : &*found;
}

bool on_site(const Garden& garden, const Caretaker& caretaker, std::chrono::year_month_day date,
             std::chrono::minutes begin, std::chrono::minutes end) {
  if (!caretaker.works_on_holidays && holiday_on(garden.rules, date) != nullptr) return false;
  const bool on_leave =
      std::any_of(caretaker.away.begin(), caretaker.away.end(),
                  [date](const DatedSpan& span) { return span.first <= date && date <= span.last; });
  return !on_leave && covers(caretaker.hours, date, begin, end);
}

Garden parse_garden(std::string_view text, std::string_view shown_name) {
  TomlDocument document{std::string(shown_name), std::string(text)};
  require_plain_toml(document);
  const toml::table parsed = parse_toml(document);
  TomlTable root(document, parsed, {});
  Garden garden = garden_of(root);
  refuse_repeated_ids(garden, root);
  if (!document.problems().empty()) {
    std::vector<Problem> problems = document.problems();
    std::stable_sort(problems.begin(), problems.end(),
                     [](const Problem& a, const Problem& b) { return a.line < b.line; });
    throw Error(std::move(problems));
  }
  return garden;
}

Garden read_garden(const std::filesystem::path& file, std::string_view shown_name) {
  require_in_its_folder(file, shown_name);
  return parse_garden(read_text_file(file, shown_name, largest_file_bytes), shown_name);
}

}  // namespace v1
}  // namespace noonleaf
