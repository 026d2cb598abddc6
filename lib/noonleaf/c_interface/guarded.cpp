#include "noonleaf/c_interface/guarded.hpp"

#include <cstring>
#include <memory>

namespace noonleaf::c_interface {

CallRefused::CallRefused(std::string parameter, std::string message, std::string fix) {
  problem_.field = std::move(parameter);
  problem_.message = std::move(message);
  problem_.fix = std::move(fix);
}

void hand_over(noonleaf_problems** wanted, std::vector<Problem> problems) {
  if (wanted != nullptr) *wanted = new noonleaf_problems{std::move(problems), {}};
}

namespace {

noonleaf_status told(noonleaf_problems** wanted) {
  try {
    throw;
  } catch (const Error& refused) {
    hand_over(wanted, refused.problems());
    return noonleaf_input_refused;
  } catch (const CallRefused& refused) {
    hand_over(wanted, {refused.problem()});
    return noonleaf_call_refused;
  } catch (const std::bad_alloc&) {
    return noonleaf_no_memory;
  } catch (const std::exception& failed) {
    Problem problem;
    problem.message = std::string("this should not happen: ") + failed.what();
    problem.fix = "please report it with what the call was given";
    hand_over(wanted, {problem});
    return noonleaf_fault;
  }
}

}  // namespace

noonleaf_status status_of_exception(noonleaf_problems** wanted) noexcept {
  try {
    return told(wanted);
  } catch (const std::bad_alloc&) {
    return noonleaf_no_memory;
  } catch (...) {
    return noonleaf_fault;
  }
}

char* text_for_caller(const std::string& text) {
  auto copy = std::make_unique<char[]>(text.size() + 1);
  std::memcpy(copy.get(), text.c_str(), text.size() + 1);
  return copy.release();
}

}  // namespace noonleaf::c_interface
