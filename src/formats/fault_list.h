// All faults of one file, the first fifty word for word and the rest counted.
//
// Laws: fault_list.1  the listing ends with a line that counts what it leaves out.
// Errors: the Refusal it throws when it holds a fault.
// Source: the house's own.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "quantity/problem.h"

namespace squaredig::formats {

constexpr std::size_t kFaultsListed = 50;

class FaultList {
 public:
  void add(Place place, std::string found, std::string needed, std::string remedy);
  bool empty() const { return count_ == 0; }
  std::size_t size() const { return count_; }
  // Throws a Refusal of all faults, where there is one.
  void throw_if_any() const;

 private:
  std::vector<Problem> listed_;
  Place first_unlisted_;
  std::size_t count_ = 0;
};

}  // namespace squaredig::formats
