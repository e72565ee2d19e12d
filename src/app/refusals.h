// The one place where refusals are caught: a run ends with them, or goes on to the next file so
// that the faults of all files are told together.
#pragma once

#include <functional>
#include <vector>

#include "app/exit_status.h"

namespace squaredig::app {

// The problems of the Refusal that `work` ended with; none where it ended well.
std::vector<Problem> problems_of(const std::function<void()>& work);

// Collects the problems of several pieces of work and refuses them together.
class Refusals {
 public:
  // Runs the work; its problems are kept.
  void gather(const std::function<void()>& work);
  void add(const std::vector<Problem>& problems);
  // Throws one Refusal of all problems, each once, where there is any.
  void throw_if_any() const;

 private:
  std::vector<Problem> problems_;
};

}  // namespace squaredig::app
