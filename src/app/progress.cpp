#include "app/progress.h"

#include <cmath>

namespace squaredig::app {

Progress::Progress(ProgressMode mode, Speech speech) {
  if (mode == ProgressMode::Never || speech == Speech::Quiet || !Messages::error_is_terminal())
    return;
  state_ = State::Running;
  thread_ = std::thread([this] { show_until_stopped(); });
}

Progress::~Progress() { finish(); }

void Progress::step(std::string what, std::shared_ptr<const formats::ReadMeter> meter) {
  const std::scoped_lock lock(mutex_);
  what_ = std::move(what);
  meter_ = std::move(meter);
  step_start_ = Clock::now();
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
  const auto start = Clock::now();
  const auto stopped = [this] { return state_ == State::Stopped; };
  std::unique_lock lock(mutex_);
  if (wake_.wait_for(lock, 1s, stopped)) return;
  do {
    const auto now = Clock::now();
    const auto seconds = std::chrono::duration_cast<std::chrono::seconds>(now - start).count();
    std::string line = what_;
    if (meter_) {
      const std::string words =
          reading_words(*meter_, std::chrono::duration<double>(now - step_start_).count());
      if (!words.empty()) line += ": " + words;
    }
    Messages::progress_line(line + " (" + std::to_string(seconds) + " s)");
  } while (!wake_.wait_for(lock, 200ms, stopped));
  Messages::progress_line("");
}

std::string reading_words(const formats::ReadMeter& meter, double seconds) {
  const auto megabytes = [](double bytes) { return std::to_string(std::llround(bytes / 1e6)); };
  const auto read = static_cast<double>(meter.read), opened = static_cast<double>(meter.opened);
  if (read <= 0 || seconds <= 0) return {};
  const double rate = read / seconds;
  std::string words = megabytes(read);
  if (opened >= read) words += " of " + megabytes(opened);
  words += " MB, " + megabytes(rate) + " MB/s";
  if (opened >= read)
    words += ", " + std::to_string(std::llround(std::ceil((opened - read) / rate))) + " s left";
  return words;
}

}  // namespace squaredig::app
