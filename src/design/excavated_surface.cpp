#include "design/excavated_surface.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "geometry/triangulate.h"

namespace squaredig::design {
namespace {

using geometry::Index;
using geometry::Point2;
using geometry::Point3;

constexpr double kSame = 1e-5;  // m: corners this near are one

// Corners numbered so that near ones are one, with the height that came first.
class Corners {
 public:
  Index number(Point3 p) {
    const Key key = key_of(p.plan());
    for (std::int64_t c = key.first - 1; c <= key.first + 1; ++c)
      for (std::int64_t r = key.second - 1; r <= key.second + 1; ++r)
        for (const Index i : at_[{c, r}]) {
          const Point2 d = points[static_cast<std::size_t>(i)].plan() - p.plan();
          if (dot(d, d) <= kSame * kSame) return i;
        }
    at_[key].push_back(static_cast<Index>(points.size()));
    points.push_back(p);
    return static_cast<Index>(points.size() - 1);
  }
  std::vector<Point3> points;

 private:
  using Key = std::pair<std::int64_t, std::int64_t>;
  static Key key_of(Point2 p) {
    return {static_cast<std::int64_t>(std::floor(p.x / kSame)),
            static_cast<std::int64_t>(std::floor(p.y / kSame))};
  }
  std::map<Key, std::vector<Index>> at_;
};

// A vertical side that stands a millimetre further out.
std::vector<geometry::ConvexCut> widened(std::vector<geometry::ConvexCut> cuts) {
  for (auto& cut : cuts)
    for (auto& bound : cut.bounds) bound.inside.c += kTopEdgeMoves.in_metres();
  return cuts;
}

// The widened cut's facets, each held to its own cut's true sides: what is then missing is the
// millimetre in which a vertical face rises.
std::vector<geometry::Facet> facets_of(const geometry::Removed& wide,
                                       const std::vector<geometry::ConvexCut>& cuts) {
  std::vector<geometry::Facet> facets;
  for (const auto& facet : wide.facets) {
    geometry::LabelledPolygon outline{facet.outline, std::vector<int>(facet.outline.size(), 0)};
    for (const auto& bound : cuts[static_cast<std::size_t>(facet.cut)].bounds)
      if (!outline.empty()) outline = part_inside(outline, bound.inside, 0);
    if (outline.empty() || geometry::area_of(outline.corners) < 1e-9) continue;
    facets.push_back(facet);
    facets.back().outline = std::move(outline.corners);
  }
  return facets;
}

class Builder {
 public:
  explicit Builder(const Excavation& pit)
      : wide_(geometry::cut(pit.ground.surface, widened(pit.pit.cuts))),
        facets_(facets_of(wide_, pit.pit.cuts)) {}

  ExcavatedSurface build() {
    for (const auto& ring : wide_.rings) add_ring(ring.corners);
    const std::size_t ring_edges = edges_.size();
    for (const auto& facet : facets_) {
      std::vector<Point3> corners;
      for (const Point2 p : facet.outline) corners.push_back({p.x, p.y, facet.plane.at(p)});
      add_ring(corners);
    }
    bring_to_crest(ring_edges);
    geometry::TriangulationInput input;
    for (const auto& [a, b] : split_edges())
      input.constraints.push_back({{a, b}, 0, geometry::StringKind::Breakline});
    input.points = corners_.points;
    return inside_crest(geometry::triangulate(input).surface);
  }

 private:
  void add_ring(const std::vector<Point3>& ring) {
    std::vector<Index> numbers;
    numbers.reserve(ring.size());
    for (const Point3& p : ring) numbers.push_back(corners_.number(p));
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      const Index a = numbers[i], b = numbers[(i + 1) % numbers.size()];
      if (a != b) edges_.emplace_back(std::min(a, b), std::max(a, b));
    }
  }

  struct Stop {
    double along;
    Index corner;
  };

  // The corners that lie on an edge, its ends among them, in order.
  std::vector<Stop> stops_on(Index a, Index b) const {
    const Point2 from = plan(a), d = plan(b) - from;
    const double length = std::hypot(d.x, d.y);
    std::vector<Stop> on{{0, a}, {length, b}};
    for (Index i = 0; i < static_cast<Index>(corners_.points.size()); ++i) {
      if (i == a || i == b) continue;
      const Point2 w = plan(i) - from;
      const double along = dot(w, d) / length;
      if (along > 0 && along < length && std::abs(cross(d, w)) / length < kSame)
        on.push_back({along, i});
    }
    std::sort(on.begin(), on.end(), [](const Stop& p, const Stop& q) { return p.along < q.along; });
    return on;
  }

