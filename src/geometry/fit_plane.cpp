#include "geometry/fit_plane.h"

#include <algorithm>
#include <cmath>

namespace squaredig::geometry {
namespace {

// A point set narrower than this share of its length counts as one line.
constexpr double kNarrowest = 1e-9;

Point3 mean_of(std::span<const Point3> points) {
  // twice: the second pass takes up what the first one rounded off
  Point3 mean = points[0];
  for (int pass = 0; pass < 2; ++pass) {
    Point3 sum;
    for (const Point3& p : points)
      sum = {sum.x + (p.x - mean.x), sum.y + (p.y - mean.y), sum.z + (p.z - mean.z)};
    const auto n = static_cast<double>(points.size());
    mean = {mean.x + sum.x / n, mean.y + sum.y / n, mean.z + sum.z / n};
  }
  return mean;
}

// The points' own axes about the centroid: u runs along the set, v square to its left; how far the
// points spread along each, squared and summed. Taken from the points again, not from the moments:
// the determinant of those has lost a narrow set's width.
struct Spread {
  Point2 u;
  double along2 = 0, across2 = 0;
};

Spread spread_about(Point2 centre, std::span<const Point3> points) {
  double xx = 0, xy = 0, yy = 0;
  for (const Point3& p : points) {
    const Point2 d = p.plan() - centre;
    xx += d.x * d.x, xy += d.x * d.y, yy += d.y * d.y;
  }
  const double turn = std::atan2(2 * xy, xx - yy) / 2;
  Spread spread{{std::cos(turn), std::sin(turn)}, 0, 0};
  for (const Point3& p : points) {
    const Point2 d = p.plan() - centre;
    spread.along2 += dot(d, spread.u) * dot(d, spread.u);
    spread.across2 += cross(spread.u, d) * cross(spread.u, d);
  }
  return spread;
}

bool on_one_line(const Spread& s) { return !(s.across2 > kNarrowest * kNarrowest * s.along2); }

std::vector<double> residuals_of(std::span<const Point3> points, const Plane& plane) {
  std::vector<double> r;
  r.reserve(points.size());
  for (const Point3& p : points) {
    const Point2 d = p.plan() - plane.about;
    r.push_back((p.z - plane.height) - plane.slope_x * d.x - plane.slope_y * d.y);
  }
  return r;
}

// Adds to the plane the plane that fits its residuals best.
void improve(Plane& plane, std::span<const Point3> points, const Spread& spread) {
  const std::vector<double> r = residuals_of(points, plane);
  double sum = 0, along = 0, across = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point2 d = points[i].plan() - plane.about;
    sum += r[i];
    along += r[i] * dot(d, spread.u);
    across += r[i] * cross(spread.u, d);
  }
  along /= spread.along2;
  across /= spread.across2;
  plane.height += sum / static_cast<double>(points.size());
  plane.slope_x += along * spread.u.x - across * spread.u.y;
  plane.slope_y += along * spread.u.y + across * spread.u.x;
}

}  // namespace

std::optional<FittedPlane> fit_least_squares(std::span<const Point3> points) {
  if (points.size() < 3) return std::nullopt;
  const Point3 mean = mean_of(points);
  const Spread spread = spread_about(mean.plan(), points);
  if (on_one_line(spread)) return std::nullopt;
  FittedPlane fit;
  fit.plane = {mean.plan(), mean.z, 0, 0};
  // the second and third pass take up the rounding of the one before
  for (int pass = 0; pass < 3; ++pass) improve(fit.plane, points, spread);
  fit.residuals = residuals_of(points, fit.plane);
  const auto [least, most] = std::minmax_element(fit.residuals.begin(), fit.residuals.end());
  fit.range = *most - *least;
  double squares = 0;
  for (const double r : fit.residuals) squares += r * r;
  const auto n = static_cast<double>(points.size());
  fit.rms = std::sqrt(squares / n);
  fit.var_height = 1 / n;
  const Point2 u = spread.u;
  fit.var_xx = u.x * u.x / spread.along2 + u.y * u.y / spread.across2;
  fit.var_yy = u.y * u.y / spread.along2 + u.x * u.x / spread.across2;
  fit.var_xy = u.x * u.y * (1 / spread.along2 - 1 / spread.across2);
  return fit;
}

}  // namespace squaredig::geometry
