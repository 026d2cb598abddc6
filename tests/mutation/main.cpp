// In the mutated copy this stands in for tests/main.cpp: the program ends at the first failure, and with MUTANT_TRACE
// it writes which mutants each test case reached, with the time that it took.
#define BOOST_TEST_MODULE noonleaf
#include <boost/test/unit_test.hpp>
//
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>

#include <boost/test/tree/observer.hpp>

#include "noonleaf/mutant.hpp"

namespace {

namespace unit = boost::unit_test;
using Clock = std::chrono::steady_clock;

/// The case that a unit belongs to: the rows of a data test count as one.
std::string case_name(unit::test_unit_id id) {
  const unit::test_unit& it = unit::framework::get(id, unit::TUT_ANY);
  const std::string name = it.p_name.get();
  if (name.starts_with("_")) return unit::framework::get(it.p_parent_id, unit::TUT_ANY).full_name();
  return it.full_name();
}

class Observer : public unit::test_observer {
 public:
  Observer() : trace_(std::getenv("MUTANT_TRACE")) {
    mutant::somebody_else_writes = true;
    for (int id = 0; id < mutant::most; ++id)
      at_start_[id] = mutant::reached[id];  // by constants of whole files
  }
  int priority() override { return 5; }
  void test_unit_start(const unit::test_unit& it) override {
    if (it.p_type != unit::TUT_CASE) return;
    name_ = case_name(it.p_id);
    for (int id = 0; id < mutant::most; ++id) mutant::reached[id] = at_start_[id];
    begin_ = Clock::now();
  }
  void test_unit_finish(const unit::test_unit& it, unsigned long) override {
    if (it.p_type != unit::TUT_CASE || trace_ == nullptr) return;
    const double seconds = std::chrono::duration<double>(Clock::now() - begin_).count();
    std::FILE* file = std::fopen(trace_, "a");
    std::fprintf(file, "case %s %.6f\n", name_.c_str(), seconds);
    for (int id = 0; id < mutant::most; ++id) {
      if (mutant::reached[id] != 0) std::fprintf(file, "%d %d\n", id, mutant::reached[id]);
    }
    const std::string child = std::string(trace_) + ".child";
    if (std::FILE* of_child = std::fopen(child.c_str(), "r")) {
      for (int c = std::fgetc(of_child); c != EOF; c = std::fgetc(of_child)) std::fputc(c, file);
      std::fclose(of_child);
      std::remove(child.c_str());
    }
    std::fclose(file);
  }
  void assertion_result(unit::assertion_result result) override {
    if (result == unit::AR_FAILED) stop();
  }
  void exception_caught(const boost::execution_exception&) override { stop(); }
  void test_unit_aborted(const unit::test_unit&) override { stop(); }

 private:
  void stop() const {
    if (trace_ != nullptr) return;
    std::fprintf(stderr, "FAILED %s\n", name_.c_str());
    std::_Exit(3);
  }
  const char* trace_;
  std::string name_;
  Clock::time_point begin_;
  unsigned char at_start_[mutant::most] = {};
};

struct Register {
  Register() { unit::framework::register_observer(observer); }
  ~Register() { unit::framework::deregister_observer(observer); }
  Observer observer;
};

BOOST_TEST_GLOBAL_FIXTURE(Register);

}  // namespace
