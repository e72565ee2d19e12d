#include "report/base_maps.h"

#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"
#include "report/depth_ramp.h"
#include "report/plan_marks_internal.h"

namespace squaredig::report {
namespace {

constexpr Colour kHigh{0.62, 0.08, 0.02};
constexpr Colour kLow{0.02, 0.2, 0.55};

std::string whole_mm(Length value) { return fixed(value.in_millimetres(), 0); }

std::string signed_whole_mm(Length value) {
  const std::string text = whole_mm(value);
  return value > Length{} && text != "0" ? "+" + text : text;
}

TankView view_of(const base::BaseResult& base, const Box& box) {
  std::vector<GridPoint> points = base.toe;
  points.insert(points.end(), base.tank.begin(), base.tank.end());
  return TankView({base.tank.at(0), base.ab}, points,
                  {{box.top_left.x + 12, box.top_left.y + 12},
                   {box.bottom_right.x - 12, box.bottom_right.y - 22}});
}

void draw_outlines(Canvas& canvas, const base::BaseResult& base, const TankView& view,
                   const Box& box) {
  canvas.begin_group({{"class", "outlines"}});
  canvas.polygon(on_page(view, base.toe), {0.5});
  const auto tank = on_page(view, base.tank);
  canvas.polygon(tank, {1});
  const At middle = middle_of(tank);
  for (std::size_t i = 0; i < tank.size(); ++i)
    draw_corner_letter(
        canvas, i,
        {tank[i].x + (tank[i].x < middle.x ? -7 : 7), tank[i].y + (tank[i].y < middle.y ? -7 : 7)});
  canvas.text({box.bottom_right.x - 15, box.bottom_right.y - 1}, "plan " + view.scale_text(),
              {9, kQuiet, Anchor::Right});
  draw_north(canvas, {box.bottom_right.x - 7, box.bottom_right.y - 6}, view.north());
  canvas.end_group();
}

// The largest size at which figures at the points hardly meet.
double size_at(const std::vector<At>& points) {
  double least = 1e9;
  for (std::size_t i = 0; i < points.size() && i < 2000; ++i)
    for (std::size_t k = i + 1; k < std::min(points.size(), i + 60); ++k) {
      // a figure is about twice as wide as it is high
      const double apart =
          std::max(std::abs(points[i].x - points[k].x) / 2, std::abs(points[i].y - points[k].y));
      if (apart > 0.3) least = std::min(least, apart);
    }
  return std::clamp(least / 0.353 / 1.05, 5.0, 9.5);
}

void draw_patches(Canvas& canvas, const base::BaseResult& base, const TankView& view) {
  canvas.begin_group({{"class", "repair"}});
  for (const auto& patch : base.repair) {
    const Colour colour = patch.work == base::Work::Trim ? kHigh : kLow;
    for (const auto& ring : patch.rings)
      canvas.polygon(on_page(view, ring), {0.5, colour, {1.4, 0.7}});
  }
  canvas.end_group();
}

void draw_rule(Canvas& canvas, const base::BaseResult& base, const TankView& view) {
  if (!base.straightedge) return;
  const auto& rule = *base.straightedge;
  canvas.begin_group({{"class", "straightedge"}});
  canvas.line({view(rule.from), view(rule.to)}, {1.6, kPaper});
  canvas.line({view(rule.from), view(rule.to)}, {1});
  for (const GridPoint p : {rule.touch_from, rule.touch_to}) canvas.disc(view(p), 0.9, kInk);
  const At worst = view(rule.worst);
  canvas.circle(worst, 2.2, {0.7, kHigh});
  canvas.end_group();
}

}  // namespace

void draw_deviation_map(Canvas& canvas, const base::BaseResult& base, const Box& box) {
  const TankView view = view_of(base, box);
  Length most;
  std::vector<At> places;
  for (const auto& p : base.points) {
    most = std::max(most, abs(p.deviation));
    places.push_back(view(p.at.at));
  }
  draw_outlines(canvas, base, view, box);
  draw_rule(canvas, base, view);
  const double points = size_at(places);
  canvas.begin_group({{"class", "points"}});
  for (std::size_t i = 0; i < places.size(); ++i) {
    const auto& p = base.points[i];
    const Colour ground = deviation_colour(most > Length{} ? p.deviation / most : 0);
    const bool told = p.verdict == Verdict::DoesNotConform || p.verdict == Verdict::NotProven;
    const double w = points * 0.353 * 1.35, h = points * 0.353 * 0.75;
    const At at = places[i];
    const std::vector<At> tag{
        {at.x - w, at.y - h}, {at.x + w, at.y - h}, {at.x + w, at.y + h}, {at.x - w, at.y + h}};
    canvas.fill(tag, ground);
    if (told) canvas.polygon(tag, {0.4});
    Lettering lettering{points, kInk, Anchor::Middle};
    if (told) lettering = lettering.bold();
    canvas.text({at.x, at.y + points * 0.13}, signed_whole_mm(p.deviation), lettering);
  }
  canvas.end_group();
  draw_patches(canvas, base, view);
  canvas.text({box.top_left.x, box.bottom_right.y - 1},
              "mm, + high, - low; framed: outside or not proven; dashed: repair; heavy line: "
              "straightedge at its worst",
              {8.5, kQuiet});
}

void draw_bedding_map(Canvas& canvas, const base::BaseResult& base, const Box& box) {
  const TankView view = view_of(base, box);
  std::vector<At> places;
  for (const auto& p : base.points) places.push_back(view(p.at.at));
  const double points = size_at(places);
  Length most;
  for (const auto& p : base.points) most = std::max(most, p.bedding);
  draw_outlines(canvas, base, view, box);
  canvas.begin_group({{"class", "points"}});
  for (std::size_t i = 0; i < places.size(); ++i) {
    const auto& p = base.points[i];
    const Colour ground = depth_colour(most > Length{} ? p.bedding / most : 0);
    const At at = places[i];
    const double w = points * 0.353 * 1.35, h = points * 0.353 * 0.75;
    canvas.fill(
        {{at.x - w, at.y - h}, {at.x + w, at.y - h}, {at.x + w, at.y + h}, {at.x - w, at.y + h}},
        ground);
    canvas.text({at.x, at.y + points * 0.13}, whole_mm(p.bedding), {points, kInk, Anchor::Middle});
  }
  canvas.end_group();
  if (base.skin) {
    const auto mark = [&](GridPoint p, const char* word) {
      const At at = view(p);
      canvas.circle(at, 3.4, {0.6, kHigh});
      canvas.text({at.x, at.y - 4.2}, word,
                  Lettering{8.5, kHigh, Anchor::Middle}.bold().on(kPaper));
    };
    mark(base.skin->thinnest_at, "thinnest");
    mark(base.skin->thickest_at, "thickest");
  }
  canvas.text({box.top_left.x, box.bottom_right.y - 1},
              "mm of bedding from the base up to the underside of the tank", {8.5, kQuiet});
}

}  // namespace squaredig::report
