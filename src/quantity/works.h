// Pieces of work that do not touch each other, and a way to do them all: in turn, or by several
// threads at once.
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
