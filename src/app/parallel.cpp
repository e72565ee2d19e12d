#include "app/parallel.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <condition_variable>
#include <exception>
#include <mutex>
#include <stop_token>
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

// Pieces made by helpers, a few ahead of the one that is asked for: far enough that nobody waits
// for the other, near enough to be little in memory.
class MadeAhead {
 public:
  explicit MadeAhead(const formats::FilePieces& pieces) : pieces_(pieces) {}

  // The next piece in order. Until it is there, others are made here too.
  std::string piece(std::size_t number) {
    std::unique_lock lock(mutex_);
    taken_ = number;
    changed_.notify_all();
    Made& made = ring_[number % kAhead];
    while (!made.ready) {
      if (may_begin())
        make_next(lock);
      else
        changed_.wait(lock);
    }
    made.ready = false;
    if (made.fault) std::rethrow_exception(made.fault);
    return std::move(made.text);
  }

  void help(const std::stop_token& stop) {
    std::unique_lock lock(mutex_);
    while (changed_.wait(lock, stop, [&] { return may_begin(); })) make_next(lock);
  }

 private:
  static constexpr std::size_t kAhead = 8;
  struct Made {
    std::string text;
    std::exception_ptr fault;
    bool ready = false;
  };

  bool may_begin() const { return begun_ < std::min(taken_ + kAhead, pieces_.size()); }

  void make_next(std::unique_lock<std::mutex>& lock) {
    const std::size_t number = begun_++;
    lock.unlock();
    Made made = made_of(number);
    lock.lock();
    ring_[number % kAhead] = std::move(made);
    changed_.notify_all();
  }

  Made made_of(std::size_t number) const try {
    return {pieces_[number](), nullptr, true};
  } catch (...) {
    return {{}, std::current_exception(), true};
  }

  const formats::FilePieces& pieces_;
  std::mutex mutex_;
  std::condition_variable_any changed_;
  std::size_t begun_ = 0;  // pieces that somebody has begun
  std::size_t taken_ = 0;  // the one that is asked for
  std::array<Made, kAhead> ring_;
};

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
  MadeAhead made(pieces);
  std::vector<std::jthread> helpers;
  for (unsigned i = 1; i < thread_count(threads); ++i)
    helpers.emplace_back([&made](const std::stop_token& stop) { made.help(stop); });
  for (std::size_t i = 0; i < pieces.size(); ++i) take(made.piece(i));
}

}  // namespace squaredig::app
