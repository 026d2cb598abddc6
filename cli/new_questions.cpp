#include "new_questions.hpp"

#include <algorithm>
#include <iostream>
#include <string>

#include "noonleaf/error.hpp"

#include "new_answers.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

std::string next_line() {
  std::string line;
  if (std::getline(std::cin, line)) {
    if (!line.empty() && line.back() == '\r') line.pop_back();
    const std::size_t first = line.find_first_not_of(" \t");
    return first == std::string::npos ? std::string{}
                                      : line.substr(first, line.find_last_not_of(" \t") - first + 1);
  }
  Problem problem;
  problem.message = "the answers ended before the last question; nothing was written";
  problem.fix = "run it again and answer to the end, or give everything by options: noonleaf new --help";
  throw Error(std::move(problem));
}

/// Whether an empty answer is one.
enum class Empty { refused, allowed };

void show_question(std::string_view question, std::string_view hint) {
  print("\n" + wrapped(question, 0) + (hint.empty() ? std::string{} : wrapped(hint, 2)) + "> ");
}

void show_refusal(const std::string& refusal) {
  print(wrapped("Not yet: " + refusal + (refusal.ends_with('?') ? "" : "."), 0) + "> ");
}

std::string ask_text(std::string_view question, std::string_view hint, Empty empty) {
  show_question(question, hint);
  while (true) {
    std::string line = next_line();
    if (!line.empty() || empty == Empty::allowed) return line;
    show_refusal("this needs an answer");
  }
}

/// Asks until `parse` takes the answer; nothing for an empty one where that is allowed.
template <class Parse>
auto ask(std::string_view question, std::string_view hint, Empty empty, const Parse& parse)
    -> decltype(parse(std::string_view{}).value) {
  show_question(question, hint);
  while (true) {
    const std::string line = next_line();
    if (line.empty() && empty == Empty::allowed) return std::nullopt;
    auto answer = parse(line);
    if (answer.value) return answer.value;
    show_refusal(line.empty() ? "this needs an answer" : answer.refusal);
  }
}

auto number_within(double low, double high) {
  return [low, high](std::string_view text) { return parse_answer_number(text, low, high); };
}

bool ask_yes(std::string_view question, std::string_view hint) {
  const auto parse = [](std::string_view text) {
    Answer<bool> answer;
    if (text == "y" || text == "yes") answer.value = true;
    if (text == "n" || text == "no") answer.value = false;
    answer.refusal = "write y or n";
    return answer;
  };
  return *ask(question, hint, Empty::refused, parse);
}

void ask_site(GardenStart& start) {
  start.name = ask_text("What is the garden called?", "", Empty::refused);
  const auto units = [](std::string_view text) { return parse_word(text, {"us", "metric"}); };
  start.units = *ask("Units: us (feet, inches, gallons) or metric?", "", Empty::refused, units) == "us"
                    ? UnitSystem::us
                    : UnitSystem::metric;
  const auto place =
      *ask("Where is it? Latitude, longitude.",
           "Press long on the garden in your phone's map; like 46.07, -118.33", Empty::refused, parse_place);
  start.latitude_deg = place.latitude_deg;
  start.longitude_deg = place.longitude_deg;
  const bool us = start.units == UnitSystem::us;
  start.elevation = *ask(us ? "How high above the sea, in feet?" : "How high above the sea, in metres?",
                         "The town's is near enough.", Empty::refused,
                         us ? number_within(-1400, 16400) : number_within(-430, 5000));
  start.zone =
      *ask("Time zone?", "Like America/Los_Angeles, America/Denver, America/Chicago, America/New_York.",
           Empty::refused, parse_zone);
}

void ask_people(GardenStart& start) {
  while (true) {
    const bool first = start.people.empty();
    const std::string role =
        ask_text(first ? "Who can open and close water? Give a role, not a name."
                       : "Who else? Enter when that is all.",
                 first ? "Like: day custodian" : "", first ? Empty::refused : Empty::allowed);
    if (role.empty()) return;
    GardenStart::Person person{.role = role};
    person.hours = *ask("When is the " + role + " on site?", "Like mon-fri 06:00-14:30; sat 08:00-12:00",
                        Empty::refused, parse_answer_hours);
    const auto language = [](std::string_view text) { return parse_word(text, {"en", "es"}); };
    person.language =
        ask("In which language should the sheet be? en or es; Enter for en.", "", Empty::allowed, language)
            .value_or("en");
    start.people.push_back(std::move(person));
  }
}

std::size_t ask_supply(GardenStart& start) {
  const std::string name = ask_text("Which tap is it on?", "Like: tap by the tool shed", Empty::refused);
  const auto known = std::find_if(start.supplies.begin(), start.supplies.end(),
                                  [&](const auto& each) { return each.name == name; });
  if (known != start.supplies.end()) return static_cast<std::size_t>(known - start.supplies.begin());
  GardenStart::Supply supply{.name = name};
  const bool us = start.units == UnitSystem::us;
  const auto bucket =
      ask(us ? "How many gallons does your bucket hold?" : "How many litres does your bucket hold?",
          "To measure the tap with a watch. Enter when there is no bucket.", Empty::allowed,
          number_within(0.1, 100));
  if (bucket) {
    supply.bucket = *bucket;
    supply.bucket_seconds = *ask("Open the tap fully: how many seconds until it is full?", "", Empty::refused,
                                 number_within(1, 3600));
  }
  start.supplies.push_back(std::move(supply));
  return start.supplies.size() - 1;
}

