#include <algorithm>
#include <cmath>

#include "report/pit_plan.h"
#include "report/plan_marks_internal.h"

namespace squaredig::report {
namespace {

// The other end of the peg's string; nothing where it was left out.
const pegs::ReferencePeg* other_end(const pegs::PegsResult& pegs, const pegs::ReferencePeg& peg) {
  for (const auto& other : pegs.reference)
    if (other.string_line == peg.string_line && other.name != peg.name) return &other;
  return nullptr;
}

}  // namespace

std::vector<At> on_page(const TankView& view, const std::vector<GridPosition>& ring) {
  std::vector<At> points;
  points.reserve(ring.size());
  for (const auto& p : ring) points.push_back(view(p.at));
  return points;
}

std::vector<At> on_page(const TankView& view, const std::vector<GridPoint>& ring) {
  std::vector<At> points;
  points.reserve(ring.size());
  for (const auto& p : ring) points.push_back(view(p));
  return points;
}

void cased_polygon(Canvas& canvas, const std::vector<At>& corners, const Stroke& stroke) {
  canvas.polygon(corners, {stroke.width + 0.6, kPaper});
  canvas.polygon(corners, stroke);
}

std::string corner_letter(std::size_t i) {
  std::string name;
  for (std::size_t n = i + 1; n > 0; n = (n - 1) / 26)
    name.insert(name.begin(), static_cast<char>('A' + (n - 1) % 26));
  return name;
}

At middle_of(const std::vector<At>& points) {
  At sum;
  for (const At p : points) sum = {sum.x + p.x, sum.y + p.y};
  const auto n = static_cast<double>(points.size());
  return {sum.x / n, sum.y / n};
}

bool holds(const Box& box, At p, double radius) {
  return p.x - radius >= box.top_left.x && p.x + radius <= box.bottom_right.x &&
         p.y - radius >= box.top_left.y && p.y + radius <= box.bottom_right.y;
}

void draw_corner_letter(Canvas& canvas, std::size_t corner, At disc) {
  canvas.begin_group({{"class", "corner"}});
  canvas.disc(disc, kLetterDisc, kInk);
  canvas.text({disc.x, disc.y + 1.9}, corner_letter(corner),
              Lettering{15, kPaper, Anchor::Middle}.bold());
  canvas.end_group();
}

void draw_strings(Canvas& canvas, const TankView& view, const pegs::PegsResult& pegs) {
  canvas.begin_group({{"class", "strings"}});
  for (const auto& peg : pegs.reference) {
    const auto* other = other_end(pegs, peg);
    if (!other || peg.name > other->name) continue;  // once for both ends
    canvas.line({view(peg.at), view(other->at)}, {0.3, kStringColour, {5, 1, 0.8, 1}});
  }
  canvas.end_group();
}

void draw_pegs(Canvas& canvas, const TankView& view, const pegs::PegsResult& pegs, const Box& box) {
  canvas.begin_group({{"class", "pegs"}});
  for (const auto& peg : pegs.reference) {
    const At at = view(peg.at);
    const double r = 1.2;
    if (!holds(box, at, r)) continue;
    canvas.fill(
        {{at.x - r, at.y - r}, {at.x + r, at.y - r}, {at.x + r, at.y + r}, {at.x - r, at.y + r}},
        kStringColour);
    // the name stands beyond the peg, in line with its string
    At name{at.x, at.y - 3};
    if (const auto* other = other_end(pegs, peg)) {
      const At to = view(other->at);
      const double length = std::max(1e-6, std::hypot(at.x - to.x, at.y - to.y));
      name = {at.x + 4.4 * (at.x - to.x) / length, at.y + 3.4 * (at.y - to.y) / length};
    }
    canvas.text({name.x, name.y + 1.15}, peg.name,
                Lettering{9, kStringColour, Anchor::Middle}.bold().on(kPaper));
  }
  canvas.end_group();
}

}  // namespace squaredig::report
