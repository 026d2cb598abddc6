#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/plan/likelihood.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The days without anybody.
struct AwayQuestion {
  std::chrono::year_month_day today{};  ///< the account stands on this morning
  std::chrono::year_month_day from{};   ///< first day on which nobody waters
  std::chrono::year_month_day to{};     ///< last such day
  std::size_t members = 0;              ///< of the likelihood; 0 = none is worked out
};

/// What goes on behind the last day of the weather files, and on the forecast days.
enum class AwaySky {
  as_now,    ///< the forecast; behind it the mean ET0 of the last three days
  hotter,    ///< behind the files a quarter more
  cooler,    ///< behind the files a quarter less
  past_year  ///< behind the files, the same dates of an earlier year in them
};

/// What is done for a bed.
enum class AwayHelp {
  nothing,
  deep_watering,  ///< full root zone on the morning of `from`
  mulch,          ///< 5 cm of straw or leaves over the whole bed; only where plants are up
  one_visit       ///< full root zone once, on Away::best_visit
};

/// When a bed runs dry under one sky.
struct DryDates {
  std::optional<std::chrono::year_month_day> leaves_comfort{};  ///< first day that ends beyond the limit
  std::optional<std::chrono::year_month_day>
      wilts{};         ///< first day on which it gets less than half of its demand
  double lost_mm = 0;  ///< transpiration lost up to `to`
};

/// The skies together.
struct AwayOutlook {
  AwayHelp help = AwayHelp::nothing;  ///< what is done before they leave, or by a visitor
  DryDates middle{};                  ///< under the sky as now, without rain
  std::optional<std::chrono::year_month_day> earliest_wilt{};  ///< over all skies; nothing = under none
  /// over all skies; nothing = under some it does not wilt
  std::optional<std::chrono::year_month_day> latest_wilt{};
  /// first day beyond the limit over all skies; nothing = under none
  std::optional<std::chrono::year_month_day> earliest_limit{};
  /// last of those days; nothing = under some it stays within
  std::optional<std::chrono::year_month_day> latest_limit{};
  int skies = 0;          ///< how many were tried
  int skies_beyond = 0;   ///< how many of them pass the limit
  int skies_wilting = 0;  ///< how many of them wilt
};

/// One bed: of the planting that is dry first.
struct AwayBed {
  std::size_t bed = 0;                  ///< index into Garden::beds
  std::size_t planting = 0;             ///< index into Bed::plantings: the one that is dry first
  bool nothing_grows = false;           ///< then the rest says nothing
  bool seedbed = false;                 ///< seed that is not up: told apart, since its layer is thin
  std::vector<AwayOutlook> outlooks{};  ///< nothing, deep_watering, mulch, one_visit
  DryDates with_rain{};                 ///< nothing done, and the forecast rain falls
  double deep_net_mm = 0;               ///< depth that fills the root zone on the morning of `from`
  double visit_net_mm = 0;              ///< depth that fills it on the morning of the visit
};

/// How the garden gets through.
struct Away {
  AwayQuestion question{};  ///< as asked
  int taken_as_done =
      0;  ///< runs of the last two weeks that nobody wrote down: as the week's plan takes them
  std::chrono::year_month_day known_to{};                   ///< last day of the weather files
  std::optional<std::chrono::year_month_day> best_visit{};  ///< the day on which one visit saves most;
                                                            ///< nothing = none is needed
  bool rain_forecast = false;                               ///< some forecast day of the span has rain
  int past_years = 0;                                       ///< skies taken from earlier years
  std::vector<AwayBed> beds{};                              ///< as in the garden file
  std::optional<Likelihood>
      likelihood{};  ///< nothing done but the plan up to `from`; shares count from that day on
};

/// Which beds get through days without anybody, which wilt and when, and what would save them.
///
/// Method    Each planting's account runs from this morning without water. Up to `from` the week's plan
///           waters (plan_week), where it reaches so far. Skies: as_now, hotter and cooler, and one for each
///           earlier year whose dates the weather files hold. A plant that gets less than half of its demand
///           is taken to wilt for good (ours: by then leaves hang at dawn). Seeds that are not up: the top
///           layer beyond REW is the limit, and beyond halfway to TEW they are taken for lost (ours). The
///           best visit is the day on which filling every bed leaves the least loss over all beds.
/// Note      Counts of skies, not a probability; that is in `likelihood`, where rain counts too.
/// Throws    Error, field "from" or "to": not in order, `from` before today or more than 14 days after it,
///           more than 120 days; as accounts_of_bed
Away plan_away(const Garden& garden, const Journal& journal, const Sky& sky, const AwayQuestion& question);

}  // namespace v1
}  // namespace noonleaf
