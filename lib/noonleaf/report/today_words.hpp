#pragma once

#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/report/quantity_text.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// An answer, the garden it is about, and the language to tell it in: what every phrase below needs. Garden
/// and answer must outlive it.
struct TodayView {
  const Garden& garden;              ///< must outlive the view
  const Today& today;                ///< must outlive the view
  Language language = Language::en;  ///< of every word
  ReadOn read_on = ReadOn::screen;   ///< how beds and times are named

  /// Its words for numbers, days and times.
  QuantityText text() const { return QuantityText(garden.site.units, language, read_on); }
};

/// "oscillating sprinkler, tap by the tool shed"
std::string sprinkler_words(const TodayView& view, const BedToday& bed);

/// "Opens: garden educator. Closes: day custodian."; for a bed with a slot.
std::string people_words(const TodayView& view, const BedToday& bed);

/// Why the bed is opened or left alone, in one sentence.
std::string why_words(const TodayView& view, const BedToday& bed);

/// What stands in the way of a blocked run, and what to do.
std::string obstacle_words(const TodayView& view, const BedToday& bed);

/// "Tomato (mid-season): is down 0.55 in (0.80 in by tonight) and can spare 0.87 in"; a line each planting.
std::vector<std::string> depletion_words(const TodayView& view, const BedToday& bed);

/// "In two goes, or it runs off: close it at 06:20, open it again at 06:45."; empty for a run in one go.
std::string cycle_words(const TodayView& view, const BedToday& bed);

/// "By hand: 45 L, 5 cans of 9 L. ..."; empty unless the bed is watered by hand.
std::string hand_words(const TodayView& view, const BedToday& bed);

/// "24 gal (12 cans)": so much water poured by hand, in the cans that are carried there, if any are.
std::string by_hand_words(const TodayView& view, const BedToday& bed, double litres);

/// A multiplier at its cap, a run raised to the shortest sensible one; empty where neither is so.
std::string multiplier_words(const TodayView& view, const BedToday& bed);

/// What the longest run leaves undone; empty when nothing.
std::string left_over_words(const TodayView& view, const BedToday& bed);

/// When seed should be up, and the light and frequent watering that suits it; empty without a seedbed.
std::string seedbed_words(const TodayView& view, const BedToday& bed);

/// What salt asks for beyond the depletion; empty where it asks for nothing.
std::string salt_words(const TodayView& view, const BedToday& bed);

/// Which planting of a mixed bed sets the depth, and what the run gives the others beyond what they can hold;
/// empty when nothing is worth a word.
std::string overflow_words(const TodayView& view, const BedToday& bed);

/// What was not measured, a line each; `EstimateKind::weather` with its days.
std::vector<std::string> estimate_words(const TodayView& view);

/// The cautions that apply on this day, the shortest true list.
std::vector<std::string> caution_words(const TodayView& view);

}  // namespace v1
}  // namespace noonleaf
