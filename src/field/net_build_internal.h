// From book to net: set-ups, faces, sigmas and known points in the local frame.
#pragma once

#include "field/net_internal.h"
#include "field/total_station.h"

namespace squaredig::field {

struct BuiltNet {
  Net net;
  std::vector<FacesReduced> faces;  // by set-up
  std::vector<NetPoint> control;
  GridPoint origin;
  std::vector<bool> one_face;  // by set-up
};

BuiltNet build_net(const FieldInput& input, const std::vector<KnownPoint>& known, ResultHead& head);
Shape local_shape(const WorkScale& work, GridPoint origin);
// Refuses set-ups that could not be placed, and says why.
void refuse_unplaced(const Net& net);

}  // namespace squaredig::field
