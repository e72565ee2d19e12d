// Minimum zone of fit_plane.h: the plane whose greatest vertical residual is least, by exchange.
//
// Four signed points at a time carry the plane: s_i (z_i - plane(i)) = h, with weights above or at
// zero that balance, sum w_i s_i (1, x_i, y_i) = 0, sum w_i = 1. The point farthest outside comes
// in, one of the four goes out so that the weights stay above or at zero, and h grows. It is the
// dual simplex method on min h; where h does not grow (points of a grid are full of ties) the
// choice of least number is taken until it does, which cannot go round in circles.
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "geometry/fit_plane.h"

namespace squaredig::geometry {
namespace {

using Vector4 = std::array<double, 4>;

// Solves M x = b with M's columns given, by elimination with row exchange. Requires: M regular.
Vector4 solve(const std::array<Vector4, 4>& columns, Vector4 b) {
  std::array<Vector4, 4> rows{};
  for (std::size_t r = 0; r < 4; ++r)
    for (std::size_t c = 0; c < 4; ++c) rows[r][c] = columns[c][r];
  for (std::size_t k = 0; k < 4; ++k) {
    std::size_t pivot = k;
    for (std::size_t r = k + 1; r < 4; ++r)
      if (std::abs(rows[r][k]) > std::abs(rows[pivot][k])) pivot = r;
    std::swap(rows[k], rows[pivot]);
    std::swap(b[k], b[pivot]);
    for (std::size_t r = k + 1; r < 4; ++r) {
      const double factor = rows[r][k] / rows[k][k];
      for (std::size_t c = k; c < 4; ++c) rows[r][c] -= factor * rows[k][c];
      b[r] -= factor * b[k];
    }
  }
  for (std::size_t k = 4; k-- > 0;) {
    for (std::size_t c = k + 1; c < 4; ++c) b[k] -= rows[k][c] * b[c];
    b[k] /= rows[k][k];
  }
  return b;
}

std::array<Vector4, 4> transposed(const std::array<Vector4, 4>& m) {
  std::array<Vector4, 4> t{};
  for (std::size_t r = 0; r < 4; ++r)
    for (std::size_t c = 0; c < 4; ++c) t[c][r] = m[r][c];
  return t;
}

class Exchange {
 public:
  // Points reduced: plan by centroid and size, heights by the least-squares plane.
  explicit Exchange(std::vector<Point3> points) : points_(std::move(points)) {
    for (const Point3& p : points_) largest_ = std::max(largest_, std::abs(p.z));
    start();
  }

  // True once no point lies outside; false when the exchange would not end.
  bool run() {
    const std::size_t most_rounds = 200 + 4 * points_.size();
    std::size_t idle = 0;
    double before = -1;
    for (std::size_t round = 0; round < most_rounds; ++round) {
      carry();
      idle = h_ > before + 1e-15 * largest_ ? 0 : idle + 1;
      before = h_;
      const auto entering = outside(idle > kPatience ? Choice::LeastNumber : Choice::Farthest);
      if (!entering) return true;
      exchange(entering->first, entering->second, idle > kPatience);
    }
    return false;
  }

  const Vector4& plane() const { return plane_; }  // height, slope x, slope y, h
  const std::array<std::size_t, 4>& carriers() const { return basis_; }
  double signed_weight(std::size_t k) const { return sign_[k] * weight_[k]; }

 private:
  enum class Choice { Farthest, LeastNumber };
  static constexpr std::size_t kPatience = 12;

  Vector4 column(std::size_t i, double sign) const {
    return {sign, sign * points_[i].x, sign * points_[i].y, 1};
  }
  std::array<Vector4, 4> columns() const {
    std::array<Vector4, 4> m{};
    for (std::size_t k = 0; k < 4; ++k) m[k] = column(basis_[k], sign_[k]);
    return m;
  }

  std::size_t farthest_from(Point2 a) const {
    std::size_t best = 0;
    for (std::size_t i = 0; i < points_.size(); ++i)
      if (dot(points_[i].plan() - a, points_[i].plan() - a) >
          dot(points_[best].plan() - a, points_[best].plan() - a))
        best = i;
    return best;
  }

