#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"
#include "report/pit_plan.h"

namespace squaredig::report {
namespace {

constexpr Colour kEarth{0.42, 0.28, 0.1};
constexpr Colour kPit{0.95, 0.93, 0.86};
constexpr Colour kRung{0.5, 0.5, 0.5};

struct Range {
  double least = 1e300, most = -1e300;
  void add(double v) { least = std::min(least, v), most = std::max(most, v); }
  double length() const { return most - least; }
};

// What of a section is worth drawing: the pit and a little ground on either side.
Range reach_of(const dig::Section& section) {
  Range dug, all;
  for (const auto& p : section.points) {
    all.add(p.distance.in_metres());
    if (p.excavated) dug.add(p.distance.in_metres());
  }
  const double margin = 0.08 * dug.length();
  return {std::max(all.least, dug.least - margin), std::min(all.most, dug.most + margin)};
}

// Both sections in one box: the same scales, the same levels at the same height.
struct Scales {
  double across = 1;  // mm to the metre
  double exaggeration = 1;
  Range levels;
  double foot = 0;  // y of the lowest level
  double y(Elevation z) const {
    return foot - across * exaggeration * (z.in_metres() - levels.least);
  }
  std::string words() const {
    const std::string text = scale_words(across);
    return exaggeration == 1 ? text : text + ", heights drawn " + shortest(exaggeration) + " times";
  }
};

void add_levels(const dig::DigResult& dig, const dig::Section& section, Range& levels) {
  const Range reach = reach_of(section);
  for (const auto& p : section.points) {
    const double d = p.distance.in_metres();
    if (d < reach.least || d > reach.most) continue;
    if (p.ground) levels.add(p.ground->in_metres());
    if (p.excavated) levels.add(p.excavated->in_metres());
  }
  levels.add((section.underside_from + dig.tank_height).in_metres());
  levels.add((section.underside_to + dig.tank_height).in_metres());
}

Scales scales_of(const dig::DigResult& dig, double width, const Box& box) {
  Scales scales;
  double metres = 0;
  for (const auto& section : dig.sections) {
    metres += reach_of(section).length();
    add_levels(dig, section, scales.levels);
  }
  scales.across = usual_scale(width / metres);
  const double high = std::max(scales.levels.length(), 0.1);
  // whole or half times, as much as there is room for
  scales.exaggeration =
      std::clamp(std::floor(2 * box.height() / high / scales.across) / 2, 1.0, 5.0);
  scales.across = std::min(scales.across, box.height() / high);
  scales.foot = box.bottom_right.y;
  return scales;
}

class SectionView {
 public:
  SectionView(const Scales& scales, double left, const Range& reach)
      : scales_(scales), left_(left), reach_(reach) {}
  double x(double metres) const { return left_ + scales_.across * (metres - reach_.least); }
  At operator()(Length distance, Elevation level) const {
    return {x(distance.in_metres()), scales_.y(level)};
  }
  double right() const { return x(reach_.most); }
  double left() const { return left_; }

