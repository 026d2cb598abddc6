// No global state: eight threads go through every door of the library at the same time, each beginning at
// another one. All must give the same answers; built with the thread sanitizer, none may touch what another
// writes. The threads start before anything has been called, so that what is made at first use is made by
// several at once.
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <string>
#include <thread>
#include <vector>

#include "door.hpp"

namespace {

constexpr std::size_t thread_count = 8;

std::vector<Door> all_doors() {
  std::vector<Door> doors = science_doors();
  for (const auto& more : {block_doors(), garden_doors(), file_doors(), words_doors(), c_doors()})
    doors.insert(doors.end(), more.begin(), more.end());
  return doors;
}

std::string answer(const Door& door) {
  try {
    return door.call();
  } catch (const std::exception& failed) {
    return std::string("FAILED: ") + failed.what();
  }
}

}  // namespace

int main(int count, char** words) {
  const int rounds = count > 1 ? std::atoi(words[1]) : 1;
  const std::vector<Door> doors = all_doors();
  std::vector<std::vector<std::string>> answers(thread_count, std::vector<std::string>(doors.size()));
  std::vector<std::size_t> changed(thread_count, 0);
  const auto work = [&](std::size_t self) {
    for (int round = 0; round < rounds; ++round) {
      for (std::size_t i = 0; i < doors.size(); ++i) {
        const std::size_t door = (i + self * doors.size() / thread_count) % doors.size();
        std::string text = answer(doors[door]);
        if (round > 0 && text != answers[self][door]) ++changed[self];
        answers[self][door] = std::move(text);
      }
    }
  };
  {
    std::vector<std::jthread> threads;
    for (std::size_t self = 0; self < thread_count; ++self) threads.emplace_back(work, self);
  }
  int failures = 0;
  for (std::size_t door = 0; door < doors.size(); ++door) {
    const std::string& first = answers[0][door];
    const bool failed = first.empty() || first.rfind("FAILED", 0) == 0;
    if (failed) std::printf("%s: %s\n", doors[door].name, first.c_str());
    bool differs = false;
    for (const auto& of_thread : answers) differs = differs || of_thread[door] != first;
    if (differs) std::printf("%s: the threads disagree\n", doors[door].name);
    failures += failed || differs ? 1 : 0;
  }
  for (const std::size_t times : changed) failures += times > 0 ? 1 : 0;
  std::printf("%zu doors, %zu threads, %d rounds: %d failures\n", doors.size(), thread_count, rounds,
              failures);
  return failures == 0 ? 0 : 1;
}
