// A day's page and its alerts in both languages: every alert, every obstacle, every thing that was not
// measured.
#include "noonleaf/report/today_words.hpp"

#include <cctype>
#include <functional>
#include <set>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/heat/crop_heat.hpp"
#include "noonleaf/report/alert_phrases.hpp"
#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/estimate_phrases.hpp"
#include "noonleaf/report/estimate_words.hpp"
#include "noonleaf/report/labels.hpp"
#include "noonleaf/report/outdoors_phrases.hpp"
#include "noonleaf/report/outdoors_words.hpp"
#include "noonleaf/report/soil_check_phrases.hpp"
#include "noonleaf/report/soil_check_words.hpp"
#include "noonleaf/report/today_page.hpp"
#include "noonleaf/report/today_phrases.hpp"
#include "noonleaf/units.hpp"

#include "golden_text.hpp"

using namespace noonleaf;
using namespace std::chrono_literals;

namespace {

/// The invented garden on the morning of its own day.
struct DemoDay {
  GardenFolder folder = read_garden_folder(NOONLEAF_DEMO_FOLDER, NOONLEAF_DEMO_FOLDER);
  Today today = plan_today(folder.garden, folder.journal, sky_over(folder.garden.site, folder.weather),
                           {.date = *folder.garden.site.demo_date});

  TodayView view(Language language) const { return {folder.garden, today, language}; }

