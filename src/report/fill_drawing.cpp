#include "report/fill_drawing.h"

#include <algorithm>

#include "quantity/number_text.h"
#include "report/plan_marks_internal.h"
#include "report/words.h"

namespace squaredig::report {
namespace {

constexpr Colour kSpecial{0.86, 0.82, 0.7};
constexpr Colour kSide{0.95, 0.94, 0.9};
constexpr Colour kCapping{0.78, 0.8, 0.84};
constexpr Colour kMark{0.62, 0.08, 0.02};
constexpr double kRing = 3.6;

struct Band {
  Elevation from, to;
  std::string name;
  Colour colour;
};

std::vector<Band> bands_of(const fill::FillResult& fill) {
  std::vector<Band> bands;
  for (const auto& lift : fill.side_fill)
    bands.push_back({lift.from, lift.to,
                     "lift " + std::to_string(lift.lift) + (lift.special ? ", special" : ""),
                     lift.special ? kSpecial : kSide});
  for (const auto& layer : fill.capping)
    bands.push_back({layer.from, layer.to, "capping " + std::to_string(layer.layer), kCapping});
  return bands;
}

}  // namespace

void draw_lifts(Canvas& canvas, const fill::FillResult& fill, const Box& box) {
  const auto bands = bands_of(fill);
  if (bands.empty()) return;
  constexpr double kWide = 46, kLeast = 4.2;
  const Elevation foot = bands.front().from, top = bands.back().to;
  if (top <= foot) return;
  const double height = box.height() - 10;
  const auto y = [&](Elevation level) {
    return box.bottom_right.y - 4 - height * ((level - foot) / (top - foot));
  };
  const double left = box.top_left.x + 6, right = left + kWide;
  canvas.begin_group({{"class", "lifts"}});
  double label = 1e300;  // labels of thin lifts make room for each other
  const auto tell = [&](Elevation level, const std::string& words, const Lettering& lettering) {
    label = std::min(y(level) + 1.2, label - kLeast);
    canvas.line({{right, y(level)}, {right + 8, label - 1.2}}, {0.2, kQuiet});
    canvas.text({right + 26, label}, level_text(level), lettering.anchored(Anchor::Right));
    canvas.text({right + 29, label}, words, {9});
  };
  tell(foot, "underneath, at A", {9});
  for (const auto& band : bands) {
    canvas.fill(
        {{left, y(band.to)}, {right, y(band.to)}, {right, y(band.from)}, {left, y(band.from)}},
        band.colour, {0.3});
    if (y(band.from) - y(band.to) >= kLeast)
      canvas.text({left + kWide / 2, (y(band.from) + y(band.to)) / 2 + 1.1}, band.name,
                  {9, kInk, Anchor::Middle});
    tell(band.to, "fill to, " + band.name, Lettering{10}.bold());
  }
  canvas.end_group();
}

void draw_layer(Canvas& canvas, const fill::FillResult& fill, const fill::LayerBuilt& layer,
                const Box& box) {
  if (fill.tank_corners.size() < 3 || layer.points.empty()) return;
  std::vector<GridPoint> points = fill.toe, tank;
  for (const auto& corner : fill.tank_corners) tank.push_back(corner.at);
  points.insert(points.end(), tank.begin(), tank.end());
  for (const auto& p : layer.points) points.push_back(p.at.at);
  const TankView view({tank[0], fill.ab}, points,
                      {{box.top_left.x + 12, box.top_left.y + 12},
                       {box.bottom_right.x - 12, box.bottom_right.y - 22}});
  canvas.begin_group({{"class", "layer"}});
  canvas.polygon(on_page(view, fill.toe), {0.4});
  const auto corners = on_page(view, tank);
  canvas.polygon(corners, {1});
  const At middle = middle_of(corners);
  for (std::size_t i = 0; i < corners.size(); ++i)
    draw_corner_letter(canvas, i,
                       {corners[i].x + (corners[i].x < middle.x ? -7 : 7),
                        corners[i].y + (corners[i].y < middle.y ? -7 : 7)});
  for (const auto& p : layer.points) {
    const At at = view(p.at.at);
    canvas.text({at.x, at.y + 1.1}, fixed(p.thickness.in_millimetres(), 0),
                Lettering{8, kInk, Anchor::Middle}.on(kPaper));
  }
  canvas.circle(view(layer.thinnest_at), kRing, {0.6, kMark});
  canvas.circle(view(layer.thickest_at), kRing, {0.6, kMark, {1.2, 0.7}});
  canvas.text({box.top_left.x, box.bottom_right.y - 6}, layer.name, Lettering{9.5}.bold());
  canvas.text({box.top_left.x, box.bottom_right.y - 1},
              "mm of layer at each surveyed point; ring: thinnest " +
                  fixed(layer.thinnest.in_millimetres(), 0) + "; dashed ring: thickest " +
                  fixed(layer.thickest.in_millimetres(), 0),
              {8.5, kQuiet});
  canvas.text({box.bottom_right.x - 15, box.bottom_right.y - 1}, "plan " + view.scale_text(),
              {9, kQuiet, Anchor::Right});
  draw_north(canvas, {box.bottom_right.x - 7, box.bottom_right.y - 6}, view.north());
  canvas.end_group();
}

}  // namespace squaredig::report
