#include <algorithm>
#include <array>
#include <cmath>

#include "base/straightedge_internal.h"
#include "geometry/fit_plane.h"

namespace squaredig::base {
namespace {

using geometry::Point2;
using geometry::Point3;

Point2 unit(double angle) { return {std::cos(angle), std::sin(angle)}; }

// A place to begin from: a stretch of line with an opening.
struct Start {
  double width = 0;
  Point2 middle;
  double angle = 0;
};

// Points in square cells as wide as the rule is long: whoever is in reach stands in the nine round
// it.
class Reach {
 public:
  Reach(const std::vector<Point3>& points, double length) : points_(points), cell_(length) {
    low_ = high_ = points.front().plan();
    for (const Point3& p : points) {
      low_ = {std::min(low_.x, p.x), std::min(low_.y, p.y)};
      high_ = {std::max(high_.x, p.x), std::max(high_.y, p.y)};
    }
    columns_ = 1 + column(high_), rows_ = 1 + row(high_);
    cells_.resize(cell_of(0, rows_));
    for (std::size_t i = 0; i < points.size(); ++i)
      cells_[cell_of(column(points[i].plan()), row(points[i].plan()))].push_back(i);
  }

  template <class Visit>
  void round(Point2 p, const Visit& visit) const {
    for (int r = std::max(0, row(p) - 1); r <= std::min(rows_ - 1, row(p) + 1); ++r)
      for (int c = std::max(0, column(p) - 1); c <= std::min(columns_ - 1, column(p) + 1); ++c)
        for (const std::size_t i : cells_[cell_of(c, r)]) visit(i);
  }

  // The most any three heights in reach could open with this point among them, as the middle or as
  // an end: how far it stands from the farthest height on the other side.
  std::vector<double> most_it_could_open() const {
    std::vector<double> most(points_.size(), 0);
    for (const std::vector<std::size_t>& cell : cells_) {
      if (cell.empty()) continue;
      std::vector<Point3> near;
      round(points_[cell.front()].plan(), [&](std::size_t i) { near.push_back(points_[i]); });
      const auto fit = geometry::fit_least_squares(near);
      const geometry::Plane plane = fit ? fit->plane : geometry::Plane{near.front().plan()};
      double low = HUGE_VAL, high = -HUGE_VAL;
      for (const Point3& p : near) {
        low = std::min(low, p.z - plane.at(p.plan()));
        high = std::max(high, p.z - plane.at(p.plan()));
      }
      for (const std::size_t i : cell) {
        const double z = points_[i].z - plane.at(points_[i].plan());
        most[i] = std::max(z - low, high - z);
      }
    }
    return most;
  }

 private:
  int column(Point2 p) const { return static_cast<int>((p.x - low_.x) / cell_); }
  int row(Point2 p) const { return static_cast<int>((p.y - low_.y) / cell_); }
  std::size_t cell_of(int c, int r) const {
    return static_cast<std::size_t>(r) * static_cast<std::size_t>(columns_) +
           static_cast<std::size_t>(c);
  }

  const std::vector<Point3>& points_;
  double cell_;
  Point2 low_, high_;
  int columns_ = 0, rows_ = 0;
  std::vector<std::vector<std::size_t>> cells_;
};

// The widest three on a line through p and q that has both among them.
struct Three {
  double width = 0;
  double from = 0, to = 0;
};
Three widest_three(std::span<const Knot> knots, double zp, double zq, double d) {
  Three best;
  const auto take = [&](double width, double from, double to) {
    if (std::abs(width) > best.width) best = {std::abs(width), from, to};
  };
  for (const Knot& k : knots) {
    if (k.s < 0) {
      take(zp - (k.z * d - zq * k.s) / (d - k.s), k.s, d);
    } else if (k.s > d) {
      take(zq - (zp * (k.s - d) + k.z * d) / k.s, 0, k.s);
    } else {
      take(k.z - (zp + (zq - zp) * (k.s / d)), 0, d);
    }
  }
  return best;
}

class Search {
 public:
  Search(const DugSurface& dug, const geometry::Polygon& toe, double length)
      : profiles_(dug, toe), length_(length), whole_floor_(geometry::is_convex(toe)) {
    std::vector<bool> used(dug.surface.vertices.size(), false);
    for (geometry::Index t = 0; t < dug.surveyed_triangles; ++t)
      for (const geometry::Index v : dug.surface.triangles[static_cast<std::size_t>(t)])
        used[static_cast<std::size_t>(v)] = true;
    for (std::size_t v = 0; v < used.size(); ++v)
      if (used[v]) points_.push_back(dug.surface.vertices[v]);
  }

  // All starts are climbed roughly, the best of them to the end.
  std::optional<RulePlace> run() {
    std::vector<Climb> climbs;
    for (const Start& start : starts())
      if (const auto found = at(start)) climbs.push_back({start, *found});
    const double step = std::min(0.25 * length_, profiles_.spacing());
    for (Climb& climb : climbs) polish(climb, step, step / 32);
    std::stable_sort(climbs.begin(), climbs.end(), wider);
    if (climbs.size() > kFinished) climbs.resize(kFinished);
    for (Climb& climb : climbs) polish(climb, step / 32, 1e-6);
    std::stable_sort(climbs.begin(), climbs.end(), wider);
    if (climbs.empty()) return std::nullopt;
    return climbs.front().best;
  }

