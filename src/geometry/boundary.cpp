#include <algorithm>
#include <cmath>

#include "geometry/rings_internal.h"

namespace squaredig::geometry {
namespace {

struct Interval {
  double from = 0, to = 1;
};

// Removes an interval from a list of disjoint ones.
void subtract(std::vector<Interval>& kept, Interval gone) {
  std::vector<Interval> left;
  for (const Interval i : kept) {
    if (gone.to <= i.from || gone.from >= i.to) {
      left.push_back(i);
      continue;
    }
    if (gone.from > i.from) left.push_back({i.from, gone.from});
    if (gone.to < i.to) left.push_back({gone.to, i.to});
  }
  kept = std::move(left);
}

struct Segment {
  Point2 a, b;
  double length() const { return std::hypot(b.x - a.x, b.y - a.y); }
  Point2 at(double t) const { return a + t * (b - a); }
  double parameter(Point2 p) const { return dot(p - a, b - a) / dot(b - a, b - a); }
};

Segment edge_of(const LabelledPolygon& polygon, std::size_t i) {
  return {polygon.corners[i], polygon.corners[(i + 1) % polygon.corners.size()]};
}

bool on_line(const Segment& stretch, const Segment& line) {
  const HalfPlane side = HalfPlane::left_of(line.a, line.b);
  return std::abs(side.at(stretch.a)) < kNoLength && std::abs(side.at(stretch.b)) < kNoLength;
}

Interval shared(const Segment& segment, const Segment& other) {
  double from = segment.parameter(other.a), to = segment.parameter(other.b);
  if (from > to) std::swap(from, to);
  return {std::max(from, 0.0), std::min(to, 1.0)};
}

// The stretch of a segment that runs inside a convex polygon, further in than rounding.
Interval inside(const Segment& segment, const LabelledPolygon& polygon) {
  Interval in;
  for (std::size_t i = 0; i < polygon.corners.size(); ++i) {
    const Segment edge = edge_of(polygon, i);
    if (edge.length() < kNoLength) continue;
    const HalfPlane side = HalfPlane::left_of(edge.a, edge.b);
    const double at_a = side.at(segment.a), at_b = side.at(segment.b);
    if (at_a < kNoLength && at_b < kNoLength) return {0, 0};
    if (at_a < 0) in.from = std::max(in.from, at_a / (at_a - at_b));
    if (at_b < 0) in.to = std::min(in.to, at_a / (at_a - at_b));
  }
  return in.from < in.to ? in : Interval{0, 0};
}

// Takes away what another region of the same triangle covers or shares.
void subtract_region(std::vector<Interval>& kept, const Segment& segment, const Region& own,
                     const Region& other) {
  for (std::size_t i = 0; i < other.polygon.corners.size(); ++i) {
    const Segment edge = edge_of(other.polygon, i);
    if (edge.length() < kNoLength || !on_line(segment, edge)) continue;
    const bool same_way = dot(segment.b - segment.a, edge.b - edge.a) > 0;
    if (!same_way || other.cut < own.cut) subtract(kept, shared(segment, edge));
  }
  subtract(kept, inside(segment, other.polygon));
}

class Walker {
 public:
  Walker(const Surface& surface, const std::vector<ConvexCut>& cuts,
         const std::vector<Region>& regions)
      : surface_(surface), cuts_(cuts), regions_(regions) {}

  Boundary walk() {
    for (std::size_t first = 0; first < regions_.size();) {
      std::size_t last = first;
      while (last < regions_.size() && regions_[last].triangle == regions_[first].triangle) ++last;
      for (std::size_t i = first; i < last; ++i) region(i, first, last);
      first = last;
    }
    return std::move(boundary_);
  }

