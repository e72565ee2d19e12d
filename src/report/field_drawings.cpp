#include "report/field_drawings.h"

#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"
#include "report/map_labels.h"
#include "report/north_up.h"
#include "report/words.h"

namespace squaredig::report {
namespace {

constexpr Colour kBar{0.35, 0.45, 0.6};
constexpr Colour kStation{0.7, 0.08, 0.05};
constexpr Colour kEllipse{0.25, 0.42, 0.38};

// So many times that the greatest ellipse can be seen and none hides its neighbours.
double enlargement(const field::FieldResult& field, const TankView& view) {
  constexpr double kWanted = 6;  // mm on paper, the greatest half axis
  Length most;
  for (const auto& p : field.points)
    if (p.ellipse) most = std::max(most, p.ellipse->major);
  if (most <= Length{}) return 0;
  const double times = kWanted / view.mm(most);
  const double power = std::pow(10.0, std::floor(std::log10(times)));
  return times >= 5 * power ? 5 * power : times >= 2 * power ? 2 * power : power;
}

void draw_ellipse(Canvas& canvas, const TankView& view, GridPoint centre,
                  const field::ErrorEllipse& ellipse, double times) {
  constexpr int kCorners = 40;
  std::vector<At> ring;
  for (int i = 0; i < kCorners; ++i) {
    const Angle turn = Angle::degrees(360.0 * i / kCorners);
    ring.push_back(view(ahead(centre, ellipse.along, ellipse.major * (times * cosine(turn)),
                              ellipse.minor * (times * sine(turn)))));
  }
  canvas.polygon(ring, {0.35, kEllipse});
}

// More points than this are drawn without names and ellipses.
constexpr std::size_t kNamed = 150;

void draw_ellipses(Canvas& canvas, const field::FieldResult& field, const TankView& view,
                   double times) {
  canvas.begin_group({{"class", "ellipses"}});
  for (const auto& p : field.points)
    if (p.ellipse) draw_ellipse(canvas, view, p.at, *p.ellipse, times);
  canvas.end_group();
}

void draw_places(Canvas& canvas, const field::FieldResult& field, const TankView& view,
                 MapLabels& names) {
  canvas.begin_group({{"class", "points"}});
  for (const auto& p : field.points) {
    const At at = view(p.at);
    canvas.disc(at, 0.7, kInk);
    names.keep_clear({{at.x - 0.9, at.y - 0.9}, {at.x + 0.9, at.y + 0.9}});
  }
  canvas.end_group();
  canvas.begin_group({{"class", "stations"}});
  for (const auto& setup : field.setups) {
    const At at = view(setup.at);
    canvas.polygon({{at.x, at.y - 2.2}, {at.x + 2, at.y + 1.4}, {at.x - 2, at.y + 1.4}},
                   {0.6, kStation});
    names.keep_clear({{at.x - 2.2, at.y - 2.4}, {at.x + 2.2, at.y + 1.6}});
  }
  canvas.end_group();
}

void draw_names(Canvas& canvas, const field::FieldResult& field, const TankView& view,
                MapLabels& names) {
  canvas.begin_group({{"class", "names"}});
  for (const auto& setup : field.setups) {
    const At at = view(setup.at);
    names.tell(canvas, {at.x - 11, at.y - 1.2}, "set-up " + setup.setup, kStation);
  }
  if (field.points.size() <= kNamed)
    for (const auto& p : field.points) {
      const At at = view(p.at);
      const double half = canvas.text_width(p.point, Lettering{8.5}.bold()) / 2;
      names.tell(canvas, {at.x + 1.9 + half, at.y + 1.2}, p.point, kInk);
    }
  canvas.end_group();
}

// Where the residuals of a set-up stand: their axis, and the length of one sigma.
struct ResidualAxes {
  double left, right, top, foot, middle, each;
  int most;  // sigmas, to either side
};

ResidualAxes residual_axes(const field::SetupResult& setup, const field::Tests& tests,
                           const Box& box) {
  double most = std::ceil(tests.critical);
  for (const auto& r : setup.residuals)
    if (r.normalised) most = std::max(most, std::ceil(std::abs(*r.normalised)));
  const double left = box.top_left.x + 62, right = box.bottom_right.x - 18;
  return {left,
          right,
          box.top_left.y + 8,
          box.top_left.y + residual_height(setup) - 3,
          (left + right) / 2,
          (right - left) / 2 / most,
          static_cast<int>(most)};
}

void draw_residual_grid(Canvas& canvas, const ResidualAxes& axes, double critical) {
  const auto line = [&](double sigmas, const Stroke& stroke) {
    const double x = axes.middle + sigmas * axes.each;
    canvas.line({{x, axes.top - 1.5}, {x, axes.foot}}, stroke);
    return x;
  };
  const int step = std::max(1, (axes.most + 5) / 6);
  for (int n = 0; n <= axes.most; n += step)
    for (const int side : {-1, 1}) {
      const double x = line(side * n, {n == 0 ? 0.4 : 0.15, n == 0 ? kInk : kQuiet});
      if (side > 0 || n > 0)
        canvas.text({x, axes.top - 2.6}, std::to_string(side * n), {8.5, kQuiet, Anchor::Middle});
    }
  for (const int side : {-1, 1}) line(side * critical, {0.4, kStation, {1.5, 1}});
}

void draw_residual(Canvas& canvas, const ResidualAxes& axes, const field::SightResidual& r,
                   double y) {
  canvas.text({axes.left - 3, y + 3.4}, r.target + ", " + words(r.reading),
              {8.5, kInk, Anchor::Right});
  if (!r.normalised) {
    canvas.text({axes.middle + 1.5, y + 3.4}, "not checked", Lettering{8.5, kQuiet}.on(kPaper));
    return;
  }
  const double from = axes.middle, to = from + *r.normalised * axes.each;
  const std::vector<At> bar{{from, y + 0.9}, {to, y + 0.9}, {to, y + 4.1}, {from, y + 4.1}};
  if (r.left_out)
    canvas.polygon(bar, {0.5, kStation});
  else
    canvas.fill(bar, kBar);
}

}  // namespace

void draw_field_plan(Canvas& canvas, const field::FieldResult& field, const Box& box) {
  std::vector<GridPoint> points;
  for (const auto& p : field.points) points.push_back(p.at);
  for (const auto& setup : field.setups) points.push_back(setup.at);
  if (points.empty()) return;
  const TankView view = north_up(points, {{box.top_left.x + 4, box.top_left.y + 8},
                                          {box.bottom_right.x - 30, box.bottom_right.y - 8}});
  const double times = field.points.size() <= kNamed ? enlargement(field, view) : 0;
  if (times > 0) draw_ellipses(canvas, field, view, times);
  MapLabels names(box);
  draw_places(canvas, field, view, names);
  draw_names(canvas, field, view, names);
  draw_north(canvas, {box.bottom_right.x - 8, box.top_left.y + 10}, view.north());
  std::string words = "plan " + view.scale_text();
  if (times > 0)
    words += ", ellipses of one standard deviation drawn " + shortest(times) + " times";
  canvas.text({box.bottom_right.x, box.bottom_right.y - 1}, words, {9, kQuiet, Anchor::Right});
}

double residual_height(const field::SetupResult& setup) {
  return 12 + kResidualStep * static_cast<double>(setup.residuals.size());
}

void draw_residuals(Canvas& canvas, const field::SetupResult& setup, const field::Tests& tests,
                    const Box& box) {
  const ResidualAxes axes = residual_axes(setup, tests, box);
  canvas.begin_group({{"class", "residuals"}});
  draw_residual_grid(canvas, axes, tests.critical);
  canvas.text({axes.right + 2, axes.foot}, "suspect", {8.5, kStation});
  canvas.text({axes.left - 3, axes.top - 2.6}, "residual over its sigma",
              Lettering{8.5, kInk, Anchor::Right}.bold());
  double y = axes.top;
  for (const auto& r : setup.residuals) {
    draw_residual(canvas, axes, r, y);
    y += kResidualStep;
  }
  canvas.end_group();
}

}  // namespace squaredig::report
