#include "geometry/locate.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace squaredig::geometry {
namespace {

// A point this close to a triangle's side counts as on it: far over rounding, far under a survey.
constexpr double kOnSide = 1e-9;

double clamp_to(double value, double low, double high) {
  return std::max(low, std::min(value, high));
}

// Least and greatest x of the triangle's part between two heights of y.
std::pair<double, double> x_range(const std::array<Point3, 3>& corners, double low, double high) {
  double least = HUGE_VAL, greatest = -HUGE_VAL;
  for (std::size_t i = 0; i < 3; ++i) {
    Point2 a = corners[i].plan(), b = corners[(i + 1) % 3].plan();
    if (b.y < a.y) std::swap(a, b);
    if (b.y < low || a.y > high) continue;
    const double rise = b.y - a.y;
    const auto x_at = [&](double y) {
      return rise > 0 ? clamp_to(a.x + (y - a.y) / rise * (b.x - a.x), std::min(a.x, b.x),
                                 std::max(a.x, b.x))
                      : a.x;
    };
    const double one = x_at(std::max(low, a.y));
    const double two = rise > 0 ? x_at(std::min(high, b.y)) : b.x;
    least = std::min({least, one, two});
    greatest = std::max({greatest, one, two});
  }
  return {least, greatest};
}

}  // namespace

// Rows and columns of cells of one size, about two triangles to a cell; the triangles of each cell
// are entries_[start_[cell]] up to the next start. A triangle whose box is of a few cells is
// entered in all of them; a larger one row by row only where it can touch, so that a long thin one
// does not fill its whole box.
struct Locator::Grid {
  static constexpr Index kFew = 3;  // rows, and columns

  static Index cell_number(double value, double low, double cell, Index count) {
    return static_cast<Index>(clamp_to((value - low) / cell, 0, static_cast<double>(count - 1)));
  }
  static Index row_of(const Locator& l, double y) {
    return cell_number(y, l.low_.y, l.cell_, l.rows_);
  }
  static Index column_of(const Locator& l, double x) {
    return cell_number(x, l.low_.x, l.cell_, l.columns_);
  }
  template <class Use>
  static void cells_of_row(const Locator& l, Index row, Index first, Index last, Use use) {
    const auto start = static_cast<std::size_t>(row) * static_cast<std::size_t>(l.columns_);
    for (Index column = first; column <= last; ++column)
      use(start + static_cast<std::size_t>(column));
  }
  template <class Use>
  static void cells_of(const Locator& l, std::size_t t, Use use) {
    const auto corners = l.surface_->corners(static_cast<Index>(t));
    const auto [a, b, c] = corners;
    const Index first = row_of(l, std::min(a.y, std::min(b.y, c.y)) - kOnSide);
    const Index last = row_of(l, std::max(a.y, std::max(b.y, c.y)) + kOnSide);
    const Index west = column_of(l, std::min(a.x, std::min(b.x, c.x)) - 2 * kOnSide);
    const Index east = column_of(l, std::max(a.x, std::max(b.x, c.x)) + 2 * kOnSide);
    if (last - first < kFew && east - west < kFew) {
      for (Index row = first; row <= last; ++row) cells_of_row(l, row, west, east, use);
      return;
    }
    for (Index row = first; row <= last; ++row) {
      const double bottom = l.low_.y + row * l.cell_ - 2 * kOnSide;
      const auto [left, right] = x_range(corners, bottom, bottom + l.cell_ + 4 * kOnSide);
      if (left > right) continue;
      cells_of_row(l, row, column_of(l, left - 2 * kOnSide), column_of(l, right + 2 * kOnSide),
                   use);
    }
  }
};

