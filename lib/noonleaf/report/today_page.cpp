#include "noonleaf/report/today_page.hpp"

#include <utility>

#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/likelihood_words.hpp"
#include "noonleaf/report/sentences.hpp"
#include "noonleaf/report/soil_check_words.hpp"
#include "noonleaf/report/today_phrases.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Weight = PageParagraph::Weight;

constexpr std::size_t bed_indent = 2, line_indent = 4;

/// A page as it grows.
class Page {
 public:
  explicit Page(const TodayView& view) : view_(view) {}

  std::string say(TodayPhrase id, std::initializer_list<Filling> fillings = {}) const {
    return fill(view_.language, id, fillings);
  }
  /// A paragraph; an empty text is none.
  void add(std::string text, std::size_t indent, Weight weight = Weight::plain) {
    if (!text.empty()) paragraphs_.push_back({std::move(text), indent, weight});
  }
  void add_items(const std::vector<std::string>& items, std::size_t indent) {
    for (const std::string& item : items) add("- " + item, indent);
  }
  void add_heading(TodayPhrase id) { add(say(id), 0, Weight::heading); }

  void add_head();
  void add_open_section();
  /// What a person does about a bed that is not opened.
  enum class Section { blocked, look_first, leave_alone };
  void add_section(Section section, TodayPhrase title);
  void add_alerts();
  void add_how_sure();
  void add_list(TodayPhrase title, const std::vector<std::string>& items);

  std::vector<PageParagraph> take() { return std::move(paragraphs_); }

 private:
  std::string amount_words(const BedToday& bed) const;
  std::string bed_title(const BedToday& bed) const;
  std::string water_words(const BedToday& bed) const;
  void add_sky();
  void add_open_bed(const BedToday& bed);
  void add_blocked_bed(const BedToday& bed);
  void add_left_bed(const BedToday& bed);
  void add_doubts(const BedToday& bed);

  const TodayView& view_;
  std::vector<PageParagraph> paragraphs_{};
};

/// Minutes of a tap; by hand the water itself.
std::string Page::amount_words(const BedToday& bed) const {
  const Sprinkler& sprinkler = view_.garden.sprinklers[view_.garden.beds[bed.bed].sprinkler];
  if (sprinkler.kind == WettingKind::hand) return by_hand_words(view_, bed, bed.run.litres_in_bed);
  return say(TodayPhrase::minutes, {{"minutes", view_.text().number(bed.run.minutes, 0)}});
}

std::string Page::bed_title(const BedToday& bed) const {
  const Bed& where = view_.garden.beds[bed.bed];
  return say(TodayPhrase::bed_title,
             {{"name", local_name(view_.language, where.name, where.name_es)}, {"bed", where.id}});
}

void Page::add_sky() {
  const QuantityText text = view_.text();
  const SkyDay& sky = view_.today.sky;
  if (is_missing(sky.estimate.t_max_c)) return add(say(TodayPhrase::no_temperature), 0);
  std::string words = say(TodayPhrase::low_to_high, {{"low", text.temperature(sky.estimate.t_min_c)},
                                                     {"high", text.temperature(sky.estimate.t_max_c)}});
  if (is_known(sky.weather.rain_mm))
    words += say(TodayPhrase::sky_rain, {{"rain", text.depth(sky.weather.rain_mm)}});
  words += say(TodayPhrase::grass_would_use, {{"depth", text.depth(sky.et0_mm_d)}});
  if (sky.origin == DayOrigin::forecast) words += say(TodayPhrase::sky_forecast);
  add(words + ".", 0);
}

void Page::add_head() {
  const Site& site = view_.garden.site;
  add(plain_text(site.name), 0, Weight::strong);
  add(sentence_start(view_.text().date(view_.today.date)), 0, Weight::strong);
  if (site.demo_date == view_.today.date) add(say(TodayPhrase::demo_day), 0);
  add_sky();
}

std::string Page::water_words(const BedToday& bed) const {
  const QuantityText text = view_.text();
  std::string words = say(TodayPhrase::water, {{"sprinkler", sprinkler_words(view_, bed)},
                                               {"depth", text.depth(bed.run.mean_depth_mm)},
                                               {"volume", text.volume(bed.run.litres_in_bed)}});
  if (is_known(bed.run.litres_from_tap))
    words += say(TodayPhrase::from_the_tap, {{"volume", text.volume(bed.run.litres_from_tap)}});
  return words + ".";
}