  /// Leaves the tomatoes alone on the page, with nothing to say but what follows; their bed has a run.
  BedToday& keep_tomatoes() {
    today.beds.resize(1);
    today.opening_order = {0};
    PlantingToday& tomato = today.beds[0].plantings[0];
    tomato.heat.clear();
    tomato.wilt = {};
    tomato.low_quarter_wilt = {};
    today.beds[0].open_question.reset();
    return today.beds[0];
  }
  /// The same with leaves that hang, in the whole bed or in its driest quarter only.
  BedToday& hang(WiltVerdict verdict, bool only_driest = false) {
    BedToday& bed = keep_tomatoes();
    const WiltDay day{.verdict = verdict,
                      .droop_hours = 6,
                      .droop_from_h = 11.5,
                      .droop_until_h = 17.25,
                      .look_again_h = 19,
                      .peak_hour_h = 13,
                      .peak_demand_mm_h = 0.8,
                      .peak_supply_mm_h = 0.4};
    bed.plantings[0].low_quarter_wilt = day;
    bed.plantings[0].wilt = day;
    if (only_driest) bed.plantings[0].wilt.verdict = WiltVerdict::comfortable;
    return bed;
  }
};

void without_run(BedToday& bed) {
  bed.slot.reset();
  bed.driver.reset();
  bed.action = BedAction::leave_alone;
}

/// A morning that brings one kind of alert.
struct Morning {
  const char* what;
  std::function<void(DemoDay&)> make;
};

const std::vector<Morning> mornings{
    {"hung at dawn", [](DemoDay& day) { day.hang(WiltVerdict::wet_soil_droop); }},
    {"wilts, has a run",
     [](DemoDay& day) {
       WiltDay& wilt = day.hang(WiltVerdict::dry_soil_wilt).plantings[0].wilt;
       wilt.droop_until_h = day.today.beds[0].plantings[0].low_quarter_wilt.droop_until_h = missing;
     }},
    {"wilts, its run has no time", [](DemoDay& day) { day.hang(WiltVerdict::dry_soil_wilt).slot.reset(); }},
    {"wilts, no run", [](DemoDay& day) { without_run(day.hang(WiltVerdict::dry_soil_wilt)); }},
    {"the driest quarter wilts, has a run",
     [](DemoDay& day) {
       day.folder.garden.sprinklers[0].evenness_is_guess = true;
       day.hang(WiltVerdict::dry_soil_wilt, true);
     }},
    {"the driest quarter is short, no run",
     [](DemoDay& day) { without_run(day.hang(WiltVerdict::stress, true)); }},
    {"short far into the night",
     [](DemoDay& day) { day.hang(WiltVerdict::stress).plantings[0].low_quarter_wilt.droop_until_h = 25.2; }},
    {"short, leaves stand",
     [](DemoDay& day) { day.hang(WiltVerdict::stress).plantings[0].low_quarter_wilt.droop_hours = 0; }},
    {"hangs from heat, has a run", [](DemoDay& day) { day.hang(WiltVerdict::droop); }},
    {"hangs from heat, could be watered later",
     [](DemoDay& day) {
       BedToday& bed = day.hang(WiltVerdict::droop);
       without_run(bed);
       bed.later_slot = RunSlot{.begin = 19h + 30min, .end = 20h, .opener = 0, .closer = 0};
     }},
    {"hangs from heat, next chance", [](DemoDay& day) { without_run(day.hang(WiltVerdict::droop)); }},
    {"hangs from heat, nobody comes",
     [](DemoDay& day) {
       without_run(day.hang(WiltVerdict::droop));
       day.today.beds[0].next_chance.reset();
     }},
    {"hangs from heat, full soil",
     [](DemoDay& day) {
       without_run(day.hang(WiltVerdict::droop));
       day.today.beds[0].plantings[0].dr_mm = 0;
     }},
    {"no run possible",
     [](DemoDay& day) {
       day.keep_tomatoes().slot.reset();
       day.today.beds[0].action = BedAction::blocked;
     }},
    {"heat in the crop",
     [](DemoDay& day) {
       const std::vector<HeatDay> hot(1, {.date = day.today.date, .t_max_c = 39, .t_min_c = 28});
       day.keep_tomatoes().plantings[0].heat = crop_heat_findings("tomato", hot);
     }},
    {"frost",
     [](DemoDay& day) {
       day.keep_tomatoes();
       day.today.sky.estimate.t_min_c = -2;
     }},
    {"frost in the night to come", [](DemoDay& day) {
       day.keep_tomatoes();
       day.today.t_min_next_c = -2;
     }}};

std::string alert_lines(Language language) {
  std::string text;
  for (const Morning& morning : mornings) {
    DemoDay day;
    morning.make(day);
    text += std::string(text.empty() ? "" : "\n") + "== " + morning.what + "\n";
    for (const Alert& alert : alerts_of(day.view(language)))
      text += std::string(code(alert.kind)) + "\n" + alert.sentence + "\n" + alert.action + "\n" +
              alert.evidence + "\n";
  }
  return text;
}

/// Words that stand in almost every sentence of one language and in none of the other.
const std::set<std::string> english_words{
    "the",   "is",    "are",  "and",   "of",      "not",   "water", "bed",  "soil", "run",    "runs",
    "with",  "today", "down", "its",   "minutes", "it",    "hang",  "for",  "from", "leaves", "where",
    "until", "spare", "heat", "hours", "by",      "there", "was",   "feel", "seed", "one"};
const std::set<std::string> spanish_words{
    "la",  "el",  "las", "los",     "que",   "agua",   "cama", "tierra", "riego", "hoy",   "con",  "para",
    "del", "una", "por", "minutos", "hojas", "riegue", "y",    "hasta",  "desde", "donde", "calor"};

/// The words of a text in small letters. Commands are the same in every language: `noonleaf log DIR water a`.
std::set<std::string> words_of(std::string text) {
  for (const char* command : {"noonleaf log DIR water", "noonleaf log DIR feel", "log DIR feel",
                              "--feel moist", "--minutes", "--date"}) {
    for (std::size_t at = text.find(command); at != std::string::npos; at = text.find(command))
      text.erase(at, std::string(command).size());
  }
  for (std::size_t open = text.find('{'); open != std::string::npos; open = text.find('{'))
    text.erase(open, text.find('}', open) - open + 1);  // the names of what is filled in
  for (char& letter : text) {
    const bool is_letter = std::isalpha(static_cast<unsigned char>(letter)) != 0 ||
                           (static_cast<unsigned char>(letter) & 0x80U) != 0;
    letter = is_letter ? static_cast<char>(std::tolower(static_cast<unsigned char>(letter))) : ' ';
  }
  std::istringstream stream(text);
  std::set<std::string> words;
  for (std::string word; stream >> word;) words.insert(word);
  return words;
}

void check_language(const std::string& text, const std::set<std::string>& of_the_other) {
  for (const std::string& word : words_of(text))
    BOOST_TEST(of_the_other.count(word) == 0U, "\"" << word << "\" in: " << text);
  for (const char* promise : {"safe", "Safe", "seguro", "Seguro", "segura", "Segura"})
    BOOST_TEST(text.find(promise) == std::string::npos, text);
}

void check_both(const std::string& english, const std::string& spanish) {
  BOOST_TEST(english != spanish);
  BOOST_TEST(!english.empty());
  BOOST_TEST(!spanish.empty());
  check_language(english, spanish_words);
  check_language(spanish, english_words);
  for (const std::string* text : {&english, &spanish}) {
    BOOST_TEST(text->find("..") == std::string::npos, *text);
    BOOST_TEST(text->find('{') == std::string::npos, *text);
  }
}

template <class Id>
void check_table(const PhraseTable<Id>& english, const PhraseTable<Id>& spanish) {
  for (std::size_t row = 0; row < english.size(); ++row) {
    check_language(std::string(english[row].text), spanish_words);
    check_language(std::string(spanish[row].text), english_words);
  }
}

/// Both languages of each text of a pair of lists.
void check_lists(const std::vector<std::string>& english, const std::vector<std::string>& spanish) {
  BOOST_REQUIRE(english.size() == spanish.size());
  for (std::size_t line = 0; line < english.size(); ++line) check_both(english[line], spanish[line]);
}

}  // namespace

