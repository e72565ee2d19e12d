// Pieces of work that do not touch each other, done by several threads.
#pragma once

#include <functional>
#include <string_view>

#include "app/refusals.h"
#include "formats/file_pieces.h"
#include "quantity/works.h"

namespace squaredig::app {

// As many as asked for; 0: as many as the machine has.
unsigned thread_count(unsigned asked);

// Runs all of them, `threads` at once (0: as many as the machine has), and gives their problems in
// the order of the works, whoever is ready first.
std::vector<Problem> run_in_parallel(const Works& works, unsigned threads);
// The same; throws their problems as one Refusal.
DoAll together(unsigned threads);

// Takes the pieces' bytes in order while other threads make the next, a few ahead of it.
void take_in_order(const formats::FilePieces& pieces, unsigned threads,
                   const std::function<void(std::string_view)>& take);

}  // namespace squaredig::app
