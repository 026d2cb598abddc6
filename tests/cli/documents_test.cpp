#include <string>

#include <boost/test/unit_test.hpp>

#include "command_run.hpp"
#include "file_text.hpp"

BOOST_AUTO_TEST_SUITE(documents)

BOOST_AUTO_TEST_CASE(the_run_in_the_readme_is_what_the_command_prints) {
  const DemoPlace place;
  const std::string readme = file_text(NOONLEAF_SOURCE_DIR "/README.md");
  const std::string fence = "```text\n";
  const std::size_t begin = readme.find(fence) + fence.size();
  BOOST_TEST(readme.substr(begin, readme.find("```", begin) - begin) ==
             run_noonleaf(place, "today demo").out);
}

BOOST_AUTO_TEST_SUITE_END()
