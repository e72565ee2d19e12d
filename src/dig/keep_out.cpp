// Keep-out strings against the crest and the influence line, and the room in front of each side.
#include <algorithm>
#include <cmath>

#include "design/influence.h"
#include "dig/dig_internal.h"
#include "geometry/polygon.h"
#include "geometry/space.h"
#include "quantity/number_text.h"

namespace squaredig::dig {
namespace {

using geometry::Point2;

// The edges of a dug region's rings, with the region on their left.
class Region {
 public:
  explicit Region(const geometry::Removed& dug) {
    for (const auto& ring : dug.rings)
      for (std::size_t i = 0; i < ring.corners.size(); ++i)
        edges_.emplace_back(ring.corners[i].plan(),
                            ring.corners[(i + 1) % ring.corners.size()].plan());
  }

  bool holds(Point2 p) const {
    bool inside = false;
    for (const auto& [a, b] : edges_)
      if (geometry::ray_crosses(p, a, b)) inside = !inside;
    return inside;
  }

  double to_edge(Point2 p) const {
    double least = HUGE_VAL;
    for (const auto& [a, b] : edges_)
      least = std::min(least, geometry::distance_to_segment(p, a, b));
    return least;
  }

  // Clear distance of a segment; below zero its deepest reach into the region, to a millimetre.
  geometry::Near2 clear(Point2 a, Point2 b) const {
    geometry::Near2 best{HUGE_VAL, a};
    for (const auto& [c, d] : edges_)
      if (const auto near = geometry::nearest(a, b, c, d); near.distance < best.distance)
        best = near;
    if (best.distance > 0 && !holds(a)) return best;
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    best.distance = 0;
    deepest(a, b, length, depth(a), depth(b), best);
    return best;
  }

  // Where the ray from a point first leaves the region; zero where it does so at once.
  double first_exit(Point2 from, Point2 outward) const {
    if (!holds(from + 1e-6 * outward)) return 0;
    double least = HUGE_VAL;
    for (const auto& [c, d] : edges_)
      if (const auto t = along_ray(from, outward, c, d); t && *t > 1e-9)
        least = std::min(least, *t);
    return least;
  }

  static std::optional<double> along_ray(Point2 from, Point2 unit, Point2 c, Point2 d) {
    const double side_c = cross(unit, c - from), side_d = cross(unit, d - from);
    if ((side_c > 0) == (side_d > 0)) return std::nullopt;
    const double t = dot(unit, c + (side_c / (side_c - side_d)) * (d - c) - from);
    return t >= 0 ? std::optional(t) : std::nullopt;
  }

  const std::vector<std::pair<Point2, Point2>>& edges() const { return edges_; }

 private:
  double depth(Point2 p) const { return holds(p) ? to_edge(p) : 0; }

  // No point between the ends lies deeper than their mean depth and half their distance.
  void deepest(Point2 a, Point2 b, double length, double at_a, double at_b,
               geometry::Near2& best) const {
    if (at_a > -best.distance) best = {-at_a, a};
    if (at_b > -best.distance) best = {-at_b, b};
    if (length < 1e-3 || (at_a + at_b + length) / 2 < -best.distance + 1e-3) return;
    const Point2 middle = 0.5 * (a + b);
    const double at_middle = depth(middle);
    deepest(a, middle, length / 2, at_a, at_middle, best);
    deepest(middle, b, length / 2, at_middle, at_b, best);
  }

