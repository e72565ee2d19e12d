#include <algorithm>
#include <array>
#include <cmath>

#include "base/floor_internal.h"
#include "geometry/triangulate.h"

namespace squaredig::base {
namespace {

using geometry::Index;
using geometry::Point2;

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

// One edge of the rim, the surveyed surface on its left.
struct RimEdge {
  Index from = 0;
  Index to = 0;
  Point2 outward;  // of length one
};

std::vector<RimEdge> rim_of(const geometry::Surface& surface) {
  std::vector<RimEdge> by_start(surface.vertices.size());
  Index first = geometry::kNone;
  for (std::size_t t = 0; t < surface.triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i) {
      if (surface.neighbours[t][i] != geometry::kNone) continue;
      const Index from = surface.triangles[t][i], to = surface.triangles[t][(i + 1) % 3];
      const Point2 along = surface.vertices[at(to)].plan() - surface.vertices[at(from)].plan();
      const double length = std::hypot(along.x, along.y);
      by_start[at(from)] = {from, to, {along.y / length, -along.x / length}};
      first = first == geometry::kNone ? from : std::min(first, from);
    }
  std::vector<RimEdge> rim;
  for (Index v = first; rim.empty() || v != first; v = rim.back().to)
    rim.push_back(by_start[at(v)]);
  return rim;
}

// Takes off the flat triangles along the rim. A row of points that is not quite straight has its
// hull pass some of them by a millimetre: the triangle in between would stand as a wall.
class Peeler {
 public:
  explicit Peeler(geometry::Surface& surface) : surface_(surface) {
    on_rim_.assign(surface.vertices.size(), false);
    gone_.assign(surface.triangles.size(), false);
    for (std::size_t t = 0; t < surface.triangles.size(); ++t)
      for (std::size_t i = 0; i < 3; ++i) {
        if (surface.neighbours[t][i] != geometry::kNone) continue;
        on_rim_[at(surface.triangles[t][i])] = true;
        rim_.emplace_back(t, i);
      }
  }

  void peel() {
    while (!rim_.empty()) {
      const auto [t, i] = rim_.back();
      rim_.pop_back();
      if (!gone_[t] && flat(t, i)) take_off(t, i);
    }
    std::vector<std::array<Index, 3>> left;
    for (std::size_t t = 0; t < gone_.size(); ++t)
      if (!gone_[t]) left.push_back(surface_.triangles[t]);
    surface_.triangles = std::move(left);
    geometry::link_neighbours(surface_);
  }

 private:
  static constexpr double kFlat = 0.002;  // metres: two steps of a coordinate

  bool flat(std::size_t t, std::size_t i) const {
    const auto& ids = surface_.triangles[t];
    const Index apex = ids[(i + 2) % 3];
    if (on_rim_[at(apex)]) return false;  // the surface would fall apart there
    const Point2 a = surface_.vertices[at(ids[i])].plan();
    const Point2 b = surface_.vertices[at(ids[(i + 1) % 3])].plan();
    return geometry::distance_to_segment(surface_.vertices[at(apex)].plan(), a, b) <= kFlat;
  }

  void take_off(std::size_t t, std::size_t i) {
    gone_[t] = true;
    on_rim_[at(surface_.triangles[t][(i + 2) % 3])] = true;
    for (const std::size_t k : {(i + 1) % 3, (i + 2) % 3}) {
      const std::size_t other = at(surface_.neighbours[t][k]);
      for (std::size_t j = 0; j < 3; ++j) {
        if (surface_.neighbours[other][j] != static_cast<Index>(t)) continue;
        surface_.neighbours[other][j] = geometry::kNone;
        rim_.emplace_back(other, j);
      }
    }
  }

  geometry::Surface& surface_;
  std::vector<bool> on_rim_, gone_;
  std::vector<std::pair<std::size_t, std::size_t>> rim_;
};

class Carrier {
 public:
  Carrier(DugSurface& dug, double reach) : dug_(dug), reach_(reach) {}

