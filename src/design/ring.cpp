#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <set>
#include <tuple>

#include "design/ring_internal.h"
#include "geometry/polygon.h"

namespace squaredig::design {
namespace {

using geometry::Point2;

constexpr double kStraight = 1e-9;  // sine of the turn below which two edges run on

Point2 unit(Point2 d) { return (1 / std::hypot(d.x, d.y)) * d; }

// Where two lines meet: p + s u = q + t v. Nothing for parallel ones.
std::optional<double> meeting(Point2 p, Point2 u, Point2 q, Point2 v) {
  const double turn = cross(u, v);
  if (std::abs(turn) < kStraight) return std::nullopt;
  return cross(q - p, v) / turn;
}

struct Hit {
  Point2 at;
  std::size_t edge = 0;
};

// The first edge that a ray from corner `from` meets, its own two edges left out.
std::optional<Hit> first_hit(const SideRing& ring, std::size_t from, Point2 direction) {
  const std::size_t n = ring.corners.size();
  std::optional<Hit> best;
  double nearest = std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k < n; ++k) {
    if (k == from || k == (from + n - 1) % n) continue;
    const Point2 a = ring.corners[k], d = ring.corners[(k + 1) % n] - a;
    const double length = std::hypot(d.x, d.y);
    const auto s = meeting(ring.corners[from], direction, a, (1 / length) * d);
    if (!s || *s <= 1e-9 || *s >= nearest) continue;
    const Point2 at = ring.corners[from] + *s * direction;
    const double along = dot(at - a, d) / length;
    if (along < -1e-9 || along > length + 1e-9) continue;
    nearest = *s;
    best = Hit{at, k};
  }
  return best;
}

bool same(Point2 a, Point2 b) { return std::hypot(a.x - b.x, a.y - b.y) < 1e-9; }

// Adds a corner unless it repeats the last; the edge that follows is of `side`.
void add(SideRing& ring, Point2 corner, std::size_t side) {
  if (!ring.corners.empty() && same(ring.corners.back(), corner)) {
    ring.side.back() = side;
    return;
  }
  ring.corners.push_back(corner);
  ring.side.push_back(side);
}

void close(SideRing& ring) {
  while (ring.corners.size() > 1 && same(ring.corners.front(), ring.corners.back())) {
    ring.corners.pop_back();
    ring.side.pop_back();
  }
}

// The part to the left of the edge that ends in the reflex corner v, extended to the hit.
SideRing behind_incoming(const SideRing& ring, std::size_t v, const Hit& hit) {
  const std::size_t n = ring.corners.size();
  const std::size_t before = (v + n - 1) % n;
  SideRing part;
  add(part, ring.corners[before], ring.side[before]);
  add(part, hit.at, ring.side[hit.edge]);
  for (std::size_t k = (hit.edge + 1) % n; k != before; k = (k + 1) % n)
    add(part, ring.corners[k], ring.side[k]);
  close(part);
  return part;
}

// The part to the left of the edge that starts in the reflex corner v, extended back to the hit.
SideRing behind_outgoing(const SideRing& ring, std::size_t v, const Hit& hit) {
  const std::size_t n = ring.corners.size();
  SideRing part;
  add(part, hit.at, ring.side[v]);
  for (std::size_t k = (v + 1) % n; k != (hit.edge + 1) % n; k = (k + 1) % n)
    add(part, ring.corners[k], ring.side[k]);
  close(part);
  return part;
}

std::optional<std::size_t> reflex_corner(const SideRing& ring) {
  const std::size_t n = ring.corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point2 in = unit(ring.corners[i] - ring.corners[(i + n - 1) % n]);
    const Point2 out = unit(ring.corners[(i + 1) % n] - ring.corners[i]);
    if (cross(in, out) < -kStraight) return i;
  }
  return std::nullopt;
}

void note_sharp(const SideRing& ring, std::size_t side, Point2 direction, const Hit& hit,
                Cover& cover) {
  const std::size_t n = ring.corners.size();
  const Point2 edge = unit(ring.corners[(hit.edge + 1) % n] - ring.corners[hit.edge]);
  if (std::abs(cross(direction, edge)) < std::sqrt(0.75))
    cover.sharp.emplace_back(side, ring.side[hit.edge]);
}

// Rings that were covered before: many orders of cuts lead to the same part, and without this the
// work would double with every reflex corner.
class Seen {
 public:
  // False the second time.
  bool is_new(const SideRing& ring) {
    std::vector<Corner> corners;
    for (std::size_t i = 0; i < ring.corners.size(); ++i)
      corners.push_back({std::llround(ring.corners[i].x / kGrain),
                         std::llround(ring.corners[i].y / kGrain), ring.side[i]});
    std::rotate(corners.begin(), std::min_element(corners.begin(), corners.end()), corners.end());
    return rings_.insert(std::move(corners)).second;
  }