void ask_outlets(GardenStart& start) {
  while (true) {
    const bool first = start.outlets.empty();
    const std::string name = ask_text(
        first ? "Which sprinkler or hose do you use?" : "Another sprinkler or hose? Enter when that is all.",
        first ? "Like: oscillating sprinkler" : "", first ? Empty::refused : Empty::allowed);
    if (name.empty()) return;
    GardenStart::Outlet outlet{.name = name};
    const auto kind = [](std::string_view text) {
      return parse_word(text, {"sprinkler", "soaker_hose", "drip", "hand"});
    };
    outlet.kind = ask("What kind is it: sprinkler, soaker_hose, drip or hand? Enter for sprinkler.", "",
                      Empty::allowed, kind)
                      .value_or("sprinkler");
    outlet.supply = ask_supply(start);
    const auto minutes =
        ask("Put straight-sided cans into the bed and run it. For how many minutes did it run?",
            "15 is usual. Enter when you have not done that yet; the rate is then a guess.", Empty::allowed,
            number_within(1, 600));
    if (minutes) {
      outlet.minutes = *minutes;
      outlet.can_depths = *ask(start.units == UnitSystem::us ? "How deep is the water in each can, in inches?"
                                                             : "How deep is the water in each can, in mm?",
                               start.units == UnitSystem::us ? "Like 0.22 0.25 0.19" : "Like 5.6 6.4 4.8",
                               Empty::refused, parse_can_depths);
    }
    start.outlets.push_back(std::move(outlet));
  }
}

std::size_t ask_outlet_of_bed(const GardenStart& start) {
  if (start.outlets.size() == 1) return 0;
  std::string list;
  for (std::size_t index = 0; index < start.outlets.size(); ++index)
    list += (index == 0 ? "" : ", ") + std::to_string(index + 1) + " " + start.outlets[index].name;
  const double most = static_cast<double>(start.outlets.size());
  const auto number =
      *ask("What waters it? Give its number: " + list, "", Empty::refused, [&](std::string_view text) {
        auto answer = parse_answer_number(text, 1, most);
        if (answer.value && *answer.value != static_cast<double>(static_cast<int>(*answer.value)))
          answer = {{}, "give one of the numbers"};
        return answer;
      });
  return static_cast<std::size_t>(number) - 1;
}

GardenStart::Patch ask_patch(const GardenStart& start, const std::string& name) {
  const bool us = start.units == UnitSystem::us;
  GardenStart::Patch patch{.name = name};
  const auto sides =
      *ask(us ? "How long and how wide is it, in feet?" : "How long and how wide is it, in metres?",
           us ? "Like 24 x 4" : "Like 7.2 x 1.2", Empty::refused, parse_sides);
  patch.length = sides.length;
  patch.width = sides.width;
  patch.outlet = ask_outlet_of_bed(start);
  patch.soil =
      *ask("Press moist soil between thumb and finger into a ribbon. How long does it get before it breaks?",
           "1 none; 2 under an inch (2.5 cm); 3 under two inches; 4 longer. Or a texture, like sandy_loam.",
           Empty::refused, parse_soil);
  patch.framed = ask_yes("Are there boards around it (a raised bed)? y or n", "");
  const auto depth = ask(us ? "How deep can roots go, in inches?" : "How deep can roots go, in cm?",
                         "Enter when nothing stops them.", Empty::allowed,
                         us ? number_within(2, 118) : number_within(5, 300));
  patch.rooting_depth = depth.value_or(missing);
  const auto crop =
      ask("What grows in it?", "Like tomato. Enter for nothing yet.", Empty::allowed, parse_crop);
  if (!crop) return patch;
  patch.crop = *crop;
  const auto begin =
      *ask("How and when did it begin?",
           "Like sown 2025-05-17, transplanted 2025-05-17, or established 2022-04-01 (perennial).",
           Empty::refused, parse_begin);
  patch.start_word = begin.word;
  patch.start = begin.date;
  return patch;
}

void ask_patches(GardenStart& start) {
  while (true) {
    const bool first = start.patches.empty();
    const std::string name = ask_text(first ? "Now the beds, one by one. What do you call the first?"
                                            : "The next bed? Enter when that is all.",
                                      first ? "Like: Tomatoes" : "", first ? Empty::refused : Empty::allowed);
    if (name.empty()) return;
    start.patches.push_back(ask_patch(start, name));
  }
}

}  // namespace

GardenStart ask_for_garden() {
  print(wrapped(
      "A tape measure, a can and a watch are enough. Enter ends a list; nothing is written before the "
      "last answer.",
      0));
  GardenStart start;
  ask_site(start);
  ask_people(start);
  start.allowed_hours = ask("When may you water by your town's rules?",
                            "Like daily 05:00-10:00; Enter for any hour.", Empty::allowed, parse_answer_hours)
                            .value_or(std::vector<std::string>{});
  ask_outlets(start);
  ask_patches(start);
  print("\n");
  return start;
}

}  // namespace noonleaf::cli
