#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/report/local_text.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Where an answer is read.
enum class ReadOn {
  screen,  ///< beds by the ids that the commands take; English with the 24-hour clock and days as in day_name
  sheet    ///< printed: beds by their letters; days and times as LocalText has them
};

/// Numbers, days and times as the answers on the screen have them, in the site's units, with the unit.
/// Spanish has what its sheets have (LocalText): a decimal comma, and the 12-hour clock in a garden with US
/// units.
class QuantityText {
 public:
  /// Texts in one system of units and one language, for a screen or a sheet.
  explicit QuantityText(UnitSystem units, Language language = Language::en, ReadOn read_on = ReadOn::screen)
      : units_(units), language_(language), read_on_(read_on) {}

  std::string number(double value, int decimals) const;  ///< "0.25", "0,25"
  std::string depth(double mm) const;                    ///< "14 mm", "0.55 in", "0,55 pulg."
  std::string volume(double litres) const;               ///< "210 L", "55 gal", "55 galones"
  std::string temperature(double c) const;               ///< "39 °C", "102 °F"

  std::string day(std::chrono::year_month_day date) const;        ///< "Friday 18 July", "viernes 18 de julio"
  std::string date(std::chrono::year_month_day date) const;       ///< the same with its year
  std::string clock(std::chrono::minutes time_of_day) const;      ///< "06:05", "6:05 a.m."
  std::string the_clock(std::chrono::minutes time_of_day) const;  ///< in a sentence: "06:05", "las 6:05 a.m."
  // Hour of the day with a fraction, rounded to five minutes.
  std::string hour(double hour) const;      ///< "18:55", "6:55 p.m."
  std::string the_hour(double hour) const;  ///< in a sentence: "18:55", "las 6:55 p.m."

  std::string list(const std::vector<std::string>& items) const;  ///< "A, B and C", "A, B y C"

 private:
  LocalText local() const { return {language_, units_}; }
  bool is_english_screen() const { return language_ == Language::en && read_on_ == ReadOn::screen; }

  UnitSystem units_;
  Language language_;
  ReadOn read_on_;
};

/// "Wednesday 16 July 2025"
std::string long_date(std::chrono::year_month_day date);

/// "Friday 18 July"
std::string day_name(std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
