#include <limits>

#include "pegs/parts_internal.h"

namespace squaredig::pegs {
namespace {

using geometry::Point2;

// How far along a-b the segment c-d is met, as a fraction; nothing where it is not.
std::optional<double> met(Point2 a, Point2 b, Point2 c, Point2 d) {
  const Point2 u = b - a;
  const Point2 v = d - c;
  const double across = cross(u, v);
  if (across == 0) return std::nullopt;
  const double t = cross(c - a, v) / across;
  const double s = cross(c - a, u) / across;
  if (t < 0 || t > 1 || s < 0 || s > 1) return std::nullopt;
  return t;
}

}  // namespace

std::optional<std::string> crossed_string(const Work& work, GridPoint corner, GridPoint peg) {
  if (!work.input.site) return std::nullopt;
  const auto& frame = work.pit.frame;
  const Point2 a = frame.to_site(corner);
  const Point2 b = frame.to_site(peg);
  double first = std::numeric_limits<double>::infinity();
  std::optional<std::string> name;
  for (const SurveyString& line : work.input.site->keep_out)
    for (std::size_t i = 0; i + 1 < line.vertices.size(); ++i) {
      const auto t = met(a, b, frame.to_site(line.vertices[i].at.at),
                         frame.to_site(line.vertices[i + 1].at.at));
      if (t && *t < first) {
        first = *t;
        name = line.name;
      }
    }
  return name;
}

}  // namespace squaredig::pegs