  void carry(const std::vector<RimEdge>& rim) {
    const std::size_t n = rim.size();
    for (std::size_t i = 0; i < n; ++i) {
      const RimEdge& edge = rim[i];
      const Point2 before = rim[(i + n - 1) % n].outward, after = rim[(i + 1) % n].outward;
      strip(edge, shared(before, edge.outward, edge.outward),
            shared(edge.outward, after, edge.outward));
      fan(edge.to, edge.outward, after);
    }
  }

 private:
  Index far(Index v, Point2 direction) {
    const geometry::Point3 p = dug_.surface.vertices[at(v)];
    dug_.surface.vertices.push_back({p.x + reach_ * direction.x, p.y + reach_ * direction.y, p.z});
    dug_.source.push_back(dug_.source[at(v)]);
    return static_cast<Index>(dug_.surface.vertices.size() - 1);
  }
  void triangle(Index a, Index b, Index c) { dug_.surface.triangles.push_back({a, b, c}); }

  // The way outward from a corner: square to the edge where the rim turns outward, the mean of both
  // ways, which two strips share, where it turns inward.
  static Point2 shared(Point2 before, Point2 after, Point2 own) {
    if (geometry::cross(before, after) >= 0) return own;
    const Point2 sum = before + after;
    return (1 / std::hypot(sum.x, sum.y)) * sum;
  }

  // Beyond an edge the deviation along it is carried outward.
  void strip(const RimEdge& edge, Point2 from_way, Point2 to_way) {
    const Index from = far(edge.from, from_way), to = far(edge.to, to_way);
    triangle(edge.from, from, to);
    triangle(edge.from, to, edge.to);
  }

  // Beyond a corner its own deviation, in turns of at most a sixth of the circle.
  void fan(Index v, Point2 start, Point2 end) {
    const double turn = std::atan2(geometry::cross(start, end), geometry::dot(start, end));
    if (turn <= 1e-12) return;
    const int parts = 1 + static_cast<int>(turn);
    Index before = far(v, start);
    for (int k = 1; k <= parts; ++k) {
      const double a = turn * k / parts;
      const Point2 direction{start.x * std::cos(a) - start.y * std::sin(a),
                             start.x * std::sin(a) + start.y * std::cos(a)};
      const Index next = far(v, k == parts ? end : direction);
      triangle(v, before, next);
      before = next;
    }
  }

  DugSurface& dug_;
  double reach_;
};

double reach_over(const Floor& floor) {
  Point2 low = floor.toe.front(), high = low;
  const auto take = [&](Point2 p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  };
  for (const Point2 p : floor.toe) take(p);
  for (const Point2 p : floor.footprint) take(p);
  for (const FloorPoint& p : floor.points) take(p.at);
  return 2 * std::hypot(high.x - low.x, high.y - low.y);
}

}  // namespace

std::optional<DugSurface> build_surface(const Floor& floor) {
  geometry::TriangulationInput input;
  for (const FloorPoint& p : floor.points) input.points.push_back({p.at.x, p.at.y, p.deviation});
  geometry::Triangulated made = geometry::triangulate(input);
  if (made.surface.triangles.empty()) return std::nullopt;
  DugSurface dug;
  dug.surface = std::move(made.surface);
  Peeler(dug.surface).peel();
  for (const Index source : made.source) dug.source.push_back(at(source));
  dug.surveyed_triangles = static_cast<Index>(dug.surface.triangles.size());
  Carrier(dug, reach_over(floor)).carry(rim_of(dug.surface));
  geometry::link_neighbours(dug.surface);
  return dug;
}

std::vector<geometry::PlaneFacet> parts_of(const geometry::Polygon& polygon) {
  if (geometry::is_convex(polygon)) return {{polygon, {}}};
  geometry::TriangulationInput input;
  geometry::Constraint ring;
  for (const Point2 p : polygon) {
    ring.vertices.push_back(static_cast<Index>(input.points.size()));
    input.points.push_back({p.x, p.y, 0});
  }
  ring.vertices.push_back(0);
  ring.kind = geometry::StringKind::Outline;
  input.constraints.push_back(std::move(ring));
  input.keep.push_back(polygon);
  return geometry::facets_of(geometry::triangulate(input).surface);
}

}  // namespace squaredig::base