BOOST_AUTO_TEST_SUITE(today_words)

BOOST_AUTO_TEST_CASE(every_alert_in_both_languages) {
  const std::string english = alert_lines(Language::en), spanish = alert_lines(Language::es);
  check_golden("alerts_en.txt", english);
  check_golden("alerts_es.txt", spanish);
  for (const char* kind :
       {"look_at_the_roots", "dry_soil_wilt", "stress", "droop", "blocked_run", "crop_heat", "frost"})
    BOOST_TEST(english.find(std::string("\n") + kind + "\n") != std::string::npos, kind);
}

BOOST_AUTO_TEST_CASE(an_alert_on_the_sheet_names_beds_and_times_as_the_sheet_does) {
  for (const Morning& morning : mornings) {
    BOOST_TEST_INFO_SCOPE(morning.what);
    DemoDay day;
    morning.make(day);
    TodayView view = day.view(Language::en);
    view.read_on = ReadOn::sheet;
    for (const Alert& alert : alerts_of(view)) {
      const std::string words = alert.sentence + alert.action;
      BOOST_TEST(alert.sentence.find("bed A") != std::string::npos);
      BOOST_TEST(words.find("17:15") == std::string::npos);
      BOOST_TEST(words.find("19:00") == std::string::npos);
    }
  }
}

BOOST_AUTO_TEST_CASE(an_alert_has_no_word_of_the_other_language) {
  for (const Morning& morning : mornings) {
    DemoDay day;
    morning.make(day);
    const std::vector<Alert> english = alerts_of(day.view(Language::en)),
                             spanish = alerts_of(day.view(Language::es));
    BOOST_REQUIRE(english.size() == 1U);
    BOOST_REQUIRE(spanish.size() == 1U);
    BOOST_TEST((english[0].kind == spanish[0].kind));
    check_both(english[0].sentence, spanish[0].sentence);
    check_both(english[0].evidence, spanish[0].evidence);
    check_both(english[0].action, spanish[0].action);
  }
}

BOOST_AUTO_TEST_CASE(the_page_has_no_word_of_the_other_language) {
  const DemoDay day;
  const std::vector<PageParagraph> english = today_page(day.view(Language::en)),
                                   spanish = today_page(day.view(Language::es));
  BOOST_REQUIRE(english.size() == spanish.size());
  BOOST_TEST(english[0].text == day.folder.garden.site.name);
  for (std::size_t line = 1; line < english.size(); ++line) {
    check_both(english[line].text, spanish[line].text);
    BOOST_TEST(english[line].indent == spanish[line].indent);
    BOOST_TEST((english[line].weight == spanish[line].weight));
  }
}

BOOST_AUTO_TEST_CASE(no_phrase_of_the_tables_is_of_the_other_language) {
  check_table(alert_phrases_en, alert_phrases_es);
  check_table(today_phrases_en, today_phrases_es);
  check_table(soil_check_phrases_en, soil_check_phrases_es);
  check_table(estimate_phrases_en, estimate_phrases_es);
  check_table(not_measured_en, not_measured_es);
  check_table(outdoors_phrases_en, outdoors_phrases_es);
}

