#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"
#include "report/pit_plan.h"

namespace squaredig::report {
namespace {

constexpr Colour kEarth{0.45, 0.3, 0.12};
constexpr Colour kPit{0.93, 0.9, 0.82};

// Distances to the right, levels up; both at round scales.
class SectionView {
 public:
  SectionView(const dig::DigResult& dig, const dig::Section& section, const Box& box) {
    double left = 1e300, right = -1e300, low = 1e300, high = -1e300;
    const auto level = [&](Elevation z) {
      low = std::min(low, z.in_metres()), high = std::max(high, z.in_metres());
    };
    for (const auto& p : section.points) {
      left = std::min(left, p.distance.in_metres());
      right = std::max(right, p.distance.in_metres());
      if (p.ground) level(*p.ground);
      if (p.excavated) level(*p.excavated);
    }
    level(section.underside_from + dig.tank_height);
    x_scale_ = usual_scale(box.width() / (right - left));
    // exaggerated where that helps, by a round factor that is told
    const double fits = box.height() / (high - low);
    exaggeration_ = std::clamp(std::floor(fits / x_scale_), 1.0, 4.0);
    y_scale_ = std::min(x_scale_ * exaggeration_, fits);
    zero_ = {(box.top_left.x + box.bottom_right.x) / 2 - x_scale_ * (left + right) / 2,
             box.bottom_right.y + y_scale_ * low};
  }
  At operator()(Length distance, Elevation level) const {
    return {zero_.x + x_scale_ * distance.in_metres(), zero_.y - y_scale_ * level.in_metres()};
  }
  std::string words() const {
    const std::string across = "1:" + shortest(std::round(1000 / x_scale_));
    if (exaggeration_ == 1) return across;
    return across + ", heights drawn " + shortest(exaggeration_) + " times";
  }

 private:
  double x_scale_ = 1, y_scale_ = 1, exaggeration_ = 1;
  At zero_;
};

void draw_pit(Canvas& canvas, const SectionView& view, const dig::Section& section) {
  std::vector<At> ground, bottom, hole;
  for (const auto& p : section.points) {
    if (p.ground) ground.push_back(view(p.distance, *p.ground));
    if (!p.excavated) continue;
    bottom.push_back(view(p.distance, *p.excavated));
    hole.push_back(view(p.distance, *p.ground));
  }
  hole.insert(hole.end(), bottom.rbegin(), bottom.rend());
  if (hole.size() >= 3) canvas.fill(hole, kPit);
  canvas.line(ground, {0.4, kEarth});
  canvas.line(bottom, {0.7});
}

void draw_tank(Canvas& canvas, const SectionView& view, const dig::DigResult& dig,
               const dig::Section& section) {
  const auto corner = [&](Length d, Elevation z) { return view(d, z); };
  canvas.polygon({corner(section.tank_from, section.underside_from),
                  corner(section.tank_to, section.underside_to),
                  corner(section.tank_to, section.underside_to + dig.tank_height),
                  corner(section.tank_from, section.underside_from + dig.tank_height)},
                 {0.9, kInk, {3, 1}});
}

// The ladder at corner A, each rung written beside the section's right end.
void draw_ladder(Canvas& canvas, const SectionView& view, const dig::DigResult& dig,
                 const dig::Section& section, const Box& box) {
  double last = 1e300;
  for (const auto& rung : dig.levels) {
    if (rung.at != "A") continue;
    const double y = view(section.tank_from, rung.level).y;
    // the ladder reads downward: labels keep a line's height between them
    const double at = last > 1e299 ? y : std::max(y, last + 4.2);
    canvas.line({{box.bottom_right.x - 46, y}, {box.bottom_right.x - 42, at}}, {0.2});
    canvas.text({box.bottom_right.x - 41, at + 1.2},
                rung.name + " " + fixed(rung.level.in_metres(), 3), {8.5});
    last = at;
  }
}

}  // namespace

void draw_section(Canvas& canvas, const dig::DigResult& dig, const dig::Section& section,
                  const Box& box) {
  const double y = box.top_left.y;
  canvas.text({box.top_left.x, y + 3.5}, section.name, {9, kInk, Anchor::Left, true});
  if (section.points.empty()) return;
  const Box drawing{{box.top_left.x, y + 7}, {box.bottom_right.x - 50, box.bottom_right.y - 3}};
  const SectionView view(dig, section, drawing);
  canvas.text({box.top_left.x + 32, y + 3.5}, section.along + ", " + view.words(), {7.5});
  canvas.text({box.bottom_right.x - 41, y + 3.5}, "levels at A", {8.5, kInk, Anchor::Left, true});
  draw_pit(canvas, view, section);
  draw_tank(canvas, view, dig, section);
  draw_ladder(canvas, view, dig, section, box);
}

}  // namespace squaredig::report
