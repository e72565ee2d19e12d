// The excavation: toe, excavated surface, what of the ground is dug, and the crest.
//
// Frame and units: the survey's site frame; results on the grid.
// Laws: excavation.1 the excavated surface is continuous but at vertical faces; excavation.2 every
//   crest vertex lies on the ground to 1e-6 m; excavation.3 deeper never cuts less; excavation.4
//   moving or turning the job changes no volume.
// Accuracy: facets exact but for one rounding of their corners; volumes to 1e-9 relative.
// Errors: Refusal when the dug region leaves the survey, with where and by how much.
// Source: the excavated surface as the lower envelope of convex cuts, docs/decisions.
#pragma once

#include "design/tank.h"
#include "geometry/cut.h"
#include "ground/survey.h"

namespace squaredig::design {

struct Excavation {
  geometry::SiteFrame frame;
  Tank tank;
  std::vector<GridPoint> toe;            // clockwise from the toe corner at A
  geometry::ExcavatedSurface surface;    // facets in the site frame
  geometry::CutPieces dug;               // the dug part, piece by piece
  std::vector<std::vector<GridPosition>> crest;  // closed rings on the ground, outer ring first
  std::vector<Finding> findings;
  std::vector<std::string> cautions;

  // How far along the ray from a point the dug region reaches; zero where it never does.
  Length reach(GridPoint from, Bearing along) const;
  // True where the ground is dug away at that point.
  bool dug_at(GridPoint p) const;
};

Excavation excavate(const DesignInput& input, ground::Survey& survey);

}  // namespace squaredig::design
