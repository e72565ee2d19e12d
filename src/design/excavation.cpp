#include "design/excavation.h"

#include <algorithm>
#include <cmath>

#include "design/excavation_internal.h"
#include "geometry/locate.h"
#include "geometry/sum.h"
#include "ground/part.h"
#include "quantity/number_text.h"

namespace squaredig::design {
namespace {

using geometry::Point2;
using geometry::Point3;

std::string at_text(GridPoint p) {
  return "E " + fixed(p.easting.in_metres(), 3) + " N " + fixed(p.northing.in_metres(), 3);
}

// The box round points in the site frame, widened on every side.
ground::Region region_round(const geometry::SiteFrame& frame, const std::vector<Point2>& points,
                            double margin) {
  Point2 low = points[0], high = points[0];
  for (const Point2 p : points) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  return {frame.to_grid(low - Point2{margin, margin}),
          frame.to_grid(high + Point2{margin, margin})};
}

bool holds(const ground::Region& region, const ground::Region& inner) {
  return region.low.easting <= inner.low.easting && region.low.northing <= inner.low.northing &&
         region.high.easting >= inner.high.easting && region.high.northing >= inner.high.northing;
}

std::vector<Point2> corners_of(const geometry::Removed& dug, const geometry::Polygon& toe) {
  std::vector<Point2> points(toe);
  for (const auto& ring : dug.rings)
    for (const Point3& p : ring.corners) points.push_back(p.plan());
  return points;
}

// How much of the convex toes has ground over it.
double covered_area(const geometry::Surface& ground, const std::vector<geometry::ConvexCut>& cuts) {
  std::vector<geometry::Box2> boxes;
  boxes.reserve(ground.triangles.size());
  const auto corners = [&](std::size_t t) {
    const auto [a, b, c] = ground.corners(static_cast<geometry::Index>(t));
    return std::array<Point2, 3>{a.plan(), b.plan(), c.plan()};
  };
  for (std::size_t t = 0; t < ground.triangles.size(); ++t)
    boxes.push_back(geometry::box_of(corners(t)));
  geometry::Sum covered;
  geometry::CutSpace space;
  for (const auto& cut : cuts) {
    const geometry::ConvexWindow window(cut.toe);
    for (std::size_t t = 0; t < boxes.size(); ++t) {
      if (window.misses(boxes[t])) continue;
      const auto triangle = corners(t);
      covered.add(geometry::area_of(window.part_of(triangle, space)));
    }
  }
  return covered.value();
}

void require_ground_over_corners(const DesignInput& input, const Excavation& pit,
                                 const geometry::Surface& ground) {
  const geometry::Locator locator(ground);
  for (const GridPosition& corner : pit.toe)
    if (!locator.height_at(pit.frame.to_site(corner.at)))
      refuse(input.pit.place, "no ground surface over the toe corner at " + at_text(corner.at),
             "a survey that covers the whole pit",
             "survey further out, or correct the tank's place");
}

void require_ground_over_toe(const DesignInput& input, const Excavation& pit,
                             const geometry::Surface& ground) {
  double whole = 0;
  for (const auto& cut : pit.pit.cuts) whole += geometry::area_of(cut.toe);
  const double covered = covered_area(ground, pit.pit.cuts);
  if (covered >= whole * (1 - 1e-9) - 1e-6) return;
  require_ground_over_corners(input, pit, ground);
  refuse(input.pit.place,
         "a hole of " + fixed(whole - covered, 2) + " m2 in the ground surface over the floor",
         "a survey that covers the whole pit", "survey the gap, or lengthen `longest_edge`");
}

void require_inside_survey(const DesignInput& input, const Excavation& pit) {
  if (pit.dug.leaving.empty()) return;
  const auto worst =
      std::max_element(pit.dug.leaving.begin(), pit.dug.leaving.end(),
                       [](const auto& a, const auto& b) { return a.depth < b.depth; });
  refuse(input.pit.place,
         "the pit runs out of the survey at " + at_text(pit.frame.to_grid(worst->from)) +
             ", where the cut is still " + fixed(worst->depth, 2) + " m deep",
         "ground surveyed beyond the crest on every side",
         "survey further out there, or check level, batter and place of the pit");
}

void tell_detached(Excavation& pit) {
  for (const auto& part : pit.dug.detached)
    pit.findings.push_back(
        {"ground-above-batter",
         "Ground near " + at_text(pit.frame.to_grid(part.at)) +
             " rises above the produced batters but is not joined to the pit: at "
             "least " +
             fixed(part.area, 1) + " m2 holding " + fixed(part.volume, 1) + " m3, not counted."});
}

// Rings of the kernel run anticlockwise; people read them clockwise.
CrestRing crest_ring(const geometry::SiteFrame& frame, const geometry::Ring& ring) {
  CrestRing crest;
  const std::size_t n = ring.corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    crest.corners.push_back(frame.to_grid(ring.corners[n - 1 - i]));
    crest.vertical.push_back(ring.vertical[(2 * n - 2 - i) % n]);
  }
  return crest;
}

std::vector<GridPosition> toe_on_grid(const Excavation& pit) {
  const auto& toe = pit.pit.toe;
  std::vector<GridPosition> ring;
  for (std::size_t i = toe.size(); i-- > 0;) {
    const GridPoint p = pit.frame.to_grid(toe[i]);
    ring.push_back({p, pit.tank.dig_level.at(p)});
  }
  return ring;
}

std::vector<Point2> toes_of(const PitCuts& pit) {
  std::vector<Point2> corners(pit.toe);
  for (const auto& cut : pit.cuts) corners.insert(corners.end(), cut.toe.begin(), cut.toe.end());
  return corners;
}

}  // namespace

