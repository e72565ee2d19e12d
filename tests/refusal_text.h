// What a refusal says, one line per problem; empty where nothing is refused.
#pragma once

#include <string>

#include "quantity/problem.h"

namespace squaredig::testing {

template <class Work>
std::string refusal_text(Work work) {
  try {
    work();
  } catch (const Refusal& refusal) {
    std::string text;
    for (const Problem& problem : refusal.problems()) text += problem.text() + "\n";
    return text;
  }
  return {};
}

}  // namespace squaredig::testing
