#include "noonleaf/report/local_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::minutes;
using std::chrono::year_month_day;

template <std::size_t Count>
using Names = std::array<std::array<std::string_view, Count>, language_count>;

constexpr Names<7> weekday_names{
    {{"Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"},
     {"domingo", "lunes", "martes", "miércoles", "jueves", "viernes", "sábado"}}};
constexpr Names<7> short_weekday_names{
    {{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"}, {"dom", "lun", "mar", "mié", "jue", "vie", "sáb"}}};
constexpr Names<12> month_names{{{"January", "February", "March", "April", "May", "June", "July", "August",
                                  "September", "October", "November", "December"},
                                 {"enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto",
                                  "septiembre", "octubre", "noviembre", "diciembre"}}};

constexpr minutes midnight{24 * 60}, noon{12 * 60};

std::size_t index(Language language) { return static_cast<std::size_t>(language); }

std::size_t weekday_index(year_month_day date) {
  return std::chrono::weekday{std::chrono::sys_days(date)}.c_encoding();
}

unsigned day_number(year_month_day date) { return static_cast<unsigned>(date.day()); }

/// "e" stands for "y" before the sound of i: "A e I", "e hierbas" stays "y" (hie is not that sound).
bool begins_with_i(std::string_view word) {
  std::string start;
  for (const char letter : word.substr(0, 3)) start += static_cast<char>(letter | 0x20);
  if (start.starts_with("hie")) return false;
  return start.starts_with("i") || start.starts_with("hi");
}

}  // namespace

std::string plain_text(std::string_view text) {
  std::string result;
  for (std::size_t place = 0; place < text.size(); ++place) {
    const auto code = static_cast<unsigned char>(text[place]);
    const bool second_set = code == 0xC2 && place + 1 < text.size() &&
                            static_cast<unsigned char>(text[place + 1]) < 0xA0;  // U+0080 to U+009F
    if (second_set) ++place;
    result += second_set || code < 0x20 || code == 0x7F ? ' ' : text[place];
  }
  return result;
}

std::string local_name(Language language, std::string_view name, std::string_view name_es) {
  return plain_text(language == Language::es && !name_es.empty() ? name_es : name);
}

std::string sentence_start(std::string text) {
  const auto code = [&text](std::size_t place) { return static_cast<unsigned char>(text[place]); };
  if (text.empty()) return text;
  if (text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  } else if (text.size() > 1 && code(0) == 0xC3 && code(1) >= 0xA0 && code(1) <= 0xBE && code(1) != 0xB7) {
    text[1] = static_cast<char>(code(1) - 0x20);  // U+00E0 to U+00FE without the division sign
  }
  return text;
}

std::string LocalText::number(double value, int decimals) const {
  if (is_missing(value)) return std::string(phrase(language_, Phrase::unknown_value));
  std::string text = fmt::format("{:.{}f}", value == 0 ? 0.0 : value, decimals);
  if (language_ == Language::es) std::replace(text.begin(), text.end(), '.', ',');
  return text;
}

std::string LocalText::depth(double mm) const {
  if (is_missing(mm)) return number(mm, 0);
  if (units_ == UnitSystem::us)
    return number(inches_from_mm(mm), 2) + (language_ == Language::en ? " in" : " pulg.");
  return number(mm, mm < 10 ? 1 : 0) + " mm";
}

std::string LocalText::volume(double litres) const {
  if (is_missing(litres)) return number(litres, 0);
  const double value = units_ == UnitSystem::us ? gallons_from_litres(litres) : litres;
  const double step = value < 100 ? 1 : value < 1000 ? 10 : 100;  // nobody reads a tap to the gallon
  const std::string amount = number(std::round(value / step) * step, 0);
  if (units_ == UnitSystem::metric) return amount + " L";
  const bool one = amount == "1";
  return amount +
         (language_ == Language::en ? (one ? " gallon" : " gallons") : (one ? " galón" : " galones"));
}

std::string LocalText::temperature(double c) const {
  if (is_missing(c)) return number(c, 0);
  return units_ == UnitSystem::us ? number(fahrenheit_from_celsius(c), 0) + " °F" : number(c, 0) + " °C";
}

std::string LocalText::gauge_mark(double mm) const {
  if (is_missing(mm)) return number(mm, 0);
  if (units_ == UnitSystem::metric) return number(std::max(1.0, std::ceil(mm)), 0);
  const int quarters = std::max(1, static_cast<int>(std::ceil(inches_from_mm(mm) * 4 - 1e-9)));
  constexpr std::array<std::string_view, 4> fractions{"", "1/4", "1/2", "3/4"};
  const std::string_view part = fractions[static_cast<std::size_t>(quarters % 4)];
  if (quarters < 4) return std::string(part);
  return std::to_string(quarters / 4) + (part.empty() ? "" : " " + std::string(part));
}

std::string LocalText::clock_face(minutes time_of_day) const {
  if (units_ == UnitSystem::metric) return clock_text(time_of_day);
  const auto of_day = time_of_day % midnight;
  const auto hour = of_day.count() / 60 % 12;
  return fmt::format("{}:{:02}", hour == 0 ? 12 : hour, of_day.count() % 60);
}

std::string LocalText::half_day(minutes time_of_day) const {
  if (units_ == UnitSystem::metric) return {};
  const bool morning = time_of_day % midnight < noon;
  if (language_ == Language::en) return morning ? "am" : "pm";
  return morning ? "a.m." : "p.m.";
}

std::string LocalText::clock(minutes time_of_day) const {
  if (units_ == UnitSystem::metric) return clock_text(time_of_day);
  const bool is_noon = time_of_day % midnight == noon;
  const std::string noon_word = language_ == Language::en ? "noon" : "del día";
  return clock_face(time_of_day) + " " + (is_noon ? noon_word : half_day(time_of_day));
}

std::string LocalText::the_clock(minutes time_of_day) const {
  if (language_ == Language::en) return clock(time_of_day);
  const auto hour = units_ == UnitSystem::us ? time_of_day.count() / 60 % 12 : time_of_day.count() / 60;
  return (hour == 1 ? "la " : "las ") + clock(time_of_day);
}

std::string LocalText::weekday(year_month_day date) const {
  return std::string(weekday_names[index(language_)][weekday_index(date)]);
}

std::string LocalText::day(year_month_day date) const {
  const std::string_view month = month_names[index(language_)][static_cast<unsigned>(date.month()) - 1];
  if (language_ == Language::en) return fmt::format("{}, {} {}", weekday(date), month, day_number(date));
  return fmt::format("{} {} de {}", weekday(date), day_number(date), month);
}

std::string LocalText::day_heading(year_month_day date) const {
  std::string text = day(date);  // every weekday begins with an ASCII letter
  text[0] = static_cast<char>(text[0] >= 'a' ? text[0] - 'a' + 'A' : text[0]);
  return text;
}

std::string LocalText::weekday_heading(year_month_day date) const {
  std::string text = fmt::format("{} {}", weekday(date), day_number(date));
  text[0] = static_cast<char>(text[0] >= 'a' ? text[0] - 'a' + 'A' : text[0]);
  return text;
}

std::string LocalText::short_day(year_month_day date) const {
  return fmt::format("{} {}", short_weekday_names[index(language_)][weekday_index(date)], day_number(date));
}

std::string LocalText::list(const std::vector<std::string>& items) const {
  std::string text;
  for (std::size_t place = 0; place < items.size(); ++place) {
    const bool last = place > 0 && place + 1 == items.size();
    if (last) {
      text += language_ == Language::en ? " and " : begins_with_i(items[place]) ? " e " : " y ";
    } else if (place > 0) {
      text += ", ";
    }
    text += items[place];
  }
  return text;
}

}  // namespace v1
}  // namespace noonleaf
