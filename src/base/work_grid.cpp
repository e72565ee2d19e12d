#include <algorithm>
#include <cmath>

#include "base/outline_internal.h"
#include "base/work_grid_internal.h"

namespace squaredig::base {
namespace {

using geometry::Point2;
using geometry::Polygon;

constexpr double kSlack = 1e-9;  // of a step: touching is not reaching

int steps_in(double length, double width, int steps) {
  return std::max(1, static_cast<int>(length / width * steps + kSlack));
}

}  // namespace

WorkGrid::WorkGrid(const Floor& floor, const TankAxes& axes, double width) : axes_(axes) {
  for (const geometry::PlaneFacet& part : parts_of(floor.toe)) floor_.push_back(part.outline);
  double along1 = -HUGE_VAL, in1 = -HUGE_VAL;
  along0_ = in0_ = HUGE_VAL;
  for (const Point2 p : floor.toe) {
    along0_ = std::min(along0_, axes.along_of(p)), along1 = std::max(along1, axes.along_of(p));
    in0_ = std::min(in0_, axes.in_of(p)), in1 = std::max(in1, axes.in_of(p));
  }
  columns_ = steps_in(along1 - along0_, width, kSteps);
  rows_ = steps_in(in1 - in0_, width, kSteps);
  step_along_ = (along1 - along0_) / columns_;
  step_in_ = (in1 - in0_) / rows_;
  marked_.assign(index(0, rows_), 0);
  patch_.assign(index(0, rows_), -1);
}

// Row by row: the piece between two lines, from its least to its greatest place along A-B.
template <class Visit>
void WorkGrid::steps_under(const Piece& piece, const Visit& visit) const {
  std::vector<Point2> corners;
  double low = HUGE_VAL, high = -HUGE_VAL;
  for (const Point2 p : piece.corners) {
    corners.push_back(
        {(axes_.along_of(p) - along0_) / step_along_, (axes_.in_of(p) - in0_) / step_in_});
    low = std::min(low, corners.back().y), high = std::max(high, corners.back().y);
  }
  const auto clamped = [](double v, int count) {
    return std::clamp(static_cast<int>(std::floor(v)), 0, count - 1);
  };
  const int first_row = clamped(low + kSlack, rows_);
  const int last_row = std::max(first_row, clamped(high - kSlack, rows_));
  for (int row = first_row; row <= last_row; ++row) {
    double from = HUGE_VAL, to = -HUGE_VAL;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Point2 a = corners[i], b = corners[(i + 1) % corners.size()];
      if (a.y >= row - kSlack && a.y <= row + 1 + kSlack)
        from = std::min(from, a.x), to = std::max(to, a.x);
      for (const double line : {static_cast<double>(row), row + 1.0}) {
        if ((a.y - line) * (b.y - line) >= 0) continue;
        const double x = a.x + (b.x - a.x) * ((line - a.y) / (b.y - a.y));
        from = std::min(from, x), to = std::max(to, x);
      }
    }
    if (from > to) continue;
    const int first = clamped(from + kSlack, columns_);
    const int last = std::max(first, clamped(to - kSlack, columns_));
    for (int c = first; c <= last; ++c) visit(c, row);
  }
}

void WorkGrid::mark(const Piece& piece) {
  steps_under(piece, [&](int column, int row) { marked_[index(column, row)] = 1; });
}

// How many steps are marked below and before each: a square's count from its four corners.
std::vector<int> WorkGrid::counted() const {
  const std::size_t wide = static_cast<std::size_t>(columns_) + 1;
  std::vector<int> sums(wide * (static_cast<std::size_t>(rows_) + 1), 0);
  for (int r = 0; r < rows_; ++r)
    for (int c = 0; c < columns_; ++c) {
      const std::size_t here = static_cast<std::size_t>(r) * wide + static_cast<std::size_t>(c);
      sums[here + wide + 1] =
          sums[here + wide] + sums[here + 1] - sums[here] + (marked_[index(c, r)] ? 1 : 0);
    }
  return sums;
}

