#include "app/progress.h"

namespace squaredig::app {

Progress::Progress(ProgressMode mode, Speech speech) {
  if (mode == ProgressMode::Never || speech == Speech::Quiet || !Messages::error_is_terminal())
    return;
  state_ = State::Running;
  thread_ = std::thread([this] { show_until_stopped(); });
}

Progress::~Progress() { finish(); }

void Progress::step(std::string what) {
  const std::scoped_lock lock(mutex_);
  what_ = std::move(what);
}

void Progress::finish() {
  {
    const std::scoped_lock lock(mutex_);
    state_ = State::Stopped;
  }
  wake_.notify_all();
  if (thread_.joinable()) thread_.join();
}

void Progress::show_until_stopped() {
  using namespace std::chrono_literals;
  const auto start = std::chrono::steady_clock::now();
  const auto stopped = [this] { return state_ == State::Stopped; };
  std::unique_lock lock(mutex_);
  if (wake_.wait_for(lock, 1s, stopped)) return;
  do {
    const auto passed = std::chrono::steady_clock::now() - start;
    const auto seconds = std::chrono::duration_cast<std::chrono::seconds>(passed).count();
    Messages::progress_line(what_ + " (" + std::to_string(seconds) + " s)");
  } while (!wake_.wait_for(lock, 200ms, stopped));
  Messages::progress_line("");
}

}  // namespace squaredig::app
