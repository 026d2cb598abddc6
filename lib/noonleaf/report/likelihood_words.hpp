#pragma once

#include <optional>
#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/likelihood.hpp"
#include "noonleaf/report/phrases.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The water that the members get besides rain.
enum class WaterTried {
  no_more,       ///< none from now on
  of_the_plan,   ///< that of the plan's runs
  until_leaving  ///< that of the plan's runs before an absence, none in it
};

/// A likelihood and the garden that it is about.
struct LikelihoodView {
  const Garden& garden;                    ///< must outlive the view
  const Likelihood& likelihood;            ///< must outlive the view
  Language language = Language::en;        ///< of the words
  WaterTried water = WaterTried::no_more;  ///< what the members were given
};

/// "in 7 of 10", "in hardly any": a share of the members in plain words; never a number finer than a thousand
/// members carry.
std::string share_words(double share, Language language);

/// "How sure: in 6 of 10 of the weathers and gardens tried.": the line below an alert.
std::string alert_likelihood_words(double share, Language language);

/// What stands for the days behind the forecast.
std::string behind_forecast_words(const LikelihoodView& view);

/// What was tried and what stands for the days behind the forecast; a sentence each.
std::vector<std::string> likelihood_head_words(const LikelihoodView& view);

/// "Squash (bed b): short of water by tomorrow in 3 of 10, by Friday in 9 of 10; wilts for want of it by
/// Sunday in 2 of 10."; a line for each planting.
std::vector<std::string> likelihood_bed_words(const LikelihoodView& view);

/// How the day of one planting reads on one bed line; as likelihood_bed_words.
std::string planting_likelihood_words(const LikelihoodView& view, const BedLikelihood& bed,
                                      const PlantingLikelihood& planting);

/// "short of water by Sat 19 July in 5 of 10, ...; wilts for want of it by ... in 5 of 10.": from a day on,
/// without the name of crop and bed; empty where the planting was not tried.
std::string absence_likelihood_words(const LikelihoodView& view, std::size_t bed, std::size_t planting,
                                     std::chrono::year_month_day from);

/// "50 minutes for bed a: 30 to 80 would be right in 8 of 10."; a line for each run.
std::vector<std::string> minutes_doubt_words(const LikelihoodView& view);

/// The one cheap measurement that would narrow today's minutes most, and by how much; empty where none would.
std::string measure_next_words(const LikelihoodView& view);

}  // namespace v1
}  // namespace noonleaf
