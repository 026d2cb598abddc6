#pragma once

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/report/phrases.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Numbers, times and dates as a person at the tap reads them: in the garden's units and the sheet's
/// language. A garden in US units has the 12-hour clock, one in metric units the 24-hour clock. Spanish has a
/// decimal comma, and days and months without capitals.
class LocalText {
 public:
  /// Texts in one language and one system of units.
  LocalText(Language language, UnitSystem units) : language_(language), units_(units) {}

  /// As given.
  Language language() const { return language_; }
  /// As given.
  UnitSystem units() const { return units_; }

  std::string number(double value, int decimals) const;  ///< "0.25", "0,25"
  std::string depth(double mm) const;                    ///< "14 mm", "0.55 in", "0,55 pulg."
  std::string volume(double litres) const;               ///< "210 L", "55 gallons", "55 galones"
  std::string temperature(double c) const;               ///< "39 °C", "102 °F"

  /// Rain in a gauge, rounded up to what a gauge can be read to: a quarter of an inch, or a millimetre.
  std::string gauge_mark(double mm) const;  ///< "1/4", "1 3/4", "7"

  std::string clock(std::chrono::minutes time_of_day) const;  ///< "6:05 am", "6:05 a.m.", "06:05"
  std::string the_clock(
      std::chrono::minutes time_of_day) const;  ///< for a sentence: "6:05 am", "las 6:05 a.m."
  std::string half_day(std::chrono::minutes time_of_day) const;    ///< "am", "p.m."; "" on the 24-hour clock
  std::string clock_face(std::chrono::minutes time_of_day) const;  ///< without it: "6:05"
  std::string day(std::chrono::year_month_day date) const;  ///< "Wednesday, July 16", "miércoles 16 de julio"
  std::string day_heading(std::chrono::year_month_day date) const;      ///< the same with a capital
  std::string weekday_heading(std::chrono::year_month_day date) const;  ///< "Wednesday 16", "Miércoles 16"
  std::string short_day(std::chrono::year_month_day date) const;        ///< "Wed 16", "mié 16"
  std::string weekday(std::chrono::year_month_day date) const;          ///< "Wednesday", "miércoles"

  std::string list(const std::vector<std::string>& items) const;  ///< "A, B and C", "A, B y C"; "A e I"

 private:
  Language language_;
  UnitSystem units_;
};

/// Text from a garden file without what a terminal, a page or a calendar could take for a command: control
/// characters become spaces.
std::string plain_text(std::string_view text);

/// A name of the garden file in the language of the answer, where the file has one; plain text.
std::string local_name(Language language, std::string_view name, std::string_view name_es);

/// The text with its first letter a capital, of Spanish too: "á" becomes "Á".
std::string sentence_start(std::string text);

}  // namespace v1
}  // namespace noonleaf
