#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include <fmt/format.h>

#include "noonleaf/report/markup.hpp"
#include "noonleaf/report/text_width.hpp"
#include "noonleaf/report/week_pictures.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double text_pt = 14, dot_pt = 4, margin_pt = 3;

/// The ground that the sketch has to show, metres.
struct Ground {
  double left = std::numeric_limits<double>::infinity(), right = -std::numeric_limits<double>::infinity();
  double bottom = std::numeric_limits<double>::infinity(), top = -std::numeric_limits<double>::infinity();

  void include(const SketchPlace& place) {
    left = std::min(left, place.x_m);
    bottom = std::min(bottom, place.y_m);
    right = std::max(right, place.x_m + (is_known(place.width_m) ? place.width_m : 0));
    top = std::max(top, place.y_m + (is_known(place.length_m) ? place.length_m : 0));
  }
};

/// From metres on the ground, y up, to points in the picture, y down.
class Map {
 public:
  Map(const Ground& ground, double widest_pt, double highest_pt) : ground_(ground) {
    const double width_m = std::max(0.5, ground.right - ground.left),
                 height_m = std::max(0.5, ground.top - ground.bottom);
    const double room = 2 * margin_pt, label = text_pt + 2;
    scale_ = std::min((widest_pt - room) / width_m, (highest_pt - room - label) / height_m);
    width_pt = width_m * scale_ + room;
    height_pt = height_m * scale_ + room + label;
  }
  double x(double metres) const { return margin_pt + (metres - ground_.left) * scale_; }
  double y(double metres) const { return height_pt - margin_pt - (metres - ground_.bottom) * scale_; }
  double length(double metres) const { return metres * scale_; }

  double width_pt = 0, height_pt = 0;

 private:
  Ground ground_;
  double scale_ = 1;
};

std::string bed_svg(const Map& map, const SketchPlace& place, const std::string& letter) {
  const double width = std::max(text_pt, map.length(place.width_m)),
               height = std::max(text_pt + 2, map.length(place.length_m));
  const double left = map.x(place.x_m), top = map.y(place.y_m) - height;
  return fmt::format(
      "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"#fff\" stroke=\"#000\" "
      "stroke-width=\"1.5\"/><text x=\"{}\" y=\"{}\" text-anchor=\"middle\" font-weight=\"bold\">{}</text>",
      points(left), points(top), points(width), points(height), points(left + width / 2),
      points(top + height / 2 + text_pt * 0.36), markup_text(letter));
}

/// Words of the sketch, each beside a point, kept inside the picture and clear of the words before it.
class SketchWords {
 public:
  explicit SketchWords(const Map& map) : map_(map) {}

  std::string put(double x_pt, double y_pt, const std::string& word) {
    const double width = text_width_pt(word, text_pt);
    const double last = std::max(margin_pt, map_.width_pt - margin_pt - width);
    const double base = std::clamp(y_pt, text_pt, map_.height_pt - margin_pt);
    double left = std::clamp(x_pt, margin_pt, last);
    for (const Place& other : taken_) {
      const bool meets = left < other.right + gap && other.left < left + width + gap &&
                         std::abs(base - other.base) < text_pt;
      if (!meets) continue;
      left = other.right + gap <= last ? other.right + gap : std::max(margin_pt, other.left - gap - width);
    }
    taken_.push_back({left, left + width, base});
    return fmt::format("<text x=\"{}\" y=\"{}\">{}</text>", points(left), points(base), markup_text(word));
  }

 private:
  struct Place {
    double left, right, base;
  };
  static constexpr double gap = 4;
  const Map& map_;
  std::vector<Place> taken_{};
};

std::string tap_svg(const WeekView& view, const Map& map, SketchWords& words, const SketchPlace& place) {
  const std::string word(phrase(view.language, Phrase::sketch_tap));
  const double x = map.x(place.x_m), y = map.y(place.y_m);
  const bool room_on_the_right = x + dot_pt + 3 + text_width_pt(word, text_pt) < map.width_pt;
  const double word_x = room_on_the_right ? x + dot_pt + 3 : x - dot_pt - 3 - text_width_pt(word, text_pt);
  return fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"/>",
                     points(std::clamp(x, dot_pt, map.width_pt - dot_pt)),
                     points(std::clamp(y, dot_pt, map.height_pt - dot_pt)), points(dot_pt)) +
         words.put(word_x, y + text_pt * 0.36, word);
}

}  // namespace

SheetPicture garden_sketch(const WeekView& view, double widest_pt, double highest_pt) {
  const Garden& garden = view.garden;
  Ground ground;
  bool any = false;
  for (const Bed& bed : garden.beds) {
    if (!bed.place || is_missing(bed.place->width_m) || is_missing(bed.place->length_m)) continue;
    ground.include(*bed.place);
    any = true;
  }
  if (!any) return {};
  for (const Tap& tap : garden.taps) {
    if (tap.place) ground.include(*tap.place);
  }
  for (const Landmark& landmark : garden.landmarks) ground.include(landmark.place);
  const Map map(ground, widest_pt, highest_pt);
  std::string drawn;
  SketchWords words(map);
  for (std::size_t index = 0; index < garden.beds.size(); ++index) {
    const auto& place = garden.beds[index].place;
    if (place && is_known(place->width_m) && is_known(place->length_m))
      drawn += bed_svg(map, *place, bed_letter(view, index));
  }
  for (const Tap& tap : garden.taps) {
    if (tap.place) drawn += tap_svg(view, map, words, *tap.place);
  }
  for (std::size_t index = 0; index < garden.landmarks.size(); ++index) {
    const SketchPlace& place = garden.landmarks[index].place;
    const std::string name = landmark_name(view, index);
    drawn += words.put(map.x(place.x_m) - text_width_pt(name, text_pt) / 2, map.y(place.y_m) + text_pt * 0.36,
                       name);
  }
  const std::string title = markup_text(phrase(view.language, Phrase::sketch_title));
  return {fmt::format(
              "<svg role=\"img\" aria-label=\"{}\" viewBox=\"0 0 {} {}\" style=\"width:{}pt;height:{}pt\" "
              "font-size=\"14\">{}</svg>",
              title, points(map.width_pt), points(map.height_pt), points(map.width_pt), points(map.height_pt),
              drawn),
          map.width_pt, map.height_pt};
}

}  // namespace v1
}  // namespace noonleaf
