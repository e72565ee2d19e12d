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

// How far the centre lies above the weighted least-squares plane through the ring; nothing where
// the ring lies on a line. Everything is taken relative to the centre.
class PlaneThroughRing {
 public:
  explicit PlaneThroughRing(const Point3& centre) : centre_(centre) {}
  void add(const Point3& p) {
    const double x = p.x - centre_.x, y = p.y - centre_.y, z = p.z - centre_.z;
    const double w = 1 / std::hypot(x, y);
    n_ += w;
    x_ += w * x;
    y_ += w * y;
    z_ += w * z;
    xx_ += w * x * x;
    xy_ += w * x * y;
    yy_ += w * y * y;
    xz_ += w * x * z;
    yz_ += w * y * z;
  }
  std::optional<double> centre_above() const {
    if (n_ == 0) return std::nullopt;
    const double mx = x_ / n_, my = y_ / n_, mz = z_ / n_;
    const double xx = xx_ - n_ * mx * mx, yy = yy_ - n_ * my * my, xy = xy_ - n_ * mx * my;
    const double xz = xz_ - n_ * mx * mz, yz = yz_ - n_ * my * mz;
    const double determinant = xx * yy - xy * xy;
    if (!(determinant > 1e-9 * xx * yy)) return std::nullopt;
    const double slope_x = (xz * yy - yz * xy) / determinant;
    const double slope_y = (yz * xx - xz * xy) / determinant;
    return -(mz - slope_x * mx - slope_y * my);
  }

 private:
  Point3 centre_;
  double n_ = 0, x_ = 0, y_ = 0, z_ = 0, xx_ = 0, xy_ = 0, yy_ = 0, xz_ = 0, yz_ = 0;
};

class SpikeSearch {
 public:
  explicit SpikeSearch(const geometry::Surface& surface) : surface_(surface), rings_(surface) {}

  struct Spike {
    double by, neighbours_by;
    std::size_t neighbours;
  };
  std::optional<Spike> at_vertex(Index v) const {
    const std::vector<Index> ring = rings_.around(v);
    const std::optional<double> by = departure(v, ring, geometry::kNone);
    if (!by || std::abs(*by) <= kSpikeFloor.in_metres()) return std::nullopt;
    std::vector<double> others;
    for (const Index u : ring)
      if (const auto d = departure(u, rings_.around(u), v)) others.push_back(std::abs(*d));
    if (others.size() < 2) return std::nullopt;
    std::nth_element(others.begin(), others.begin() + 1, others.end(), std::greater<>());
    if (std::abs(*by) <= kSpikeTimes.value() * others[1]) return std::nullopt;
    return Spike{*by, others[1], ring.size()};
  }

 private:
  std::optional<double> departure(Index v, const std::vector<Index>& ring, Index without) const {
    PlaneThroughRing plane(surface_.vertices[at(v)]);
    for (const Index u : ring)
      if (u != without) plane.add(surface_.vertices[at(u)]);
    return plane.centre_above();
  }

  const geometry::Surface& surface_;
  Rings rings_;
};

}  // namespace

std::vector<Suspect> find_spikes(const Rows& rows, const GroundInput& input,
                                 const BuiltGround& built, std::vector<Finding>& findings) {
  std::vector<Suspect> out;
  const SpikeSearch search(built.ground.surface);
  FindingList list("spike", findings);
  for (std::size_t v = 0; v < built.row.size(); ++v) {
    const Index row = built.row[v];
    const bool ready = input.surface.has_value();
    if (row == geometry::kNone && !ready) continue;
    const auto spike = search.at_vertex(static_cast<Index>(v));
    if (!spike) continue;
    const std::string why =
        "stands " + fixed(std::abs(spike->by), 3) + " m " + (spike->by > 0 ? "above" : "below") +
        " the plane of its " + std::to_string(spike->neighbours) +
        " neighbours, which depart from theirs by " + fixed(spike->neighbours_by, 3) + " m";
    const std::string vertex = "vertex " + std::to_string(v + 1);
    const bool is_point = !ready && rows.is_point(row);
    const std::string name = ready      ? vertex
                             : is_point ? std::string(input.points.label(at(row)))
                                        : rows.name(row);
    out.push_back({name, why, Length::metres(spike->by), ready ? Place{} : rows.place(row)});
    if (list.wants_text()) list.add((ready ? vertex : rows.name_and_place(row)) + " " + why);
  }
  return out;
}

}  // namespace squaredig::ground
