#include "noonleaf/garden/garden_start.hpp"

#include <algorithm>
#include <cctype>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// A TOML basic string: nothing that a person types can end it early.
std::string toml_text(std::string_view text) {
  std::string result = "\"";
  for (const char letter : text) {
    const auto code = static_cast<unsigned char>(letter);
    if (letter == '"' || letter == '\\') {
      result += '\\';
      result += letter;
    } else if (code < 0x20 || code == 0x7f) {
      result += fmt::format("\\u{:04X}", code);
    } else {
      result += letter;
    }
  }
  return result + "\"";
}

std::string toml_list(const std::vector<std::string>& texts) {
  std::string list;
  for (const std::string& text : texts) list += (list.empty() ? "" : ", ") + toml_text(text);
  return "[" + list + "]";
}

std::string numbers(const std::vector<double>& values) {
  std::string list;
  for (const double value : values) list += (list.empty() ? "" : ", ") + number_text(value);
  return "[" + list + "]";
}

/// "day custodian" to "day_custodian"; what leaves nothing gets the fallback.
std::string id_of(std::string_view name, std::string_view fallback) {
  std::string id;
  for (const char letter : name) {
    const auto code = static_cast<unsigned char>(letter);
    if (code < 0x80 && std::isalnum(code) != 0) {
      id += static_cast<char>(std::tolower(code));
    } else if (!id.empty() && id.back() != '_') {
      id += '_';
    }
  }
  while (!id.empty() && id.back() == '_') id.pop_back();
  return id.empty() ? std::string(fallback) : id;
}

template <class Things, class NameOf>
std::vector<std::string> unique_ids(const Things& things, std::string_view fallback, const NameOf& name_of) {
  std::vector<std::string> ids;
  for (const auto& thing : things) {
    std::string id = id_of(name_of(thing), fallback);
    const std::string stem = id;
    for (int number = 2; std::find(ids.begin(), ids.end(), id) != ids.end(); ++number)
      id = stem + "_" + std::to_string(number);
    ids.push_back(id);
  }
  return ids;
}

bool in_us(const GardenStart& start) { return start.units == UnitSystem::us; }

std::string site_text(const GardenStart& start) {
  return fmt::format(
      "[site]\n"
      "name = {}\n"
      "latitude_deg = {}      # north is positive\n"
      "longitude_deg = {}     # east is positive: the Americas are negative\n"
      "elevation_{} = {}\n"
      "zone = {}\n"
      "units = \"{}\"             # what is printed; \"us\" or \"metric\"\n"
      "# air = \"arid\"            # dry summer air: take the # away; it matters where humidity is not "
      "measured\n"
      "# setting = \"coast\"       # within some 20 km (12 miles) of the sea: take the # away\n",
      toml_text(start.name), number_text(start.latitude_deg), number_text(start.longitude_deg),
      in_us(start) ? "ft" : "m", number_text(start.elevation), toml_text(start.zone),
      in_us(start) ? "us" : "metric");
}

std::string people_text(const GardenStart& start) {
  std::string text =
      "\n# Who can open and close water, and when they are on site. A run is only printed when both are "
      "there.\n";
  const auto ids = unique_ids(start.people, "person", [](const auto& each) { return each.role; });
  for (std::size_t index = 0; index < start.people.size(); ++index) {
    const GardenStart::Person& person = start.people[index];
    text += fmt::format(
        "[[caretaker]]\nid = \"{}\"\nrole = {}\nlanguage = \"{}\"          # of the printed sheet: \"en\" or "
        "\"es\"\nhours = {}\n\n",
        ids[index], toml_text(person.role), person.language, toml_list(person.hours));
  }
  return text;
}

std::string rules_text(const GardenStart& start) {
  std::string text = "[rules]\n";
  text += start.allowed_hours.empty()
              ? "# allowed_hours = [\"daily 05:00-10:00\"]   # your town's watering hours, if it has any\n"
              : "allowed_hours = " + toml_list(start.allowed_hours) + "\n";
  return text + "# quiet_hours = [\"mon-fri 10:00-10:30\"]   # recess: no water then\n";
}

std::string supplies_text(const GardenStart& start, const std::vector<std::string>& ids) {
  std::string text = "\n# Sprinklers at one tap run one after the other.\n";
  for (std::size_t index = 0; index < start.supplies.size(); ++index) {
    const GardenStart::Supply& supply = start.supplies[index];
    text += fmt::format("[[tap]]\nid = \"{}\"\nname = {}\n", ids[index], toml_text(supply.name));
    const std::string_view key = in_us(start) ? "flow_gal_min" : "flow_l_min";
    if (is_known(supply.bucket) && is_known(supply.bucket_seconds)) {
      text += fmt::format("{} = {:.2f}     # a bucket of {} {} in {} seconds\n\n", key,
                          60 * supply.bucket / supply.bucket_seconds, number_text(supply.bucket),
                          in_us(start) ? "gallons" : "litres", number_text(supply.bucket_seconds));
    } else {
      text += fmt::format("# {} =     # not measured: size of a bucket over the minutes it takes to fill\n\n",
                          key);
    }
  }
  return text;
}

