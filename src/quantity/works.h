// Pieces of work that do not touch each other, and a way to do them all: in turn, or by several
// threads at once.
//
// Accuracy: the pieces are the same however they are done. Errors: those of the pieces.
// Source: the house's own.
#pragma once

#include <functional>
#include <vector>

namespace squaredig {

using Works = std::vector<std::function<void()>>;
using DoAll = std::function<void(const Works&)>;

inline void do_in_turn(const Works& works) {
  for (const auto& work : works) work();
}

}  // namespace squaredig
