#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>

#include "ground/findings_internal.h"
#include "quantity/number_text.h"

namespace squaredig::ground {
namespace {

using geometry::Index;
using geometry::Point3;

constexpr std::size_t kEnoughNeighbours = 5;

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

class Rings {
 public:
  explicit Rings(const geometry::Surface& surface) : surface_(surface) {
    start_.assign(surface.vertices.size() + 1, 0);
    for (const auto& t : surface.triangles)
      for (const Index v : t) ++start_[at(v) + 1];
    for (std::size_t v = 1; v < start_.size(); ++v) start_[v] += start_[v - 1];
    triangles_.resize(3 * surface.triangles.size());
    std::vector<std::size_t> next(start_.begin(), start_.end() - 1);
    for (std::size_t t = 0; t < surface.triangles.size(); ++t)
      for (const Index v : surface.triangles[t]) triangles_[next[at(v)]++] = static_cast<Index>(t);
  }

  // The vertices joined to v by an edge and, where they are few, those joined to them; ascending.
  std::vector<Index> around(Index v) const {
    std::vector<Index> ring;
    add_neighbours(v, ring);
    tidy(ring, v);
    if (ring.size() >= kEnoughNeighbours) return ring;
    const std::vector<Index> first = ring;
    for (const Index u : first) add_neighbours(u, ring);
    tidy(ring, v);
    return ring;
  }

 private:
  void add_neighbours(Index v, std::vector<Index>& ring) const {
    for (std::size_t i = start_[at(v)]; i < start_[at(v) + 1]; ++i)
      for (const Index u : surface_.triangles[at(triangles_[i])]) ring.push_back(u);
  }
  static void tidy(std::vector<Index>& ring, Index without) {
    std::sort(ring.begin(), ring.end());
    ring.erase(std::unique(ring.begin(), ring.end()), ring.end());
    ring.erase(std::remove(ring.begin(), ring.end(), without), ring.end());
  }

  const geometry::Surface& surface_;
  std::vector<std::size_t> start_;
  std::vector<Index> triangles_;
};

// How far a centre lies above the plane through points round it, and the reach of that plane: by
// how much ground of unit curvature could at most depart from it there. Large where the plane is
// carried on from one side, or from far away.
struct Departure {
  double by = 0;
  double reach = 0;
};

// Least squares, weighted by one over the distance; everything relative to the centre.
class PlaneThroughRing {
 public:
  explicit PlaneThroughRing(const Point3& centre) : centre_(centre) {}

  void add(const Point3& p) {
    const double x = p.x - centre_.x, y = p.y - centre_.y;
    ring_.push_back({x, y, p.z - centre_.z, 1 / std::hypot(x, y)});
  }

  // Nothing where the ring lies on a line.
  std::optional<Departure> centre_above() {
    reduce_to_mean();
    double xx = 0, xy = 0, yy = 0;
    for (const Stop& p : ring_) {
      xx += p.weight * p.x * p.x;
      xy += p.weight * p.x * p.y;
      yy += p.weight * p.y * p.y;
    }
    const double determinant = xx * yy - xy * xy;
    if (!(determinant > 1e-9 * xx * yy)) return std::nullopt;
    // The plane's height at the centre is the sum of share * z over the ring.
    Departure out;
    for (const Stop& p : ring_) {
      const double share = p.weight / total_ -
                           p.weight *
                               ((p.x * yy - p.y * xy) * mean_.x + (p.y * xx - p.x * xy) * mean_.y) /
                               determinant;
      const double x = p.x + mean_.x, y = p.y + mean_.y;
      out.by -= share * p.z;
      out.reach += std::abs(share) * (x * x + y * y);
    }
    return out;
  }

 private:
  struct Stop {
    double x, y, z, weight;
  };

  void reduce_to_mean() {
    double x = 0, y = 0;
    for (const Stop& p : ring_) {
      total_ += p.weight;
      x += p.weight * p.x;
      y += p.weight * p.y;
    }
    mean_ = {x / total_, y / total_};
    for (Stop& p : ring_) {
      p.x -= mean_.x;
      p.y -= mean_.y;
    }
  }

  Point3 centre_;
  std::vector<Stop> ring_;
  double total_ = 0;
  geometry::Point2 mean_;
};

// A first look at every vertex inside the surface, in one pass over the triangles: how far it lies
// from the plane through its ring, from sums alone. Most ground ends here; what may be a spike, and
// what lies at the rim or has few neighbours, is looked at closely.
class FirstLook {
 public:
  explicit FirstLook(const geometry::Surface& surface) : sums_(surface.vertices.size()) {
    for (std::size_t t = 0; t < surface.triangles.size(); ++t) {
      const auto& c = surface.triangles[t];
      for (std::size_t side = 0; side < 3; ++side) {
        const Index a = c[side], b = c[(side + 1) % 3];
        const bool rim = surface.neighbours[t][side] == geometry::kNone;
        add(surface, a, b, rim);
        add(surface, b, a, rim);
      }
    }
  }

  // Whether the vertex departs by no more than `floor`, for certain.
  bool is_plain(Index v, double floor) const {
    const Sums& s = sums_[at(v)];
    if (s.rim || s.edges < 2 * kEnoughNeighbours) return false;
    const double mx = s.x / s.w, my = s.y / s.w, mz = s.z / s.w;
    const double xx = s.xx - s.x * mx, xy = s.xy - s.x * my, yy = s.yy - s.y * my;
    const double xz = s.xz - s.x * mz, yz = s.yz - s.y * mz;
    const double determinant = xx * yy - xy * xy;
    if (!(determinant > 1e-3 * xx * yy)) return false;
    const double by = mz - ((xz * yy - yz * xy) * mx + (yz * xx - xz * xy) * my) / determinant;
    return std::abs(by) < floor - 1e-6;  // rounding is far below
  }

