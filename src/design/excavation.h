// The excavation: toe, excavated surface, what of the ground is dug, and the crest.
//
// What: the connected part of the ground above the pit's cuts that touches a toe polygon. Other
//   parts above the cuts, inside the box round the toes for which ground was asked (10 m further
//   out at least, and never less than the crest needs), are findings. The crest is its boundary:
//   the line of zero cut, or the top of a vertical face.
// Frame and units: the survey's site frame; results on the grid.
// Requires: a survey that covers the pit.
// Laws: excavation.1 every crest vertex lies on the ground to 1e-6 m; excavation.2 a deeper pit
// never
//   cuts less; excavation.3 moving or turning the job changes no volume; excavation.4 a finer split
//   of the same ground changes nothing.
// Accuracy: facets exact but for one rounding of their corners; volumes to 1e-9 relative, checked
// by
//   a second method in every run.
// Errors: Refusal when the dug region leaves the survey, with where and how deep the cut still is.
// Source: the excavated surface as the lower envelope of convex cuts, docs/decisions.
#pragma once

#include "design/pit_cuts.h"
#include "geometry/cut.h"
#include "ground/survey.h"

namespace squaredig::design {

struct CrestRing {
  std::vector<GridPosition> corners;  // closed, without a repeated last corner
  std::vector<bool> vertical;         // edge i is the top of a vertical face
};

struct Excavation {
  geometry::SiteFrame frame;
  Tank tank;
  std::vector<GridPosition> toe;  // clockwise from the corner by A, at dig level
  PitCuts pit;
  ground::GroundSurface ground;  // round the pit; the dug pieces name its triangles
  geometry::Removed dug;
  std::vector<CrestRing> crest;  // outer rings clockwise, greatest first, then islands
  ground::Region region;         // where the ground was asked for
  std::vector<Finding> findings;
  std::vector<std::string> cautions;

  // How far along the ray from a point the dug region reaches; zero where it never does.
  Length reach(GridPoint from, Bearing along) const;
  bool dug_at(GridPoint p) const;
  // The pit's lowest cut surface at a point, dug or not; nothing outside every cut's domain.
  std::optional<Elevation> surface_at(GridPoint p) const;
};

Excavation excavate(const DesignInput& input, ground::Survey& survey);

}  // namespace squaredig::design
