#include "geometry/far_parts.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "geometry/polygon.h"
#include "geometry/triangulate.h"

namespace squaredig::geometry {
namespace {

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

double length(Point2 p) { return std::hypot(p.x, p.y); }

// The neighbours of each point in the Delaunay triangulation; on a line, those before and after.
std::vector<std::vector<std::size_t>> neighbours_of(std::span<const Point2> points) {
  TriangulationInput input;
  for (const Point2 p : points) input.points.push_back({p.x, p.y, 0});
  const Triangulated made = triangulate(input);
  std::vector<std::vector<std::size_t>> neighbours(points.size());
  const auto link = [&](std::size_t a, std::size_t b) {
    neighbours[a].push_back(b);
    neighbours[b].push_back(a);
  };
  for (const auto& t : made.surface.triangles)
    for (std::size_t k = 0; k < 3; ++k)
      link(at(made.source[at(t[k])]), at(made.source[at(t[(k + 1) % 3])]));
  // once each: cutting twice along one line would cut its rounding
  for (auto& near : neighbours) {
    std::sort(near.begin(), near.end());
    near.erase(std::unique(near.begin(), near.end()), near.end());
  }
  if (!made.surface.triangles.empty()) return neighbours;
  std::vector<std::size_t> order(points.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::pair(points[a].x, points[a].y) < std::pair(points[b].x, points[b].y);
  });
  order.erase(std::unique(order.begin(), order.end(),
                          [&](std::size_t a, std::size_t b) { return points[a] == points[b]; }),
              order.end());
  for (std::size_t k = 1; k < order.size(); ++k) link(order[k - 1], order[k]);
  return neighbours;
}

// A stretch of a border outside the circle.
struct Stretch {
  Point2 from, to;
};

// What a circle leaves of a convex piece, one connected remnant.
struct Remnant {
  std::vector<Stretch> border;
  double area = 0;
  Point2 farthest;
  double distance = 0;
};

// One convex piece, its corners seen from the centre of the circle.
class Remainder {
 public:
  Remainder(const Polygon& piece, Point2 centre, double radius)
      : piece_(piece), centre_(centre), radius_(radius) {}

  std::vector<Remnant> remnants() {
    for (std::size_t i = 0; i < piece_.size(); ++i)
      along(piece_[i] - centre_, piece_[(i + 1) % piece_.size()] - centre_);
    const bool whole = !done_.empty() && first_open_ && last_open_;
    if (whole && done_.size() > 1) {  // the last runs on into the first
      done_.back().insert(done_.back().end(), done_.front().begin(), done_.front().end());
      done_.erase(done_.begin());
    }
    std::vector<Remnant> out;
    for (const auto& run : done_) out.push_back(measured(run));
    return out;
  }

 private:
  // Walks one edge, adding what of it lies outside.
  void along(Point2 a, Point2 b) {
    const Point2 way = b - a;
    const double whole = length(way);
    if (whole < kShort) return;
    const Point2 unit = (1 / whole) * way;
    const double foot = -dot(a, unit);  // of the perpendicular from the centre
    const double off = cross(unit, a);
    const double half2 = radius_ * radius_ - off * off;
    if (half2 <= 0) return add(a, b, false);
    const double in = foot - std::sqrt(half2), out = foot + std::sqrt(half2);
    if (out <= 0 || in >= whole) return add(a, b, false);
    if (in > kShort) add(a, a + in * unit, false);
    cut();
    if (out < whole - kShort) add(a + out * unit, b, true);
  }

  void add(Point2 from, Point2 to, bool begins) {
    if (done_.empty()) first_open_ = !begins && !was_cut_;
    if (begins || !open_) done_.emplace_back();
    done_.back().push_back({from, to});
    open_ = last_open_ = true;
  }
  void cut() {
    open_ = last_open_ = false;
    was_cut_ = true;
  }

  Remnant measured(const std::vector<Stretch>& run) const {
    Remnant r;
    double twice = 0;
    for (const Stretch& s : run) {
      twice += cross(s.from, s.to);
      r.border.push_back({centre_ + s.from, centre_ + s.to});
      for (const Point2 p : {s.from, s.to})
        if (length(p) > r.distance) r.distance = length(p), r.farthest = centre_ + p;
    }
    twice -= radius_ * radius_ * arc(run);
    r.area = twice / 2;
    return r;
  }

