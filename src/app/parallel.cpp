#include "app/parallel.h"

#include <algorithm>
#include <atomic>
#include <deque>
#include <exception>
#include <future>
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

unsigned thread_count(unsigned asked) {
  return asked > 0 ? asked : std::max(1U, std::thread::hardware_concurrency());
}

std::vector<Problem> run_in_parallel(const Works& works, unsigned threads) {
  std::vector<Outcome> outcomes(works.size());
  std::atomic<std::size_t> next = 0;
  const auto take_turns = [&] {
    for (std::size_t i = next++; i < works.size(); i = next++) outcomes[i] = outcome_of(works[i]);
  };
  const std::size_t most = std::min<std::size_t>(thread_count(threads), works.size());
  {
    std::vector<std::jthread> helpers;
    for (std::size_t i = 1; i < most; ++i) helpers.emplace_back(take_turns);
    take_turns();
  }
  std::vector<Problem> problems;
  for (const auto& outcome : outcomes) {
    if (outcome.fault) std::rethrow_exception(outcome.fault);
    problems.insert(problems.end(), outcome.problems.begin(), outcome.problems.end());
  }
  return problems;
}

DoAll together(unsigned threads) {
  return [threads](const Works& works) {
    auto problems = run_in_parallel(works, threads);
    if (!problems.empty()) throw Refusal(std::move(problems));
  };
}

void take_in_order(const formats::FilePieces& pieces, unsigned threads,
                   const std::function<void(std::string_view)>& take) {
  const std::size_t most = thread_count(threads);
  const auto begin = most > 1 ? std::launch::async : std::launch::deferred;
  std::deque<std::future<std::string>> ahead;
  std::size_t next = 0;
  const auto fill = [&](std::size_t many) {
    while (next < pieces.size() && ahead.size() < many)
      ahead.push_back(std::async(begin, pieces[next++]));
  };
  for (fill(most); !ahead.empty();) {
    const std::string piece = ahead.front().get();
    ahead.pop_front();
    fill(most - 1);  // beside this one, which is taken now
    take(piece);
    fill(most);
  }
}

}  // namespace squaredig::app
