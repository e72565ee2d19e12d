#include "report/tank_view.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "quantity/number_text.h"

namespace squaredig::report {

double usual_scale(double at_most) {
  constexpr std::array kScales{10.0,   20.0,   25.0,   40.0,   50.0,   75.0,   100.0, 125.0,
                               150.0,  200.0,  250.0,  300.0,  400.0,  500.0,  750.0, 1000.0,
                               1250.0, 1500.0, 2000.0, 2500.0, 5000.0, 10000.0};
  for (const double scale : kScales)
    if (1000 / scale <= at_most) return 1000 / scale;
  return at_most;
}

std::string scale_words(double mm_per_metre) {
  return "1:" + shortest(std::round(1000 / mm_per_metre));
}

TankView::TankView(const TankFrame& frame, const std::vector<GridPoint>& points, const Box& box)
    : TankView(frame, 1, {}, {}, {}) {
  At low{1e300, 1e300}, high{-1e300, -1e300};
  for (const GridPoint p : points) {
    const At q = (*this)(p);
    low = {std::min(low.x, q.x), std::min(low.y, q.y)};
    high = {std::max(high.x, q.x), std::max(high.y, q.y)};
  }
  const double fits = std::min(box.width() / std::max(high.x - low.x, 0.1),
                               box.height() / std::max(high.y - low.y, 0.1));
  mm_per_metre_ = usual_scale(fits);
  shift_ = {box.middle().x - mm_per_metre_ * (low.x + high.x) / 2,
            box.middle().y - mm_per_metre_ * (low.y + high.y) / 2};
}

TankView::TankView(const TankFrame& frame, double mm_per_metre, Length along, Length across, At at)
    : a_(frame.corner_a),
      sine_(sine(frame.ab.from_north())),
      cosine_(cosine(frame.ab.from_north())),
      mm_per_metre_(mm_per_metre) {
  const At there = metres(along.in_metres(), across.in_metres());
  shift_ = {at.x - there.x, at.y - there.y};
}

At TankView::metres(double along, double across) const {
  return {shift_.x + mm_per_metre_ * along, shift_.y + mm_per_metre_ * across};
}

At TankView::operator()(GridPoint p) const {
  const double e = (p.easting - a_.easting).in_metres();
  const double n = (p.northing - a_.northing).in_metres();
  return metres(e * sine_ + n * cosine_, e * cosine_ - n * sine_);
}

std::string TankView::scale_text() const { return scale_words(mm_per_metre_); }

void draw_north(Canvas& canvas, At centre, At north) {
  const double r = 4.5;
  const At side{-north.y, north.x};
  const auto point = [&](double ahead, double aside) {
    return At{centre.x + ahead * north.x + aside * side.x,
              centre.y + ahead * north.y + aside * side.y};
  };
  canvas.begin_group({{"class", "north"}});
  canvas.circle(centre, r, {0.25});
  canvas.fill({point(r, 0), point(-0.5 * r, 0.55 * r), point(-0.15 * r, 0)}, kInk);
  canvas.polygon({point(r, 0), point(-0.5 * r, -0.55 * r), point(-0.15 * r, 0)}, {0.25});
  const At letter = point(r + 2.6, 0);
  canvas.text({letter.x, letter.y + 1.2}, "N", Lettering{9, kInk, Anchor::Middle}.bold());
  canvas.end_group();
}

}  // namespace squaredig::report
