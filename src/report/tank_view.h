// A plan in the tank's own frame: A top left, A-B to the right, the tank below the line.
//
// Laws: view.1  the scale is a round one, so that a rule reads metres off the sheet.
#pragma once

#include "quantity/angle.h"
#include "quantity/position.h"
#include "report/canvas.h"

namespace squaredig::report {

// The tank's frame on the grid.
struct TankFrame {
  GridPoint corner_a;
  Bearing ab;
};

class TankView {
 public:
  // Fits all points into the box at the largest of the usual scales.
  TankView(const TankFrame& frame, const std::vector<GridPoint>& points, const Box& box);
  // At a given scale, `along` and `across` of the tank lying at `at`.
  TankView(const TankFrame& frame, double mm_per_metre, Length along, Length across, At at);
  At operator()(GridPoint p) const;
  At at(Length along, Length across) const { return metres(along.in_metres(), across.in_metres()); }
  double mm(Length l) const { return l.in_metres() * mm_per_metre_; }
  double mm_per_metre() const { return mm_per_metre_; }
  // "1:100"
  std::string scale_text() const;
  // Unit vector of grid north on the page.
  At north() const { return {cosine_, -sine_}; }

 private:
  At metres(double along, double across) const;
  GridPoint a_;
  double sine_, cosine_;
  double mm_per_metre_ = 10;
  At shift_;
};

void draw_north(Canvas& canvas, At centre, At north);

// The largest usual scale with at most so many millimetres to the metre: 1:20, 1:25, 1:50, ...
double usual_scale(double mm_per_metre_at_most);
// "1:100"
std::string scale_words(double mm_per_metre);

}  // namespace squaredig::report
