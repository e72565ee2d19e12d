#include <algorithm>
#include <cmath>
#include <functional>

#include "ground/findings_internal.h"
#include "quantity/number_text.h"

namespace squaredig::ground {
namespace {

using geometry::Index;
using geometry::Point3;

constexpr std::size_t kEnoughNeighbours = 5;

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

// The triangles round each vertex, found by walking from neighbour to neighbour.
class Fans {
 public:
  explicit Fans(const geometry::Surface& surface)
      : surface_(surface), first_(surface.vertices.size(), geometry::kNone) {
    for (std::size_t t = 0; t < surface.triangles.size(); ++t)
      for (const Index v : surface.triangles[t]) first_[at(v)] = static_cast<Index>(t);
    for (std::size_t t = 0; t < surface.triangles.size(); ++t)
      for (std::size_t i = 0; i < 3; ++i)
        if (surface.neighbours[t][i] == geometry::kNone)
          rim_.emplace_back(surface.triangles[t][i], static_cast<Index>(t));
    std::sort(rim_.begin(), rim_.end());
    for (const auto& [v, t] : rim_) first_[at(v)] = geometry::kNone;
  }

  // Round a vertex inside the surface: visits each neighbour once. False, with nothing visited, for
  // any other.
  template <class Visit>
  bool visit_inside(Index v, Visit visit) const {
    const Index first = first_[at(v)];
    if (first == geometry::kNone) return false;
    Index t = first;
    do t = step(v, t, visit);
    while (t != first);
    return true;
  }

  // The vertices joined to v by an edge and, where they are few, those joined to them; ascending.
  void find_around(Index v, std::vector<Index>& ring) const {
    ring.clear();
    add_neighbours(v, ring);
    tidy(ring);
    if (ring.size() >= kEnoughNeighbours) return;
    for (std::size_t i = 0, joined = ring.size(); i < joined; ++i) add_neighbours(ring[i], ring);
    tidy(ring);
    ring.erase(std::remove(ring.begin(), ring.end(), v), ring.end());
  }

 private:
  // Visits the corner after v and goes on to the next triangle anticlockwise.
  template <class Visit>
  Index step(Index v, Index t, Visit& visit) const {
    const auto& corners = surface_.triangles[at(t)];
    const std::size_t i = corners[0] == v ? 0 : corners[1] == v ? 1 : 2;
    visit(corners[(i + 1) % 3]);
    return surface_.neighbours[at(t)][(i + 2) % 3];
  }

  void add_neighbours(Index v, std::vector<Index>& ring) const {
    auto add = [&](Index u) { ring.push_back(u); };
    if (visit_inside(v, add)) return;
    // at the rim there may be several fans, each from one edge of the rim to another
    auto fan = std::lower_bound(rim_.begin(), rim_.end(), std::pair(v, Index{0}));
    for (; fan != rim_.end() && fan->first == v; ++fan) {
      Index last = fan->second;
      for (Index t = last; t != geometry::kNone; t = step(v, t, add)) last = t;
      const auto& corners = surface_.triangles[at(last)];
      add(corners[corners[0] == v ? 2 : corners[1] == v ? 0 : 1]);
    }
  }

  static void tidy(std::vector<Index>& ring) {
    std::sort(ring.begin(), ring.end());
    ring.erase(std::unique(ring.begin(), ring.end()), ring.end());
  }

  const geometry::Surface& surface_;
  std::vector<Index> first_;                  // a triangle at each vertex inside
  std::vector<std::pair<Index, Index>> rim_;  // at the rim: vertex and triangle where a fan begins
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
  void begin_at(const Point3& centre) {
    centre_ = centre;
    ring_.clear();
    total_ = 0;
  }

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

// Whether a vertex inside the surface departs from the plane through its ring by no more than
// `floor`, for certain: from sums alone. Most ground ends here; what may be a spike, and what lies
// at the rim or has few neighbours, is looked at closely.
bool is_plain(const geometry::Surface& surface, const Fans& fans, Index v, double floor) {
  double w = 0, x = 0, y = 0, z = 0, xx = 0, xy = 0, yy = 0, xz = 0, yz = 0;
  std::size_t neighbours = 0;
  const Point3& c = surface.vertices[at(v)];
  const bool inside = fans.visit_inside(v, [&](Index u) {
    const Point3& p = surface.vertices[at(u)];
    const double px = p.x - c.x, py = p.y - c.y, pz = p.z - c.z;
    const double weight = 1 / std::sqrt(px * px + py * py);
    const double wx = weight * px, wy = weight * py;
    w += weight, x += wx, y += wy, z += weight * pz;
    xx += wx * px, xy += wx * py, yy += wy * py;
    xz += wx * pz, yz += wy * pz;
    ++neighbours;
  });
  if (!inside || neighbours < kEnoughNeighbours) return false;
  const double mx = x / w, my = y / w, mz = z / w;
  xx -= x * mx, xy -= x * my, yy -= y * my, xz -= x * mz, yz -= y * mz;
  const double determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-3 * xx * yy)) return false;
  const double by = mz - ((xz * yy - yz * xy) * mx + (yz * xx - xz * xy) * my) / determinant;
  return std::abs(by) < floor - 1e-6;  // rounding is far below
}

struct Spike {
  Index vertex;
  double by;
  double neighbours_by;  // the second largest of what they depart, brought to this point's reach
  std::size_t neighbours;
};

class SpikeSearch {
 public:
  explicit SpikeSearch(const geometry::Surface& surface)
      : surface_(surface), fans_(surface), taken_(surface.vertices.size()) {}

  // Largest first, each taken out of the planes before the next is judged: a spike must not make
  // its neighbours suspect.
  std::vector<Spike> run() {
    std::vector<Spike> candidates;
    for (std::size_t v = 0; v < surface_.vertices.size(); ++v) {
      const auto i = static_cast<Index>(v);
      if (is_plain(surface_, fans_, i, kSpikeFloor.in_metres())) continue;
      if (const auto spike = at_vertex(i)) candidates.push_back(*spike);
    }
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
  std::optional<Spike> at_vertex(Index v) {
    fans_.find_around(v, ring_);
    const auto own = departure(v, ring_, geometry::kNone);
    if (!own || std::abs(own->by) <= kSpikeFloor.in_metres()) return std::nullopt;
    std::vector<double> others;
    for (const Index u : ring_) {
      if (taken_[at(u)]) continue;
      fans_.find_around(u, other_ring_);
      if (const auto d = departure(u, other_ring_, v))
        others.push_back(std::abs(d->by) * std::max(1.0, own->reach / d->reach));
    }
    if (others.size() < 2) return std::nullopt;
    std::nth_element(others.begin(), others.begin() + 1, others.end(), std::greater<>());
    if (std::abs(own->by) <= kSpikeTimes.value() * others[1]) return std::nullopt;
    return Spike{v, own->by, others[1], ring_.size()};
  }

  std::optional<Departure> departure(Index v, const std::vector<Index>& ring, Index without) {
    plane_.begin_at(surface_.vertices[at(v)]);
    for (const Index u : ring)
      if (u != without && !taken_[at(u)]) plane_.add(surface_.vertices[at(u)]);
    return plane_.centre_above();
  }

  const geometry::Surface& surface_;
  Fans fans_;
  std::vector<bool> taken_;
  // room used again and again, for there are many vertices
  std::vector<Index> ring_, other_ring_;
  PlaneThroughRing plane_;
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