Locator::Locator(const Surface& surface) : surface_(&surface) {
  if (surface.triangles.empty()) return;
  Point2 high{-HUGE_VAL, -HUGE_VAL};
  low_ = {HUGE_VAL, HUGE_VAL};
  for (const Point3& v : surface.vertices) {
    low_ = {std::min(low_.x, v.x), std::min(low_.y, v.y)};
    high = {std::max(high.x, v.x), std::max(high.y, v.y)};
  }
  const double width = high.x - low_.x, depth = high.y - low_.y;
  const double cells = std::max(1.0, static_cast<double>(surface.triangles.size()) / 2);
  cell_ = std::max({std::sqrt(width * depth / cells), std::max(width, depth) / cells, 1e-6});
  columns_ = static_cast<Index>(width / cell_) + 1;
  rows_ = static_cast<Index>(depth / cell_) + 1;
  start_.assign(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_) + 1, 0);
  for (std::size_t t = 0; t < surface.triangles.size(); ++t)
    Grid::cells_of(*this, t, [&](std::size_t cell) { ++start_[cell + 1]; });
  for (std::size_t c = 1; c < start_.size(); ++c) start_[c] += start_[c - 1];
  entries_.resize(static_cast<std::size_t>(start_.back()));
  std::vector<Index> next(start_.begin(), start_.end() - 1);
  for (std::size_t t = 0; t < surface.triangles.size(); ++t)
    Grid::cells_of(*this, t, [&](std::size_t cell) {
      entries_[static_cast<std::size_t>(next[cell]++)] = static_cast<Index>(t);
    });
}

std::optional<Index> Locator::triangle_at(Point2 p) const {
  if (entries_.empty()) return std::nullopt;
  const auto cell =
      static_cast<std::size_t>(Grid::row_of(*this, p.y)) * static_cast<std::size_t>(columns_) +
      static_cast<std::size_t>(Grid::column_of(*this, p.x));
  std::optional<Index> nearest;
  double best = -kOnSide;
  for (Index e = start_[cell]; e < start_[cell + 1]; ++e) {
    const Index t = entries_[static_cast<std::size_t>(e)];
    const auto corners = surface_->corners(t);
    // The least distance inside its sides; below zero outside.
    double inside = HUGE_VAL;
    for (std::size_t i = 0; i < 3; ++i) {
      const Point2 a = corners[i].plan(), u = corners[(i + 1) % 3].plan() - a;
      inside = std::min(inside, cross(u, p - a) / std::hypot(u.x, u.y));
    }
    if (inside >= 0) return t;
    if (inside > best) best = inside, nearest = t;
  }
  return nearest;
}

std::optional<double> Locator::height_at(Point2 p) const {
  const std::optional<Index> t = triangle_at(p);
  if (!t) return std::nullopt;
  Plane plane = surface_->plane(*t);
  const auto distance = [&](const Point3& c) { return dot(c.plan() - p, c.plan() - p); };
  const auto corners = surface_->corners(*t);
  const Point3 nearest = *std::min_element(
      corners.begin(), corners.end(),
      [&](const Point3& a, const Point3& b) { return distance(a) < distance(b); });
  plane.about = nearest.plan();
  plane.height = nearest.z;
  return plane.at(p);
}

std::vector<Index> Locator::triangles_in(Point2 low, Point2 high) const {
  std::vector<Index> found;
  find_triangles({low, high}, found);
  return found;
}

void Locator::find_triangles(const Box2& box, std::vector<Index>& found) const {
  const auto [low, high] = box;
  found.clear();
  if (entries_.empty()) return;
  const Index first = Grid::column_of(*this, low.x), last = Grid::column_of(*this, high.x);
  const Index top = Grid::row_of(*this, high.y);
  for (Index row = Grid::row_of(*this, low.y); row <= top; ++row) {
    const auto in_row = static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_);
    const Index begin = start_[in_row + static_cast<std::size_t>(first)];
    const Index end = start_[in_row + static_cast<std::size_t>(last) + 1];
    for (Index e = begin; e < end; ++e) {
      const Index t = entries_[static_cast<std::size_t>(e)];
      const auto [a, b, c] = surface_->corners(t);
      if (std::max({a.x, b.x, c.x}) < low.x || std::min({a.x, b.x, c.x}) > high.x ||
          std::max({a.y, b.y, c.y}) < low.y || std::min({a.y, b.y, c.y}) > high.y)
        continue;
      found.push_back(t);
    }
  }
  std::sort(found.begin(), found.end());
  found.erase(std::unique(found.begin(), found.end()), found.end());
}

}  // namespace squaredig::geometry
