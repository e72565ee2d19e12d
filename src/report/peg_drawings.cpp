#include "report/peg_drawings.h"

#include <algorithm>
#include <cmath>

#include "report/pit_plan.h"
#include "report/plan_marks_internal.h"
#include "report/words.h"

namespace squaredig::report {
namespace {

TankFrame frame_of(const pegs::PegsResult& pegs) {
  return {pegs.corners[0].at.at, Bearing::of_line(pegs.corners[0].at.at, pegs.corners[1].at.at)};
}

std::vector<GridPoint> tank_of(const pegs::PegsResult& pegs) {
  std::vector<GridPoint> tank;
  for (const auto& corner : pegs.corners) tank.push_back(corner.at.at);
  return tank;
}

// A length written along a line, on a paper ground.
void draw_length(Canvas& canvas, At from, At to, const std::string& text) {
  double angle = std::atan2(-(to.y - from.y), to.x - from.x) * 57.29577951308232;
  if (angle > 90.01) angle -= 180;
  if (angle < -89.99) angle += 180;
  Lettering lettering = Lettering{9, kInk, Anchor::Middle}.bold().on(kPaper);
  lettering.turned_degrees = angle;
  canvas.text({(from.x + to.x) / 2, (from.y + to.y) / 2}, text, lettering);
}

const pegs::ReferencePeg* peg_called(const pegs::PegsResult& pegs, const std::string& name) {
  for (const auto& peg : pegs.reference)
    if (peg.name == name) return &peg;
  return nullptr;
}

void draw_fittings(Canvas& canvas, const TankView& view, const pegs::PegsResult& pegs) {
  canvas.begin_group({{"class", "fittings"}});
  for (const auto& pipe : pegs.pipes) {
    const At at = view(pipe.at);
    canvas.disc(at, 1.1, kPaper);
    canvas.circle(at, 1.1, {0.5});
    canvas.text({at.x + 2, at.y - 1.4}, pipe.name, Lettering{9}.on(kPaper));
  }
  for (const auto& shaft : pegs.shafts) {
    const At at = view(shaft.at);
    canvas.circle(at, 1.6, {0.5});
    canvas.line({{at.x - 1.6, at.y}, {at.x + 1.6, at.y}}, {0.3});
    canvas.text({at.x + 2.4, at.y + 1.2}, shaft.name, Lettering{9}.on(kPaper));
  }
  canvas.end_group();
}

}  // namespace

void draw_peg_plan(Canvas& canvas, const pegs::PegsResult& pegs, const Box& box) {
  if (pegs.corners.size() < 3) return;
  std::vector<GridPoint> points = tank_of(pegs);
  for (const auto& peg : pegs.reference) points.push_back(peg.at);
  for (const auto& ring : pegs.crest)
    for (const auto& p : ring) points.push_back(p.at);
  const TankView view(frame_of(pegs), points, box.inside(9));
  canvas.begin_group({{"class", "crest"}});
  for (const auto& ring : pegs.crest) canvas.polygon(on_page(view, ring), {0.5, kInk, {2.6, 1.5}});
  canvas.end_group();
  canvas.polygon(on_page(view, pegs.toe), {0.4});
  const auto tank = on_page(view, tank_of(pegs));
  canvas.polygon(tank, {1});
  draw_strings(canvas, view, pegs);
  const At middle = middle_of(tank);
  for (std::size_t i = 0; i < tank.size(); ++i)
    draw_corner_letter(
        canvas, i,
        {tank[i].x + (tank[i].x < middle.x ? -6 : 6), tank[i].y + (tank[i].y < middle.y ? -6 : 6)});
  draw_fittings(canvas, view, pegs);
  draw_pegs(canvas, view, pegs, box);
  for (std::size_t i = 0; i < pegs.sides.size() && i < tank.size(); ++i)
    draw_length(canvas, tank[i], tank[(i + 1) % tank.size()], metres_text(pegs.sides[i].ground, 3));
  draw_north(canvas, {box.bottom_right.x - 8, box.top_left.y + 9}, view.north());
  canvas.text({box.top_left.x, box.bottom_right.y}, "plan " + view.scale_text(), {9, kQuiet});
}

void draw_recovery(Canvas& canvas, const pegs::PegsResult& pegs, std::size_t number,
                   const Box& box) {
  const auto& corner = pegs.corners[number];
  std::vector<GridPoint> points{corner.at.at};
  for (const auto& tie : corner.recovery)
    if (const auto* peg = peg_called(pegs, tie.peg)) points.push_back(peg->at);
  // not to scale where the ties are short or long: it is a sketch, as a field book has it
  const TankView view(frame_of(pegs), points, box.inside(14));
  const At at = view(corner.at.at);
  canvas.begin_group({{"class", "sketch"}});
  canvas.polygon({box.top_left,
                  {box.bottom_right.x, box.top_left.y},
                  box.bottom_right,
                  {box.top_left.x, box.bottom_right.y}},
                 {0.2, kQuiet});
  canvas.push_clip(box.top_left, box.bottom_right);
  canvas.polygon(on_page(view, tank_of(pegs)), {1});
  for (const auto& tie : corner.recovery) {
    const auto* peg = peg_called(pegs, tie.peg);
    if (!peg) continue;
    canvas.line({at, view(peg->at)}, {0.4, kStringColour, {5, 1, 0.8, 1}});
    draw_length(canvas, at, view(peg->at), metres_text(tie.ground, 3));
  }
  canvas.pop_clip();
  canvas.circle(at, 1.4, {0.5});
  draw_pegs(canvas, view, pegs, box);
  draw_corner_letter(canvas, number, {box.top_left.x + 5.5, box.top_left.y + 5.5});
  canvas.text({box.bottom_right.x - 2, box.bottom_right.y - 2},
              "E " + easting_text(corner.at.at) + "  N " + northing_text(corner.at.at),
              Lettering{8.5, kQuiet, Anchor::Right}.on(kPaper));
  canvas.end_group();
}

}  // namespace squaredig::report