 private:
  void region(std::size_t own, std::size_t first, std::size_t last) {
    const Region& r = regions_[own];
    for (std::size_t i = 0; i < r.polygon.corners.size(); ++i) {
      const Segment segment = edge_of(r.polygon, i);
      if (segment.a == segment.b || goes_on(r, segment, r.polygon.labels[i])) continue;
      const double length = segment.length();
      std::vector<Interval> kept{{0, 1}};
      for (std::size_t j = first; j < last; ++j)
        if (j != own) subtract_region(kept, segment, r, regions_[j]);
      const int label = r.polygon.labels[i];
      if (label < 3) across(r, segment, label, kept);
      for (const Interval k : kept)
        if (label >= 3 || (k.to - k.from) * length > kNoLength)
          add(r, {segment.at(k.from), segment.at(k.to)}, label);
    }
  }

  // Beyond an edge of the triangle a single piece with the very same edge: no boundary, as for
  // most.
  bool goes_on(const Region& r, const Segment& segment, int edge) const {
    if (edge > 2) return false;
    const Index other =
        surface_.neighbours[static_cast<std::size_t>(r.triangle)][static_cast<std::size_t>(edge)];
    for (auto i = first_of(other); i != regions_.end() && i->triangle == other; ++i)
      for (std::size_t e = 0; e < i->polygon.corners.size(); ++e) {
        const Segment theirs = edge_of(i->polygon, e);
        if (theirs.a == segment.b && theirs.b == segment.a) return true;
      }
    return false;
  }

  std::vector<Region>::const_iterator first_of(Index triangle) const {
    if (triangle == kNone) return regions_.end();
    return std::lower_bound(regions_.begin(), regions_.end(), triangle,
                            [](const Region& a, Index t) { return a.triangle < t; });
  }

  // On an edge of the triangle: the neighbour's removed stretches are no boundary.
  void across(const Region& r, const Segment& segment, int edge, std::vector<Interval>& kept) {
    const Index other =
        surface_.neighbours[static_cast<std::size_t>(r.triangle)][static_cast<std::size_t>(edge)];
    if (other == kNone) {
      for (const Interval k : kept) leave(r, {segment.at(k.from), segment.at(k.to)});
      kept.clear();
      return;
    }
    for (auto i = first_of(other); i != regions_.end() && i->triangle == other; ++i)
      for (std::size_t e = 0; e < i->polygon.corners.size(); ++e) {
        const Segment theirs = edge_of(i->polygon, e);
        if (i->polygon.labels[e] < 3 && theirs.length() > 0 && on_line(theirs, segment))
          subtract(kept, shared(segment, theirs));
      }
  }

  void add(const Region& r, const Segment& s, int label) {
    const Plane plane = surface_.plane(r.triangle);
    const auto lifted = [&](Point2 p) { return Point3{p.x, p.y, plane.at(p)}; };
    // an edge of the triangle with nothing removed beyond it: a vertical side runs along it,
    // unless the surface meets the cut there
    const bool vertical =
        label == kVertical || (label < 3 && depth(r, plane, 0.5 * (s.a + s.b)) > 1e-6);
    boundary_.segments.push_back({lifted(s.a), lifted(s.b), vertical});
  }

  void leave(const Region& r, const Segment& s) {
    if (s.length() <= kNoLength) return;
    const Plane plane = surface_.plane(r.triangle);
    boundary_.leaving.push_back({s.a, s.b, std::max(depth(r, plane, s.a), depth(r, plane, s.b))});
    boundary_.segments.push_back(
        {{s.a.x, s.a.y, plane.at(s.a)}, {s.b.x, s.b.y, plane.at(s.b)}, true});
  }

  double depth(const Region& r, const Plane& plane, Point2 p) const {
    return plane.at(p) - height_of(cuts_[static_cast<std::size_t>(r.cut)], p);
  }

  const Surface& surface_;
  const std::vector<ConvexCut>& cuts_;
  const std::vector<Region>& regions_;
  Boundary boundary_;
};

}  // namespace

Boundary boundary_of(const Surface& surface, const std::vector<ConvexCut>& cuts,
                     const std::vector<Region>& regions) {
  return Walker(surface, cuts, regions).walk();
}

}  // namespace squaredig::geometry
