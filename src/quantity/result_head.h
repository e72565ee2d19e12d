// What every result says first: which inputs it came from, what was assumed, what to beware of and
// what needs a person.
// Accuracy: as given. Errors: none.
// Source: the house's own.
#pragma once

#include <string>
#include <vector>

#include "quantity/problem.h"

namespace squaredig {

struct SetAside {
  int line = 0;
  std::string why;
  friend bool operator==(const SetAside&, const SetAside&) = default;
};

// One input file: `read` counts its rows, `used` those that took part.
struct InputRecord {
  std::string file;
  std::string sha256;
  std::size_t read = 0;
  std::size_t used = 0;
  std::vector<SetAside> set_aside;
};

struct ResultHead {
  std::string job;
  std::vector<InputRecord> inputs;
  std::vector<std::string> assumed;
  std::vector<std::string> cautions;
  std::vector<Finding> findings;
};

// The answer of a check against a limit.
enum class Verdict { Conforms, DoesNotConform, NotProven, NotAsked };
constexpr const char* words(Verdict v) {
  switch (v) {
    case Verdict::Conforms:
      return "conforms";
    case Verdict::DoesNotConform:
      return "does not conform";
    case Verdict::NotProven:
      return "not proven";
    default:
      return "not asked";
  }
}

}  // namespace squaredig
