#include "new_options.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "noonleaf/error.hpp"

#include "new_answers.hpp"

namespace noonleaf::cli {
namespace {

std::vector<std::string> fields_of(const std::string& text) {
  std::vector<std::string> fields;
  std::size_t from = 0;
  while (from <= text.size()) {
    const std::size_t end = std::min(text.find(';', from), text.size());
    const std::string part = text.substr(from, end - from);
    const std::size_t first = part.find_first_not_of(' ');
    fields.push_back(first == std::string::npos ? std::string{}
                                                : part.substr(first, part.find_last_not_of(' ') - first + 1));
    from = end + 1;
  }
  return fields;
}

class OptionReader {
 public:
  void refuse(std::string option, std::string text, std::string message, std::string fix) {
    Problem problem;
    problem.field = std::move(option);
    problem.text = std::move(text);
    problem.message = std::move(message);
    problem.fix = std::move(fix);
    problems_.push_back(std::move(problem));
  }

  template <class Value>
  Value take(const std::string& option, const std::string& text, const Answer<Value>& answer,
             const std::string& example) {
    if (answer.value) return *answer.value;
    refuse(option, text, answer.refusal, "write it like " + example);
    return {};
  }

  void throw_if_any() {
    if (!problems_.empty()) throw Error(std::move(problems_));
  }

