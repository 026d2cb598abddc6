#include <string>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "command_run.hpp"

namespace {

/// Answers to every question, a line each, of a garden with two people, two sprinklers and three beds.
const std::vector<std::string> answers{"Wren Hill \"annex\"",
                                       "us",
                                       "46.07, -118.33",
                                       "950",
                                       "America/Los_Angeles",
                                       "day custodian",
                                       "mon-fri 06:00-14:30",
                                       "es",
                                       "garden educator",
                                       "mon,wed 07:30-10:00",
                                       "",
                                       "",
                                       "daily 05:00-10:00",
                                       "oscillating sprinkler",
                                       "",
                                       "tap by the shed",
                                       "5",
                                       "50",
                                       "15",
                                       "0.22 0.25 0.19 0.21",
                                       "soaker hose",
                                       "soaker_hose",
                                       "tap by the shed",
                                       "",
                                       "",
                                       "Tomatoes",
                                       "24 x 4",
                                       "1",
                                       "2",
                                       "y",
                                       "",
                                       "tomato",
                                       "transplanted 2025-05-17",
                                       "Herbs",
                                       "8 x 4",
                                       "2",
                                       "sandy_loam",
                                       "n",
                                       "12",
                                       "",
                                       "Carrots",
                                       "16x4",
                                       "1",
                                       "1",
                                       "y",
                                       "",
                                       "carrot",
                                       "sown 2025-07-01",
                                       ""};

std::string lines(std::size_t count) {
  std::string text;
  for (std::size_t index = 0; index < count; ++index) text += answers[index] + "\n";
  return text;
}

CommandRun answer(const Workplace& place, const std::string& text) {
  place.write("answers.txt", text);
  const std::string line = "cd '" + place.folder().string() +
                           "' && env TERM=dumb '" NOONLEAF_COMMAND "' new mine <answers.txt >.out 2>.err";
  const int status = std::system(line.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, place.read(".out"), place.read(".err")};
}

}  // namespace

BOOST_AUTO_TEST_SUITE(new_command)

BOOST_AUTO_TEST_CASE(questions_to_the_end_make_a_garden_that_passes_check) {
  const Workplace place;
  const CommandRun made = answer(place, lines(answers.size()));
  BOOST_TEST(made.exit_code == 0);
  BOOST_TEST(made.err == "");
  check_golden("new_questions.txt", made.out);
  check_golden("new_garden.toml", place.read("mine/garden.toml"));
  const CommandRun checked = run_noonleaf(place, "check mine");
  BOOST_TEST(checked.exit_code == 0, checked.err);
  BOOST_TEST(checked.out.find("3 beds, 2 sprinklers, 2 caretakers; 0 journal entries") != std::string::npos,
             checked.out);
  BOOST_TEST(run_noonleaf(place, "log mine water a --minutes 20 --date 2025-07-16").exit_code == 0);
}

BOOST_AUTO_TEST_CASE(answers_that_end_in_the_middle_write_nothing) {
  for (std::size_t count = 0; count < answers.size(); ++count) {
    const Workplace place;
    const CommandRun stopped = answer(place, lines(count));
    BOOST_TEST(stopped.exit_code == 1, count << " answers");
    BOOST_TEST(stopped.err.find("nothing was written") != std::string::npos, stopped.err);
    std::size_t left = 0;
    for (const auto& entry : std::filesystem::directory_iterator(place.folder())) {
      const std::string name = entry.path().filename().string();
      left += name != "answers.txt" && name != ".out" && name != ".err" ? 1 : 0;
    }
    BOOST_TEST(left == 0U, count << " answers");
  }
}

BOOST_AUTO_TEST_CASE(a_wrong_answer_is_asked_again) {
  const Workplace place;
  std::string text;
  for (std::size_t index = 0; index < answers.size(); ++index) {
    if (answers[index] == "46.07, -118.33") text += "46.07\n146.07, -118.33\n";
    if (answers[index] == "America/Los_Angeles") text += "America/Los_Angles\n";
    if (answers[index] == "mon-fri 06:00-14:30") text += "mornings\n";
    if (answers[index] == "24 x 4") text += "big\n";
    if (answers[index] == "tomato") text += "squash\ntomatoe\n";
    if (answers[index] == "transplanted 2025-05-17") text += "in May\n";
    text += answers[index] + "\n";
  }
  const CommandRun made = answer(place, text);
  BOOST_TEST(made.exit_code == 0, made.err);
  check_golden("new_questions_again.txt", made.out);
  check_golden("new_garden.toml", place.read("mine/garden.toml"));
}

BOOST_AUTO_TEST_CASE(options_make_the_same_without_a_question) {
  const Workplace place;
  const CommandRun made = run_noonleaf(place,
                                       "new mine --name 'Wren Hill' --units metric --latitude 46.07 "
                                       "--longitude -118.33 --elevation 290 --zone "
                                       "America/Los_Angeles --caretaker 'day custodian; es; mon-fri "
                                       "06:00-14:30; sat 08:00-10:00' --tap 'wall; 10; 40' "
                                       "--sprinkler 'fan; wall; 15; 5.6 6.4 4.8' --sprinkler 'soaker; wall' "
                                       "--bed 'Tomatoes; 7 x 1.2; fan; loam; tomato; "
                                       "transplanted 2025-05-17' --bed 'Herbs; 2 x 1; soaker; 1'");
  BOOST_TEST(made.exit_code == 0, made.err);
  BOOST_TEST(made.out.find(">") == std::string::npos, made.out);
  check_golden("new_options_garden.toml", place.read("mine/garden.toml"));
  const CommandRun checked = run_noonleaf(place, "check mine");
  BOOST_TEST(checked.exit_code == 0, checked.err);
}

BOOST_AUTO_TEST_CASE(options_that_are_missing_or_wrong_are_all_named) {
  const Workplace place;
  const CommandRun refused =
      run_noonleaf(place, "new mine --name Mine --tap wall --sprinkler 'fan; well' --bed 'A; 3'");
  BOOST_TEST(refused.exit_code == 2);
  check_golden("usage/new_options.txt", refused.err);
  BOOST_TEST(!std::filesystem::exists(place.folder() / "mine"));
}

BOOST_AUTO_TEST_SUITE_END()
