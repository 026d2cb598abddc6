#include "noonleaf/weather/daily_file.hpp"

#include <string>
#include <string_view>

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/missing.hpp"

#include "refusal.hpp"
#include "text_checks.hpp"
#include "weather/temporary_file.hpp"

using namespace std::chrono_literals;
using noonleaf::Error;
using noonleaf::Problem;
using noonleaf::WeatherFile;
using noonleaf::WeatherOptions;

namespace {

WeatherFile read(std::string_view bytes, const WeatherOptions& options = {}) {
  const TemporaryFile file(bytes);
  return noonleaf::read_daily_weather(file.path(), "w.csv", options);
}

// The problems for which a file is refused, as a person reads them.
std::string refusal(std::string_view bytes, const WeatherOptions& options = {}) {
  return refusal_text([&] { read(bytes, options); });
}

}  // namespace

BOOST_AUTO_TEST_SUITE(daily_file)

BOOST_AUTO_TEST_CASE(reads_all_canonical_columns) {
  const WeatherFile file = read(
      "date,tmin_c,tmax_c,tmean_c,rhmin_pct,rhmax_pct,rh_pct,tdew_c,ea_kpa,wind_m_s,rs_mj_m2,sunshine_h,"
      "pressure_kpa,rain_mm\n"
      "2015-07-06,12.3,21.5,17,63,84,73.5,10.5,1.409,2.078,22.07,9.25,100.1,0.2\n",
      {.site = {.latitude_deg = 50.8, .longitude_deg = 4.35, .elevation_m = 100}});
  BOOST_REQUIRE_EQUAL(file.days.size(), 1U);
  const noonleaf::DailyWeather& day = file.days[0];
  BOOST_TEST((day.date == 2015y / 7 / 6));
  BOOST_TEST(day.t_min_c == 12.3);
  BOOST_TEST(day.t_max_c == 21.5);
  BOOST_TEST(day.t_mean_c == 17.0);
  BOOST_TEST(day.rh_min_pct == 63.0);
  BOOST_TEST(day.rh_max_pct == 84.0);
  BOOST_TEST(day.rh_mean_pct == 73.5);
  BOOST_TEST(day.t_dew_c == 10.5);
  BOOST_TEST(day.ea_kpa == 1.409);
  BOOST_TEST(day.wind_m_s == 2.078);
  BOOST_TEST(day.rs_mj_m2_d == 22.07);
  BOOST_TEST(day.sunshine_h == 9.25);
  BOOST_TEST(day.pressure_kpa == 100.1);
  BOOST_TEST(day.rain_mm == 0.2);
  BOOST_TEST(file.format == "weather CSV, daily");
  BOOST_TEST(file.lines[0] == 2U);
  BOOST_TEST(file.notes.empty());
  BOOST_TEST(file.set_aside.empty());
  BOOST_TEST(file.doubts.empty());
}

BOOST_AUTO_TEST_CASE(converts_units_exactly) {
  const WeatherFile file = read(
      "date,tmin_f,tmax_f,tdew_f,wind_mph,rs_w_m2,pressure_inhg,rain_in\n"
      "2015-07-06,50,77,41,10,250,29.92,1\n");
  const noonleaf::DailyWeather& day = file.days.at(0);
  BOOST_TEST(day.t_min_c == 10.0);
  BOOST_TEST(day.t_max_c == 25.0);
  BOOST_TEST(day.t_dew_c == 5.0);
  BOOST_TEST(day.wind_m_s == 4.4704);
  BOOST_TEST(day.rs_mj_m2_d == 250 * 0.0864);
  BOOST_TEST(day.pressure_kpa == 29.92 * 3.386389);
  BOOST_TEST(day.rain_mm == 25.4);
  BOOST_TEST(read("date,wind_km_h\n2015-07-06,36\n").days.at(0).wind_m_s == 10.0);
  BOOST_TEST(read("date,wind_kn\n2015-07-06,36\n").days.at(0).wind_m_s == 18.52);
  BOOST_TEST(read("date,pressure_hpa\n2015-07-06,1013.25\n").days.at(0).pressure_kpa == 101.325);
}