 private:
  std::vector<Problem> problems_;
};

const std::string person_example = "--caretaker \"day custodian; es; mon-fri 06:00-14:30\"";
const std::string tap_example =
    "--tap \"tap by the shed; 5; 50\" (bucket, seconds), or --tap \"tap by the shed\"";
const std::string sprinkler_example =
    "--sprinkler \"oscillating sprinkler; tap by the shed; 15; 0.22 0.25 0.19\", or without minutes and cans";
const std::string bed_example =
    "--bed \"Tomatoes; 24 x 4; oscillating sprinkler; loam; tomato; transplanted 2025-05-17\"";

void read_people(const NewArguments& arguments, GardenStart& start, OptionReader& reader) {
  for (const std::string& text : arguments.caretakers) {
    const auto fields = fields_of(text);
    if (fields.size() < 3 || fields[0].empty()) {
      reader.refuse("--caretaker", text, "it needs a role, a language and hours",
                    "write it like " + person_example);
      continue;
    }
    GardenStart::Person person{.role = fields[0]};
    person.language =
        reader.take("--caretaker", fields[1], parse_word(fields[1], {"en", "es"}), person_example);
    std::string hours;
    for (std::size_t index = 2; index < fields.size(); ++index) hours += fields[index] + ";";
    person.hours = reader.take("--caretaker", hours, parse_answer_hours(hours), person_example);
    start.people.push_back(std::move(person));
  }
}

void read_supplies(const NewArguments& arguments, GardenStart& start, OptionReader& reader) {
  for (const std::string& text : arguments.taps) {
    const auto fields = fields_of(text);
    if (fields[0].empty() || (fields.size() != 1 && fields.size() != 3)) {
      reader.refuse("--tap", text, "it needs a name, or a name, the bucket and the seconds",
                    "write it like " + tap_example);
      continue;
    }
    GardenStart::Supply supply{.name = fields[0]};
    if (fields.size() == 3) {
      supply.bucket = reader.take("--tap", fields[1], parse_answer_number(fields[1], 0.1, 100), tap_example);
      supply.bucket_seconds =
          reader.take("--tap", fields[2], parse_answer_number(fields[2], 1, 3600), tap_example);
    }
    start.supplies.push_back(std::move(supply));
  }
}

template <class Things>
std::size_t index_of(const Things& things, const std::string& name, const std::string& option,
                     const std::string& what, OptionReader& reader) {
  const auto found =
      std::find_if(things.begin(), things.end(), [&](const auto& each) { return each.name == name; });
  if (found != things.end()) return static_cast<std::size_t>(found - things.begin());
  std::string list;
  for (const auto& each : things) list += (list.empty() ? "" : ", ") + each.name;
  reader.refuse(option, name, "there is no " + what + " of that name",
                list.empty() ? "give it by --" + what : "use one of: " + list);
  return 0;
}

void read_outlets(const NewArguments& arguments, GardenStart& start, OptionReader& reader) {
  for (const std::string& text : arguments.sprinklers) {
    const auto fields = fields_of(text);
    if (fields[0].empty() || (fields.size() != 2 && fields.size() != 4)) {
      reader.refuse("--sprinkler", text, "it needs a name, its tap, and perhaps minutes and can depths",
                    "write it like " + sprinkler_example);
      continue;
    }
    GardenStart::Outlet outlet{.name = fields[0],
                               .supply = index_of(start.supplies, fields[1], "--sprinkler", "tap", reader)};
    if (fields.size() == 4) {
      outlet.minutes =
          reader.take("--sprinkler", fields[2], parse_answer_number(fields[2], 1, 600), sprinkler_example);
      outlet.can_depths =
          reader.take("--sprinkler", fields[3], parse_can_depths(fields[3]), sprinkler_example);
    }
    start.outlets.push_back(std::move(outlet));
  }
}

void read_patches(const NewArguments& arguments, GardenStart& start, OptionReader& reader) {
  for (const std::string& text : arguments.beds) {
    const auto fields = fields_of(text);
    if (fields[0].empty() || (fields.size() != 4 && fields.size() != 6)) {
      reader.refuse("--bed", text,
                    "it needs a name, length x width, its sprinkler, the soil, and perhaps crop and begin",
                    "write it like " + bed_example);
      continue;
    }
    GardenStart::Patch patch{.name = fields[0]};
    const Sides sides = reader.take("--bed", fields[1], parse_sides(fields[1]), bed_example);
    patch.length = sides.length;
    patch.width = sides.width;
    patch.outlet = index_of(start.outlets, fields[2], "--bed", "sprinkler", reader);
    patch.soil = reader.take("--bed", fields[3], parse_soil(fields[3]), bed_example);
    if (fields.size() == 6) {
      patch.crop = reader.take("--bed", fields[4], parse_crop(fields[4]), bed_example);
      const PlantingBegin begin = reader.take("--bed", fields[5], parse_begin(fields[5]), bed_example);
      patch.start_word = begin.word;
      patch.start = begin.date;
    }
    start.patches.push_back(std::move(patch));
  }
}

void require_all(const NewArguments& arguments, OptionReader& reader) {
  const auto need = [&](bool is_there, const char* option, const std::string& example) {
    if (!is_there) reader.refuse(option, {}, "this option is missing", "add " + example);
  };
  need(!arguments.name.empty(), "--name", "--name \"School garden\"");
  need(is_known(arguments.latitude_deg), "--latitude", "--latitude 46.07");
  need(is_known(arguments.longitude_deg), "--longitude", "--longitude -118.33 (the Americas are negative)");
  need(is_known(arguments.elevation), "--elevation", "--elevation 950 (feet; metres with --units metric)");
  need(!arguments.zone.empty(), "--zone", "--zone America/Los_Angeles");
  need(!arguments.caretakers.empty(), "--caretaker", person_example);
  need(!arguments.taps.empty(), "--tap", tap_example);
  need(!arguments.sprinklers.empty(), "--sprinkler", sprinkler_example);
  need(!arguments.beds.empty(), "--bed", bed_example);
}

}  // namespace

GardenStart garden_of_options(const NewArguments& arguments) {
  OptionReader reader;
  require_all(arguments, reader);
  GardenStart start{.name = arguments.name,
                    .zone = arguments.zone,
                    .units = arguments.units,
                    .latitude_deg = arguments.latitude_deg,
                    .longitude_deg = arguments.longitude_deg,
                    .elevation = arguments.elevation};
  if (!start.zone.empty()) reader.take("--zone", start.zone, parse_zone(start.zone), "America/Los_Angeles");
  for (const std::string& text : arguments.allowed_hours) {
    const auto hours =
        reader.take("--allowed", text, parse_answer_hours(text), "--allowed \"daily 05:00-10:00\"");
    start.allowed_hours.insert(start.allowed_hours.end(), hours.begin(), hours.end());
  }
  read_people(arguments, start, reader);
  read_supplies(arguments, start, reader);
  read_outlets(arguments, start, reader);
  read_patches(arguments, start, reader);
  reader.throw_if_any();
  return start;
}

}  // namespace noonleaf::cli