 private:
  struct Climb {
    Start here;
    RulePlace best;
  };
  static bool wider(const Climb& a, const Climb& b) { return a.best.width > b.best.width; }
  static constexpr std::size_t kFinished = 12;
  static constexpr std::size_t kPolished = 120;
  using BestFew = std::array<Start, 32>;  // of one point, widest first

  // From every point, those that could open most first, the best lines through it and another.
  std::vector<Start> starts() {
    const Reach reach(points_, length_);
    const std::vector<double> most = reach.most_it_could_open();
    std::vector<std::size_t> order(points_.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return most[a] > most[b]; });
    std::vector<bool> done(points_.size(), false);
    std::vector<Start> found;
    double widest = 0;
    for (const std::size_t i : order) {
      if (most[i] <= widest) break;
      // a line counts no more than its two points could open, and none counts after the best few
      const double least = found.size() < kPolished ? 0 : found.back().width;
      BestFew best{};
      reach.round(points_[i].plan(), [&](std::size_t j) {
        if (!done[j] && j != i && most[j] > least) through(points_[i], points_[j], best);
      });
      done[i] = true;
      for (const Start& start : best)
        if (start.width > least) found.push_back(start);
      std::stable_sort(found.begin(), found.end(),
                       [](const Start& a, const Start& b) { return a.width > b.width; });
      if (found.size() > kPolished) found.resize(kPolished);
      widest = std::max(widest, best.front().width);
    }
    if (found.empty() && !points_.empty()) found.push_back({0, points_.front().plan(), 0});
    return found;
  }

  void through(const Point3& p, const Point3& q, BestFew& best) {
    const Point2 way = q.plan() - p.plan();
    const double d = std::hypot(way.x, way.y);
    if (d > length_ || d <= 0) return;
    const Point2 direction = (1 / d) * way;
    double from = d - length_, to = length_;
    if (!whole_floor_) {
      const auto inside = profiles_.stretch(p.plan() + 0.5 * way, direction);
      if (!inside || inside->first > -d / 2 + 1e-6 || inside->second < d / 2 - 1e-6) return;
      from = std::max(from, inside->first + d / 2);
      to = std::min(to, inside->second + d / 2);
    }
    const Three three =
        widest_three(profiles_.crossings(p.plan(), direction, from, to), p.z, q.z, d);
    if (three.width <= best.back().width) return;
    best.back() = {three.width, p.plan() + (three.from + three.to) / 2 * direction,
                   std::atan2(way.y, way.x)};
    for (std::size_t k = best.size() - 1; k > 0 && best[k].width > best[k - 1].width; --k)
      std::swap(best[k], best[k - 1]);
  }

  std::optional<RulePlace> at(const Start& s) {
    return lay_rule(profiles_, s.middle, unit(s.angle), length_);
  }

  // Climbs in position and direction: all 26 neighbours at a step, then half the step.
  void polish(Climb& c, double from_step, double to_step) {
    for (double step = from_step; step > to_step; step /= 2)
      for (int rounds = 0; rounds < 60 && climb(c.here, c.best, step); ++rounds) continue;
  }

  bool climb(Start& here, RulePlace& best, double step) {
    const Point2 along = unit(here.angle), across{-along.y, along.x};
    const Start centre = here;
    bool better = false;
    for (int a = -1; a <= 1; ++a)
      for (int b = -1; b <= 1; ++b)
        for (int turn = -1; turn <= 1; ++turn) {
          if (a == 0 && b == 0 && turn == 0) continue;
          const Start next{0, centre.middle + (a * step * along + b * step * across),
                           centre.angle + turn * 2 * step / length_};
          const auto found = at(next);
          if (!found || found->width <= best.width) continue;
          best = *found;
          here = next;
          better = true;
        }
    return better;
  }

  Profiles profiles_;
  double length_;
  bool whole_floor_;  // a convex floor holds every line between two of its points
  std::vector<Point3> points_;
};

}  // namespace

std::optional<RulePlace> lay_rule(Profiles& profiles, Point2 middle, Point2 direction,
                                  double length) {
  const auto stretch = profiles.stretch(middle, direction);
  if (!stretch) return std::nullopt;
  double from = -length / 2, to = length / 2;
  if (stretch->second - stretch->first <= length) {
    from = stretch->first, to = stretch->second;
  } else if (stretch->first > from) {
    from = stretch->first, to = from + length;
  } else if (stretch->second < to) {
    to = stretch->second, from = to - length;
  }
  const Opening opening = opening_of(profiles.between(middle, direction, from, to));
  const auto place = [&](double s) { return middle + s * direction; };
  return RulePlace{place(from),
                   place(to),
                   opening.width,
                   place(opening.touch_from),
                   place(opening.touch_to),
                   place(opening.worst)};
}

std::optional<RulePlace> widest_opening(const DugSurface& dug, const geometry::Polygon& toe,
                                        double length) {
  return Search(dug, toe, length).run();
}

}  // namespace squaredig::base