BOOST_AUTO_TEST_CASE(an_empty_cell_is_missing) {
  const WeatherFile file = read("date,tmin_c,tmax_c,rain_mm\n2015-07-06,,21.5,\n2015-07-07, ,\"\",0\n");
  BOOST_TEST(noonleaf::is_missing(file.days.at(0).t_min_c));
  BOOST_TEST(file.days.at(0).t_max_c == 21.5);
  BOOST_TEST(noonleaf::is_missing(file.days.at(0).rain_mm));
  BOOST_TEST(noonleaf::is_missing(file.days.at(1).t_min_c));
  BOOST_TEST(noonleaf::is_missing(file.days.at(1).t_max_c));
  BOOST_TEST(noonleaf::is_missing(file.days.at(1).wind_m_s));
}

BOOST_AUTO_TEST_CASE(reads_every_usual_spelling_of_a_table) {
  const std::string_view spellings[] = {
      "date,tmin_c,rain_mm\n2015-07-06,12.5,3\n",
      "\xEF\xBB\xBF"
      "date,tmin_c,rain_mm\r\n2015-07-06,12.5,3\r\n",
      "# my station\n#\n\ndate,tmin_c,rain_mm\n# a remark\n2015-07-06,12.5,3",
      "date;tmin_c;rain_mm\n2015-07-06;12,5;3\n",
      "date;tmin_c;rain_mm\n2015-07-06;12.5;3\n",
      "date\ttmin_c\train_mm\n2015-07-06\t12,5\t3\n",
      "\"date\",\"tmin_c\",\"rain_mm\"\n\"2015-07-06\",\"12.5\",\"3\"\n",
      " Date , TMIN_C ,rain_mm\n 2015-07-06 , +12.5 , 3.0 \n",
      "date,note,tmin_c,rain_mm\n2015-07-06,\"hot, dry\",12.5,3\n",
      "date,note,tmin_c,rain_mm\n2015-07-06,\"two\nlines \"\"quoted\"\"\",12.5,3\n",
      "date,tmin_c,rain_mm,\n2015-07-06,1.25e1,3,\n,,,\n",
      "time,tmin_c,rain_mm\n20150706,12.50,3\n",
  };
  for (const std::string_view spelling : spellings) {
    BOOST_TEST_CONTEXT(spelling) {
      const WeatherFile file = read(spelling);
      BOOST_REQUIRE_EQUAL(file.days.size(), 1U);
      BOOST_TEST((file.days[0].date == 2015y / 7 / 6));
      BOOST_TEST(file.days[0].t_min_c == 12.5);
      BOOST_TEST(file.days[0].rain_mm == 3.0);
    }
  }
}

BOOST_AUTO_TEST_CASE(maps_columns_and_chooses_a_station) {
  const WeatherOptions options{.columns = {{"rain_mm", "Precip (mm)"}, {"tmin_f", "Low"}, {"date", "Day"}},
                               .where = noonleaf::RowFilter{"station", "B"}};
  const WeatherFile file = read(
      "station,Day,Low,Precip "
      "(mm)\nA,2015-07-06,50,1\nB,2015-07-06,59,2\n\"A\",2015-07-07,50,1\n\"B\",2015-07-07,68,3\n",
      options);
  BOOST_REQUIRE_EQUAL(file.days.size(), 2U);
  BOOST_TEST(file.days[0].t_min_c == 15.0);
  BOOST_TEST(file.days[1].rain_mm == 3.0);
}

BOOST_AUTO_TEST_CASE(several_stations_ask_for_a_choice) {
  const std::string text =
      refusal("station,date,rain_mm\nA,2015-07-06,1\nB b,2015-07-06,2\nA,2015-07-07,1\n");
  BOOST_TEST(text ==
             "w.csv: station: the file holds several stations: \"A\", \"B b\"\n"
             "  fix: choose one with --where station=\"A\"\n");
}

BOOST_AUTO_TEST_CASE(a_station_that_is_not_there_is_named) {
  const WeatherOptions options{.where = noonleaf::RowFilter{"station", "Seatle"}};
  const std::string text =
      refusal("station,date,rain_mm\nSeattle,2015-07-06,1\nNew York,2015-07-06,2\n", options);
  BOOST_TEST(text == "w.csv: --where: no row has station = \"Seatle\"\n  fix: did you mean \"Seattle\"?\n");
}

