// Memory that runs out in the middle of a call: a status, nothing leaks, no exception crosses the border. The
// plans are not here: a JSON value of nlohmann-json asks for memory in its destructor, and the program ends
// where there is none. So it does at some places within the parser of garden.toml (toml++), which is why a garden is read
// in a process of its own for each of its ends.
#include <csignal>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <new>
#include <string>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/noonleaf.h"

namespace {

constexpr long never = -1;
thread_local long allocations_left = never;
thread_local long alive = 0;

void* allocate(std::size_t size) {
  if (allocations_left == 0) throw std::bad_alloc();
  if (allocations_left > 0) --allocations_left;
  void* const memory = std::malloc(size == 0 ? 1 : size);
  if (memory == nullptr) throw std::bad_alloc();
  ++alive;
  return memory;
}

void release(void* memory) noexcept {
  if (memory == nullptr) return;
  --alive;
  std::free(memory);
}

/// Lets the first, second, third ... allocation of a call fail until it gets through, `step` apart.
/// Result    how often it failed
int exhaust(const std::function<noonleaf_status()>& call, long step) {
  int failures = 0;
  for (long allowed = 0; allowed < 10'000'000; allowed += step) {
    const long before = alive;
    allocations_left = allowed;
    const noonleaf_status status = call();
    allocations_left = never;
    BOOST_REQUIRE_MESSAGE(alive == before, alive - before << " pieces of memory left after " << allowed);
    if (status == noonleaf_done || status == noonleaf_rows_refused) return failures;
    BOOST_REQUIRE_EQUAL(status, noonleaf_no_memory);
    ++failures;
  }
  BOOST_FAIL("the call never got through");
  return failures;
}

enum class Ending { done, refused, ended, wrong };

/// How a call ends, in a process of its own, that gets so many allocations.
Ending ending_of(const std::function<noonleaf_status()>& call, long allowed) {
  const pid_t child = fork();
  BOOST_REQUIRE(child >= 0);
  if (child == 0) {
    std::signal(SIGABRT, SIG_DFL);
    std::fclose(stderr);  // where the program ends, the library of C++ says so there
    const long before = alive;
    allocations_left = allowed;
    const noonleaf_status status = call();
    allocations_left = never;
    if (alive != before) _exit(3);
    _exit(status == noonleaf_done ? 0 : status == noonleaf_no_memory ? 1 : 2);
  }
  int status = 0;
  BOOST_REQUIRE_EQUAL(waitpid(child, &status, 0), child);
  if (WIFSIGNALED(status) && WTERMSIG(status) == SIGABRT) return Ending::ended;
  if (!WIFEXITED(status)) return Ending::wrong;
  if (WEXITSTATUS(status) == 0) return Ending::done;
  return WEXITSTATUS(status) == 1 ? Ending::refused : Ending::wrong;
}

}  // namespace

void* operator new(std::size_t size) { return allocate(size); }
void* operator new[](std::size_t size) { return allocate(size); }
void operator delete(void* memory) noexcept { release(memory); }
void operator delete[](void* memory) noexcept { release(memory); }
void operator delete(void* memory, std::size_t) noexcept { release(memory); }
void operator delete[](void* memory, std::size_t) noexcept { release(memory); }

BOOST_AUTO_TEST_SUITE(memory)

BOOST_AUTO_TEST_CASE(of_sites_and_columns) {
  const noonleaf_location location{sizeof location, 50.8, 4.35, 100};
  noonleaf_daily_columns columns;
  columns.size = sizeof columns;
  noonleaf_daily_columns_defaults(&columns);
  const std::vector<double> hot(5, 99.0), cool(5, 10.0);
  std::vector<double> et0(5);
  columns.first_day = {2023, 7, 6};
  columns.t_max_c = {hot.data(), 5, 1};
  columns.t_min_c = columns.ea_kpa = columns.rs_mj_m2_d = columns.u2_m_s = {cool.data(), 5, 1};
  columns.et0_mm_d = {et0.data(), 5, 1};
  const int failures = exhaust(
      [&] {
        noonleaf_site* site = nullptr;
        noonleaf_problems* problems = nullptr;
        noonleaf_status status = noonleaf_site_make(&location, &site, nullptr);
        if (status == noonleaf_done) status = noonleaf_daily_et0(site, &columns, &problems);
        noonleaf_problems_free(problems);
        noonleaf_site_free(site);
        return status;
      },
      1);
  BOOST_CHECK_GT(failures, 5);
}

BOOST_AUTO_TEST_CASE(of_a_garden) {
  const std::string folder = NOONLEAF_SOURCE_DIR "/weather_samples/demo";
  const auto read = [&] {
    noonleaf_garden* garden = nullptr;
    const noonleaf_status status = noonleaf_garden_read(folder.c_str(), &garden, nullptr);
    noonleaf_garden_free(garden);
    return status;
  };
  BOOST_REQUIRE_EQUAL(read(), noonleaf_done);  // what is kept from the first time on, such as zones, is there
  int refused = 0, ended_by_parser = 0;
  for (long allowed = 0;; allowed += 97) {
    const Ending ending = ending_of(read, allowed);
    BOOST_REQUIRE(ending != Ending::wrong);
    if (ending == Ending::done) break;
    ++(ending == Ending::refused ? refused : ended_by_parser);
  }
  BOOST_TEST_MESSAGE(refused << " times refused, " << ended_by_parser << " times ended within the parser");
  BOOST_CHECK_GT(refused, 20);
  BOOST_CHECK_LT(ended_by_parser, refused);
}

BOOST_AUTO_TEST_SUITE_END()
