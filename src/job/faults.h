// The faults of one job file, gathered so that all are told at once.
//
// Errors: the Refusal it throws when it holds a fault.
// Source: the house's own.
#pragma once

#include <vector>

#include "job/document.h"

namespace squaredig::job {

class Faults {
 public:
  void add(const Place& place, std::string found, std::string needed, std::string remedy);
  // The value of a key is wrong: "[tank] height = -1; a length ...; correct the value".
  void wrong_value(const Node& node, std::string needed, std::string remedy);
  std::size_t count() const { return problems_.size(); }
  // Throws a Refusal with all of them in the order of the file, if there are any.
  void refuse_if_any();

 private:
  std::vector<Problem> problems_;
};

// The words of the list joined: "a, b or c".
std::string any_of(const std::vector<std::string>& words);

}  // namespace squaredig::job