  // A wide triangle and one more point: their Radon partition balances whatever the fourth is.
  void start() {
    const std::size_t a = farthest_from({});
    const std::size_t b = farthest_from(points_[a].plan());
    std::size_t c = 0, d = 0;
    const auto width = [&](std::size_t i) {
      return std::abs(orient(points_[a].plan(), points_[b].plan(), points_[i].plan()));
    };
    for (std::size_t i = 0; i < points_.size(); ++i)
      if (width(i) > width(c)) c = i;
    while (d == a || d == b || d == c) ++d;
    basis_ = {a, b, c, d};
    const Point2 pa = points_[a].plan(), pb = points_[b].plan(), pc = points_[c].plan(),
                 pd = points_[d].plan();
    const double whole = orient(pa, pb, pc);
    const Vector4 radon{orient(pd, pb, pc) / whole, orient(pa, pd, pc) / whole,
                        orient(pa, pb, pd) / whole, -1};
    double lift = 0;
    for (std::size_t k = 0; k < 4; ++k) lift += radon[k] * points_[basis_[k]].z;
    for (std::size_t k = 0; k < 4; ++k) sign_[k] = (radon[k] < 0) == (lift < 0) ? 1 : -1;
  }

  // Plane, h and weights of the present four.
  void carry() {
    const auto m = columns();
    Vector4 heights{};
    for (std::size_t k = 0; k < 4; ++k) heights[k] = sign_[k] * points_[basis_[k]].z;
    plane_ = solve(transposed(m), heights);
    h_ = plane_[3];
    weight_ = solve(m, {0, 0, 0, 1});
    for (double& w : weight_)
      if (w < kTie) w = 0;
  }

  double residual(std::size_t i) const {
    return points_[i].z - plane_[0] - plane_[1] * points_[i].x - plane_[2] * points_[i].y;
  }

  std::optional<std::pair<std::size_t, double>> outside(Choice choice) const {
    std::optional<std::pair<std::size_t, double>> found;
    double limit = h_ + 1e-12 * largest_;
    for (std::size_t i = 0; i < points_.size(); ++i) {
      const double r = residual(i);
      if (std::abs(r) <= limit) continue;
      found = {i, r > 0 ? 1.0 : -1.0};
      if (choice == Choice::LeastNumber) break;
      limit = std::abs(r);
    }
    return found;
  }

  void exchange(std::size_t entering, double sign, bool least_number) {
    const Vector4 d = solve(columns(), column(entering, sign));
    std::size_t leaving = 4;
    double least = HUGE_VAL;
    for (std::size_t k = 0; k < 4; ++k) {
      if (d[k] <= kTie) continue;
      const double ratio = weight_[k] / d[k];
      const bool tie = leaving < 4 && std::abs(ratio - least) <= kTie;
      const bool better =
          tie ? (least_number ? basis_[k] < basis_[leaving] : d[k] > d[leaving]) : ratio < least;
      if (leaving == 4 || better) leaving = k, least = ratio;
    }
    // the d sum to one, so one of them is above zero
    basis_[leaving] = entering;
    sign_[leaving] = sign;
  }

  static constexpr double kTie = 1e-11;
  std::vector<Point3> points_;
  double largest_ = 0;
  std::array<std::size_t, 4> basis_{};
  std::array<double, 4> sign_{};
  Vector4 plane_{}, weight_{};
  double h_ = 0;
};

MinimumZone without_width(const FittedPlane& fit) {
  MinimumZone zone;
  zone.plane = fit.plane;
  zone.width = fit.range;
  return zone;
}

}  // namespace

std::optional<MinimumZone> fit_minimum_zone(std::span<const Point3> points) {
  const auto fit = fit_least_squares(points);
  if (!fit) return std::nullopt;
  double size = 0;
  for (const Point3& p : points)
    size = std::max({size, std::abs(p.x - fit->plane.about.x), std::abs(p.y - fit->plane.about.y)});
  if (points.size() == 3) return without_width(*fit);
  std::vector<Point3> reduced;
  reduced.reserve(points.size());
  for (std::size_t i = 0; i < points.size(); ++i)
    reduced.push_back({(points[i].x - fit->plane.about.x) / size,
                       (points[i].y - fit->plane.about.y) / size, fit->residuals[i]});
  Exchange exchange(std::move(reduced));
  if (!exchange.run()) return std::nullopt;

  MinimumZone zone;
  zone.plane = fit->plane;
  zone.plane.height += exchange.plane()[0];
  zone.plane.slope_x += exchange.plane()[1] / size;
  zone.plane.slope_y += exchange.plane()[2] / size;
  zone.width = 2 * exchange.plane()[3];
  for (std::size_t k = 0; k < 4; ++k) {
    if (exchange.signed_weight(k) == 0) continue;
    zone.extreme.push_back(static_cast<Index>(exchange.carriers()[k]));
    zone.weight.push_back(2 * exchange.signed_weight(k));
  }
  return zone;
}

}  // namespace squaredig::geometry
