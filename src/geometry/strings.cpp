#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Exact_rational.h>
#include <CGAL/box_intersection_d.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "geometry/strings_internal.h"
#include "quantity/problem.h"

namespace squaredig::geometry {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Box = CGAL::Box_intersection_d::Box_with_info_d<double, 2, std::size_t>;

// A segment of a string as given, its lower vertex first.
struct Segment {
  Index a, b;
  Index string;
  StringKind kind;
  double height_a, height_b;  // the string's own, which a doubled vertex need not have
};

// A part of a segment; a whole one to begin with.
struct Part {
  Index a, b;
  std::size_t segment;
};

struct Meeting {
  std::size_t first, second;  // numbers of the parts, ascending
  friend auto operator<=>(const Meeting&, const Meeting&) = default;
};

int turn(Point2 a, Point2 b, Point2 c) {
  return static_cast<int>(CGAL::orientation(Kernel::Point_2(a.x, a.y), Kernel::Point_2(b.x, b.y),
                                            Kernel::Point_2(c.x, c.y)));
}

// Where the lines a b and c d cross, found in exact numbers and rounded once.
Point2 exact_crossing(Point2 a, Point2 b, Point2 c, Point2 d) {
  using Exact = CGAL::Exact_rational;
  const Exact ux = Exact(b.x) - Exact(a.x), uy = Exact(b.y) - Exact(a.y);
  const Exact vx = Exact(d.x) - Exact(c.x), vy = Exact(d.y) - Exact(c.y);
  const Exact wx = Exact(c.x) - Exact(a.x), wy = Exact(c.y) - Exact(a.y);
  const Exact t = (wx * vy - wy * vx) / (ux * vy - uy * vx);
  return {CGAL::to_double(Exact(a.x) + t * ux) + 0.0, CGAL::to_double(Exact(a.y) + t * uy) + 0.0};
}

std::vector<Segment> segments_of(const TriangulationInput& input, const Placed& placed) {
  std::vector<Segment> out;
  for (const Constraint& c : input.constraints) {
    for (std::size_t i = 1; i < c.vertices.size(); ++i) {
      const auto from = static_cast<std::size_t>(c.vertices[i - 1]);
      const auto to = static_cast<std::size_t>(c.vertices[i]);
      Segment s{placed.vertex_of[from], placed.vertex_of[to], c.string, c.kind,
                input.points[from].z,   input.points[to].z};
      if (s.a == s.b) continue;
      if (s.b < s.a) {
        std::swap(s.a, s.b);
        std::swap(s.height_a, s.height_b);
      }
      out.push_back(s);
    }
  }
  std::sort(out.begin(), out.end(), [](const Segment& s, const Segment& t) {
    return std::tie(s.a, s.b, s.string) < std::tie(t.a, t.b, t.string);
  });
  return out;
}

class Cutter {
 public:
  Cutter(const TriangulationInput& input, Placed& placed)
      : placed_(placed), segments_(segments_of(input, placed)) {
    for (std::size_t s = 0; s < segments_.size(); ++s) {
      const Segment& segment = segments_[s];
      const bool again =
          s > 0 && segment.a == segments_[s - 1].a && segment.b == segments_[s - 1].b;
      if (!again)
        parts_.push_back({segment.a, segment.b, s});
      else if (segment.kind == StringKind::Outline)
        segments_[parts_.back().segment].kind = segment.kind;
    }
  }

