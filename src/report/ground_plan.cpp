#include "report/ground_plan.h"

#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"
#include "report/map_labels.h"
#include "report/north_up.h"
#include "report/plan_marks_internal.h"

namespace squaredig::report {
namespace {

constexpr Colour kContour{0.25, 0.42, 0.38};
constexpr Colour kBreakline{0.5, 0.28, 0.08};
constexpr Colour kFound{0.7, 0.05, 0.02};

// Corners nearer to each other than a fine pen's width are one on paper.
std::vector<At> thinned(const std::vector<At>& points) {
  constexpr double kPen = 0.2;
  std::vector<At> out;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (out.empty() || i + 1 == points.size() ||
        std::hypot(points[i].x - out.back().x, points[i].y - out.back().y) >= kPen)
      out.push_back(points[i]);
  return out;
}

double length_of(const std::vector<At>& line) {
  double length = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i)
    length += std::hypot(line[i + 1].x - line[i].x, line[i + 1].y - line[i].y);
  return length;
}

// Every fifth level counted from zero.
bool heavy(const ground::GroundResult& ground, Elevation level) {
  const double n = level.in_metres() / ground.contour_interval->in_metres();
  return std::lround(n) % 5 == 0;
}

// The level at the middle of the line, along it, where no other stands near.
class Labels {
 public:
  explicit Labels(MapLabels& words) : words_(words) {}
  void add(Canvas& canvas, const std::vector<At>& line, const std::string& text, bool bold) {
    const double half = length_of(line) / 2;
    double gone = 0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      const At a = line[i], b = line[i + 1];
      const double step = std::hypot(b.x - a.x, b.y - a.y);
      if (gone + step < half) {
        gone += step;
        continue;
      }
      const double t = step > 0 ? (half - gone) / step : 0;
      const At at{a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
      if (std::any_of(taken_.begin(), taken_.end(),
                      [&](At p) { return std::abs(p.x - at.x) < 13 && std::abs(p.y - at.y) < 5; }))
        return;
      taken_.push_back(at);
      Lettering lettering = Lettering{8, kContour, Anchor::Middle}.on(kPaper);
      if (bold) lettering = lettering.bold();
      canvas.text({at.x, at.y + 1}, text, lettering);
      const double wide = canvas.text_width(text, lettering) / 2;
      words_.keep_clear({{at.x - wide, at.y - 1.5}, {at.x + wide, at.y + 1.5}});
      return;
    }
  }

 private:
  MapLabels& words_;
  std::vector<At> taken_;
};

void draw_contours(Canvas& canvas, const ground::GroundResult& ground, const TankView& view,
                   MapLabels& words) {
  std::vector<std::vector<At>> lines;
  canvas.begin_group({{"class", "contours"}});
  for (const auto& contour : ground.contours) {
    lines.push_back(thinned(on_page(view, contour.line)));
    const Stroke stroke{heavy(ground, contour.level) ? 0.45 : 0.22, kContour};
    if (contour.closed)
      canvas.polygon(lines.back(), stroke);
    else
      canvas.line(lines.back(), stroke);
  }
  canvas.end_group();
  canvas.begin_group({{"class", "levels"}});
  Labels labels(words);
  for (const bool bold : {true, false})
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (heavy(ground, ground.contours[i].level) == bold && length_of(lines[i]) > 25)
        labels.add(canvas, lines[i], shortest(ground.contours[i].level.in_metres()), bold);
  canvas.end_group();
}

void draw_surveyed(Canvas& canvas, const ground::GroundResult& ground, const TankView& view) {
  canvas.begin_group({{"class", "rim"}});
  for (const auto& ring : ground.rim) canvas.polygon(thinned(on_page(view, ring)), {0.35, kQuiet});
  canvas.end_group();
  if (!ground.positions.empty()) {
    canvas.begin_group({{"class", "points"}});
    for (const auto& p : ground.positions) canvas.disc(view(p), 0.35, kQuiet);
    canvas.end_group();
  }
  canvas.begin_group({{"class", "breaklines"}});
  for (const auto& string : ground.breaklines) {
    std::vector<At> line;
    for (const auto& vertex : string.vertices) line.push_back(view(vertex.at.at));
    if (line.size() < 2) continue;
    canvas.line(thinned(line), {0.7, kBreakline});
  }
  canvas.end_group();
}

// Beside their beginnings; of very many none.
void tell_breaklines(Canvas& canvas, const ground::GroundResult& ground, const TankView& view,
                     MapLabels& words) {
  constexpr std::size_t kNamed = 150;
  if (ground.breaklines.size() > kNamed) return;
  for (const auto& string : ground.breaklines) {
    if (string.vertices.size() < 2) continue;
    const At begin = view(string.vertices.front().at.at);
    words.tell(canvas, {begin.x + 8, begin.y - 1.5}, string.name, kBreakline);
  }
}

void draw_found(Canvas& canvas, const ground::GroundResult& ground, const TankView& view) {
  canvas.begin_group({{"class", "found"}});
  for (std::size_t i = 0; i < ground.found.size(); ++i) {
    const At at = view(ground.found[i].at);
    canvas.circle(at, 1.6, {1.1, kPaper});
    canvas.circle(at, 1.6, {0.6, kFound});
    canvas.text({at.x + 2.4, at.y - 1}, std::to_string(i + 1),
                Lettering{9, kFound}.bold().on(kPaper));
  }
  canvas.end_group();
}

}  // namespace

void draw_ground_plan(Canvas& canvas, const ground::GroundResult& ground, const Box& box) {
  std::vector<GridPoint> points;
  for (const auto& ring : ground.rim) points.insert(points.end(), ring.begin(), ring.end());
  if (points.empty()) return;
  const TankView view = north_up(points, {{box.top_left.x + 6, box.top_left.y + 6},
                                          {box.bottom_right.x - 20, box.bottom_right.y - 8}});
  draw_surveyed(canvas, ground, view);
  MapLabels words(box);
  draw_contours(canvas, ground, view, words);
  tell_breaklines(canvas, ground, view, words);
  draw_found(canvas, ground, view);
  draw_north(canvas, {box.bottom_right.x - 8, box.top_left.y + 10}, view.north());
  std::string legend = "plan " + view.scale_text();
  if (ground.contour_interval)
    legend += ", contours every " + shortest(ground.contour_interval->in_metres()) + " m";
  canvas.text({box.bottom_right.x, box.bottom_right.y - 1}, legend, {9, kQuiet, Anchor::Right});
}

}  // namespace squaredig::report
