#include "ground/windowed_survey.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/locate.h"
#include "geometry/split.h"
#include "geometry/sum.h"

namespace squaredig::ground {
namespace {

using geometry::HalfPlane;
using geometry::Index;
using geometry::kNone;
using geometry::LabelledPolygon;
using geometry::Point2;

// Far over the rounding of a centre and a radius below a kilometre, far under any survey's spacing.
constexpr double kHair = 1e-6;

struct Box {
  Point2 low, high;
};

Box box_in(const geometry::SiteFrame& frame, const Region& region) {
  return {frame.to_site(region.low), frame.to_site(region.high)};
}

bool holds(const Box& outer, const Box& inner) {
  return outer.low.x <= inner.low.x && outer.low.y <= inner.low.y && outer.high.x >= inner.high.x &&
         outer.high.y >= inner.high.y;
}

Box common(const Box& a, const Box& b) {
  return {{std::max(a.low.x, b.low.x), std::max(a.low.y, b.low.y)},
          {std::min(a.high.x, b.high.x), std::min(a.high.y, b.high.y)}};
}

// No point of the survey lies in the circle unless it was read.
bool circle_inside(const std::array<Point2, 3>& t, const Box& window, const Box& extent) {
  const Point2 b = t[1] - t[0], c = t[2] - t[0];
  const double twice = 2 * cross(b, c);
  const double bb = dot(b, b), cc = dot(c, c);
  const Point2 to_centre{(c.y * bb - b.y * cc) / twice, (b.x * cc - c.x * bb) / twice};
  const double radius = std::hypot(to_centre.x, to_centre.y);
  // the sliver's circle is as uncertain as it is large
  const double reach = radius * (1 + 1e-9) + kHair + 1e-12 * radius * radius;
  if (!std::isfinite(reach)) return false;
  const Point2 centre = t[0] + to_centre;
  const Box circle{centre - Point2{reach, reach}, centre + Point2{reach, reach}};
  return holds(window, common(circle, extent));
}

LabelledPolygon polygon_of(const Box& box) {
  return {{box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}}, {0, 0, 0, 0}};
}

// No point of the survey lies beyond an edge of the rim unless it was read.
bool beyond_inside(Point2 from, Point2 to, const Box& window, const Box& extent) {
  HalfPlane out = HalfPlane::left_of(to, from);
  out.c += kHair;
  const LabelledPolygon all{
      {extent.low, {extent.high.x, extent.low.y}, extent.high, {extent.low.x, extent.high.y}},
      {0, 0, 0, 0}};
  const auto beyond = part_inside(all, out, 0);
  return std::all_of(beyond.corners.begin(), beyond.corners.end(), [&](Point2 p) {
    return p.x >= window.low.x && p.x <= window.high.x && p.y >= window.low.y &&
           p.y <= window.high.y;
  });
}

double area_within(const std::array<Point2, 3>& t, const Box& region) {
  return area_of(part_inside(polygon_of(region), t, 0).corners);
}

// Every edge of the rim is the whole survey's too.
bool rim_is_certain(const geometry::Surface& surface, const Box& window, const Box& extent) {
  for (Index t = 0; t < static_cast<Index>(surface.triangles.size()); ++t)
    for (std::size_t i = 0; i < 3; ++i) {
      if (surface.neighbours[static_cast<std::size_t>(t)][i] != kNone) continue;
      const auto c = surface.corners(t);
      if (!beyond_inside(c[i].plan(), c[(i + 1) % 3].plan(), window, extent)) return false;
    }
  return true;
}

bool certain(const geometry::Surface& surface, Index number, const Box& window, const Box& extent,
             double longest) {
  const auto c = surface.corners(number);
  const std::array<Point2, 3> t{c[0].plan(), c[1].plan(), c[2].plan()};
  if (!circle_inside(t, window, extent)) return false;
  for (std::size_t i = 0; i < 3; ++i) {
    const Point2 a = t[i], b = t[(i + 1) % 3];
    if (std::hypot(b.x - a.x, b.y - a.y) > longest) return false;
    if (surface.neighbours[static_cast<std::size_t>(number)][i] == kNone &&
        !beyond_inside(a, b, window, extent))
      return false;
  }
  return true;
}

Region grown(const Region& r, Length by) {
  return {{r.low.easting - by, r.low.northing - by}, {r.high.easting + by, r.high.northing + by}};
}

Region together(const Region& a, const Region& b) {
  return {{std::min(a.low.easting, b.low.easting), std::min(a.low.northing, b.low.northing)},
          {std::max(a.high.easting, b.high.easting), std::max(a.high.northing, b.high.northing)}};
}

}  // namespace

bool certified(const GroundSurface& ground, const Region& region, const Region& window,
               const Region& extent, std::optional<Length> longest_edge) {
  const Box asked = box_in(ground.frame, region);
  const Box read = box_in(ground.frame, window);
  const Box all = box_in(ground.frame, extent);
  // where the survey reaches into the region, what was read must too
  if (ground.surface.triangles.empty() || !holds(read, common(asked, all))) return false;
  const double longest =
      longest_edge ? longest_edge->in_metres() : std::numeric_limits<double>::infinity();
  const geometry::Locator locator(ground.surface);
  geometry::Sum covered;
  for (const Index t : locator.triangles_in(asked.low, asked.high)) {
    const auto c = ground.surface.corners(t);
    const double area = area_within({c[0].plan(), c[1].plan(), c[2].plan()}, asked);
    if (area <= 0) continue;
    covered.add(area);
    if (!certain(ground.surface, t, read, all, longest)) return false;
  }
  const double wanted = area_of(polygon_of(common(asked, all)).corners);
  return covered.value() >= wanted * (1 - 1e-9) || rim_is_certain(ground.surface, read, all);
}

WindowedSurvey::WindowedSurvey(GroundInput input, const Region& first_window, const Region& extent,
                               LoadWindow load, const geometry::SiteFrame& frame, WholeGround whole)
    : input_(std::move(input)),
      window_(first_window),
      extent_(extent),
      load_(std::move(load)),
      whole_(std::move(whole)),
      frame_(frame) {}

bool WindowedSurvey::holds_all() const {
  return holds(box_in(frame_, window_), box_in(frame_, extent_));
}

BuiltGround WindowedSurvey::build() const {
  if (holds_all()) return build_ground(input_, frame_);
  GroundInput plain = input_;
  plain.longest_edge.reset();  // the window's own rim is not the survey's
  return build_part(plain, frame_);
}

void WindowedSurvey::widen(const Region& region) {
  const Length across = std::max(window_.high.easting - window_.low.easting,
                                 window_.high.northing - window_.low.northing);
  window_ = together(grown(window_, across * 0.5), grown(region, across * 0.5));
  built_.reset();
  if (!(holds_all() && whole_)) input_ = load_(window_);
}

const GroundSurface& WindowedSurvey::surface_for(const Region& region) {
  for (;;) {
    if (holds_all() && whole_) return whole_();
    if (!built_) built_ = build();
    if (built_ &&
        (holds_all() || certified(built_->ground, region, window_, extent_, input_.longest_edge)))
      return built_->ground;
    widen(region);
  }
}

}  // namespace squaredig::ground
