// A plan in the tank's own frame: A top left, A-B to the right, the tank below the line.
//
// Laws: view.1  the scale is a round one, so that a rule reads metres off the sheet.
#pragma once

#include "quantity/angle.h"
#include "quantity/position.h"
#include "report/canvas.h"

namespace squaredig::report {

struct Box {
  At top_left, bottom_right;
  double width() const { return bottom_right.x - top_left.x; }
  double height() const { return bottom_right.y - top_left.y; }
};

class TankView {
 public:
  // Fits all points into the box at the largest of the usual scales.
  TankView(GridPoint corner_a, Bearing ab, const std::vector<GridPoint>& points, const Box& box);
  At operator()(GridPoint p) const;
  At metres(double along, double across) const;
  double mm(Length l) const { return l.in_metres() * mm_per_metre_; }
  // "1:100"
  std::string scale_text() const;
  // Unit vector of grid north on the page.
  At north() const;

 private:
  GridPoint a_;
  double sine_, cosine_;
  double mm_per_metre_ = 10;
  At shift_;
};

void draw_north(Canvas& canvas, At centre, At north);

// The usual scales, from the largest: 1:20, 1:25, 1:50, ...
double usual_scale(double mm_per_metre_at_most);

}  // namespace squaredig::report
