#include <algorithm>
#include <cmath>

#include "ground/findings_internal.h"
#include "quantity/number_text.h"

namespace squaredig::ground {
namespace {

using geometry::Index;

std::string millimetre_text(Length v) { return fixed(v.in_metres(), 3) + " m"; }

std::string place_text(GridPoint p) {
  return "E " + fixed(p.easting.in_metres(), 3) + " N " + fixed(p.northing.in_metres(), 3);
}

std::string higher_text(Length difference) {
  if (difference == Length{}) return "at the same height";
  return millimetre_text(abs(difference)) + (difference > Length{} ? " higher" : " lower");
}

}  // namespace

bool FindingList::wants_text() { return ++count_ <= kToldSingly; }

void FindingList::add(std::string text, GridPoint at) {
  out_.head.findings.push_back({code_, std::move(text)});
  out_.found.push_back({out_.head.findings.back(), at});
}

FindingList::~FindingList() {
  if (count_ > kToldSingly)
    out_.head.findings.push_back(
        {code_, std::to_string(count_ - kToldSingly) + " more of this kind"});
}

// A point on a string's vertex at the same height is how strings are made, and so is a vertex
// shared by two strings.
void find_doubled(const Rows& rows, const BuiltGround& built, GroundResult& result) {
  FindingList list("doubled point", result);
  for (const geometry::Doubled& d : built.doubled) {
    const Length difference = Length::metres(d.height_difference);
    const bool both_points = rows.is_point(d.kept) && rows.is_point(d.dropped);
    if ((!both_points && abs(difference) <= kAgree) || !list.wants_text()) continue;
    list.add(rows.name_and_place(d.dropped) + " stands where " + rows.name_and_place(d.kept) +
                 " does, " + higher_text(difference) + "; the latter is kept",
             rows.position(d.kept).at);
  }
}

void find_near(const Rows& rows, const BuiltGround& built, GroundResult& result) {
  // Vertices are in order of x: strips as wide as the distance asked for, each sorted by y, need be
  // compared with themselves and the next alone.
  const double near = kNear.in_metres();
  struct Stop {
    double strip, y;
    Index vertex;
  };
  std::vector<Stop> stops;
  const auto& vertices = built.ground.surface.vertices;
  for (std::size_t v = 0; v < vertices.size(); ++v)
    if (built.row[v] != geometry::kNone)
      stops.push_back({std::floor(vertices[v].x / near), vertices[v].y, static_cast<Index>(v)});
  const auto before = [](const Stop& a, const Stop& b) {
    if (a.strip != b.strip) return a.strip < b.strip;
    return a.y != b.y ? a.y < b.y : a.vertex < b.vertex;
  };
  std::sort(stops.begin(), stops.end(), before);
  FindingList list("near points", result);
  const auto compare = [&](const Stop& a, const Stop& b) {
    const auto &p = vertices[static_cast<std::size_t>(a.vertex)],
               &q = vertices[static_cast<std::size_t>(b.vertex)];
    const Length apart = Length::metres(std::hypot(p.x - q.x, p.y - q.y));
    if (apart >= kNear || !list.wants_text()) return;
    const auto [first, second] = std::minmax(built.row[static_cast<std::size_t>(a.vertex)],
                                             built.row[static_cast<std::size_t>(b.vertex)]);
    const double rise =
        rows.position(second).height.in_metres() - rows.position(first).height.in_metres();
    list.add(rows.name_and_place(second) + " stands " + millimetre_text(apart) + " from " +
                 rows.name_and_place(first) + ", " + higher_text(Length::metres(rise)) +
                 "; both are kept",
             rows.position(first).at);
  };
  auto next_strip = stops.begin();
  for (auto s = stops.begin(); s != stops.end(); ++s) {
    for (auto t = s + 1; t != stops.end() && t->strip == s->strip && t->y - s->y < near; ++t)
      compare(*s, *t);
    const Stop from{s->strip + 1, s->y - near, geometry::kNone};
    while (next_strip != stops.end() && before(*next_strip, from)) ++next_strip;
    for (auto t = next_strip; t != stops.end() && t->strip == s->strip + 1 && t->y - s->y < near;
         ++t)
      compare(*s, *t);
  }
}

void find_crossings(const Rows& rows, const BuiltGround& built, GroundResult& result) {
  FindingList list("crossing strings", result);
  const auto tell = [&](const geometry::StringCrossing& c, const std::string& meet,
                        const std::string& taken) {
    const SurveyString &a = rows.string(static_cast<std::size_t>(c.string_a)),
                       &b = rows.string(static_cast<std::size_t>(c.string_b));
    const GridPoint at = built.ground.frame.to_grid(c.at);
    const Length apart = Length::metres(std::abs(c.height_a - c.height_b));
    result.crossings.push_back({a.name, b.name, at, apart});
    if (apart <= kAgree || !list.wants_text()) return;
    const auto level = [&](double z) {
      return fixed(built.ground.frame.to_grid_height(z).in_metres(), 3);
    };
    list.add("string " + quoted(a.name) + " (" + a.file + ") " + meet + " string " +
                 quoted(b.name) + " (" + b.file + ") at " + place_text(at) + ": levels " +
                 level(c.height_a) + " and " + level(c.height_b) + ", " + millimetre_text(apart) +
                 " apart; " + taken,
             at);
  };
  for (const auto& c : built.crossings) tell(c, "crosses", "their mean is taken");
  for (const auto& c : built.touches)
    if (Length::metres(std::abs(c.height_a - c.height_b)) > kAgree)
      tell(c, "has a vertex on", "that vertex is taken");
}

}  // namespace squaredig::ground