BOOST_AUTO_TEST_CASE(columns_that_are_not_known_are_noted_once) {
  const WeatherFile file = read("date,rain_mm,sky,,sky\n2015-07-06,1,blue,,x\n");
  BOOST_REQUIRE_EQUAL(file.notes.size(), 1U);
  BOOST_TEST(file.notes[0] == "columns not read: sky, (no name), sky");
}

BOOST_AUTO_TEST_CASE(text_in_a_number_is_shown_with_its_place) {
  BOOST_TEST(refusal("date,rhmax_pct,tmin_c\n2015-07-06,84,1\n2015-07-07,1O2,2\n") ==
             "w.csv:3:12: rhmax_pct: \"1O2\" is not a number\n"
             "  2015-07-07,1O2,2\n"
             "             ^^^\n"
             "  fix: write digits only, like 102\n");
}

BOOST_AUTO_TEST_CASE(columns_count_characters) {
  BOOST_TEST(refusal("note,date,rain_mm\nseñal,2015-07-07,x\n") ==
             "w.csv:2:18: rain_mm: \"x\" is not a number\n"
             "  señal,2015-07-07,x\n"
             "                   ^\n"
             "  fix: write a number like 12.5, or leave the cell empty\n");
}

BOOST_AUTO_TEST_CASE(a_date_that_does_not_exist) {
  BOOST_TEST(refusal("date,rain_mm\n2025-02-30,1\n") ==
             "w.csv:2:1: date: \"2025-02-30\" does not exist: that month has 28 days\n"
             "  2025-02-30,1\n"
             "  ^^^^^^^^^^\n"
             "  fix: write a day of the calendar, like 2025-02-28\n");
}

BOOST_AUTO_TEST_CASE(an_ambiguous_date_names_both_readings) {
  BOOST_TEST(refusal("date,rain_mm\n7/4/26,1\n") ==
             "w.csv:2:1: date: \"7/4/26\" could be 2026-07-04 or 2026-04-07\n"
             "  7/4/26,1\n"
             "  ^^^^^^\n"
             "  fix: write dates as year-month-day, like 2026-07-04\n");
  WeatherOptions options;
  options.date_order = noonleaf::DateOrder::month_first;
  BOOST_TEST((read("date,rain_mm\n7/4/2026,1\n", options).days.at(0).date == 2026y / 7 / 4));
  options.date_order = noonleaf::DateOrder::day_first;
  BOOST_TEST((read("date,rain_mm\n7.4.2026,1\n", options).days.at(0).date == 2026y / 4 / 7));
}

BOOST_AUTO_TEST_CASE(all_problems_of_a_file_come_at_once) {
  try {
    read(
        "date,tmin_c,rain_mm\n2025-02-30,1,2\n2025-03-01,x,y\n2025-03-02,1\n2025-03-03,1,2,3\n2025-03-04,1,"
        "2\n");
    BOOST_FAIL("should have been refused");
  } catch (const Error& refused) {
    BOOST_REQUIRE_EQUAL(refused.problems().size(), 5U);
    BOOST_TEST(refused.problems()[1].field == "tmin_c");
    BOOST_TEST(refused.problems()[2].field == "rain_mm");
    BOOST_TEST(refused.problems()[3].message == "the row has 2 cells, the header 3");
    BOOST_TEST(refused.problems()[4].message == "the row has 4 cells, the header 3");
    BOOST_TEST(refused.problems()[4].column == 16U);
    BOOST_TEST(refused.problems()[4].line == 5U);
  }
}