BOOST_AUTO_TEST_CASE(names_of_things) {
  for (int stage = 0; stage <= static_cast<int>(Stage::no_stages); ++stage)
    BOOST_TEST(label(Language::en, static_cast<Stage>(stage)) !=
               label(Language::es, static_cast<Stage>(stage)));
  for (int feel = 0; feel <= static_cast<int>(SoilFeel::field_capacity); ++feel)
    BOOST_TEST(label(Language::en, static_cast<SoilFeel>(feel)) !=
               label(Language::es, static_cast<SoilFeel>(feel)));
  for (int which = 0; which <= static_cast<int>(HeatHarm::bitterness); ++which) {
    const auto harm = static_cast<HeatHarm>(which);
    check_both(std::string(label(Language::en, harm)), std::string(label(Language::es, harm)));
    check_both(std::string(what_helps(Language::en, harm)), std::string(what_helps(Language::es, harm)));
  }
  for (int which = 1; which <= static_cast<int>(HeatCategory::extreme_danger); ++which) {
    const auto category = static_cast<HeatCategory>(which);
    check_both(std::string(label(Language::en, category)), std::string(label(Language::es, category)));
    check_both(std::string(effects(Language::en, category)), std::string(effects(Language::es, category)));
  }
  BOOST_TEST(effects(Language::es, HeatCategory::below_caution).empty());
}

BOOST_AUTO_TEST_CASE(every_obstacle) {
  DemoDay day;
  std::set<std::string> said;
  for (int which = 0; which <= static_cast<int>(RunObstacle::reclaimed); ++which) {
    BedToday& bed = day.today.beds[0];
    bed.obstacle = static_cast<RunObstacle>(which);
    const std::string spanish = obstacle_words(day.view(Language::es), bed);
    check_both(obstacle_words(day.view(Language::en), bed), spanish);
    BOOST_TEST(said.insert(spanish).second, spanish);
  }
}

BOOST_AUTO_TEST_CASE(everything_that_was_not_measured) {
  const DemoDay day;
  std::set<std::string> said;
  for (int which = 0; which <= static_cast<int>(NotMeasured::soil_half); ++which) {
    const Estimate estimate{.fact = static_cast<NotMeasured>(which),
                            .date = 2025y / 7 / 1,
                            .bed = "a",
                            .sprinkler = "fan",
                            .crop = day.today.beds[0].plantings[0].crop};
    const std::string spanish = estimate_words(day.folder.garden, estimate, Language::es);
    BOOST_TEST(said.insert(spanish).second, spanish);
    if (estimate.fact == NotMeasured::garden_doubt) continue;  // keeps its English, and says so
    check_both(estimate_words(day.folder.garden, estimate, Language::en), spanish);
  }
  const Estimate doubt{.fact = NotMeasured::garden_doubt, .doubt = "the tap is weak"};
  BOOST_TEST(estimate_words(day.folder.garden, doubt, Language::en) == "the tap is weak");
  BOOST_TEST(estimate_words(day.folder.garden, doubt, Language::es) ==
             "duda del archivo del jardín (en inglés): the tap is weak");
}

