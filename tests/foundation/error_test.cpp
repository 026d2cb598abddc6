#include "noonleaf/error.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/guard.hpp"
#include "noonleaf/missing.hpp"

using noonleaf::Error;
using noonleaf::Problem;

BOOST_AUTO_TEST_SUITE(error)

BOOST_AUTO_TEST_CASE(one_problem_reads_as_place_text_and_fix) {
  const Problem problem{.file = "july.csv",
                        .line = 17,
                        .column = 12,
                        .field = "tmax_c",
                        .text = "61.4",
                        .message = "\"61.4\" is outside -40 to 60 °C",
                        .fix = "check the logger's unit; 61.4 °F would be 16.3 °C",
                        .excerpt = "2024-07-06,61.4,12.3"};
  BOOST_TEST(noonleaf::describe(problem) ==
             "july.csv:17:12: tmax_c: \"61.4\" is outside -40 to 60 °C\n"
             "  2024-07-06,61.4,12.3\n"
             "             ^^^^\n"
             "  fix: check the logger's unit; 61.4 °F would be 16.3 °C\n");
}

BOOST_AUTO_TEST_CASE(caret_counts_characters_not_bytes) {
  const Problem problem{.line = 1, .column = 6, .text = "x", .message = "m", .excerpt = "Niña,x"};
  BOOST_TEST(noonleaf::describe(problem) == "1:6: m\n  Niña,x\n       ^\n");
}

BOOST_AUTO_TEST_CASE(a_long_line_is_cut_around_the_caret) {
  Problem problem{.line = 1, .column = 5001, .text = "here", .message = "m"};
  problem.excerpt.assign(5000, 'a');
  problem.excerpt += "here";
  problem.excerpt.append(5000, 'b');
  const std::string text = noonleaf::describe(problem);
  BOOST_TEST(text.size() < 400U);
  BOOST_TEST(text.find("here") != std::string::npos);
  BOOST_TEST(text.find("^^^^") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(control_characters_never_reach_the_terminal) {
  const Problem problem{.file = "a\x1b[31m.csv",
                        .line = 1,
                        .column = 1,
                        .text = "\x1b",
                        .message = "m",
                        .excerpt = "\x1b]0;title\x07"};
  BOOST_TEST(noonleaf::describe(problem).find('\x1b') == std::string::npos);
  BOOST_TEST(noonleaf::describe(problem).find('\x07') == std::string::npos);
}

BOOST_AUTO_TEST_CASE(many_problems_are_listed_then_counted) {
  const std::vector<Problem> problems(25, Problem{.message = "m"});
  const std::string text = noonleaf::describe(problems);
  BOOST_TEST(text.find("… and 5 more problems") != std::string::npos);
  BOOST_TEST(std::string(Error(problems).what()) == "m (and 24 more)");
}

BOOST_AUTO_TEST_CASE(problems_of_one_kind_are_shown_twice_and_counted) {
  std::vector<Problem> problems;
  for (std::size_t line = 2; line <= 9; ++line)
    problems.push_back(Problem{.file = "w.csv",
                               .line = line,
                               .field = "date",
                               .message = "\"7/" + std::to_string(line) + "/25\" is not a date"});
  problems.push_back(
      Problem{.file = "w.csv", .line = 10, .field = "rain_mm", .message = "\"x\" is not a number"});
  const std::string text = noonleaf::describe(problems);
  BOOST_TEST(text ==
             "w.csv:2: date: \"7/2/25\" is not a date\nw.csv:3: date: \"7/3/25\" is not a date\n"
             "  … and 6 more like it, the last in line 9\nw.csv:10: rain_mm: \"x\" is not a number\n");
}

BOOST_AUTO_TEST_CASE(guard_lets_missing_pass_and_names_the_range) {
  BOOST_CHECK_NO_THROW(noonleaf::require_within("t_c", noonleaf::missing, -40, 60, "°C"));
  BOOST_CHECK_NO_THROW(noonleaf::require_within("t_c", 60, -40, 60, "°C"));
  BOOST_CHECK_EXCEPTION(noonleaf::require_within("t_c", 60.5, -40, 60, "°C"), Error,
                        [](const Error& refused) {
                          return std::string(refused.what()) == "t_c: 60.5 is outside -40 to 60 °C";
                        });
}

BOOST_AUTO_TEST_CASE(numbers_are_written_shortest_and_without_locale) {
  BOOST_TEST(noonleaf::number_text(0.1) == "0.1");
  BOOST_TEST(noonleaf::number_text(12.0) == "12");
  BOOST_TEST(noonleaf::number_text(noonleaf::missing) == "missing");
}

BOOST_AUTO_TEST_SUITE_END()
