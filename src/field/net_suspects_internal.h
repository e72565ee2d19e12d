// Suppositions about a part of the net that does not fit: each is the part with one thing changed.
#pragma once

#include "field/net_internal.h"

namespace squaredig::field {

enum class Blunder { WrongName, SwappedNames, Bumped, WrongStation, InstrumentHeight, WholeSight };

struct Supposition {
  Blunder blunder;
  std::string text;  // what it says of the book, with lines
  std::string code;
  NetFit fit;
};

void leave_out(Net& net, const Observed& reading);

// The part without its sideshots: what the adjustment works on.
Net without_sideshots(const Net& part);

// The suppositions under which the part passes every test, those that explain most simply first.
// One reading beyond chance by a little may be left out beside: one in a thousand always is, and
// must not hide a wrong name.
std::vector<Supposition> suppositions_that_fit(const Net& part,
                                               const std::vector<NetPoint>& control,
                                               const Shape& shape);
// Only wrong names of the target of one sight.
std::vector<Supposition> other_names_that_fit(const Net& part, std::size_t sight,
                                              const std::vector<NetPoint>& control,
                                              const Shape& shape);

}  // namespace squaredig::field