// Of the squares over a step the one with the most marked steps; of equals the one whose middle is
// nearest.
std::pair<int, int> WorkGrid::best_square(int column, int row, const std::vector<int>& sums) const {
  const int wide = std::min(kSteps, columns_), deep = std::min(kSteps, rows_);
  const auto sum = [&](int c, int r) {
    return sums[static_cast<std::size_t>(r) * (static_cast<std::size_t>(columns_) + 1) +
                static_cast<std::size_t>(c)];
  };
  std::pair<int, int> best;
  int most = -1, least_off = 0;
  for (int r = std::max(0, row - deep + 1); r <= std::min(row, rows_ - deep); ++r)
    for (int c = std::max(0, column - wide + 1); c <= std::min(column, columns_ - wide); ++c) {
      const int count = sum(c + wide, r + deep) - sum(c, r + deep) - sum(c + wide, r) + sum(c, r);
      const int off = std::abs(c + wide / 2 - column) + std::abs(r + deep / 2 - row);
      if (count < most || (count == most && off >= least_off)) continue;
      most = count, least_off = off, best = {c, r};
    }
  return best;
}

int WorkGrid::work() {
  constexpr int kWorked = -2;  // and not numbered yet
  const std::vector<int> sums = counted();
  std::vector<char> chosen(marked_.size(), 0);
  for (int r = 0; r < rows_; ++r)
    for (int c = 0; c < columns_; ++c)
      if (marked_[index(c, r)]) {
        const auto [first, top] = best_square(c, r, sums);
        chosen[index(first, top)] = 1;
      }
  patch_.assign(patch_.size(), -1);
  for (int r = 0; r < rows_; ++r)
    for (int c = 0; c < columns_; ++c)
      if (chosen[index(c, r)])
        for (int k = r; k < std::min(r + kSteps, rows_); ++k)
          for (int i = c; i < std::min(c + kSteps, columns_); ++i) patch_[index(i, k)] = kWorked;
  int count = 0;
  for (int r = 0; r < rows_; ++r)
    for (int c = 0; c < columns_; ++c)
      if (patch_[index(c, r)] == kWorked) spread(c, r, count++);
  return count;
}

// The number goes to a worked step and all that hang together with it.
void WorkGrid::spread(int column, int row, int number) {
  const int before = patch_[index(column, row)];
  std::vector<std::pair<int, int>> open{{column, row}};
  patch_[index(column, row)] = number;
  while (!open.empty()) {
    const auto [c, r] = open.back();
    open.pop_back();
    for (const auto& [i, k] : {std::pair(c + 1, r), {c - 1, r}, {c, r + 1}, {c, r - 1}}) {
      if (i < 0 || k < 0 || i >= columns_ || k >= rows_ || patch_[index(i, k)] != before) continue;
      patch_[index(i, k)] = number;
      open.emplace_back(i, k);
    }
  }
}

std::optional<int> WorkGrid::reached(const Piece& piece) const {
  std::optional<int> number;
  steps_under(piece, [&](int column, int row) {
    const int patch = patch_[index(column, row)];
    if (patch >= 0 && !number) number = patch;
  });
  return number;
}

// Each run of steps in a row, anticlockwise (`in` is to the right of `along`), inside the floor.
std::vector<Polygon> WorkGrid::runs(int patch, Corners corners) const {
  std::vector<Polygon> parts;
  const auto corner = [&](int c, int r) {
    return axes_.at(along0_ + c * step_along_, in0_ + r * step_in_);
  };
  for (int r = 0; r < rows_; ++r)
    for (int c = 0; c < columns_; ++c) {
      if (patch_[index(c, r)] != patch) continue;
      const int first = c;
      while (c < columns_ && patch_[index(c, r)] == patch) ++c;
      const int step = corners == Corners::Few ? c - first : 1;
      Polygon run;
      for (int k = first; k <= c; k += step) run.push_back(corner(k, r + 1));
      for (int k = c; k >= first; k -= step) run.push_back(corner(k, r));
      for (const Polygon& part : floor_) {
        Polygon inside = geometry::clip_convex(run, part);
        if (inside.size() >= 3) parts.push_back(std::move(inside));
      }
    }
  return parts;
}

std::vector<Polygon> WorkGrid::outline(int patch) const {
  return outline_of(runs(patch, Corners::AtEveryStep));
}

}  // namespace squaredig::base