void Page::add_open_bed(const BedToday& bed) {
  const QuantityText text = view_.text();
  add(say(TodayPhrase::from_to,
          {{"from", text.clock(bed.slot->begin)}, {"until", text.clock(bed.slot->end)}}) +
          "  " + bed_title(bed) + ", " + amount_words(bed),
      bed_indent, Weight::strong);
  for (std::string& line :
       std::vector{water_words(bed), hand_words(view_, bed), people_words(view_, bed),
                   cycle_words(view_, bed), ran_today_words(view_, bed), why_words(view_, bed),
                   multiplier_words(view_, bed), left_over_words(view_, bed), seedbed_words(view_, bed),
                   salt_words(view_, bed), overflow_words(view_, bed)})
    add(std::move(line), line_indent);
  add_doubts(bed);
}

void Page::add_blocked_bed(const BedToday& bed) {
  add(bed_title(bed) + ", " + amount_words(bed), bed_indent, Weight::strong);
  add(why_words(view_, bed), line_indent);
  add(say(TodayPhrase::but, {{"obstacle", obstacle_words(view_, bed)}}), line_indent);
  add_doubts(bed);
}

void Page::add_left_bed(const BedToday& bed) {
  add(bed_title(bed), bed_indent, Weight::strong);
  add(ran_today_words(view_, bed), line_indent);
  add(why_words(view_, bed), line_indent);
  add(seedbed_words(view_, bed), line_indent);
  add_doubts(bed);
}

/// What is open, soil checks, and the depletions of a bed with several plantings, which one sentence cannot
/// hold.
void Page::add_doubts(const BedToday& bed) {
  add(open_question_words(view_, bed), line_indent);
  for (const std::string& line : soil_check_words(view_, bed)) add(line, line_indent);
  for (const std::string& line : doubt_words(view_, bed)) add(line, line_indent);
  if (bed.plantings.size() > 1) add_items(depletion_words(view_, bed), line_indent);
}

void Page::add_open_section() {
  add_heading(TodayPhrase::open_title);
  for (const std::size_t index : view_.today.opening_order) add_open_bed(view_.today.beds[index]);
  if (view_.today.opening_order.empty()) add(say(TodayPhrase::nothing_to_open), bed_indent);
}

Page::Section section_of(const BedToday& bed) {
  if (bed.action == BedAction::blocked) return Page::Section::blocked;
  return bed.reason == BedReason::look_first ? Page::Section::look_first : Page::Section::leave_alone;
}

void Page::add_section(Section section, TodayPhrase title) {
  bool first = true;
  for (const BedToday& bed : view_.today.beds) {
    if (bed.action == BedAction::open || section_of(bed) != section) continue;
    if (std::exchange(first, false)) add_heading(title);
    section == Section::blocked ? add_blocked_bed(bed) : add_left_bed(bed);
  }
}

void Page::add_alerts() {
  bool first = true;
  for (const Alert& alert : alerts_of(view_)) {
    if (alert.kind == AlertKind::blocked_run) continue;  // has its own section above
    if (std::exchange(first, false)) add_heading(TodayPhrase::alerts_title);
    add(with_full_stop(sentence_start(alert.sentence)), bed_indent);
    const TodayPhrase action =
        alert.kind == AlertKind::crop_heat ? TodayPhrase::what_helps : TodayPhrase::do_this;
    add(with_full_stop(say(action, {{"action", alert.action}})), line_indent);
    add(say(TodayPhrase::why, {{"evidence", alert.evidence}}), line_indent);
    if (is_known(alert.likelihood))
      add(alert_likelihood_words(alert.likelihood, view_.language), line_indent);
  }
}

void Page::add_how_sure() {
  if (!view_.today.likelihood) return;
  const LikelihoodView sure{view_.garden, *view_.today.likelihood, view_.language};
  const std::vector<std::string> head = likelihood_head_words(sure);
  const std::vector<std::string> beds = likelihood_bed_words(sure);
  if (beds.empty()) return;
  add_heading(TodayPhrase::how_sure_title);
  add(head.front(), bed_indent);
  add_items(beds, bed_indent);
  add_items(minutes_doubt_words(sure), bed_indent);
  add(measure_next_words(sure), bed_indent);
  for (std::size_t index = 1; index < head.size(); ++index) add(head[index], bed_indent);
}

void Page::add_list(TodayPhrase title, const std::vector<std::string>& items) {
  if (items.empty()) return;
  add_heading(title);
  add_items(items, bed_indent);
}

}  // namespace

std::vector<PageParagraph> today_page(const TodayView& view) {
  Page page(view);
  page.add_head();
  page.add_open_section();
  page.add_section(Page::Section::look_first, TodayPhrase::look_first_title);
  page.add_section(Page::Section::blocked, TodayPhrase::blocked_title);
  page.add_section(Page::Section::leave_alone, TodayPhrase::leave_alone_title);
  page.add_alerts();
  page.add_how_sure();
  page.add_list(TodayPhrase::not_measured_title, estimate_words(view));
  page.add_list(TodayPhrase::take_care_title, caution_words(view));
  return page.take();
}

}  // namespace v1
}  // namespace noonleaf
