// The readers, the plan and the report, over the demo garden: one copy that all threads share, and copies of
// their own.
#include <chrono>
#include <string>
#include <vector>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/garden/week_sheet.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/plan/away.hpp"
#include "noonleaf/plan/explanation.hpp"
#include "noonleaf/plan/ledger.hpp"
#include "noonleaf/plan/round.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/away_words.hpp"
#include "noonleaf/report/cans_file.hpp"
#include "noonleaf/report/cans_words.hpp"
#include "noonleaf/report/check_json.hpp"
#include "noonleaf/report/crop_curve.hpp"
#include "noonleaf/report/crop_words.hpp"
#include "noonleaf/report/explain_steps.hpp"
#include "noonleaf/report/ledger_words.hpp"
#include "noonleaf/report/outdoors_words.hpp"
#include "noonleaf/report/round_words.hpp"
#include "noonleaf/report/soil_words.hpp"
#include "noonleaf/report/today_json.hpp"
#include "noonleaf/report/today_words.hpp"
#include "noonleaf/report/week_text.hpp"
#include "noonleaf/soil/texture.hpp"
#include "noonleaf/weather/daily_file.hpp"

#include "door.hpp"

namespace {

using namespace noonleaf;
using namespace std::chrono;

const std::string demo = NOONLEAF_SOURCE_DIR "/weather_samples/demo";
constexpr year_month_day date = 2025y / July / 16;

struct SharedGarden {
  GardenFolder folder = read_garden_folder(demo, demo);
  Sky sky = sky_over(folder.garden.site, folder.weather);
};

/// Made by whichever thread comes first, then read by all.
const SharedGarden& shared() {
  static const SharedGarden garden;
  return garden;
}

std::string reading() {
  const GardenFolder folder = read_garden_folder(demo, demo);
  const Sky sky = sky_over(folder.garden.site, folder.weather);
  Print out;
  for (const SkyDay& day : sky.days) out << day.et0_mm_d;
  out << check_json(folder) << folder.journal.size();
  return out.text();
}

std::string zones() {
  Print out;
  for (const char* zone : {"America/Los_Angeles", "America/Chicago", "Europe/Madrid", "Asia/Kolkata"}) {
    require_zone(zone);
    out << utc_offset_h(zone, date);
    out << static_cast<double>(noonleaf::local_time(zone, sys_days{date} + 20h).time_of_day.count());
  }
  return out.text();
}

std::string today() {
  const SharedGarden& here = shared();
  const Today day = plan_today(here.folder.garden, here.folder.journal, here.sky, {.date = date});
  const TodayView view{here.folder.garden, day};
  Print out;
  out << today_json(view);
  for (const BedToday& bed : day.beds)
    out << why_words(view, bed) << depletion_words(view, bed) << salt_words(view, bed);
  out << estimate_words(view) << caution_words(view) << alerts_of(view).size();
  return out.text();
}

std::string week() {
  const SharedGarden& here = shared();
  const WeekPlan plan =
      plan_week(here.folder.garden, here.folder.journal, here.sky, {.first = date, .days = 7});
  Print out;
  for (const Language language : {Language::en, Language::es}) {
    const WeekView view{
        .garden = here.folder.garden, .plan = plan, .language = language, .made = {date, minutes{0}}};
    out << week_text(view) << week_html(view) << week_csv(view) << week_json(view) << week_ics(view);
    for (const WeekRun& run : plan.runs) out << by_hand_words(view, run) << by_hand_l(view, run);
  }
  return out.text();
}

std::string away() {
  const SharedGarden& here = shared();
  const Away answer =
      plan_away(here.folder.garden, here.folder.journal, here.sky, {date, date, 2025y / July / 22});
  const AwayView view{here.folder.garden, answer};
  Print out;
  out << away_json(view);
  for (const Language language : {Language::en, Language::es})
    out << away_text(view, language) << away_sheet_html(view, language) << away_sheet_text(view, language);
  return out.text();
}

std::string round_of_gardens() {
  const SharedGarden& here = shared();
  const RoundRow row{demo, round_entry(here.folder.garden, here.folder.journal, here.sky, date)};
  Print out;
  out << round_json(row);
  return out.text();
}

std::string ledger() {
  const SharedGarden& here = shared();
  const Ledger water =
      water_ledger(here.folder.garden, here.folder.journal, here.sky, 2025y / June / 1, date);
  const LedgerView view{here.folder.garden, water};
  Print out;
  out << ledger_text(view) << ledger_csv(view) << ledger_html(view) << ledger_json(view);
  return out.text();
}

std::string explanation() {
  const SharedGarden& here = shared();
  const DayExplanation day = explain_day(here.folder.garden, here.folder.journal, here.sky, 0, date);
  const ExplainView view{here.folder.garden, day};
  Print out;
  out << explain_json(view) << explain_estimates(view);
  return out.text();
}

std::string tables() {
  Print out;
  out << crop_table_text() << crops_json() << soil_table_text() << soils_json()
      << soil_json(soil_answer(find_texture("loam")));
  const Crop& crop = find_crop("tomato");
  const StageLengths* stages = curve_stages(crop, "");
  out << crop_words(crop) << crop_curve_text(crop, stages) << crop_curve_svg(crop, stages);
  return out.text();
}

std::string cans() {
  const CanSheet sheet = parse_can_sheet(
      "can,depth_mm,x_m,y_m\n1,6,0,0\n2,8,1,0\n3,5,0,1\n4,9.5,1,1\n5,7,0.5,2\n", "cans.csv", {.minutes = 30});
  Print out;
  out << can_result_words(sheet) << can_advice_words(sheet) << can_map_text(sheet)
      << can_map_svg(sheet, "cans") << can_json(sheet, "cans.csv");
  return out.text();
}

std::string outdoors() {
  const OutdoorAnswer answer = outdoor_answer({.t_c = 36, .rh_pct = 40, .wind_m_s = 2, .rs_w_m2 = 850});
  Print out;
  out << outdoor_words(answer) << outdoor_cautions(answer) << outdoor_json(answer)
      << beyond_chart_words(Language::es, 48, 101);
  return out.text();
}

std::string texts() {
  const std::string garden_text = read_text_file(demo + "/garden.toml", "garden.toml", 1 << 20);
  const Garden garden = parse_garden(garden_text, "garden.toml");
  const std::string journal_text = read_text_file(demo + "/journal.csv", "journal.csv", 1 << 20);
  Print out;
  out << garden.beds.size() << parse_journal(journal_text, "journal.csv", &garden).size();
  try {
    parse_garden("[site]\nlatitude_deg = \"north\"\n", "broken.toml");
  } catch (const Error& refused) {
    out << describe(refused.problems());
  }
  return out.text();
}

}  // namespace

std::vector<Door> garden_doors() {
  return {{"reading", reading},   {"zones", zones},
          {"today", today},       {"week", week},
          {"away", away},         {"round", round_of_gardens},
          {"ledger", ledger},     {"explanation", explanation},
          {"tables", tables},     {"cans", cans},
          {"outdoors", outdoors}, {"texts", texts}};
}