// What a file is refused for, and a part of what is said.
BOOST_AUTO_TEST_CASE(every_refusal_says_what_and_how) {
  struct Refused {
    std::string_view bytes, said, fix;
  };
  const Refused cases[] = {
      {"", "the file is empty", "header line"},
      {"\xEF\xBB\xBF", "the file is empty", "header line"},
      {"\n\n# only a remark\n", "no header and no rows", "header line"},
      {"date,rain_mm\n", "a header but no rows", "add rows"},
      {"date,rain_mm\n\n,\n# remark\n", "a header but no rows", "add rows"},
      {std::string_view("\xFF\xFE"
                        "d\0a\0t\0e\0",
                        10),
       "UTF-16", "CSV UTF-8"},
      {std::string_view("d\0a\0t\0e\0", 8), "UTF-16", "CSV UTF-8"},
      {"PK\x03\x04 rest of a workbook", "a packed file or a workbook", "CSV UTF-8"},
      {std::string_view("date,rain_mm\n2015-07-06,\0001\n", 26), "a byte 0", "export"},
      {"day,rain_mm\n2015-07-06,1\n", "no column says the day", "--column date=\"day\""},
      {"tmin_c,rain_mm\n1,2\n", "no column says the day", "--column date=\"Day\""},
      {"2015-07-06,1\n2015-07-07,2\n", "no header line", "date,tmin_c"},
      {"date,sky\n2015-07-06,blue\n", "no column holds weather", "--column rain_mm"},
      {"date,rain_mm,rain_mm\n2015-07-06,1,1\n", "\"rain_mm\" is there twice", "keep one"},
      {"date,rain_mm,rain_in\n2015-07-06,1,1\n", "same quantity in two units (mm, in)", "keep one"},
      {"date,t_c,tmean_c\n2015-07-06,1,1\n", "hold the same quantity", "keep one"},
      {"date,wind_ms\n2015-07-06,1\n", "\"wind_ms\" is not a column that is known; did you mean wind_m_s?",
       "--ignore \"wind_ms\""},
      {"date,rainmm\n2015-07-06,1\n", "did you mean rain_mm?", "rename"},
      {"date,tmax,rain_mm\n2015-07-06,1,1\n",
       "\"tmax\" does not say its unit; did you mean tmax_c or tmax_f?", "rename"},
      {"date,pressure_mb\n2015-07-06,1013\n", "did you mean pressure_hpa?", "rename"},
      {"date,rain_mm\n2015-07-06,\"1\n2015-07-07,2\n", "a quote is opened here and never closed", "close it"},
      {"date,rain_mm\n2015-07-06,\"1\"x\n", "text stands behind the closing quote", "between quotes"},
      {"date,rain_mm\r2015-07-06,1\r", "carriage return alone", "line feeds"},
      {"date,rain_mm\n,1\n", "the cell is empty", "2026-07-04"},
      {"date,rain_mm\n2015-07-06T12:00,1\n", "is a time, not a date", "2015-07-06"},
      {"date,rain_mm\n13/14/2015,1\n", "is not an ISO date", "2026-07-04"},
      {"date,rain_mm\n24/12/2015,1\n", "is not an ISO date", "2015-12-24"},
      {"date,rain_mm\n2015/7/6,1\n", "is not an ISO date", "2015-07-06"},
      {"date,rain_mm\nyesterday,1\n", "\"yesterday\" is not a date", "2026-07-04"},
      {"date,rain_mm\n2015-13-01,1\n", "months are 01 to 12", "2026-07-04"},
      {"date,rain_mm\n0000-01-01,1\n", "years are 1800 to 2200", "2026-07-04"},
      {"date,rain_mm\n0025-07-01,1\n", "years are 1800 to 2200", "year in full"},
      {"date,rain_mm\n9999-07-01,1\n", "years are 1800 to 2200", "year in full"},
      {"date,rain_mm\n###,1\n", "too narrow", "widen the column"},
      {"date,rain_mm\n2015-07-06,####\n", "too narrow", "widen the column"},
      {"date,rain_mm\n2015-07-06,#DIV/0!\n", "is not a number", "leave the cell empty"},
      {"date,rain_mm\n2015-07-06,=SUM(B2:B3)\n", "is a formula", "export the values"},
      {"date,rain_mm\n2015-07-06,31\u00a0\n", "cannot be seen", "type the number again"},
      {"<!DOCTYPE html>\n<html>\n", "is a web page", "download the CSV"},
      {"%PDF-1.7\n1 0 obj\n", "is a document or a picture", "CSV file"},
      {"date,rain_mm\n2015-07-06,T\n", "\"T\" is not a number", "write 0 for a trace"},
      {"date,rain_mm\n2015-07-06,NA\n", "\"NA\" is not a number", "leave the cell empty"},
      {"date,rain_mm\n2015-07-06,nan\n", "\"nan\" is not a number", "leave the cell empty"},
      {"date,rain_mm\n2015-07-06,inf\n", "\"inf\" is not a number", "leave the cell empty"},
      {"date,tmin_c\n2015-07-06,\xE2\x88\x92"
       "5\n",
       "minus sign", "-2.5"},
      {"date,rain_mm\n2015-07-06,\"1,5\"\n", "another decimal mark", "semicolons"},
      {"date;rain_mm\n2015-07-06;1,5\n2015-07-07;1.5\n", "another decimal mark", "12,5"},
      {"date,pressure_hpa\n2015-07-06,\"1,013.2\"\n", "thousands separator", "without"},
      {"date,rain_mm\n2015-07-06,1e999\n", "\"1e999\" is not a number", "12.5"},
      {"date,rain_mm\n2015-07-06,0x10\n", "\"0x10\" is not a number", "12.5"},
      {"date,rain_mm\n2015-07-06,1.2.3\n", "\"1.2.3\" is not a number", "12.5"},
      {"date,rain_mm\n2015-07-06,--1\n", "\"--1\" is not a number", "12.5"},
      {"date,rain_mm\n2015-07-06,+-1\n", "\"+-1\" is not a number", "12.5"},
      {"date,rain_mm\n2015-07-06,1 mm\n", "\"1 mm\" has its unit beside it", "the number alone, like 1"},
  };
  for (const Refused& refused : cases) {
    BOOST_TEST_CONTEXT(refused.bytes) {
      const std::string text = refusal(refused.bytes);
      BOOST_TEST(holds(text, refused.said), text);
      BOOST_TEST(holds(text.substr(std::min(text.size(), text.find("fix: "))), refused.fix), text);
    }
  }
}