std::string outlets_text(const GardenStart& start, const std::vector<std::string>& supply_ids,
                         const std::vector<std::string>& ids) {
  std::string text;
  for (std::size_t index = 0; index < start.outlets.size(); ++index) {
    const GardenStart::Outlet& outlet = start.outlets[index];
    text += fmt::format("[[sprinkler]]\nid = \"{}\"\nname = {}\nkind = \"{}\"\ntap = \"{}\"\n", ids[index],
                        toml_text(outlet.name), outlet.kind, supply_ids[outlet.supply]);
    const std::string_view key = in_us(start) ? "cans_depth_in" : "cans_depth_mm";
    if (outlet.can_depths.empty()) {
      text += fmt::format(
          "# Its rate is a guess until you put straight-sided cans into the bed, run it, and measure them:\n"
          "# cans_minutes = 15\n# {} = [{}]\n",
          key, in_us(start) ? "0.22, 0.25, 0.19" : "5.6, 6.4, 4.8");
    } else {
      text += fmt::format("cans_minutes = {}\n{} = {}\n", number_text(outlet.minutes), key,
                          numbers(outlet.can_depths));
    }
    text += "longest_run_min = 60      # never longer in one go\n\n";
  }
  return text;
}

std::string patches_text(const GardenStart& start, const std::vector<std::string>& outlet_ids) {
  std::string text;
  const std::string_view area = in_us(start) ? "ft2" : "m2", unit = in_us(start) ? "ft" : "m";
  for (std::size_t index = 0; index < start.patches.size(); ++index) {
    const GardenStart::Patch& patch = start.patches[index];
    text += fmt::format(
        "[[bed]]\nid = \"{}\"\nname = {}\narea_{} = {}      # {} x {} {}\nsprinkler = \"{}\"\nsoil = "
        "\"{}\"\n",
        bed_letter_id(index), toml_text(patch.name), area, fmt::format("{:.4g}", patch.length * patch.width),
        number_text(patch.length), number_text(patch.width), unit, outlet_ids[patch.outlet], patch.soil);
    if (patch.framed) text += "framed = true             # boards around it: no rain runs off\n";
    if (is_known(patch.rooting_depth)) {
      text += fmt::format("rooting_depth_{} = {}\n", in_us(start) ? "in" : "cm",
                          number_text(patch.rooting_depth));
    }
    if (!patch.crop.empty() && patch.start) {
      text += fmt::format("\n  [[bed.planting]]\n  crop = \"{}\"\n  {} = {}\n", patch.crop, patch.start_word,
                          iso_date(*patch.start));
    }
    text += "\n";
  }
  return text;
}

}  // namespace

std::string bed_letter_id(std::size_t index) {
  return index < 26 ? std::string(1, static_cast<char>('a' + index)) : "bed" + std::to_string(index + 1);
}

std::string garden_start_text(const GardenStart& start) {
  const auto named = [](const auto& each) { return each.name; };
  const auto supply_ids = unique_ids(start.supplies, "tap", named);
  const auto outlet_ids = unique_ids(start.outlets, "sprinkler", named);
  return "# What stays: the place, the people, taps, sprinklers, beds. What happens goes into journal.csv.\n"
         "# After every change: noonleaf check. Every key is explained in docs/garden.md.\n\n" +
         site_text(start) + people_text(start) + rules_text(start) + supplies_text(start, supply_ids) +
         outlets_text(start, supply_ids, outlet_ids) + patches_text(start, outlet_ids);
}

std::string empty_journal_text() {
  return "id,date,time,event,bed,crop,minutes,rain_in,rain_mm,stage,who,note\n";
}

std::string weather_guide_text(UnitSystem units) {
  const bool us = units == UnitSystem::us;
  return std::string(
             "Put weather files here: a station's CSV as it comes, or one kept by hand (station.csv) that "
             "begins like "
             "this:\n\n") +
         (us ? "date,tmin_f,tmax_f,rain_in\n2025-07-16,65,101,0\n"
             : "date,tmin_c,tmax_c,rain_mm\n2025-07-16,18.5,38.2,0\n") +
         "\nOne line a day: the night's low, the day's high, the rain. An empty cell means not measured. "
         "More columns\n"
         "make it better: docs/weather.md. A forecast goes into a file of its own whose name begins with "
         "\"forecast\".\n";
}

}  // namespace v1
}  // namespace noonleaf
