// The ground examined: its extent, and everything in it that a person should look at.
//
// What: findings on doubled points, near points, spikes and strings that cross at two heights; for
//   each input file how many rows took part and which did not. Nothing is taken out or moved.
//   A point is a suspect (a spike) when its height departs from the plane through its neighbours by
//   more than kSpikeFloor, and by more than kSpikeTimes what each of those neighbours, but for one
//   at most, departs from the plane through its own neighbours; the point itself is left out of all
//   these planes. Planes are least squares, weighted by one over the distance; a point with fewer
//   than five neighbours takes theirs too. Where the point's plane is carried further than a
//   neighbour's, as at the rim, what that neighbour departs is raised as even curvature would raise
//   it. The largest is judged first and left out when the next is. Walls and rough rock so excuse
//   themselves, for there the neighbours depart as well.
//   Contours are drawn at the least interval of 1, 2 or 5 times a power of ten, from 0.1 m on, that
//   needs no more than kMostContourLevels levels and kMostContourStretches stretches.
// Frame and units: grid.
// Requires: `built` was built from `input`.
// Laws: examine.1 points on one plane give no suspect, and adding a plane to all heights changes
//   none; examine.2 read = used + set aside, for each file; examine.3 one point raised alone is the
//   one suspect, by what it was raised; examine.4 every contour stands at a whole multiple of the
//   interval, and no multiple between the lowest and the highest ground is left out.
// Accuracy: areas are compensated sums; departures are taken relative to the point.
// Errors: none.
// Source: definitions; the two constants are this program's own choice.
#pragma once

#include "ground/build_ground.h"
#include "ground/ground_result.h"
#include "quantity/tolerance.h"
#include "quantity/works.h"

namespace squaredig::ground {

constexpr Length kSpikeFloor = Length::metres(0.3);
constexpr Ratio kSpikeTimes = Ratio::of(5);
// Different positions closer than this are told; they are never merged.
constexpr Length kNear = Length::millimetres(10);
// Strings whose heights differ by no more than this where they meet agree.
constexpr Length kAgree = Length::millimetres(1);
// Of one kind of finding, this many are told one by one.
constexpr std::size_t kToldSingly = 50;

// Beyond this many, drawn vertices would hide the lines.
constexpr std::size_t kMostDrawn = 4000;
constexpr std::size_t kMostContourLevels = 25;
constexpr std::size_t kMostContourStretches = 60000;

// `head` carries inputs (file, rows read, used and set aside), cautions and findings; job and
// checksums are the caller's to add. The result is the same however its pieces are done together.
GroundResult examine(const GroundInput& input, const BuiltGround& built,
                     const DoAll& together = do_in_turn);

// The surface on the grid, as files hold it. The ground's triangles are moved there.
SurfaceMesh mesh_of(GroundSurface&& ground);

}  // namespace squaredig::ground
