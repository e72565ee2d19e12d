#include "app/parallel.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <thread>

namespace squaredig::app {
namespace {

// What became of one work: its problems, or a fault of the program to be thrown on.
struct Outcome {
  std::vector<Problem> problems;
  std::exception_ptr fault;
};

Outcome outcome_of(const std::function<void()>& work) try {
  return {problems_of(work), nullptr};
} catch (...) {
  return {{}, std::current_exception()};
}

}  // namespace

std::vector<Problem> run_in_parallel(const Works& works, unsigned threads) {
  std::vector<Outcome> outcomes(works.size());
  std::atomic<std::size_t> next = 0;
  const auto take_turns = [&] {
    for (std::size_t i = next++; i < works.size(); i = next++) outcomes[i] = outcome_of(works[i]);
  };
  const std::size_t most =
      threads > 0 ? threads : std::max(1U, std::thread::hardware_concurrency());
  {
    std::vector<std::jthread> helpers;
    for (std::size_t i = 1; i < std::min(most, works.size()); ++i) helpers.emplace_back(take_turns);
    take_turns();
  }
  std::vector<Problem> problems;
  for (const auto& outcome : outcomes) {
    if (outcome.fault) std::rethrow_exception(outcome.fault);
    problems.insert(problems.end(), outcome.problems.begin(), outcome.problems.end());
  }
  return problems;
}

}  // namespace squaredig::app
