// A progress line on a terminal, for work that takes more than a second.
//
// What: step() names what is being done; a second later, and then five times a second, the line is
//   rewritten with the name and the seconds since the start; of a step that reads files, with how
//   much is read, how fast, and the seconds that are left at that rate. Nothing is written before
//   that, off a terminal, when quiet, or with --progress never. The line is wiped at the end.
#pragma once

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

#include "app/messages.h"
#include "formats/source_file.h"

namespace squaredig::app {

enum class ProgressMode { Auto, Never };

class Progress {
 public:
  Progress(ProgressMode mode, Speech speech);
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress();
  void step(std::string what, std::shared_ptr<const formats::ReadMeter> meter = nullptr);
  // Ends the line before anything else is said.
  void finish();

 private:
  void show_until_stopped();
  std::mutex mutex_;
  std::condition_variable wake_;
  using Clock = std::chrono::steady_clock;
  std::string what_;
  std::shared_ptr<const formats::ReadMeter> meter_;
  Clock::time_point step_start_ = Clock::now();
  enum class State { Running, Stopped } state_ = State::Stopped;
  std::thread thread_;
};

// "212 of 430 MB, 310 MB/s, 1 s left"; empty where nothing was read yet.
std::string reading_words(const formats::ReadMeter& meter, double seconds);

}  // namespace squaredig::app