  // The angle of the circle that closes a run, anticlockwise from its beginning to its end.
  double arc(const std::vector<Stretch>& run) const {
    const Point2 a = run.front().from, b = run.back().to;
    if (!was_cut_) return side_of(piece_, centre_, 0) > 0 ? 2 * std::numbers::pi : 0;
    const double turn = std::atan2(cross(a, b), dot(a, b));
    return turn < 0 ? turn + 2 * std::numbers::pi : turn;
  }

  static constexpr double kShort = 1e-9;
  const Polygon& piece_;
  Point2 centre_;
  double radius_;
  std::vector<std::vector<Stretch>> done_;
  bool open_ = false, was_cut_ = false, first_open_ = false, last_open_ = false;
};

// Remnants that share a stretch of border are one part.
class Parts {
 public:
  void add(Remnant remnant) {
    for (const Stretch& s : remnant.border)
      middles_.push_back({s.from + 0.5 * (s.to - s.from), remnants_.size()});
    remnants_.push_back(std::move(remnant));
  }

  std::vector<FarPart> joined() {
    root_.resize(remnants_.size());
    std::iota(root_.begin(), root_.end(), std::size_t{0});
    link();
    std::vector<FarPart> parts;
    std::vector<std::size_t> number(remnants_.size(), remnants_.size());
    for (std::size_t i = 0; i < remnants_.size(); ++i) {
      const std::size_t root = root_of(i);
      if (number[root] == remnants_.size()) {
        number[root] = parts.size();
        parts.emplace_back();
      }
      FarPart& part = parts[number[root]];
      part.area += remnants_[i].area;
      if (remnants_[i].distance <= part.distance) continue;
      part.distance = remnants_[i].distance;
      part.farthest = remnants_[i].farthest;
    }
    std::stable_sort(parts.begin(), parts.end(),
                     [](const FarPart& a, const FarPart& b) { return a.area > b.area; });
    return parts;
  }

 private:
  struct Middle {
    Point2 at;
    std::size_t remnant = 0;
  };

  void link() {
    constexpr double kSame = 1e-6;
    std::sort(middles_.begin(), middles_.end(),
              [](const Middle& a, const Middle& b) { return a.at.x < b.at.x; });
    for (std::size_t i = 0; i < middles_.size(); ++i)
      for (std::size_t k = i + 1; k < middles_.size(); ++k) {
        if (middles_[k].at.x - middles_[i].at.x > kSame) break;
        if (std::abs(middles_[k].at.y - middles_[i].at.y) > kSame) continue;
        root_[root_of(middles_[k].remnant)] = root_of(middles_[i].remnant);
      }
  }
  std::size_t root_of(std::size_t i) {
    while (root_[i] != i) i = root_[i] = root_[root_[i]];
    return i;
  }

  std::vector<Remnant> remnants_;
  std::vector<Middle> middles_;
  std::vector<std::size_t> root_;
};

}  // namespace

std::vector<FarPart> far_parts(std::span<const Polygon> pieces, std::span<const Point2> points,
                               double distance) {
  const auto neighbours = neighbours_of(points);
  Parts parts;
  for (const Polygon& piece : pieces)
    for (std::size_t i = 0; i < points.size(); ++i) {
      const bool repeated = neighbours[i].empty() && points.size() > 1;
      if (repeated && i > 0) continue;
      Polygon own = piece;
      for (const std::size_t j : neighbours[i]) {
        const Point2 away = points[i] - points[j];
        const Point2 middle = points[j] + 0.5 * away;
        own = clip_half_plane(own, away.x, away.y, -dot(away, middle));
        if (own.size() < 3) break;
      }
      if (own.size() < 3) continue;
      for (Remnant& remnant : Remainder(own, points[i], distance).remnants())
        parts.add(std::move(remnant));
    }
  return parts.joined();
}

}  // namespace squaredig::geometry
