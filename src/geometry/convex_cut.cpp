#include "geometry/convex_cut.h"

#include <algorithm>
#include <utility>

namespace squaredig::geometry {
namespace {

constexpr double kSliver = 1e-12;  // m2
constexpr int kEdge = 0;

struct Part {
  Plane plane;
  Index side;
  FacetKind kind;
};

std::vector<Part> parts_of(const ConvexCut& cut) {
  std::vector<Part> parts{{cut.floor, kNone, FacetKind::Floor}};
  for (const auto& face : cut.faces) parts.push_back({face.plane, face.side, FacetKind::Face});
  return parts;
}

std::vector<double> differences(const LabelledPolygon& polygon, const Plane& a, const Plane& b) {
  std::vector<double> values;
  for (const Point2 p : polygon.corners) values.push_back(a.at(p) - b.at(p));
  return values;
}

bool level_everywhere(const std::vector<double>& values) {
  return std::all_of(values.begin(), values.end(),
                     [](double v) { return std::abs(v) < kLevelSnap; });
}

bool worth_keeping(const LabelledPolygon& polygon) {
  return !polygon.empty() && area_of(polygon.corners) > kSliver;
}

// Where `own` of one cut's parts is that cut's surface. Of two equal planes the first counts.
LabelledPolygon own_region(const std::vector<Part>& parts, std::size_t own, const ConvexCut& cut,
                           LabelledPolygon region) {
  for (const auto& bound : cut.bounds)
    if (!region.empty()) region = part_inside(region, bound.inside, kEdge);
  for (std::size_t other = 0; other < parts.size() && !region.empty(); ++other) {
    if (other == own) continue;
    const auto values = differences(region, parts[own].plane, parts[other].plane);
    if (level_everywhere(values)) {
      if (other < own) return {};
      continue;
    }
    region = part_above(region, values, kEdge);
  }
  return region;
}

enum class Ties { Keep, Yield };

// The other cut is nowhere lower over the piece for one reason alone: one of its parts lies above
// all of it, or one of its sides shuts all of it out. Told first, so that nothing is split in vain.
bool surely_not_below(const LabelledPolygon& piece, const Plane& plane, const ConvexCut& other,
                      const std::vector<Part>& parts) {
  const auto all = [&](auto test) {
    return std::all_of(piece.corners.begin(), piece.corners.end(), test);
  };
  for (const auto& bound : other.bounds)
    if (all([&](Point2 p) { return bound.inside.at(p) < -kLevelSnap; })) return true;
  return std::any_of(parts.begin(), parts.end(), [&](const Part& part) {
    return all([&](Point2 p) { return part.plane.at(p) - plane.at(p) > kLevelSnap; });
  });
}

// What is left of `pieces` (on `plane`) where the other cut is not lower.
std::vector<LabelledPolygon> not_below(const std::vector<LabelledPolygon>& pieces,
                                       const Plane& plane, const ConvexCut& other, Ties ties) {
  std::vector<LabelledPolygon> kept;
  const auto keep = [&](LabelledPolygon&& p) {
    if (worth_keeping(p)) kept.push_back(std::move(p));
  };
  const auto parts = parts_of(other);
  for (LabelledPolygon rest : pieces) {
    if (surely_not_below(rest, plane, other, parts)) {
      kept.push_back(std::move(rest));
      continue;
    }
    for (const auto& bound : other.bounds) {
      if (rest.empty()) break;
      const HalfPlane outside{-bound.inside.a, -bound.inside.b, -bound.inside.c};
      keep(part_inside(rest, outside, kEdge));
      rest = part_inside(rest, bound.inside, kEdge);
    }
    for (const Part& part : parts) {
      if (rest.empty()) break;
      const auto below = differences(rest, part.plane, plane);
      if (level_everywhere(below)) {
        if (ties == Ties::Keep) keep(std::exchange(rest, {}));
        continue;
      }
      const auto above = differences(rest, plane, part.plane);
      keep(part_above(rest, below, kEdge));
      rest = part_above(rest, above, kEdge);
    }
  }
  return kept;
}

}  // namespace

std::vector<Facet> lower_envelope(const std::vector<ConvexCut>& cuts, const Box2& box) {
  const LabelledPolygon whole{{box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}},
                              {0, 0, 0, 0}};
  std::vector<Facet> facets;
  for (std::size_t k = 0; k < cuts.size(); ++k) {
    const auto parts = parts_of(cuts[k]);
    for (std::size_t own = 0; own < parts.size(); ++own) {
      std::vector<LabelledPolygon> pieces{own_region(parts, own, cuts[k], whole)};
      if (!worth_keeping(pieces[0])) continue;
      for (std::size_t j = 0; j < cuts.size() && !pieces.empty(); ++j)
        if (j != k)
          pieces = not_below(pieces, parts[own].plane, cuts[j], k < j ? Ties::Keep : Ties::Yield);
      for (auto& piece : pieces)
        facets.push_back({std::move(piece.corners), parts[own].plane, static_cast<Index>(k),
                          parts[own].side, parts[own].kind});
    }
  }
  return facets;
}

bool in_domain(const ConvexCut& cut, Point2 p) {
  return std::all_of(cut.bounds.begin(), cut.bounds.end(),
                     [&](const CutBound& bound) { return bound.inside.at(p) >= 0; });
}

double height_of(const ConvexCut& cut, Point2 p) {
  double height = cut.floor.at(p);
  for (const auto& face : cut.faces) height = std::max(height, face.plane.at(p));
  return height;
}

}  // namespace squaredig::geometry