 private:
  const Scales& scales_;
  double left_;
  Range reach_;
};

void draw_pit(Canvas& canvas, const SectionView& view, const dig::Section& section) {
  std::vector<At> ground, bottom, hole;
  for (const auto& p : section.points) {
    if (p.ground) ground.push_back(view(p.distance, *p.ground));
    if (!p.excavated || !p.ground) continue;
    bottom.push_back(view(p.distance, *p.excavated));
    hole.push_back(view(p.distance, *p.ground));
  }
  hole.insert(hole.end(), bottom.rbegin(), bottom.rend());
  if (hole.size() >= 3) canvas.fill(hole, kPit);
  canvas.line(ground, {0.45, kEarth});
  canvas.line(bottom, {0.7});
}

void draw_tank(Canvas& canvas, const SectionView& view, const dig::DigResult& dig,
               const dig::Section& section) {
  canvas.polygon(
      {view(section.tank_from, section.underside_from), view(section.tank_to, section.underside_to),
       view(section.tank_to, section.underside_to + dig.tank_height),
       view(section.tank_from, section.underside_from + dig.tank_height)},
      {0.5, kInk, {2, 0.8}});
  const At middle =
      view((section.tank_from + section.tank_to) / 2, section.underside_from + dig.tank_height / 2);
  canvas.text({middle.x, middle.y + 1}, "tank", Lettering{9, kInk, Anchor::Middle});
}

// Gives the right end of what it draws, its heading included.
double draw_one(Canvas& canvas, const dig::DigResult& dig, const dig::Section& section,
                const SectionView& view, const Box& box) {
  canvas.begin_group({{"class", "section"}});
  canvas.text({view.left(), box.top_left.y + 3.6}, section.name, Lettering{9.5}.bold());
  canvas.text({view.left(), box.top_left.y + 7.4}, section.along, {8.5, kQuiet});
  canvas.push_clip({view.left(), box.top_left.y + 8.4}, {view.right(), box.bottom_right.y});
  draw_pit(canvas, view, section);
  draw_tank(canvas, view, dig, section);
  canvas.pop_clip();
  for (const Length end : {section.tank_from, section.tank_to})
    canvas.text({view.x(end.in_metres()), box.bottom_right.y}, fixed(end.in_metres(), 2),
                {8.5, kQuiet, Anchor::Middle});
  canvas.end_group();
  return std::max(view.right(), view.left() + canvas.text_width(section.along, {8.5}));
}

// The ladder at corner A: a thin line over both sections for each rung, its name at the right.
void draw_ladder(Canvas& canvas, const Scales& scales, const dig::DigResult& dig, double left,
                 double right) {
  constexpr double kStep = 4.4;
  std::vector<const dig::Rung*> rungs;
  for (const auto& rung : dig.levels)
    if (rung.at == "A") rungs.push_back(&rung);
  std::stable_sort(rungs.begin(), rungs.end(),
                   [](const auto* a, const auto* b) { return a->level > b->level; });
  canvas.begin_group({{"class", "ladder"}});
  double next = -1e300;
  for (const auto* rung : rungs) {
    const double y = scales.y(rung->level), at = std::max(y, next);
    canvas.line({{left, y}, {right, y}, {right + 4, at}}, {0.15, kRung});
    Lettering lettering{9};
    if (rung->name == "dig level") lettering = lettering.bold();
    canvas.text({right + 5, at + 1.2}, rung->name, lettering);
    canvas.text({right + 48, at + 1.2}, fixed(rung->level.in_metres(), 3),
                lettering.anchored(Anchor::Right));
    next = at + kStep;
  }
  canvas.end_group();
}

}  // namespace

void draw_sections(Canvas& canvas, const dig::DigResult& dig, const Box& box) {
  constexpr double kLadder = 50, kBetween = 8;
  for (const auto& section : dig.sections)
    if (section.points.empty()) return;
  if (dig.sections.empty()) return;
  const auto gaps = static_cast<double>(dig.sections.size() - 1) * kBetween;
  const Box drawing{{box.top_left.x, box.top_left.y + 9.5},
                    {box.bottom_right.x - kLadder, box.bottom_right.y - 8}};
  const Scales scales = scales_of(dig, drawing.width() - gaps, drawing);
  double left = box.top_left.x;
  for (const auto& section : dig.sections) {
    const SectionView view(scales, left, reach_of(section));
    left = draw_one(canvas, dig, section, view, box) + kBetween;
  }
  canvas.text({left - kBetween + 5, box.top_left.y + 3.6}, "levels at A", Lettering{9.5}.bold());
  draw_ladder(canvas, scales, dig, box.top_left.x, left - kBetween);
  canvas.text({left - kBetween + 5, box.top_left.y + 7.4}, scales.words(), {8.5, kQuiet});
}

}  // namespace squaredig::report
