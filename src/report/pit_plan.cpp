#include "report/pit_plan.h"

#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"
#include "report/depth_ramp.h"

namespace squaredig::report {
namespace {

constexpr Colour kString{0.72, 0.1, 0.1};
constexpr Colour kGrid{0.6, 0.6, 0.6};

double share_of(const dig::DigResult& dig, Length cut) {
  return dig.deepest_cut > Length{} ? cut / dig.deepest_cut : 0;
}

void draw_cell(Canvas& canvas, const TankView& view, const dig::DigResult& dig,
               const dig::Cell& cell) {
  const double half = dig.grid.size.in_metres() / 2;
  const double u = cell.along.in_metres(), v = cell.across.in_metres();
  const std::vector<At> box{view.metres(u - half, v - half), view.metres(u + half, v - half),
                            view.metres(u + half, v + half), view.metres(u - half, v + half)};
  const Length cut = cell.cut_at_centre.value_or(cell.mean_cut);
  const Colour ground = depth_colour(share_of(dig, cut));
  const double size = view.mm(dig.grid.size);
  if (cell.cut_at_centre) {
    canvas.fill(box, ground);
    canvas.polygon(box, {0.12, kPaper});
  } else {  // dug in part, its centre not: outline only
    canvas.polygon(box, {0.12, kGrid});
  }
  const Colour ink = cell.cut_at_centre ? lettering_on(ground) : kInk;
  const double points = std::min(13.0, size / 0.353 / 2.7);
  const At middle = view.metres(u, v);
  canvas.text({middle.x, middle.y + points * 0.353 * 0.36}, fixed(cut.in_metres(), 2),
              {points, ink, Anchor::Middle, cell.cut_at_centre.has_value()});
}

std::vector<At> on_page(const TankView& view, const std::vector<GridPosition>& ring) {
  std::vector<At> points;
  for (const auto& p : ring) points.push_back(view(p.at));
  return points;
}

At centre_of(const std::vector<At>& points) {
  At sum;
  for (const At p : points) sum = {sum.x + p.x, sum.y + p.y};
  return {sum.x / static_cast<double>(points.size()), sum.y / static_cast<double>(points.size())};
}

std::string letter(std::size_t i) {
  std::string name;
  for (std::size_t n = i + 1; n > 0; n = (n - 1) / 26)
    name.insert(name.begin(), static_cast<char>('A' + (n - 1) % 26));
  return name;
}

// A letter in a disc, a little inside its corner.
void draw_corners(Canvas& canvas, const std::vector<At>& tank) {
  const At middle = centre_of(tank);
  for (std::size_t i = 0; i < tank.size(); ++i) {
    const double dx = middle.x - tank[i].x, dy = middle.y - tank[i].y;
    const double length = std::max(1.0, std::hypot(dx, dy));
    const At at{tank[i].x + 6 * dx / length, tank[i].y + 6 * dy / length};
    canvas.disc(at, 3.6, kPaper);
    canvas.circle(at, 3.6, {0.5});
    canvas.text({at.x, at.y + 1.6}, letter(i), {13, kInk, Anchor::Middle, true});
  }
}

void draw_pegs(Canvas& canvas, const TankView& view, const pegs::PegsResult& pegs) {
  const auto find = [&](const std::string& name) {
    return std::find_if(pegs.reference.begin(), pegs.reference.end(),
                        [&](const auto& peg) { return peg.name == name; });
  };
  for (const auto& peg : pegs.reference) {
    // a string is named by its two pegs; drawn once, from the first
    const auto dash = peg.string_line.find('-');
    if (dash == std::string::npos || peg.string_line.substr(0, dash) != peg.name) continue;
    const auto other = find(peg.string_line.substr(dash + 1));
    if (other != pegs.reference.end())
      canvas.line({view(peg.at), view(other->at)}, {0.25, kString, {4, 1, 0.6, 1}});
  }
  for (const auto& peg : pegs.reference) {
    const At at = view(peg.at);
    canvas.fill({{at.x - 1.3, at.y - 1.3},
                 {at.x + 1.3, at.y - 1.3},
                 {at.x + 1.3, at.y + 1.3},
                 {at.x - 1.3, at.y + 1.3}},
                kString);
    canvas.text({at.x + 2, at.y - 1.5}, peg.name, {9, kString, Anchor::Left, true});
  }
}

std::vector<GridPoint> everything(const PitPlan& plan) {
  std::vector<GridPoint> points;
  for (const auto& ring : plan.dig.crest)
    for (const auto& p : ring) points.push_back(p.at);
  for (const auto& p : plan.dig.toe) points.push_back(p.at);
  if (plan.pegs)
    for (const auto& peg : plan.pegs->reference) points.push_back(peg.at);
  return points;
}

}  // namespace

TankView draw_pit_plan(Canvas& canvas, const PitPlan& plan, const Box& box) {
  const auto& dig = plan.dig;
  const Box inner{{box.top_left.x + 8, box.top_left.y + 6},
                  {box.bottom_right.x - 8, box.bottom_right.y - 6}};
  const TankView view(dig.tank[0].at, dig.grid.bearing, everything(plan), inner);
  canvas.push_clip(box.top_left, box.bottom_right);
  for (const auto& cell : dig.grid.cells) draw_cell(canvas, view, dig, cell);
  for (const auto& ring : dig.crest) canvas.polygon(on_page(view, ring), {0.6, kInk, {2.4, 1.4}});
  canvas.polygon(on_page(view, dig.toe), {0.6});
  const auto tank = on_page(view, dig.tank);
  canvas.polygon(tank, {1.1});
  if (plan.pegs) draw_pegs(canvas, view, *plan.pegs);
  draw_corners(canvas, tank);
  canvas.pop_clip();
  draw_north(canvas, {box.bottom_right.x - 14, box.top_left.y + 14}, view.north());
  return view;
}

void draw_depth_legend(Canvas& canvas, At at, const dig::DigResult& dig) {
  constexpr int kClasses = 6;
  const double deepest = dig.deepest_cut.in_metres();
  canvas.text({at.x, at.y}, "cut", {8, kInk, Anchor::Left, true});
  for (int i = 0; i < kClasses; ++i) {
    const double share = i / (kClasses - 1.0);
    const Colour colour = depth_colour(share);
    const double x = at.x + 10 + 16 * i;
    canvas.fill({{x, at.y - 4}, {x + 16, at.y - 4}, {x + 16, at.y + 1.2}, {x, at.y + 1.2}}, colour);
    canvas.text({x + 8, at.y}, fixed(share * deepest, 2),
                {8, lettering_on(colour), Anchor::Middle, true});
  }
  const double x = at.x + 10 + 16 * kClasses + 4;
  canvas.line({{x, at.y - 1.4}, {x + 8, at.y - 1.4}}, {0.6});
  canvas.text({x + 9, at.y}, "toe", {8});
  canvas.line({{x + 17, at.y - 1.4}, {x + 26, at.y - 1.4}}, {0.6, kInk, {2.4, 1.4}});
  canvas.text({x + 27, at.y}, "crest", {8});
  canvas.line({{x + 38, at.y - 1.4}, {x + 46, at.y - 1.4}}, {1.1});
  canvas.text({x + 47, at.y}, "tank", {8});
  canvas.line({{x + 57, at.y - 1.4}, {x + 66, at.y - 1.4}}, {0.25, kString, {4, 1, 0.6, 1}});
  canvas.text({x + 67, at.y}, "string between pegs", {8});
}

}  // namespace squaredig::report
