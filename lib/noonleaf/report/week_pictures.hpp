#pragma once

#include <string>

#include "noonleaf/report/week_view.hpp"

namespace noonleaf {
inline namespace v1 {

/// A picture in the page and the room that it takes.
struct SheetPicture {
  std::string svg{};  ///< empty = there is nothing to draw
  double width_pt = 0, height_pt = 0;
};

/// The garden seen from above, with the letters of the beds, its taps and landmarks; nothing unless a bed of
/// the garden file has a place.
SheetPicture garden_sketch(const WeekView& view, double widest_pt, double highest_pt);

/// One bed over the plan: the water missing each morning, its limit, runs, forecast rain and the risk.
SheetPicture bed_chart(const WeekView& view, const WeekBed& bed, double width_pt);

}  // namespace v1
}  // namespace noonleaf
