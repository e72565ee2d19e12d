// The separation of geoid and ellipsoid, from the nodes of a grid file.
//
// Frame and units: latitudes north, longitudes east, in the geographic system of the grid file;
//   orthometric height = ellipsoid height less separation.
// Laws: geoid.1 at a node the separation is the node's; geoid.2 a point outside the nodes, or with
//   a node without value among its four, is refused and never guessed; geoid.3 every node is
//   examined before the first is used.
// Accuracy: bilinear between nodes.
// Errors: Refusal.
// Source: bilinear interpolation, as grid files are meant to be used (from memory).
#pragma once

#include <variant>

#include "field/field_input.h"
#include "geodesy/grid.h"

namespace squaredig::field {

// Refuses a grid whose size does not match its nodes, that has no node with a value, or that holds
// a separation no place on earth has (beyond -120 m or +100 m).
void examine(const GeoidGrid& geoid);

Length separation(const GeoidGrid& geoid, geodesy::Geographic at, const Place& asked_by);
// The same for many points: the problem instead of a Refusal.
std::variant<Length, Problem> find_separation(const GeoidGrid& geoid, geodesy::Geographic at,
                                              const Place& asked_by);

}  // namespace squaredig::field