BOOST_AUTO_TEST_CASE(options_that_do_not_fit_the_file_are_refused) {
  const std::string_view bytes = "date,Precip (mm)\n2015-07-06,1\n";
  BOOST_TEST(holds(refusal(bytes, {.columns = {{"rain_mm", "Precip"}}}), "the file has: date, Precip (mm)"));
  BOOST_TEST(holds(refusal(bytes, {.columns = {{"rain_m", "Precip (mm)"}}}), "did you mean rain_mm?"));
  BOOST_TEST(holds(
      refusal(bytes, {.columns = {{"rain_mm", "Precip (mm)"}}, .where = noonleaf::RowFilter{"Dat", "x"}}),
      "has no column \"Dat\""));
  BOOST_TEST(holds(refusal(bytes, {.columns = {{"rain_mm", "Precip (mm)"}}, .accept = {"rangee"}}),
                   "did you mean range?"));
  BOOST_TEST(
      holds(refusal("date,rain_mm,rnn\n2015-07-06,1,2\n", {.columns = {{"rain_in", "rnn"}}}), "two units"));
}

BOOST_AUTO_TEST_CASE(options_of_a_folder_pass_over_files_without_the_column) {
  const WeatherOptions options{.columns = {{"rain_mm", "Precip (mm)"}},
                               .where = noonleaf::RowFilter{"station", "A"},
                               .absent_headers = noonleaf::AbsentHeader::ignored};
  BOOST_TEST(read("date,tmin_c\n2015-07-06,1\n", options).days.size() == 1U);
  BOOST_TEST(read("station,date,Precip (mm)\nA,2015-07-06,1\nB,2015-07-06,2\n", options).days.at(0).rain_mm ==
             1.0);
  BOOST_TEST(read("USC00000001,20240705,TMAX,311,,,7,0700\n", options).days.size() == 1U);
}

BOOST_AUTO_TEST_CASE(a_near_miss_can_be_left_alone) {
  const WeatherFile file = read("date,rain_mm,wind_max\n2015-07-06,1,9\n", {.ignore = {"wind_max"}});
  BOOST_TEST(file.days.at(0).rain_mm == 1.0);
  BOOST_TEST(file.notes.at(0) == "columns not read: wind_max");
  BOOST_TEST(read("name,site,date,rain_mm,rn_mj_m2\nx,y,2015-07-06,1,9\n").days.size() == 1U);
}

