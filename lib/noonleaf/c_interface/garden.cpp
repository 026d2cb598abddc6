#include <chrono>
#include <memory>
#include <string>

#include "noonleaf/c_interface/columns.hpp"
#include "noonleaf/c_interface/sized_struct.hpp"
#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/today_json.hpp"
#include "noonleaf/report/week_text.hpp"

using namespace noonleaf::c_interface;

struct noonleaf_garden {
  noonleaf::GardenFolder folder;
  noonleaf::Sky sky;
};

namespace {

constexpr int64_t minutes_a_day = 24L * 60;

std::chrono::minutes minute_of(int64_t minute, const char* member) {
  if (minute < 0 || minute > minutes_a_day)
    throw CallRefused(member, std::to_string(minute) + " is outside 0 to " + std::to_string(minutes_a_day),
                      "count minutes from the midnight that begins the day");
  return std::chrono::minutes{minute};
}

}  // namespace

noonleaf_status noonleaf_garden_read(const char* folder, noonleaf_garden** garden,
                                     noonleaf_problems** problems) {
  return guarded(problems, [&] {
    required(garden, "garden") = nullptr;
    const std::string name = &required(folder, "folder");
    auto read = std::make_unique<noonleaf_garden>();
    read->folder = noonleaf::read_garden_folder(name, name);
    read->sky = noonleaf::sky_over(read->folder.garden.site, read->folder.weather);
    *garden = read.release();
    return noonleaf_status{noonleaf_done};
  });
}

void noonleaf_garden_free(noonleaf_garden* garden) { delete garden; }

noonleaf_status noonleaf_today_json(const noonleaf_garden* garden, const noonleaf_moment* moment, char** json,
                                    noonleaf_problems** problems) {
  return guarded(problems, [&] {
    required(json, "json") = nullptr;
    const noonleaf_garden& here = required(garden, "garden");
    const noonleaf_moment given = taken(moment, default_moment(), "moment");
    const noonleaf::TodayQuestion question{.date = day_of(given.date, "date"),
                                           .from = minute_of(given.minute, "minute")};
    noonleaf::Today today = noonleaf::plan_today(here.folder.garden, here.folder.journal, here.sky, question);
    today.likelihood =
        noonleaf::likelihood_of_today(here.folder.garden, here.folder.journal, here.sky, today);
    *json = text_for_caller(noonleaf::today_json({here.folder.garden, today}));
    return noonleaf_status{noonleaf_done};
  });
}

noonleaf_status noonleaf_week_json(const noonleaf_garden* garden, const noonleaf_week_request* request,
                                   char** json, noonleaf_problems** problems) {
  return guarded(problems, [&] {
    required(json, "json") = nullptr;
    const noonleaf_garden& here = required(garden, "garden");
    const noonleaf_week_request given = taken(request, default_week_request(), "request");
    const noonleaf::LocalTime made{day_of(given.made_date, "made_date"),
                                   minute_of(given.made_minute, "made_minute")};
    noonleaf::WeekQuestion question{.first = made.date, .days = given.days};
    if (!is_no_day(given.first_day)) question.first = day_of(given.first_day, "first_day");
    if (question.first == made.date) question.from = made.time_of_day;
    const noonleaf::Garden& garden_read = here.folder.garden;
    const noonleaf::Journal& journal = here.folder.journal;
    const auto language = chosen<noonleaf::Language>(given.language, 2, "language");
    noonleaf::WeekPlan plan = noonleaf::plan_week(garden_read, journal, here.sky, question);
    plan.likelihood = noonleaf::likelihood_of_week(garden_read, journal, here.sky, plan);
    noonleaf::WeekView view{.garden = garden_read, .plan = plan, .language = language, .made = made};
    view.alerts = noonleaf::alerts_beside(plan, made.date, garden_read, journal, here.sky, language);
    *json = text_for_caller(noonleaf::week_json(view));
    return noonleaf_status{noonleaf_done};
  });
}
