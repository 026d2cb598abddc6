#include <fstream>
#include <sstream>
#include <string>

#include <boost/test/unit_test.hpp>

#include "command_run.hpp"

namespace {

std::string text_of(const std::string& path) {
  std::ifstream stream(path, std::ios::binary);
  BOOST_REQUIRE_MESSAGE(stream, path);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

}  // namespace

BOOST_AUTO_TEST_SUITE(documents)

BOOST_AUTO_TEST_CASE(the_run_in_the_readme_is_what_the_command_prints) {
  const Workplace place;
  BOOST_REQUIRE(run_noonleaf(place, "new demo --demo").exit_code == 0);
  const std::string readme = text_of(NOONLEAF_SOURCE_DIR "/README.md");
  const std::string fence = "```text\n";
  const std::size_t begin = readme.find(fence) + fence.size();
  BOOST_TEST(readme.substr(begin, readme.find("```", begin) - begin) ==
             run_noonleaf(place, "today demo").out);
}

BOOST_AUTO_TEST_SUITE_END()