 private:
  static constexpr double kGrain = 1e-7;  // far over the rounding of where two lines meet
  using Corner = std::tuple<std::int64_t, std::int64_t, std::size_t>;
  std::set<std::vector<Corner>> rings_;
};

void cover_ring(const SideRing& ring, Seen& seen, Cover& cover) {
  if (!seen.is_new(ring)) return;
  const auto v = reflex_corner(ring);
  if (!v) {
    cover.rings.push_back(ring);
    return;
  }
  const std::size_t n = ring.corners.size();
  const std::size_t before = (*v + n - 1) % n;
  const Point2 onward = unit(ring.corners[*v] - ring.corners[before]);
  const Point2 back = unit(ring.corners[*v] - ring.corners[(*v + 1) % n]);
  if (const auto hit = first_hit(ring, *v, onward)) {
    note_sharp(ring, ring.side[before], onward, *hit, cover);
    cover_ring(behind_incoming(ring, *v, *hit), seen, cover);
  }
  if (const auto hit = first_hit(ring, *v, back)) {
    note_sharp(ring, ring.side[*v], back, *hit, cover);
    cover_ring(behind_outgoing(ring, *v, *hit), seen, cover);
  }
}

}  // namespace

std::optional<SideRing> moved_outward(const SideRing& ring, const std::vector<double>& by_side) {
  const std::size_t n = ring.corners.size();
  SideRing moved;
  moved.side = ring.side;
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t before = (i + n - 1) % n;
    const Point2 in = unit(ring.corners[i] - ring.corners[before]);
    const Point2 out = unit(ring.corners[(i + 1) % n] - ring.corners[i]);
    const double d_in = by_side[ring.side[before]], d_out = by_side[ring.side[i]];
    const Point2 on_in = ring.corners[i] + d_in * Point2{in.y, -in.x};
    const Point2 on_out = ring.corners[i] + d_out * Point2{out.y, -out.x};
    const auto s = meeting(on_in, in, on_out, out);
    if (!s && std::abs(d_in - d_out) > 1e-12) return std::nullopt;
    moved.corners.push_back(s ? on_in + *s * in : on_in);
  }
  if (geometry::self_crossing(moved.corners) || geometry::signed_area(moved.corners) <= 0)
    return std::nullopt;
  return moved;
}

bool runs_straight(const SideRing& ring, std::size_t corner) {
  const std::size_t n = ring.corners.size();
  const Point2 in = unit(ring.corners[corner] - ring.corners[(corner + n - 1) % n]);
  const Point2 out = unit(ring.corners[(corner + 1) % n] - ring.corners[corner]);
  return std::abs(cross(in, out)) < kStraight;
}

SideRing convex_moved_outward(const SideRing& ring, const std::vector<double>& by_side) {
  // each edge's line, then from the first whatever edge the earlier ones leave room for
  struct Line {
    Point2 at, along;
    std::size_t side;
  };
  std::vector<Line> lines;
  for (std::size_t i = 0; i < ring.corners.size(); ++i) {
    const Point2 u = unit(ring.corners[(i + 1) % ring.corners.size()] - ring.corners[i]);
    lines.push_back({ring.corners[i] + by_side[ring.side[i]] * Point2{u.y, -u.x}, u, ring.side[i]});
  }
  const auto corner = [](const Line& a, const Line& b) {
    return a.at + meeting(a.at, a.along, b.at, b.along).value() * a.along;
  };
  // an edge that runs backward has no room: take out the worst until none does
  for (;;) {
    const std::size_t n = lines.size();
    double least = 0;
    std::size_t worst = n;
    for (std::size_t i = 0; i < n; ++i) {
      const Point2 from = corner(lines[(i + n - 1) % n], lines[i]);
      const Point2 to = corner(lines[i], lines[(i + 1) % n]);
      const double length = dot(to - from, lines[i].along);
      if (length < least) least = length, worst = i;
    }
    if (worst == n || n <= 3) break;
    lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(worst));
  }
  SideRing moved;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    moved.corners.push_back(corner(lines[(i + lines.size() - 1) % lines.size()], lines[i]));
    moved.side.push_back(lines[i].side);
  }
  return moved;
}

Cover covered_by_convex(const SideRing& ring) {
  Cover cover;
  Seen seen;
  cover_ring(ring, seen, cover);
  std::sort(cover.sharp.begin(), cover.sharp.end());
  cover.sharp.erase(std::unique(cover.sharp.begin(), cover.sharp.end()), cover.sharp.end());
  return cover;
}

}  // namespace squaredig::design
