// How a run ended, as the shell sees it.
#pragma once

#include <vector>

#include "quantity/problem.h"

namespace squaredig::app {

enum class ExitStatus {
  Done = 0,  // all that was checked conforms
  NeedsAPerson =
      1,  // done and written, but something does not conform, is not proven, or is a finding
  WrongInput = 2,  // nothing was written
  Storage = 3,     // a file or disk could not be read or written; earlier results are whole
  FaultInProgram = 70
};

constexpr ExitStatus worse(ExitStatus a, ExitStatus b) { return a < b ? b : a; }

// The status of a refused run: wrong input before storage, for the input can be mended at once.
ExitStatus status_of(const std::vector<Problem>& problems);

}  // namespace squaredig::app
