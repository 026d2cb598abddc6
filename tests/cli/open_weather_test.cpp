// docs/open_weather.md against the command: the yearly sums of ET0 over real open weather.
#include <array>
#include <cmath>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "cli/command_run.hpp"
#include "file_text.hpp"
#include "number_in.hpp"
#include "open_weather_file.hpp"

namespace {

const std::filesystem::path source = NOONLEAF_SOURCE_DIR;

/// A way to read a file, as the page words it.
struct Reading {
  std::string label;    ///< first cell of its rows
  std::string options;  ///< of `noonleaf et0`
};

struct YearSum {
  double et0_mm = 0;
  int days = 0;
};

struct Sums {
  std::map<std::string, YearSum> years;
  YearSum all;
};

// Hours and days without a number are counted as missing: they are not in `days`.
Sums sums_of(const Workplace& place, const std::string& file, const std::string& options) {
  const CommandRun run = run_noonleaf(place, "et0 " + file + " --precision 6 " + options);
  BOOST_REQUIRE_MESSAGE(run.exit_code == 0, run.err);
  Sums sums;
  std::istringstream lines(run.out);
  std::string line, last_day;
  std::getline(lines, line);
  while (std::getline(lines, line)) {
    const std::string day = line.substr(0, 10);
    const std::string et0 = line.substr(line.find(',') + 1);
    if (et0.front() == ',') continue;
    for (YearSum* sum : {&sums.years[day.substr(0, 4)], &sums.all}) {
      sum->et0_mm += number_in(et0);
      if (day != last_day) ++sum->days;
    }
    last_day = day;
  }
  return sums;
}

std::string millimetres(double sum) { return std::to_string(std::lround(sum)); }

using Equations = std::array<Sums, 3>;

Equations by_every_equation(const Workplace& place, const std::string& file, const std::string& options) {
  return {sums_of(place, file, options), sums_of(place, file, options + " --equation asce --surface short"),
          sums_of(place, file, options + " --equation asce --surface tall")};
}

void require_row(const std::string& page, const std::string& label, const std::array<YearSum, 3>& sums) {
  std::string row = "| " + label + " |";
  for (const YearSum& sum : sums) row += " " + millimetres(sum.et0_mm) + " |";
  row += " " + std::to_string(sums[0].days) + " |";
  BOOST_TEST(page.find(row) != std::string::npos, "not in docs/open_weather.md: " << row);
}

std::string page() { return file_text(source / "docs/open_weather.md"); }

void require_rows(const std::string& file, const std::vector<Reading>& readings, const std::string& common) {
  const Workplace place;
  for (const Reading& reading : readings) {
    const Equations sums = by_every_equation(place, file, common + " " + reading.options);
    require_row(page(), reading.label, {sums[0].all, sums[1].all, sums[2].all});
  }
}

}  // namespace

BOOST_AUTO_TEST_SUITE(open_weather)

BOOST_AUTO_TEST_CASE(every_year_of_the_daily_files) {
  const Workplace place;
  const std::string cities = (source / "weather_samples/open/seattle_newyork_daily_2012_2015.csv").string();
  const std::string chicago = (source / "weather_samples/open/chicago_daily_2001_2016.csv").string();
  const std::vector<std::array<std::string, 3>> files{
      {"Seattle", cities,
       "--where station=Seattle --latitude 47.45 --elevation 130 --wind-height 10 --coast"},
      {"New York", cities,
       "--where station=\"New York\" --latitude 40.78 --elevation 40 --wind-height 10 --coast"},
      {"Chicago", chicago,
       "--column tmin_f=temp_min_f --column tmax_f=temp_max_f --column tdew_f=dew_median_f --column "
       "wind_mph=wind_median_mph --latitude 41.9 --elevation 190 --wind-height 10"}};
  const std::string text = page();
  for (const auto& [label, file, options] : files) {
    const Equations sums = by_every_equation(place, file, options);
    for (const auto& [year, sum] : sums[0].years)
      require_row(text, label + " " + year, {sum, sums[1].years.at(year), sums[2].years.at(year)});
  }
}

BOOST_AUTO_TEST_CASE(the_hourly_year) {
  const auto file = open_weather_file("typical_year_hourly_45n_8e.csv");
  if (!file) return;
  require_rows(
      file->string(),
      {{"hours", "--daily-sum"},
       {"days of the hours", "--daily-equation"},
       {"days, sun withheld", "--daily-equation --ignore rs_w_m2"},
       {"days, humidity withheld", "--daily-equation --ignore rh_pct"},
       {"days, wind withheld", "--daily-equation --ignore wind_m_s"},
       {"days, temperature alone", "--daily-equation --ignore rs_w_m2 --ignore rh_pct --ignore wind_m_s"}},
      "--stamps begin --zone Etc/UTC --latitude 45 --longitude 8 --elevation 250 --wind-height 10");
}

BOOST_AUTO_TEST_CASE(the_climate_reference_year) {
  const auto file = open_weather_file("climate_reference_daily_2015.csv");
  if (!file) return;
  require_rows(file->string(),
               {{"all that was observed", ""},
                {"sun withheld", "--ignore rs_mj_m2"},
                {"humidity withheld", "--ignore rhmin_pct --ignore rhmax_pct"},
                {"humidity withheld, site called arid", "--ignore rhmin_pct --ignore rhmax_pct --arid"},
                {"temperature alone", "--ignore rs_mj_m2 --ignore rhmin_pct --ignore rhmax_pct"}},
               "--latitude 30.62 --elevation 400");
}

BOOST_AUTO_TEST_SUITE_END()
