#pragma once

#include <string>
#include <vector>

#include "noonleaf/report/today_words.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// "Soil check on 15 July, by feel: moist. The account had tomato down 0.56 in (±0.1 in), the check says ...".
/// The last check of each planting of the bed, for three days.
std::vector<std::string> soil_check_words(const TodayView& view, const BedToday& bed);

/// What the runs that nobody wrote down leave open, and what settles it; empty where nothing is open.
std::string open_question_words(const TodayView& view, const BedToday& bed);

/// Where soil checks keep contradicting the account: the likeliest reason, its evidence, what settles it.
std::vector<std::string> doubt_words(const TodayView& view, const BedToday& bed);

/// "10 of the planned 25 minutes ran today; this is the rest."; empty when nothing ran today. By
/// hand it is the amount that is said: "24 gal (12 cans) of the planned 25 gal (13 cans) went on today".
std::string ran_today_words(const TodayView& view, const BedToday& bed);

}  // namespace v1
}  // namespace noonleaf