 private:
  // Each neighbour of a vertex inside the surface comes twice, from both its triangles.
  struct Sums {
    double w = 0, x = 0, y = 0, z = 0, xx = 0, xy = 0, yy = 0, xz = 0, yz = 0;
    std::uint32_t edges = 0;
    bool rim = false;
  };

  void add(const geometry::Surface& surface, Index centre, Index other, bool rim) {
    const Point3& c = surface.vertices[at(centre)];
    const Point3& p = surface.vertices[at(other)];
    const double x = p.x - c.x, y = p.y - c.y, z = p.z - c.z, w = 1 / std::sqrt(x * x + y * y);
    Sums& s = sums_[at(centre)];
    s.w += w, s.x += w * x, s.y += w * y, s.z += w * z;
    s.xx += w * x * x, s.xy += w * x * y, s.yy += w * y * y;
    s.xz += w * x * z, s.yz += w * y * z;
    ++s.edges;
    s.rim = s.rim || rim;
  }

  std::vector<Sums> sums_;
};

struct Spike {
  Index vertex;
  double by;
  double neighbours_by;  // the second largest of what they depart, brought to this point's reach
  std::size_t neighbours;
};

class SpikeSearch {
 public:
  explicit SpikeSearch(const geometry::Surface& surface)
      : surface_(surface), rings_(surface), taken_(surface.vertices.size()) {}

  // Largest first, each taken out of the planes before the next is judged: a spike must not make
  // its neighbours suspect.
  std::vector<Spike> run() {
    std::vector<Spike> candidates;
    for (const Index v : to_look_at())
      if (const auto spike = at_vertex(v)) candidates.push_back(*spike);
    std::stable_sort(candidates.begin(), candidates.end(), [](const Spike& a, const Spike& b) {
      return std::abs(a.by) > std::abs(b.by);
    });
    std::vector<Spike> found;
    for (const Spike& candidate : candidates)
      if (const auto spike = at_vertex(candidate.vertex)) {
        found.push_back(*spike);
        taken_[at(spike->vertex)] = true;
      }
    return found;
  }

 private:
  std::vector<Index> to_look_at() const {
    const FirstLook first(surface_);
    std::vector<Index> out;
    for (std::size_t v = 0; v < surface_.vertices.size(); ++v)
      if (const auto i = static_cast<Index>(v); !first.is_plain(i, kSpikeFloor.in_metres()))
        out.push_back(i);
    return out;
  }

  std::optional<Spike> at_vertex(Index v) const {
    const std::vector<Index> ring = rings_.around(v);
    const auto own = departure(v, ring, geometry::kNone);
    if (!own || std::abs(own->by) <= kSpikeFloor.in_metres()) return std::nullopt;
    std::vector<double> others;
    for (const Index u : ring) {
      if (taken_[at(u)]) continue;
      if (const auto d = departure(u, rings_.around(u), v))
        others.push_back(std::abs(d->by) * std::max(1.0, own->reach / d->reach));
    }
    if (others.size() < 2) return std::nullopt;
    std::nth_element(others.begin(), others.begin() + 1, others.end(), std::greater<>());
    if (std::abs(own->by) <= kSpikeTimes.value() * others[1]) return std::nullopt;
    return Spike{v, own->by, others[1], ring.size()};
  }

  std::optional<Departure> departure(Index v, const std::vector<Index>& ring, Index without) const {
    PlaneThroughRing plane(surface_.vertices[at(v)]);
    for (const Index u : ring)
      if (u != without && !taken_[at(u)]) plane.add(surface_.vertices[at(u)]);
    return plane.centre_above();
  }

  const geometry::Surface& surface_;
  Rings rings_;
  std::vector<bool> taken_;
};

std::string why(const Spike& spike) {
  return "stands " + fixed(std::abs(spike.by), 3) + " m " + (spike.by > 0 ? "above" : "below") +
         " the plane of its " + std::to_string(spike.neighbours) +
         " neighbours, which, but for one at most, depart from theirs by " +
         fixed(spike.neighbours_by, 3) + " m or less";
}

}  // namespace

void find_spikes(const Rows& rows, const GroundInput& input, const BuiltGround& built,
                 GroundResult& result) {
  std::vector<Spike> spikes = SpikeSearch(built.ground.surface).run();
  const auto row = [&](const Spike& s) { return built.row[at(s.vertex)]; };
  std::sort(spikes.begin(), spikes.end(), [&](const Spike& a, const Spike& b) {
    return std::pair(row(a), a.vertex) < std::pair(row(b), b.vertex);
  });
  FindingList list("spike", result);
  for (const Spike& s : spikes) {
    // A ready surface has no rows, and a crossing of strings has none: their vertices are counted.
    const std::string vertex = "vertex " + std::to_string(s.vertex + 1) + " of the surface";
    const bool has_row = row(s) != geometry::kNone;
    const bool is_point = has_row && rows.is_point(row(s));
    const std::string name = is_point  ? std::string(input.points.label(at(row(s))))
                             : has_row ? rows.name(row(s))
                                       : vertex;
    const auto position = built.ground.frame.to_grid(built.ground.surface.vertices[at(s.vertex)]);
    result.suspects.push_back(
        {name, why(s), Length::metres(s.by), position, has_row ? rows.place(row(s)) : Place{}});
    if (list.wants_text())
      list.add((has_row ? rows.name_and_place(row(s)) : vertex) + " " + why(s), position.at);
  }
}

}  // namespace squaredig::ground