  std::vector<std::pair<Point2, Point2>> edges_;
};

std::vector<Point2> line_of(const Work& work, const SurveyString& string) {
  std::vector<Point2> line;
  for (const auto& vertex : string.vertices) line.push_back(work.pit.frame.to_site(vertex.at.at));
  if (line.size() == 1) line.push_back(line[0]);
  return line;
}

Nearby against(const Work& work, const SurveyString& string, const Region& region,
               const char* kind) {
  const auto line = line_of(work, string);
  geometry::Near2 best{HUGE_VAL, line[0]};
  for (std::size_t i = 0; i + 1 < line.size(); ++i)
    if (const auto near = region.clear(line[i], line[i + 1]); near.distance < best.distance)
      best = near;
  return {kind, string.name, work.pit.frame.to_grid(best.at), Length::metres(best.distance), {},
          {},   {}};
}

void clash(DigResult& result, const Nearby& nearby, const char* code, std::string text) {
  result.clashes.push_back(nearby);
  result.head.findings.push_back({code, std::move(text)});
}

std::string past(const Nearby& nearby) {
  return "keep-out string " + quoted(nearby.string) + " by " +
         fixed(-nearby.distance.in_metres(), 2) + " m near " + at_text(nearby.at);
}

void against_crest(const Work& work, const std::vector<SurveyString>& strings, DigResult& result) {
  const Region crest(work.pit.dug);
  for (const auto& string : strings) {
    const auto nearby = against(work, string, crest, "keep-out and crest");
    result.nearby.push_back(nearby);
    if (nearby.distance <= Length{})
      clash(result, nearby, "keep-out", "The crest passes " + past(nearby) + ".");
  }
}

// Counted only where the line reaches further than the crest itself.
void against_influence(const Work& work, const design::Excavation& zone,
                       const std::vector<SurveyString>& strings, DigResult& result) {
  const Region line(zone.dug);
  for (std::size_t i = 0; i < strings.size(); ++i) {
    const auto nearby = against(work, strings[i], line, "keep-out and influence line");
    result.nearby.push_back(nearby);
    if (nearby.distance <= Length{} &&
        nearby.distance < result.nearby[i].distance - Length::millimetres(1))
      clash(result, nearby, "influence",
            "The influence line, " + work.input.site->influence->words() +
                " from the toe, passes " + past(nearby) + ": ask the engineer.");
  }
}

struct ToeSide {
  Point2 from, along, outward;
  double length = 0;
  Point2 at(double s) const { return from + s * along; }
};

ToeSide toe_side(const geometry::Polygon& toe, std::size_t i) {
  const Point2 a = toe[i], d = toe[(i + 1) % toe.size()] - a;
  const double length = std::hypot(d.x, d.y);
  const Point2 u = (1 / length) * d;
  return {a, u, {u.y, -u.x}, length};
}

// Where what is available less what is needed may be least: at the ends, and where a string or the
// crest bends. Each from both sides, as either may jump there.
std::vector<double> places_on(const ToeSide& side, const Region& crest,
                              const std::vector<std::vector<Point2>>& lines) {
  std::vector<double> places{0, side.length};
  for (const auto& [a, b] : crest.edges()) places.push_back(dot(a - side.from, side.along));
  for (const auto& line : lines)
    for (const Point2 p : line) places.push_back(dot(p - side.from, side.along));
  std::vector<double> both;
  for (const double s : places)
    for (const double t : {s - 1e-7, s + 1e-7})
      if (t > 0 && t < side.length) both.push_back(t);
  return both;
}

SideRoom room_before(const Work& work, std::size_t edge, const Region& crest,
                     const std::vector<SurveyString>& strings,
                     const std::vector<std::vector<Point2>>& lines) {
  const ToeSide side = toe_side(work.pit.pit.toe, edge);
  SideRoom room;
  room.side = work.pit.tank.side_name(work.pit.pit.toe_sides[edge]);
  double least = HUGE_VAL;
  for (const double s : places_on(side, crest, lines)) {
    const double needed = crest.first_exit(side.at(s), side.outward);
    double available = HUGE_VAL;
    std::size_t nearest = 0;
    for (std::size_t k = 0; k < lines.size(); ++k)
      for (std::size_t i = 0; i + 1 < lines[k].size(); ++i)
        if (const auto t =
                Region::along_ray(side.at(s), side.outward, lines[k][i], lines[k][i + 1]);
            t && *t < available)
          available = *t, nearest = k;
    // without a string the place where the batter goes furthest is told
    const double spare = std::isfinite(available) ? available - needed : 1e9 - needed;
    if (spare >= least) continue;
    least = spare;
    room.needed = Length::metres(needed);
    room.at = work.pit.frame.to_grid(side.at(s));
    room.available.reset();
    room.string.clear();
    if (!std::isfinite(available)) continue;
    room.available = Length::metres(available);
    room.string = strings[nearest].name;
  }
  return room;
}

void add_influence(const Work& work, ground::Survey& survey,
                   const std::vector<SurveyString>& strings, DigResult& result) {
  const Batter influence = *work.input.site->influence;
  const auto found = design::influence_zone(work.design, work.pit, influence,
                                            design::InfluenceFrom::EveryToe, survey);
  result.surroundings.influence = influence;
  if (found.zone) {
    for (const auto& ring : found.zone->crest)
      result.surroundings.influence_line.push_back(ring.corners);
    against_influence(work, *found.zone, strings, result);
  }
  if (!found.off_survey) return;
  const std::string text = "The influence line, " + influence.words() +
                           " from the toe, runs out of the survey near " +
                           at_text(*found.off_survey) + ": ";
  if (strings.empty())
    result.head.cautions.push_back(text + "it is not drawn.");
  else
    result.head.findings.push_back(
        {"influence-off-survey",
         text + "keep-out strings are held against the crest alone. Survey further out there."});
}

}  // namespace

void add_keep_out(const Work& work, ground::Survey& survey, DigResult& result) {
  if (!work.input.site) return;
  const auto& site = *work.input.site;
  std::vector<SurveyString> strings;
  std::vector<std::vector<Point2>> lines;
  for (const auto& string : site.keep_out)
    if (!string.vertices.empty()) strings.push_back(string), lines.push_back(line_of(work, string));
  result.surroundings.keep_out = strings;
  if (!strings.empty()) {
    against_crest(work, strings, result);
    const Region crest(work.pit.dug);
    const auto& sides = work.pit.pit.toe_sides;
    for (std::size_t side = 0; side < work.pit.tank.sides(); ++side)
      for (std::size_t i = 0; i < sides.size(); ++i)
        if (sides[i] == side) result.room.push_back(room_before(work, i, crest, strings, lines));
  }
  if (site.influence) add_influence(work, survey, strings, result);
}

}  // namespace squaredig::dig