  // A corner on the crest lies on the ground there: it may be one of a face that is not dug.
  void bring_to_crest(std::size_t ring_edges) {
    for (std::size_t e = 0; e < ring_edges; ++e) {
      const auto on = stops_on(edges_[e].first, edges_[e].second);
      const double low = height(on.front().corner), high = height(on.back().corner);
      for (const Stop& stop : on)
        corners_.points[static_cast<std::size_t>(stop.corner)].z =
            low + (high - low) * stop.along / on.back().along;
    }
  }

  // Each edge once, broken at every corner that lies on it.
  std::vector<std::pair<Index, Index>> split_edges() {
    std::sort(edges_.begin(), edges_.end());
    edges_.erase(std::unique(edges_.begin(), edges_.end()), edges_.end());
    std::vector<std::pair<Index, Index>> split;
    for (const auto& [a, b] : edges_) {
      const auto on = stops_on(a, b);
      for (std::size_t i = 0; i + 1 < on.size(); ++i)
        split.emplace_back(on[i].corner, on[i + 1].corner);
    }
    return split;
  }

  double height(Index i) const { return corners_.points[static_cast<std::size_t>(i)].z; }
  Point2 plan(Index i) const { return corners_.points[static_cast<std::size_t>(i)].plan(); }

  ExcavatedSurface inside_crest(const geometry::Surface& all) const {
    ExcavatedSurface out;
    std::vector<Index> number(all.vertices.size(), geometry::kNone);
    for (Index t = 0; t < static_cast<Index>(all.triangles.size()); ++t) {
      const auto c = all.corners(t);
      const Point2 middle = (1.0 / 3) * (c[0].plan() + c[1].plan() + c[2].plan());
      if (!geometry::holds(wide_, middle)) continue;
      auto corners = all.triangles[static_cast<std::size_t>(t)];
      for (Index& v : corners) {
        Index& n = number[static_cast<std::size_t>(v)];
        if (n == geometry::kNone) {
          n = static_cast<Index>(out.surface.vertices.size());
          out.surface.vertices.push_back(all.vertices[static_cast<std::size_t>(v)]);
        }
        v = n;
      }
      out.surface.triangles.push_back(corners);
      describe(middle, out);
    }
    geometry::link_neighbours(out.surface);
    return out;
  }

  void describe(Point2 middle, ExcavatedSurface& out) const {
    const auto found = std::find_if(facets_.begin(), facets_.end(), [&](const auto& facet) {
      for (std::size_t i = 0; i < facet.outline.size(); ++i)
        if (orient(facet.outline[i], facet.outline[(i + 1) % facet.outline.size()], middle) < 0)
          return false;
      return true;
    });
    const bool vertical = found == facets_.end();
    out.kinds.push_back(vertical                                    ? FaceKind::Vertical
                        : found->kind == geometry::FacetKind::Floor ? FaceKind::Floor
                                                                    : FaceKind::Batter);
    out.parts.push_back(vertical ? lowest_near(middle) : part_of(found->cut));
  }

  Part part_of(Index cut) const {
    return static_cast<Part>(wide_.cuts[static_cast<std::size_t>(cut)].part);
  }

  // The part whose vertical face stands here: the lowest of the widened cuts.
  Part lowest_near(Point2 p) const {
    Index part = 0;
    double lowest = HUGE_VAL;
    for (const auto& cut : wide_.cuts)
      if (geometry::in_domain(cut, p) && geometry::height_of(cut, p) < lowest)
        lowest = geometry::height_of(cut, p), part = cut.part;
    return static_cast<Part>(part);
  }

  geometry::Removed wide_;
  std::vector<geometry::Facet> facets_;
  Corners corners_;
  std::vector<std::pair<Index, Index>> edges_;
};

}  // namespace

ExcavatedSurface excavated_surface(const Excavation& pit) { return Builder(pit).build(); }

}  // namespace squaredig::design