Length Excavation::reach(GridPoint from, Bearing along) const {
  const Point2 start = frame.to_site(from);
  const Point2 u{sine(along.from_north()), cosine(along.from_north())};
  double farthest = 0;
  for (const auto& ring : dug.rings)
    for (std::size_t i = 0; i < ring.corners.size(); ++i) {
      const Point2 a = ring.corners[i].plan() - start;
      const Point2 b = ring.corners[(i + 1) % ring.corners.size()].plan() - start;
      const double side_a = cross(u, a), side_b = cross(u, b);
      if ((side_a > 0) == (side_b > 0)) continue;
      const double t = side_a / (side_a - side_b);
      farthest = std::max(farthest, dot(u, a + t * (b - a)));
    }
  return Length::metres(farthest);
}

bool Excavation::dug_at(GridPoint p) const { return geometry::holds(dug, frame.to_site(p)); }

std::optional<Elevation> Excavation::surface_at(GridPoint p) const {
  const Point2 q = frame.to_site(p);
  std::optional<double> lowest;
  for (const auto& cut : pit.cuts)
    if (geometry::in_domain(cut, q)) {
      const double height = geometry::height_of(cut, q);
      lowest = std::min(lowest.value_or(height), height);
    }
  if (!lowest) return std::nullopt;
  return frame.to_grid_height(*lowest);
}

// Asks for a wider piece of ground until the pit lies inside what was asked for.
void dig_in(Excavation& pit, ground::Survey& survey, const DesignInput& input) {
  const auto toes = toes_of(pit.pit);
  for (double margin = 10;; margin *= 2) {
    pit.region = region_round(pit.frame, toes, margin);
    pit.ground = ground::part_of(survey.surface_for(pit.region), toes, pit.region);
    require_ground_over_toe(input, pit, pit.ground.surface);
    pit.dug = geometry::cut(pit.ground.surface, pit.pit.cuts);
    const auto needed = region_round(pit.frame, corners_of(pit.dug, pit.pit.toe), 0);
    if (holds(pit.region, needed)) break;
  }
  for (const auto& ring : pit.dug.rings) pit.crest.push_back(crest_ring(pit.frame, ring));
}

Excavation excavate(const DesignInput& input, ground::Survey& survey) {
  Excavation pit;
  pit.frame = survey.frame();
  pit.tank = place_tank(input);
  pit.pit = pit_cuts(input, pit.tank, pit.frame);
  pit.toe = toe_on_grid(pit);
  dig_in(pit, survey, input);
  require_inside_survey(input, pit);
  tell_detached(pit);
  pit.cautions = pit.pit.cautions;
  return pit;
}

}  // namespace squaredig::design
