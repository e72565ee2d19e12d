// Buried services against the excavation.
//
// The distance is that in space from the service's line, as entered, to the dug body: the
// pieces of the cut as prisms between the excavated surface and the ground. A stretch of the line
// inside a prism lies bare; its length is told and the clear distance is then none.
#include <algorithm>
#include <cmath>

#include "dig/dig_internal.h"
#include "geometry/space.h"
#include "quantity/number_text.h"

namespace squaredig::dig {
namespace {

using geometry::Point2;
using geometry::Point3;

struct Prism {
  std::span<const Point2> outline;
  geometry::Plane top, bottom;
  Point3 low, high;  // its box
};

std::vector<Prism> prisms_of(const Work& work) {
  std::vector<Prism> prisms;
  for (const auto& piece : work.pit.dug.pieces) {
    const Depth depth = depth_over(work, piece);
    Prism prism{work.pit.dug.outline(piece),
                depth.top,
                depth.bottom,
                {HUGE_VAL, HUGE_VAL, HUGE_VAL},
                {-HUGE_VAL, -HUGE_VAL, -HUGE_VAL}};
    for (const Point2 p : prism.outline) {
      prism.low = {std::min(prism.low.x, p.x), std::min(prism.low.y, p.y),
                   std::min(prism.low.z, prism.bottom.at(p))};
      prism.high = {std::max(prism.high.x, p.x), std::max(prism.high.y, p.y),
                    std::max(prism.high.z, prism.top.at(p))};
    }
    prisms.push_back(prism);
  }
  return prisms;
}

// Never more than the true distance.
double box_distance(const Prism& prism, const Point3& a, const Point3& b) {
  const auto gap = [](double low, double high, double p, double q) {
    return std::max({0.0, low - std::max(p, q), std::min(p, q) - high});
  };
  return std::hypot(gap(prism.low.x, prism.high.x, a.x, b.x),
                    gap(prism.low.y, prism.high.y, a.y, b.y),
                    gap(prism.low.z, prism.high.z, a.z, b.z));
}

// The share of the segment inside the prism.
double share_inside(const Prism& prism, const Point3& a, const Point3& b) {
  double from = 0, to = 1;
  const auto keep_above = [&](double at_a, double at_b) {
    if (at_a <= 0 && at_b <= 0) to = from;
    if (at_a < 0 && at_b > 0) from = std::max(from, at_a / (at_a - at_b));
    if (at_a > 0 && at_b < 0) to = std::min(to, at_a / (at_a - at_b));
  };
  for (std::size_t i = 0; i < prism.outline.size(); ++i) {
    const Point2 p = prism.outline[i], q = prism.outline[(i + 1) % prism.outline.size()];
    keep_above(orient(p, q, a.plan()), orient(p, q, b.plan()));
  }
  keep_above(prism.top.at(a.plan()) - a.z, prism.top.at(b.plan()) - b.z);
  keep_above(a.z - prism.bottom.at(a.plan()), b.z - prism.bottom.at(b.plan()));
  return std::max(0.0, to - from);
}

void offer(const Prism& prism, const Point3& a, const Point3& b, geometry::Near3& best) {
  const auto take = [&](const Point3& p, const Point3& q, const Point3& r) {
    if (const auto near = geometry::nearest(a, b, {p, q, r}); near.distance < best.distance)
      best = near;
  };
  const auto lifted = [&](const geometry::Plane& plane, std::size_t i) {
    const Point2 p = prism.outline[i % prism.outline.size()];
    return Point3{p.x, p.y, plane.at(p)};
  };
  for (std::size_t i = 0; i < prism.outline.size(); ++i) {
    if (i >= 1 && i + 1 < prism.outline.size())
      take(lifted(prism.bottom, 0), lifted(prism.bottom, i), lifted(prism.bottom, i + 1));
    take(lifted(prism.bottom, i), lifted(prism.bottom, i + 1), lifted(prism.top, i));
    take(lifted(prism.bottom, i + 1), lifted(prism.top, i + 1), lifted(prism.top, i));
  }
}

struct Found {
  geometry::Near3 near{HUGE_VAL, {}};
  double exposed = 0;
};

Found against(const std::vector<Prism>& prisms, const std::vector<Point3>& line) {
  Found found;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Point3 &a = line[i], &b = line[i + 1];
    const double length = std::hypot(b.x - a.x, b.y - a.y, b.z - a.z);
    for (const auto& prism : prisms) {
      const double apart = box_distance(prism, a, b);
      if (apart <= 0) found.exposed += length * share_inside(prism, a, b);
      if (apart < found.near.distance) offer(prism, a, b, found.near);
    }
  }
  if (found.exposed > 0) found.near.distance = 0;
  return found;
}

std::vector<Point3> line_of(const Work& work, const SurveyString& string) {
  std::vector<Point3> line;
  for (const auto& vertex : string.vertices) line.push_back(work.pit.frame.to_site(vertex.at));
  if (line.size() == 1) line.push_back(line[0]);
  return line;
}

void tell(const Nearby& nearby, DigResult& result) {
  std::string text = "Service " + quoted(nearby.string);
  if (*nearby.exposed > Length{})
    text += " lies inside the dig over " + fixed(nearby.exposed->in_metres(), 2) + " m, near " +
            at_text(nearby.at) + ".";
  else if (nearby.wanted && nearby.distance < *nearby.wanted)
    text += " comes within " + fixed(nearby.distance.in_metres(), 2) +
            " m of the excavated surface near " + at_text(nearby.at) + ", clearance wanted " +
            fixed(nearby.wanted->in_metres(), 2) + " m.";
  else
    return;
  result.clashes.push_back(nearby);
  result.head.findings.push_back({"service", std::move(text)});
}

}  // namespace

void add_services(const Work& work, DigResult& result) {
  if (!work.input.site || work.input.site->services.empty()) return;
  result.surroundings.services = work.input.site->services;
  const auto prisms = prisms_of(work);
  if (prisms.empty()) return;
  for (const auto& string : work.input.site->services) {
    if (string.vertices.empty()) continue;
    if (std::any_of(string.vertices.begin(), string.vertices.end(),
                    [](const StringVertex& v) { return !v.has_height; })) {
      result.head.findings.push_back(
          {"service-without-level", "Service " + quoted(string.name) +
                                        " has no level at every vertex: its distance from the "
                                        "excavated surface is not known."});
      continue;
    }
    const Found found = against(prisms, line_of(work, string));
    const Nearby nearby{"service and excavation",
                        string.name,
                        work.pit.frame.to_grid(found.near.at.plan()),
                        Length::metres(found.near.distance),
                        work.input.site->clearance,
                        Length::metres(found.exposed),
                        work.pit.frame.to_grid_height(found.near.at.z)};
    result.nearby.push_back(nearby);
    tell(nearby, result);
  }
}

}  // namespace squaredig::dig