  CutStrings run() {
    find_touches();
    // Rounding a crossing moves it by less than a nanometre, which may make new ones: rarely.
    constexpr int kRounds = 50;
    for (int round = 0;; ++round) {
      const std::vector<Meeting> meetings = proper_crossings();
      if (meetings.empty()) break;
      if (round == kRounds)
        refuse({}, "strings that cross again and again within rounding",
               "strings that keep apart or share their points", "draw the strings once");
      cut(meetings);
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

  template <class Use>
  void near_pairs(Use use) const {
    std::vector<Box> boxes;
    boxes.reserve(parts_.size());
    for (std::size_t p = 0; p < parts_.size(); ++p) {
      const Point2 a = at(parts_[p].a), b = at(parts_[p].b);
      double low[] = {std::min(a.x, b.x), std::min(a.y, b.y)};
      double high[] = {std::max(a.x, b.x), std::max(a.y, b.y)};
      boxes.emplace_back(low, high, p);
    }
    CGAL::box_self_intersection_d(boxes.begin(), boxes.end(), [&](const Box& p, const Box& q) {
      use(std::min(p.info(), q.info()), std::max(p.info(), q.info()));
    });
  }

  std::vector<Meeting> proper_crossings() const {
    std::vector<Meeting> out;
    near_pairs([&](std::size_t p, std::size_t q) {
      const Part &s = parts_[p], &t = parts_[q];
      if (s.a == t.a || s.a == t.b || s.b == t.a || s.b == t.b) return;
      const Point2 a = at(s.a), b = at(s.b), c = at(t.a), d = at(t.b);
      if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0)
        out.push_back({p, q});
    });
    std::sort(out.begin(), out.end());
    return out;
  }

  void find_touches() {
    std::set<std::tuple<Index, Index, Index>> told;
    near_pairs([&](std::size_t p, std::size_t q) {
      touch(parts_[p].segment, parts_[q].segment, told);
      touch(parts_[q].segment, parts_[p].segment, told);
    });
    std::sort(out_.touches.begin(), out_.touches.end(), by_string_and_place);
  }

  // The ends of segment s that lie on segment t between its ends. Vertices are numbered in
  // lexicographic order, so on one line "between" is a matter of numbers.
  void touch(std::size_t s, std::size_t t, std::set<std::tuple<Index, Index, Index>>& told) {
    const Segment &on = segments_[t], &with = segments_[s];
    for (const Index v : {with.a, with.b}) {
      if (v <= on.a || v >= on.b || turn(at(on.a), at(on.b), at(v)) != 0) continue;
      if (!told.insert({with.string, on.string, v}).second) continue;
      out_.touches.push_back({with.string, on.string, at(v),
                              v == with.a ? with.height_a : with.height_b,
                              height_along(on, at(v))});
    }
  }

  double height_along(const Segment& s, Point2 p) const {
    const Point2 a = at(s.a), u = at(s.b) - a;
    return s.height_a + dot(p - a, u) / dot(u, u) * (s.height_b - s.height_a);
  }

  Index vertex_at(Point2 p) {
    const auto found =
        std::lower_bound(placed_.vertices.begin(), placed_.vertices.end(), p,
                         [](const Point3& v, Point2 q) { return before(v.plan(), q); });
    if (found != placed_.vertices.end() && found->plan() == p)
      return static_cast<Index>(found - placed_.vertices.begin());
    const auto next = static_cast<Index>(placed_.vertices.size() + added_.size());
    const auto [entry, fresh] = number_of_added_.try_emplace({p.x, p.y}, next);
    if (fresh) added_.push_back({p.x, p.y, 0});
    return entry->second;
  }

  void cut(const std::vector<Meeting>& meetings) {
    std::vector<std::pair<std::size_t, Index>> cuts;
    for (const Meeting& m : meetings) {
      const Part s = parts_[m.first], t = parts_[m.second];
      const Index v = vertex_at(exact_crossing(at(s.a), at(s.b), at(t.a), at(t.b)));
      cuts.emplace_back(m.first, v);
      cuts.emplace_back(m.second, v);
      tell(std::min(s.segment, t.segment), std::max(s.segment, t.segment), v);
    }
    split_parts(cuts);
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
        parts_.push_back({on[i - 1], on[i], parts_[p].segment});
      parts_[p].b = on.front();
    }
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
      out_.pieces.push_back({std::min(p.a, p.b), std::max(p.a, p.b), segments_[p.segment].kind});
    std::sort(out_.pieces.begin(), out_.pieces.end(), [](const Piece& p, const Piece& q) {
      return std::tie(p.a, p.b, q.kind) < std::tie(q.a, q.b, p.kind);
    });
    const auto same = [](const Piece& p, const Piece& q) { return p.a == q.a && p.b == q.b; };
    out_.pieces.erase(std::unique(out_.pieces.begin(), out_.pieces.end(), same), out_.pieces.end());
    std::sort(out_.crossings.begin(), out_.crossings.end(), by_string_and_place);
    return std::move(out_);
  }

  static bool by_string_and_place(const StringCrossing& c, const StringCrossing& d) {
    return std::tie(c.string_a, c.string_b, c.at.x, c.at.y) <
           std::tie(d.string_a, d.string_b, d.at.x, d.at.y);
  }

  Placed& placed_;
  std::vector<Segment> segments_;
  std::vector<Part> parts_;
  std::vector<Point3> added_;
  std::map<std::pair<double, double>, Index> number_of_added_;
  std::set<std::pair<Index, std::size_t>> through_;
  std::set<std::pair<std::size_t, std::size_t>> told_;
  CutStrings out_;
};

}  // namespace

CutStrings cut_strings(const TriangulationInput& input, Placed& placed) {
  return Cutter(input, placed).run();
}

}  // namespace squaredig::geometry
