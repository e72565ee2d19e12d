#include "report/tank_view.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "quantity/number_text.h"

namespace squaredig::report {
namespace {}  // namespace

double usual_scale(double at_most) {
  constexpr std::array kScales{10.0,  20.0,  25.0,  40.0,  50.0,   75.0,   100.0,  125.0,
                               150.0, 200.0, 250.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0};
  for (const double scale : kScales)
    if (1000 / scale <= at_most) return 1000 / scale;
  return at_most;
}

TankView::TankView(GridPoint corner_a, Bearing ab, const std::vector<GridPoint>& points,
                   const Box& box)
    : a_(corner_a), sine_(sine(ab.from_north())), cosine_(cosine(ab.from_north())) {
  mm_per_metre_ = 1;
  shift_ = {0, 0};
  At low{1e300, 1e300}, high{-1e300, -1e300};
  for (const GridPoint p : points) {
    const At q = (*this)(p);
    low = {std::min(low.x, q.x), std::min(low.y, q.y)};
    high = {std::max(high.x, q.x), std::max(high.y, q.y)};
  }
  const double fits = std::min(box.width() / std::max(high.x - low.x, 0.1),
                               box.height() / std::max(high.y - low.y, 0.1));
  mm_per_metre_ = usual_scale(fits);
  shift_ = {(box.top_left.x + box.bottom_right.x) / 2 - mm_per_metre_ * (low.x + high.x) / 2,
            (box.top_left.y + box.bottom_right.y) / 2 - mm_per_metre_ * (low.y + high.y) / 2};
}

At TankView::metres(double along, double across) const {
  return {shift_.x + mm_per_metre_ * along, shift_.y + mm_per_metre_ * across};
}

At TankView::operator()(GridPoint p) const {
  const double e = (p.easting - a_.easting).in_metres();
  const double n = (p.northing - a_.northing).in_metres();
  return metres(e * sine_ + n * cosine_, e * cosine_ - n * sine_);
}

std::string TankView::scale_text() const {
  return "1:" + shortest(std::round(1000 / mm_per_metre_));
}

At TankView::north() const { return {cosine_, -sine_}; }

void draw_north(Canvas& canvas, At centre, At north) {
  const double r = 8;
  const At side{-north.y, north.x};
  const At tip{centre.x + r * north.x, centre.y + r * north.y};
  const At tail{centre.x - r * north.x, centre.y - r * north.y};
  canvas.line({tail, tip}, {0.5});
  canvas.fill({tip,
               {tip.x - 3.5 * north.x + 1.6 * side.x, tip.y - 3.5 * north.y + 1.6 * side.y},
               {tip.x - 3.5 * north.x - 1.6 * side.x, tip.y - 3.5 * north.y - 1.6 * side.y}},
              kInk);
  canvas.text({tip.x + 3.5 * north.x, tip.y + 3.5 * north.y + 1.2}, "N",
              {9, kInk, Anchor::Middle, true});
}

}  // namespace squaredig::report
