// Names that occur more than once among points, found without keeping a text twice.
//
// Accuracy: points numbered upward cost one comparison each; else 12 bytes a point while it looks.
// Errors: none.
// Source: the house's own.
#pragma once

#include <string>
#include <vector>

#include "formats/fault_list.h"
#include "quantity/points.h"

namespace squaredig::formats {

struct RepeatedName {
  std::string name;  // empty: points without a name
  int line = 0;      // where it stands again
  int first_line = 0;
};

// In file order, among the points from `first` on.
std::vector<RepeatedName> repeated_names(const PointTable& table, std::size_t first);
// One caution on all of them, naming the first.
void tell_repeated(const std::vector<RepeatedName>& repeated, const std::string& file,
                   std::vector<std::string>& cautions);
// A fault for each.
void refuse_repeated(const std::vector<RepeatedName>& repeated, const std::string& file,
                     FaultList& faults);

}  // namespace squaredig::formats
