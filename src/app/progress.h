// A progress line on a terminal, for work that takes more than a second.
//
// What: step() names what is being done; a second later, and then five times a second, the line is
//   rewritten with the name and the seconds since the start. Nothing is written before that, off a
//   terminal, when quiet, or with --progress never. The line is wiped at the end.
#pragma once

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

#include "app/messages.h"

namespace squaredig::app {

enum class ProgressMode { Auto, Never };

class Progress {
 public:
  Progress(ProgressMode mode, Speech speech);
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress();
  void step(std::string what);
  // Ends the line before anything else is said.
  void finish();

 private:
  void show_until_stopped();
  std::mutex mutex_;
  std::condition_variable wake_;
  std::string what_;
  enum class State { Running, Stopped } state_ = State::Stopped;
  std::thread thread_;
};

}  // namespace squaredig::app
