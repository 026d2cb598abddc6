// `noonleaf round` over 1, 10, 100 and 1,000 invented gardens, each with 8 beds and 60 days of journal and
// weather: processor time and memory of the whole process.
#include <cstdio>
#include <filesystem>
#include <string>
#include <unistd.h>
#include <vector>

#include "bench/child_process.hpp"
#include "bench/invented_folder.hpp"
#include "bench/ratios.hpp"

int main() {
  namespace fs = std::filesystem;
  const fs::path all = fs::temp_directory_path() / ("noonleaf-round-" + std::to_string(getpid()));
  std::vector<std::string> words{"round"};
  std::printf("%s\nnoonleaf round, one core; 8 beds, 60 days of journal and weather each\n",
              bench::machine().c_str());
  std::printf("%8s %14s %16s %10s\n", "gardens", "processor s", "ms per garden", "peak MB");
  for (const unsigned gardens : {1U, 10U, 100U, 1000U}) {
    while (words.size() <= gardens) {
      const fs::path folder = all / std::to_string(words.size());
      bench::write_invented_folder(
          folder, {.beds = 8, .forecast_days = 7, .seed = static_cast<unsigned>(words.size())});
      words.push_back(folder.string());
    }
    std::vector<std::string> call = words;
    call.insert(call.end(), {"--date", bench::question_date});
    const bench::ChildUsage used = bench::run_child(NOONLEAF_COMMAND, call);
    std::printf("%8u %14.3f %16.2f %10.1f\n", gardens, used.processor_s, 1000 * used.processor_s / gardens,
                static_cast<double>(used.peak_kb) / 1024);
  }
  fs::remove_all(all);
  return 0;
}
