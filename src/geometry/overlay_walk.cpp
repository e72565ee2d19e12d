// One surface laid over another by walking: from a triangle that overlaps a facet to those beside
// it that do, and from a facet to the one beside it with a triangle across the side they share.
#include <array>

#include "geometry/overlay_internal.h"

namespace squaredig::geometry {
namespace {

// Triangles this close to a facet are walked over too: far over rounding, so that no step is missed
// for it, and as far under a survey.
constexpr double kNear = 1e-9;

using Triangle = std::array<Point2, 3>;
using Sides = std::array<HalfPlane, 3>;

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

Triangle plan_of(const Surface& surface, Index t) {
  const auto [a, b, c] = surface.corners(t);
  return {a.plan(), b.plan(), c.plan()};
}

// The sides both of whose ends are in a set of corners; sets are bits.
constexpr std::array<unsigned, 8> kSidesWithin{0, 0, 0, 1, 0, 4, 2, 7};

unsigned bits(bool a, bool b, bool c) {
  return static_cast<unsigned>(a) | static_cast<unsigned>(b) << 1U | static_cast<unsigned>(c) << 2U;
}

// How a triangle lies to the three sides of a facet. Two convex figures are apart where a side's
// line has one of them whole on its one hand and the other on its other; a line that they come
// within kNear of parts nothing.
struct Lie {
  unsigned cut = 0;     // sides of the facet that the triangle is not well inside of
  unsigned apart = 0;   // the triangle's own sides that miss the facet
  bool beside = false;  // all of it misses the facet
};

Lie lie_of(const Triangle& t, const Sides& sides) {
  Lie lie;
  for (std::size_t k = 0; k < 3; ++k) {
    const double a = sides[k].at(t[0]), b = sides[k].at(t[1]), c = sides[k].at(t[2]);
    const unsigned beyond = bits(a < -kNear, b < -kNear, c < -kNear);
    lie.apart |= kSidesWithin[beyond];
    lie.beside = lie.beside || beyond == 7;
    lie.cut |= static_cast<unsigned>(std::min(a, std::min(b, c)) <= kNear) << k;
  }
  return lie;
}

double nearness(Point2 u) { return kNear * (std::abs(u.x) + std::abs(u.y)); }

// The triangle's sides that have the facet well inside of them.
unsigned sides_around(const Triangle& t, const Triangle& facet) {
  unsigned around = 0;
  for (std::size_t k = 0; k < 3; ++k) {
    const Point2 from = t[k], u = t[(k + 1) % 3] - from;
    const double near = nearness(u);
    const double least = std::min(cross(u, facet[0] - from),
                                  std::min(cross(u, facet[1] - from), cross(u, facet[2] - from)));
    around |= static_cast<unsigned>(least > near) << k;
  }
  return around;
}

// A segment lies well beyond one of the triangle's sides.
bool misses(const Triangle& t, Point2 a, Point2 b) {
  for (std::size_t k = 0; k < 3; ++k) {
    const Point2 from = t[k], u = t[(k + 1) % 3] - from;
    const double near = nearness(u);
    if (cross(u, a - from) < -near && cross(u, b - from) < -near) return true;
  }
  return false;
}

// A triangle held to a facet's three sides: each cut brings at most as many corners as it takes, so
// that there are at most 3, 4, 6, 9.
class Clip {
 public:
  std::span<const Point2> part_of(const Triangle& t, unsigned cut, const Sides& sides) {
    std::span<const Point2> part = t;
    for (std::size_t k = 0; k < 3 && !part.empty(); ++k) {
      if ((cut >> k & 1U) == 0) continue;
      Point2* const out = corners_[part.data() == corners_[0].data() ? 1 : 0].data();
      part = held_to(sides[k], part, values_.data(), out);
    }
    return part;
  }

 private:
  static constexpr std::size_t kMost = 16;
  std::array<std::array<Point2, kMost>, 2> corners_;
  std::array<double, kMost> values_{};
};

// A facet of the other surface.
struct Laid {
  Index number = kNone;
  Triangle corners;
  Plane plane;
  Sides sides;
};

Laid laid(const Surface& other, Index f) {
  Laid facet{f, plan_of(other, f), other.plane(f), {}};
  for (std::size_t k = 0; k < 3; ++k)
    facet.sides[k] = HalfPlane::left_of(facet.corners[k], facet.corners[(k + 1) % 3]);
  return facet;
}

class Walk {
 public:
  Walk(const Surface& surface, const Locator& locator, const Surface& other)
      : surface_(surface),
        locator_(locator),
        other_(other),
        seen_(surface.triangles.size(), kNone),
        hint_(other.triangles.size(), kNone) {}