BOOST_AUTO_TEST_CASE(runs_in_doubt_and_looks_into_the_soil) {
  DemoDay day;
  BedToday& bed = day.today.beds[0];
  BOOST_REQUIRE(bed.open_question.has_value());
  const auto both = [&](auto words) {
    check_both(words(day.view(Language::en)), words(day.view(Language::es)));
  };
  const auto open = [&](const TodayView& view) { return open_question_words(view, bed); };
  for (std::size_t runs = 1; runs <= 3; ++runs) {
    both(open);
    bed.open_question->runs.push_back(bed.open_question->runs[0]);
  }
  bed.driver.reset();
  both(open);
  bed.reason = BedReason::look_first;
  both(open);
  bed.later_slot = bed.slot;
  both(open);
  bed.minutes_run_today = 10;
  const auto ran = [&](const TodayView& view) { return ran_today_words(view, bed); };
  both(ran);
  bed.planned_minutes = 25;
  both(ran);
  bed.driver = 0;
  both(ran);
  Sprinkler& by_hand = day.folder.garden.sprinklers[day.folder.garden.beds[bed.bed].sprinkler];
  const WettingKind kind = std::exchange(by_hand.kind, WettingKind::hand);
  bed.litres_run_today = 24 * litres_per_gallon;
  for (const double planned_l : {missing, 25 * litres_per_gallon}) {
    bed.planned_litres = planned_l;
    for (const double can_l : {missing, 2 * litres_per_gallon, 24 * litres_per_gallon}) {
      by_hand.can_l = can_l;
      for (const std::optional<std::size_t> driver : {std::optional<std::size_t>{}, {0}}) {
        bed.driver = driver;
        both(ran);
        BOOST_TEST(ran(day.view(Language::en)).find("minutes") == std::string::npos);
      }
    }
  }
  by_hand.can_l = 2 * litres_per_gallon;
  BOOST_TEST(ran(day.view(Language::en)) ==
             "24 gal (12 cans) of the planned 25 gal (12 cans) went on today; this is the rest.");
  by_hand.can_l = missing;
  by_hand.kind = kind;
  for (int check = 0; check < 4; ++check)
    bed.plantings[0].soil_checks.push_back({.entry_id = std::to_string(check),
                                            .date = day.today.date,
                                            .method = check == 0 ? JournalEvent::probe : JournalEvent::feel,
                                            .feel = SoilFeel::wet,
                                            .before = {.dr_mm = 30, .sd_mm = 3},
                                            .found = {.dr_mm = 5, .sd_mm = 3},
                                            .after = {.dr_mm = 17, .sd_mm = 2},
                                            .water_behind_mm = 40,
                                            .used_behind_mm = 60});
  check_lists(soil_check_words(day.view(Language::en), bed), soil_check_words(day.view(Language::es), bed));
  BOOST_TEST(doubt_words(day.view(Language::es), bed).size() == 1U);
  check_lists(doubt_words(day.view(Language::en), bed), doubt_words(day.view(Language::es), bed));
}

BOOST_AUTO_TEST_CASE(how_a_run_goes) {
  DemoDay day;
  BedToday& bed = day.today.beds[0];
  const auto both = [&](std::string (*words)(const TodayView&, const BedToday&)) {
    check_both(words(day.view(Language::en), bed), words(day.view(Language::es), bed));
  };
  bed.openings = {{.begin = 0min, .end = 20min}, {.begin = 45min, .end = 65min}};
  both(cycle_words);
  bed.run.multiplier_rule = MultiplierRule::lower_half_capped;
  bed.run.limit = RunLimit::raised_to_shortest;
  both(multiplier_words);
  bed.run.left_over_net_mm = 8;
  both(left_over_words);
  bed.next_chance.reset();
  bed.run.minutes = 60;
  both(left_over_words);
  bed.plantings[0].salt.leaching_frac = 0.12;
  both(salt_words);
  Sprinkler& sprinkler = day.folder.garden.sprinklers[0];
  sprinkler.kind = WettingKind::hand;
  bed.run.mean_depth_mm = 5;  // 45 litres on its 8.9 m2
  for (const double can_l : {missing, 9.0, 50.0}) {
    sprinkler.can_l = can_l;
    both(hand_words);
  }
  sprinkler.rate.basis = RateBasis::guess;
  both(sprinkler_words);
}

BOOST_AUTO_TEST_CASE(why_a_bed_is_left_alone) {
  DemoDay day;
  BedToday& bed = day.today.beds[0];
  without_run(bed);
  PlantingToday& tomato = bed.plantings[0];
  std::set<std::string> said;
  const auto both = [&] {
    const std::string spanish = why_words(day.view(Language::es), bed);
    check_both(why_words(day.view(Language::en), bed), spanish);
    BOOST_TEST(said.insert(spanish).second, spanish);
  };
  bed.reason = BedReason::lasts;
  tomato.limit_day = day.today.date;
  both();
  bed.open_question.reset();
  tomato.dr_mm = 0.5;
  both();
  bed.next_chance.reset();
  both();
  tomato.limit_day.reset();
  both();
  for (const BedReason reason : {BedReason::look_first, BedReason::ground_closed}) {
    bed.reason = reason;
    both();
  }
  bed.reason = BedReason::lasts;
  tomato.stage = Stage::over;
  both();
  bed.plantings.clear();
  both();
}

