// Pieces of work that do not touch each other, done by several threads.
#pragma once

#include <functional>
#include <vector>

#include "app/refusals.h"

namespace squaredig::app {

using Works = std::vector<std::function<void()>>;

// Runs all of them, `threads` at once (0: as many as the machine has), and gives their problems in
// the order of the works, whoever is ready first.
std::vector<Problem> run_in_parallel(const Works& works, unsigned threads);

}  // namespace squaredig::app
