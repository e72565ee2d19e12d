#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "geometry/crossing_internal.h"
#include "geometry/strings_internal.h"
#include "quantity/problem.h"

namespace squaredig::geometry {
namespace {

// A part of a segment; a whole one to begin with.
struct Part {
  Index a, b;
  std::size_t segment;
  StringKind kind;
};

// Something to be done to a part, or to two: cut it at a vertex it passes, or both where they
// cross.
struct Passing {
  std::size_t part, other;  // `other` has the vertex
  Index vertex;
};
struct Meeting {
  std::size_t first, second;
};

double distance_to(const Segment2& s, Point2 p) {
  const Point2 u = s.b - s.a;
  const double along = std::clamp(dot(p - s.a, u) / dot(u, u), 0.0, 1.0);
  const Point2 d = p - (s.a + along * u);
  return std::hypot(d.x, d.y);
}

class Cutter {
 public:
  Cutter(const TriangulationInput& input, Placed& placed)
      : placed_(placed), segments_(segments_of(input, placed, index_)) {
    for (const StringSegment& s : segments_) parts_.push_back({s.a, s.b, parts_.size(), s.kind});
    drop_repeated();
  }

  CutStrings run() {
    constexpr int kRounds = 100;
    for (int round = 0;; ++round) {
      look();
      if (passings_.empty() && meetings_.empty()) break;
      if (round == kRounds)
        refuse({}, "strings that cross again and again within a nanometre",
               "strings that keep apart or share their points", "draw the strings once");
      if (round == 0) tell_touches();
      cut();
    }
    give_heights();
    renumber();
    return finish();
  }

 private:
  Point2 at(Index v) const {
    const auto i = static_cast<std::size_t>(v);
    return i < placed_.vertices.size() ? placed_.vertices[i].plan()
                                       : added_[i - placed_.vertices.size()].plan();
  }
  Segment2 line(const Part& p) const { return {at(p.a), at(p.b)}; }

  // What is to be cut. Parts that pass a vertex are cut there first; whether they still cross is
  // seen in the next round.
  void look() {
    passings_.clear();
    meetings_.clear();
    std::vector<Segment2> lines;
    for (const Part& p : parts_) lines.push_back(line(p));
    near_pairs(lines, 2 * kStringSnap, [&](std::size_t p, std::size_t q) {
      const std::size_t before = passings_.size();
      note_passing(p, q, lines[p]);
      note_passing(q, p, lines[q]);
      if (passings_.size() == before && cross_properly(lines[p], lines[q]))
        meetings_.push_back({p, q});
    });
    std::sort(passings_.begin(), passings_.end(), [](const Passing& a, const Passing& b) {
      return std::tie(a.part, a.vertex, a.other) < std::tie(b.part, b.vertex, b.other);
    });
    std::sort(meetings_.begin(), meetings_.end(), [](const Meeting& a, const Meeting& b) {
      return std::tie(a.first, a.second) < std::tie(b.first, b.second);
    });
  }

  void note_passing(std::size_t p, std::size_t other, const Segment2& along) {
    const Part& part = parts_[p];
    for (const Index v : {parts_[other].a, parts_[other].b})
      if (v != part.a && v != part.b && distance_to(along, at(v)) <= kStringSnap)
        passings_.push_back({p, other, v});
  }

  void tell_touches() {
    std::set<std::tuple<Index, Index, Index>> told;
    for (const Passing& p : passings_) {
      const StringSegment &on = segments_[parts_[p.part].segment],
                          &with = segments_[parts_[p.other].segment];
      if (!told.insert({with.string, on.string, p.vertex}).second) continue;
      out_.touches.push_back({with.string, on.string, at(p.vertex),
                              p.vertex == with.a ? with.height_a : with.height_b,
                              height_along(on, at(p.vertex))});
    }
    std::sort(out_.touches.begin(), out_.touches.end(), by_string_and_place);
  }

  double height_along(const StringSegment& s, Point2 p) const {
    const Point2 a = at(s.a), u = at(s.b) - a;
    return s.height_a + dot(p - a, u) / dot(u, u) * (s.height_b - s.height_a);
  }

  // The string vertex there, else the vertex exactly there, else a new one.
  Index vertex_at(Point2 p) {
    const auto found =
        std::lower_bound(placed_.vertices.begin(), placed_.vertices.end(), p,
                         [](const Point3& v, Point2 q) { return before(v.plan(), q); });
    const bool here = found != placed_.vertices.end() && found->plan() == p;
    const auto next = static_cast<Index>(placed_.vertices.size() + added_.size());
    const Index mine = here ? static_cast<Index>(found - placed_.vertices.begin()) : next;
    const Index vertex = index_.find_or_enter(p, mine);
    if (vertex == next) added_.push_back({p.x, p.y, 0});
    return vertex;
  }

  void cut() {
    std::vector<std::pair<std::size_t, Index>> cuts;
    for (const Passing& p : passings_) {
      cuts.emplace_back(p.part, p.vertex);
      through_.insert({p.vertex, parts_[p.part].segment});
    }
    for (const Meeting& m : meetings_) {
      const Part s = parts_[m.first], t = parts_[m.second];
      const Index v = vertex_at(exact_crossing(line(s), line(t)));
      cuts.emplace_back(m.first, v);
      cuts.emplace_back(m.second, v);
      tell(std::min(s.segment, t.segment), std::max(s.segment, t.segment), v);
    }
    split_parts(cuts);
    drop_repeated();
  }