BOOST_AUTO_TEST_CASE(why_a_bed_is_opened) {
  DemoDay day;
  BedToday& bed = day.today.beds[0];
  bed.reason = BedReason::limit_before_chance;
  std::set<std::string> said;
  for (const int days_ahead : {0, 1, 2}) {
    bed.plantings[*bed.urgent].limit_day =
        std::chrono::sys_days(day.today.date) + std::chrono::days(days_ahead);
    const std::string spanish = why_words(day.view(Language::es), bed);
    check_both(why_words(day.view(Language::en), bed), spanish);
    BOOST_TEST(said.insert(spanish).second, spanish);
    if (days_ahead == 1) bed.next_chance.reset();
  }
  bed.reason = BedReason::rest_of_run;
  const std::string rest = why_words(day.view(Language::es), bed);
  check_both(why_words(day.view(Language::en), bed), rest);
  BOOST_TEST(said.insert(rest).second, rest);
}

BOOST_AUTO_TEST_CASE(an_hour_outside_in_both_languages) {
  for (const double t_c : {20.0, 28.0, 33.0, 38.0, 45.0}) {
    const OutdoorAnswer shade = outdoor_answer({.t_c = t_c, .rh_pct = 50});
    const OutdoorAnswer sun = outdoor_answer({.t_c = t_c, .rh_pct = 50, .wind_m_s = 2, .rs_w_m2 = 800});
    for (const OutdoorAnswer& answer : {shade, sun}) {
      check_lists(outdoor_words(answer, Language::en), outdoor_words(answer, Language::es));
      check_lists(outdoor_cautions(answer, Language::en), outdoor_cautions(answer, Language::es));
    }
  }
  check_both(outdoor_title(Language::en), outdoor_title(Language::es));
}

// 118 °F and 60 %: the equation gives 213 °F, which no chart has.
BOOST_AUTO_TEST_CASE(a_heat_index_beyond_the_chart_is_read_as_its_class) {
  DemoDay day;
  const auto heat_caution = [&](Language language) { return caution_words(day.view(language)).front(); };
  BOOST_TEST(heat_caution(Language::en).find("published chart") == std::string::npos);
  day.today.people.peak_c = heat_index_c({.t_c = (118 - 32) / 1.8, .rh_pct = 60});
  day.today.people.peak_category = heat_category(day.today.people.peak_c);
  BOOST_TEST(heat_caution(Language::en).find("Read it as \"Extreme Danger\", not as a number.") !=
             std::string::npos);
  BOOST_TEST(heat_caution(Language::es).find("Tómelo como «Peligro extremo», no como número.") !=
             std::string::npos);
}

// Inches are feminine and millimetres masculine: the depth stands apart from the article.
BOOST_AUTO_TEST_CASE(the_depth_of_a_seedbed_has_no_gender_in_spanish) {
  for (const char* zone : {"1,02 pulg.", "26 mm"}) {
    const std::string words =
        fill(Language::es, TodayPhrase::seed_used,
             {{"crop", "zanahoria"}, {"zone", zone}, {"now", "5 mm"}, {"spare", "8 mm"}});
    BOOST_TEST(words.find("tierra (" + std::string(zone) + ")") != std::string::npos, words);
  }
}

BOOST_AUTO_TEST_CASE(sentences_begin_with_a_capital) {
  BOOST_TEST(sentence_start("árboles") == "Árboles");
  BOOST_TEST(sentence_start("ñame") == "Ñame");
  BOOST_TEST(sentence_start("tomate") == "Tomate");
  BOOST_TEST(sentence_start("÷ 2") == "÷ 2");
  BOOST_TEST(sentence_start("").empty());
}

BOOST_AUTO_TEST_CASE(a_full_stop_stands_once) {
  BOOST_TEST(filled_text("Faltan {depth}.", {{"depth", "0,55 pulg."}}) == "Faltan 0,55 pulg.");
  BOOST_TEST(filled_text("Faltan {depth}.", {{"depth", "14 mm"}}) == "Faltan 14 mm.");
}

BOOST_AUTO_TEST_SUITE_END()
