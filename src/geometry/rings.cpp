#include <algorithm>
#include <cmath>
#include <map>

#include "geometry/rings_internal.h"
#include "geometry/sum.h"
#include "quantity/problem.h"

namespace squaredig::geometry {
namespace {

// Numbers the ends of segments so that ends within `snap` of each other share a number.
class Ends {
 public:
  explicit Ends(double snap) : snap_(snap) {}
  std::size_t number(Point3 p) {
    const auto column = static_cast<std::int64_t>(std::floor(p.x / snap_));
    const auto row = static_cast<std::int64_t>(std::floor(p.y / snap_));
    for (std::int64_t c = column - 1; c <= column + 1; ++c)
      for (std::int64_t r = row - 1; r <= row + 1; ++r)
        if (const auto found = at_.find({c, r}); found != at_.end()) {
          const Point3& q = points[found->second];
          if (std::hypot(q.x - p.x, q.y - p.y) <= snap_) return found->second;
        }
    at_.emplace(std::pair(column, row), points.size());
    points.push_back(p);
    return points.size() - 1;
  }
  std::vector<Point3> points;

 private:
  double snap_;
  std::map<std::pair<std::int64_t, std::int64_t>, std::size_t> at_;
};

struct Link {
  std::size_t from, to;
  bool vertical;
  bool used = false;
};

double left_turn(Point2 before, Point2 after) {
  return std::atan2(cross(before, after), dot(before, after));
}

// At a point where several rings touch, the sharpest left turn keeps each ring simple.
std::size_t next_link(const std::vector<Link>& links, const std::vector<std::size_t>& leaving,
                      const Ends& ends, std::size_t current) {
  const auto direction = [&](std::size_t l) {
    return ends.points[links[l].to].plan() - ends.points[links[l].from].plan();
  };
  std::size_t best = links.size();
  double sharpest = -10;
  for (const std::size_t l : leaving) {
    if (links[l].used) continue;
    const double turn = left_turn(direction(current), direction(l));
    if (turn > sharpest) sharpest = turn, best = l;
  }
  return best;
}

double area_of_ring(const std::vector<Point3>& corners) {
  Sum twice;
  for (std::size_t i = 2; i < corners.size(); ++i)
    twice.add(orient(corners[0].plan(), corners[i - 1].plan(), corners[i].plan()));
  return twice.value() / 2;
}

bool chained(const std::vector<BoundarySegment>& segments, double snap, std::vector<Ring>& rings) {
  Ends ends(snap);
  std::vector<Link> links;
  for (const auto& s : segments) {
    const std::size_t from = ends.number(s.from), to = ends.number(s.to);
    if (from != to) links.push_back({from, to, s.vertical});
  }
  std::vector<std::vector<std::size_t>> leaving(ends.points.size());
  for (std::size_t l = 0; l < links.size(); ++l) leaving[links[l].from].push_back(l);
  for (std::size_t first = 0; first < links.size(); ++first) {
    if (links[first].used) continue;
    Ring ring;
    std::size_t l = first;
    do {
      links[l].used = true;
      ring.corners.push_back(ends.points[links[l].from]);
      ring.vertical.push_back(links[l].vertical);
      if (links[l].to == links[first].from) break;
      l = next_link(links, leaving[links[l].to], ends, l);
      if (l == links.size()) return false;
    } while (true);
    ring.area = area_of_ring(ring.corners);
    if (ring.corners.size() >= 3 && std::abs(ring.area) > kNoArea) rings.push_back(std::move(ring));
  }
  return true;
}

}  // namespace

std::vector<Ring> chain(const std::vector<BoundarySegment>& segments) {
  for (double snap = 1e-6; snap < 2e-4; snap *= 10) {
    std::vector<Ring> rings;
    if (!chained(segments, snap, rings)) continue;
    std::stable_sort(rings.begin(), rings.end(),
                     [](const Ring& a, const Ring& b) { return a.area > b.area; });
    return rings;
  }
  refuse({"ground", 1, 1}, "a crest that does not close within 0.1 mm",
         "a ground surface without overlapping triangles",
         "examine the ground surface; send this job to the makers if it is in order");
}

}  // namespace squaredig::geometry