  Between run() {
    for (Index f = 0; f < static_cast<Index>(other_.triangles.size()); ++f) {
      const Laid facet = laid(other_, f);
      const auto& beside = other_.neighbours[at(f)];
      wanted_ = bits(beside[0] > f, beside[1] > f, beside[2] > f);
      const BetweenSums before = sums_;
      if (hint_[at(f)] != kNone && walk(facet, hint_[at(f)])) continue;
      sums_ = before;
      locator_.find_triangles(box_of(facet.corners), found_);
      for (const Index t : found_) visit(facet, t);
    }
    return sums_.value();
  }

 private:
  // Whatever of the facet lies on the surface hangs together, unless the surface's rim crosses it,
  // and is then reached from any piece. False where the rim is met or no piece was found.
  bool walk(const Laid& facet, Index start) {
    const double area_before = sums_.area();
    reserve_places(found_, 4);
    found_[0] = start;
    seen_[at(start)] = facet.number;
    for (std::size_t i = 0, count = 1; i < count; ++i) {
      reserve_places(found_, count + 3);
      const Index here = found_[i];
      const unsigned across = visit(facet, here);
      const auto& beside = surface_.neighbours[at(here)];
      for (std::size_t k = 0; k < 3; ++k) {
        const bool step = (across >> k & 1U) != 0;
        if (step && beside[k] == kNone) return false;
        // Without a branch, as there is no telling which way it goes.
        const Index next = step ? beside[k] : here;
        found_[count] = next;
        count += seen_[at(next)] != facet.number ? 1U : 0U;
        seen_[at(next)] = facet.number;
      }
    }
    return sums_.area() > area_before;
  }

  // Takes the piece over a triangle, and gives the triangle's sides that the facet lies across.
  unsigned visit(const Laid& facet, Index t) {
    const auto [a, b, c] = surface_.corners(t);
    const Triangle triangle{a.plan(), b.plan(), c.plan()};
    const Lie lie = lie_of(triangle, facet.sides);
    if (lie.beside) return 0;
    const unsigned across = 7U & ~(lie.apart | sides_around(triangle, facet.corners));
    if ((wanted_ & lie.cut) != 0) give_hints(facet, t, triangle, wanted_ & lie.cut);
    const auto shared = clip_.part_of(triangle, lie.cut, facet.sides);
    const double area = area_of(shared);
    if (area <= 0) return across;
    const Plane upper = plane_through(a, b, c);
    for (std::size_t i = 0; i < shared.size(); ++i)
      differences_[i] = upper.at(shared[i]) - facet.plane.at(shared[i]);
    sums_.add(shared, {differences_.data(), shared.size()}, area);
    return across;
  }

  void give_hints(const Laid& facet, Index t, const Triangle& triangle, unsigned sides) {
    for (std::size_t k = 0; k < 3; ++k) {
      if ((sides >> k & 1U) == 0) continue;
      if (misses(triangle, facet.corners[k], facet.corners[(k + 1) % 3])) continue;
      hint_[at(other_.neighbours[at(facet.number)][k])] = t;
      wanted_ &= ~(1U << k);
    }
  }

  const Surface& surface_;
  const Locator& locator_;
  const Surface& other_;
  std::vector<Index> seen_;   // the last facet that a triangle was visited for
  std::vector<Index> hint_;   // for each facet a triangle that meets one of its sides
  unsigned wanted_ = 0;       // sides of the facet across which a hint is wanted
  std::vector<Index> found_;  // triangles of the facet
  Clip clip_;
  std::array<double, 9> differences_{};  // of the planes at a piece's corners
  BetweenSums sums_;
};

}  // namespace

Between between(const Surface& surface, const Locator& locator, const Surface& other) {
  return Walk(surface, locator, other).run();
}

}  // namespace squaredig::geometry