  void tell(std::size_t s, std::size_t t, Index v) {
    through_.insert({v, s});
    through_.insert({v, t});
    if (s == t || !told_.insert({s, t}).second) return;
    if (segments_[t].string < segments_[s].string) std::swap(s, t);
    out_.crossings.push_back({segments_[s].string, segments_[t].string, at(v),
                              height_along(segments_[s], at(v)),
                              height_along(segments_[t], at(v))});
  }

  void split_parts(std::vector<std::pair<std::size_t, Index>>& cuts) {
    std::sort(cuts.begin(), cuts.end());
    cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
    for (auto c = cuts.begin(); c != cuts.end();) {
      const std::size_t p = c->first;
      std::vector<Index> on;
      for (; c != cuts.end() && c->first == p; ++c)
        if (c->second != parts_[p].a && c->second != parts_[p].b) on.push_back(c->second);
      sort_along(parts_[p], on);
      on.push_back(parts_[p].b);
      for (std::size_t i = 1; i < on.size(); ++i)
        parts_.push_back({on[i - 1], on[i], parts_[p].segment, parts_[p].kind});
      parts_[p].b = on.front();
    }
  }

  // Of parts between the same two vertices the first segment's stands for all, an outline if one
  // is.
  void drop_repeated() {
    for (Part& p : parts_)
      if (p.b < p.a) std::swap(p.a, p.b);
    std::sort(parts_.begin(), parts_.end(), [](const Part& p, const Part& q) {
      return std::tie(p.a, p.b, p.segment) < std::tie(q.a, q.b, q.segment);
    });
    std::vector<Part> once;
    for (const Part& p : parts_) {
      const bool again = !once.empty() && once.back().a == p.a && once.back().b == p.b;
      if (!again)
        once.push_back(p);
      else if (p.kind == StringKind::Outline)
        once.back().kind = p.kind;
    }
    parts_ = std::move(once);
  }

  // From the part's start to its end. Rounding keeps the order along the longer axis, and where two
  // are rounded to one there, along the other.
  void sort_along(const Part& part, std::vector<Index>& on) const {
    const Point2 u = at(part.b) - at(part.a);
    const bool by_x = std::abs(u.x) >= std::abs(u.y);
    std::sort(on.begin(), on.end(), [&](Index v, Index w) {
      const Point2 d = at(w) - at(v);
      const double x = std::copysign(1.0, u.x) * d.x, y = std::copysign(1.0, u.y) * d.y;
      return by_x ? (x != 0 ? x > 0 : y > 0) : (y != 0 ? y > 0 : x > 0);
    });
  }

  // The mean of the heights of all segments through each crossing.
  void give_heights() {
    std::vector<double> sum(added_.size());
    std::vector<int> count(added_.size());
    for (const auto& [v, s] : through_) {
      const auto i = static_cast<std::size_t>(v);
      if (i < placed_.vertices.size()) continue;
      sum[i - placed_.vertices.size()] += height_along(segments_[s], at(v));
      ++count[i - placed_.vertices.size()];
    }
    for (std::size_t i = 0; i < added_.size(); ++i) added_[i].z = sum[i] / count[i];
  }

  // Brings the added vertices into their places in the order.
  void renumber() {
    if (added_.empty()) return;
    const std::size_t old = placed_.vertices.size();
    std::vector<Index> order(old + added_.size()), now(old + added_.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<Index>(i);
    const auto by_place = [&](Index v, Index w) { return before(at(v), at(w)); };
    const auto middle = order.begin() + static_cast<std::ptrdiff_t>(old);
    std::sort(middle, order.end(), by_place);
    std::inplace_merge(order.begin(), middle, order.end(), by_place);
    std::vector<Point3> vertices;
    std::vector<Index> source;
    for (const Index v : order) {
      const auto i = static_cast<std::size_t>(v);
      now[i] = static_cast<Index>(vertices.size());
      vertices.push_back(i < old ? placed_.vertices[i] : added_[i - old]);
      source.push_back(i < old ? placed_.source[i] : kNone);
    }
    placed_.vertices = std::move(vertices);
    placed_.source = std::move(source);
    for (Index& v : placed_.vertex_of)
      if (v != kNone) v = now[static_cast<std::size_t>(v)];
    for (Part& p : parts_) {
      p.a = now[static_cast<std::size_t>(p.a)];
      p.b = now[static_cast<std::size_t>(p.b)];
    }
  }

  CutStrings finish() {
    for (const Part& p : parts_)
      out_.pieces.push_back({std::min(p.a, p.b), std::max(p.a, p.b), p.kind});
    std::sort(out_.pieces.begin(), out_.pieces.end(),
              [](const StringPiece& p, const StringPiece& q) {
                return std::tie(p.a, p.b) < std::tie(q.a, q.b);
              });
    std::sort(out_.crossings.begin(), out_.crossings.end(), by_string_and_place);
    return std::move(out_);
  }

  static bool by_string_and_place(const StringCrossing& c, const StringCrossing& d) {
    return std::tie(c.string_a, c.string_b, c.at.x, c.at.y) <
           std::tie(d.string_a, d.string_b, d.at.x, d.at.y);
  }

  Placed& placed_;
  SnapIndex index_;
  std::vector<StringSegment> segments_;
  std::vector<Part> parts_;
  std::vector<Point3> added_;
  std::vector<Passing> passings_;
  std::vector<Meeting> meetings_;
  std::set<std::pair<Index, std::size_t>> through_;
  std::set<std::pair<std::size_t, std::size_t>> told_;
  CutStrings out_;
};

}  // namespace

CutStrings cut_strings(const TriangulationInput& input, Placed& placed) {
  return Cutter(input, placed).run();
}

}  // namespace squaredig::geometry
