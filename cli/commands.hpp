#pragma once

#include "arguments.hpp"

namespace noonleaf::cli {

// One function a command, each in its own file. Result: the exit code (0 done; 3 done, with alerts).
// Throws    noonleaf::Error when the input is wrong (exit code 1)
int run(const NewArguments& arguments);
int run(const CheckArguments& arguments);
int run(const TodayArguments& arguments);
int run(const WeekArguments& arguments);
int run(const Et0Arguments& arguments);
int run(const LogArguments& arguments);
int run(const CansArguments& arguments);
int run(const CropsArguments& arguments);
int run(const SoilsArguments& arguments);
int run(const ExplainArguments& arguments);
int run(const LedgerArguments& arguments);
int run(const OutdoorsArguments& arguments);
int run(const AwayArguments& arguments);
int run(const RoundArguments& arguments);

}  // namespace noonleaf::cli
