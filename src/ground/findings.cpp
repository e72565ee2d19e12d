#include <algorithm>
#include <cmath>
#include <utility>

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

// A vertex that came from a row of the input.
struct Stop {
  double y;
  Index vertex;
};

struct Strip {
  double number = 0;
  std::vector<Stop> stops;  // by y
};

// Vertices are in order of x: strips as wide as the distance that is near, each sorted by y, need
// be compared with themselves and the next alone.
class Strips {
 public:
  explicit Strips(const BuiltGround& built) : built_(built) {}

  // The next that is not empty; empty at the end.
  Strip next() {
    Strip strip;
    const auto& vertices = built_.ground.surface.vertices;
    for (; at_ < vertices.size(); ++at_) {
      if (built_.row[at_] == geometry::kNone) continue;
      const double number = std::floor(vertices[at_].x / kNear.in_metres());
      if (!strip.stops.empty() && number != strip.number) break;
      strip.number = number;
      strip.stops.push_back({vertices[at_].y, static_cast<Index>(at_)});
    }
    std::sort(strip.stops.begin(), strip.stops.end(), [](const Stop& a, const Stop& b) {
      return a.y != b.y ? a.y < b.y : a.vertex < b.vertex;
    });
    return strip;
  }

 private:
  const BuiltGround& built_;
  std::size_t at_ = 0;
};

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
  const auto& vertices = built.ground.surface.vertices;
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
  Strips strips(built);
  Strip strip, next = strips.next();
  while (!next.stops.empty()) {
    strip = std::exchange(next, strips.next());
    auto beside = next.number == strip.number + 1 ? next.stops.begin() : next.stops.end();
    for (auto s = strip.stops.begin(); s != strip.stops.end(); ++s) {
      for (auto t = s + 1; t != strip.stops.end() && t->y - s->y < kNear.in_metres(); ++t)
        compare(*s, *t);
      while (beside != next.stops.end() && beside->y < s->y - kNear.in_metres()) ++beside;
      for (auto t = beside; t != next.stops.end() && t->y - s->y < kNear.in_metres(); ++t)
        compare(*s, *t);
    }
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