BOOST_AUTO_TEST_CASE(files_that_cannot_be_opened) {
  const TemporaryFile file("date,rain_mm\n2015-07-06,1\n");
  const auto said = [](const std::filesystem::path& path) {
    try {
      noonleaf::read_daily_weather(path, "shown.csv");
    } catch (const Error& refused) {
      return std::string(refused.what());
    }
    return std::string("(read)");
  };
  BOOST_TEST(said(file.folder() / "none.csv") == "shown.csv: there is no such file");
  BOOST_TEST(said(file.folder()) == "shown.csv: this is a folder, not a weather file");
}

BOOST_AUTO_TEST_CASE(the_name_tells_a_forecast) {
  const TemporaryFile file("date,rain_mm\n2015-07-06,1\n", "Forecast_week.csv");
  BOOST_TEST((noonleaf::read_daily_weather(file.path(), "f").kind == noonleaf::WeatherKind::forecast));
  BOOST_TEST((noonleaf::weather_kind("weather/2015.csv") == noonleaf::WeatherKind::measured));
}

BOOST_AUTO_TEST_CASE(a_hostile_file_gives_one_clear_error) {
  BOOST_TEST(holds(refusal(std::string(3'000'000, 'a')), "line is longer than 1,048,576 bytes"));
  BOOST_TEST(holds(refusal("date,rain_mm\n2015-07-06," + std::string(3'000'000, '1') + "\n"),
                   "w.csv:2: the line is longer than 1,048,576 bytes"));
  std::string wide = "date";
  for (int column = 0; column < 200'000; ++column) wide += ",c";
  BOOST_TEST(holds(refusal(wide + "\n"), "the header has 200,001 columns; at most 1,000 are read"));
  BOOST_TEST(holds(refusal("date,rain_mm\n2015-07-06,\"" + std::string(3'000'000, '\n')), "longer than"));
  const std::string long_number = refusal("date,rain_mm\n2015-07-06," + std::string(100'000, '1') + "x\n");
  BOOST_TEST(holds(long_number, "is not a number"));
  BOOST_TEST(long_number.size() < 1000U);
  std::string zeros(1000, '\0');
  BOOST_TEST(holds(refusal(zeros), "byte 0"));
}

BOOST_AUTO_TEST_CASE(many_broken_rows_are_kept_to_a_limit) {
  std::string bytes = "date,rain_mm\n";
  for (int row = 0; row < 20'000; ++row) bytes += "2015-07-06,x\n";
  try {
    read(bytes);
    BOOST_FAIL("should have been refused");
  } catch (const Error& refused) {
    BOOST_TEST(refused.problems().size() == 10'001U);
  }
}

BOOST_AUTO_TEST_CASE(windows_of_the_source_do_not_show) {
  // Rows of changing length over several read windows, quoted cells with line ends among them.
  std::string bytes = "date,note,rain_mm\n";
  for (int row = 0; row < 20'000; ++row) {
    const auto date =
        std::chrono::year_month_day(std::chrono::sys_days(1970y / 1 / 1) + std::chrono::days(row));
    const auto two = [](unsigned number) { return (number < 10 ? "0" : "") + std::to_string(number); };
    bytes += std::to_string(static_cast<int>(date.year())) + "-" + two(static_cast<unsigned>(date.month())) +
             "-" + two(static_cast<unsigned>(date.day())) + ",";
    bytes += row % 7 == 0 ? "\"a, b\nc" + std::string(static_cast<std::size_t>(row % 97), 'x') + "\""
                          : std::string(static_cast<std::size_t>(row % 89), 'y');
    bytes += "," + noonleaf::number_text(row % 50 + row % 3 * 0.25) + "\n";
  }
  const WeatherFile file = read(bytes);
  BOOST_REQUIRE_EQUAL(file.days.size(), 20'000U);
  bool same = true;
  for (int row = 0; row < 20'000; ++row)
    same = same && file.days[static_cast<std::size_t>(row)].rain_mm == row % 50 + row % 3 * 0.25;
  BOOST_TEST(same);
  BOOST_TEST(file.lines.back() == 20'001U + 19'999 / 7);
  BOOST_TEST(file.doubts.empty());
}

BOOST_AUTO_TEST_SUITE_END()
