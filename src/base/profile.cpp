#include <algorithm>
#include <cmath>

#include "base/profile_internal.h"

namespace squaredig::base {
namespace {

using geometry::Index;
using geometry::Point2;

std::size_t at_index(Index i) { return static_cast<std::size_t>(i); }

geometry::Surface surveyed_part(const DugSurface& dug) {
  geometry::Surface part;
  part.vertices = dug.surface.vertices;
  part.triangles.assign(dug.surface.triangles.begin(),
                        dug.surface.triangles.begin() + dug.surveyed_triangles);
  Index last = 0;
  for (const auto& t : part.triangles) last = std::max({last, t[0], t[1], t[2]});
  part.vertices.resize(at_index(last) + 1);
  geometry::link_neighbours(part);
  return part;
}

// One side of the hull of a profile: `above` +1 the upper, -1 the lower.
std::vector<std::size_t> chain(std::span<const Knot> knots, double above) {
  std::vector<std::size_t> hull;
  for (std::size_t i = 0; i < knots.size(); ++i) {
    while (hull.size() >= 2) {
      const Knot &a = knots[hull[hull.size() - 2]], &b = knots[hull.back()], &c = knots[i];
      if (above * ((b.z - a.z) * (c.s - a.s) - (c.z - a.z) * (b.s - a.s)) > 0) break;
      hull.pop_back();
    }
    hull.push_back(i);
  }
  return hull;
}

// The corner of one chain that stands farthest from the other.
void farthest(std::span<const Knot> knots, const std::vector<std::size_t>& corners,
              const std::vector<std::size_t>& other, Opening& widest) {
  std::size_t k = 0;
  for (const std::size_t i : corners) {
    while (k + 2 < other.size() && knots[other[k + 1]].s < knots[i].s) ++k;
    const Knot &a = knots[other[k]], &b = knots[other[std::min(k + 1, other.size() - 1)]];
    const double run = b.s - a.s;
    if (run <= 0) continue;
    const double width = std::abs(knots[i].z - a.z - (b.z - a.z) * ((knots[i].s - a.s) / run));
    if (width > widest.width) widest = {width, a.s, b.s, knots[i].s};
  }
}

}  // namespace

Opening opening_of(std::span<const Knot> knots) {
  Opening widest;
  if (knots.size() < 3) return widest;
  const auto upper = chain(knots, 1), lower = chain(knots, -1);
  farthest(knots, lower, upper, widest);
  farthest(knots, upper, lower, widest);
  return widest;
}

Profiles::Profiles(const DugSurface& dug, geometry::Polygon toe)
    : surface_(surveyed_part(dug)), source_(dug.source), locator_(surface_), toe_(std::move(toe)) {
  for (std::size_t t = 0; t < surface_.triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i) {
      const Index other = surface_.neighbours[t][i];
      if (other != geometry::kNone && at_index(other) < t) continue;
      const Index a = surface_.triangles[t][i], b = surface_.triangles[t][(i + 1) % 3];
      edges_.push_back({surface_.vertices[at_index(a)], surface_.vertices[at_index(b)]});
    }
  // the rim of a Delaunay surface is its hull
  std::vector<Index> next(surface_.vertices.size(), geometry::kNone);
  Index first = geometry::kNone;
  for (std::size_t t = 0; t < surface_.triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i)
      if (surface_.neighbours[t][i] == geometry::kNone) {
        first = surface_.triangles[t][i];
        next[at_index(first)] = surface_.triangles[t][(i + 1) % 3];
      }
  Index v = first;
  do {
    rim_.push_back(surface_.vertices[at_index(v)].plan());
    v = next[at_index(v)];
  } while (v != first);
  lay_grid();
}

template <class Visit>
void Profiles::cells_along(Point2 a, Point2 b, const Visit& visit) const {
  if (b.x < a.x) std::swap(a, b);
  const double slack = 1e-6 * cell_;
  const auto clamped = [](double v, int count) {
    return std::clamp(static_cast<int>(std::floor(v)), 0, count - 1);
  };
  const int c0 = clamped((a.x - slack - low_.x) / cell_, columns_);
  const int c1 = clamped((b.x + slack - low_.x) / cell_, columns_);
  for (int c = c0; c <= c1; ++c) {
    double y0 = a.y, y1 = b.y;
    if (b.x - a.x > slack) {
      const double x0 = std::max(a.x, low_.x + c * cell_ - slack);
      const double x1 = std::min(b.x, low_.x + (c + 1) * cell_ + slack);
      y0 = a.y + (b.y - a.y) * ((x0 - a.x) / (b.x - a.x));
      y1 = a.y + (b.y - a.y) * ((x1 - a.x) / (b.x - a.x));
    }
    const int r0 = clamped((std::min(y0, y1) - slack - low_.y) / cell_, rows_);
    const int r1 = clamped((std::max(y0, y1) + slack - low_.y) / cell_, rows_);
    for (int r = r0; r <= r1; ++r)
      visit(static_cast<std::size_t>(r) * static_cast<std::size_t>(columns_) +
            static_cast<std::size_t>(c));
  }
}

void Profiles::lay_grid() {
  Point2 high = rim_.front();
  low_ = high;
  for (const Point2 p : rim_) {
    low_ = {std::min(low_.x, p.x), std::min(low_.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  const auto count = static_cast<double>(surface_.vertices.size());
  const double area = std::max(geometry::signed_area(rim_), 1e-6);
  const double widest = std::max(high.x - low_.x, high.y - low_.y);
  cell_ = std::max(std::sqrt(area / count), widest / 2000);
  columns_ = 1 + static_cast<int>((high.x - low_.x) / cell_);
  rows_ = 1 + static_cast<int>((high.y - low_.y) / cell_);
  start_.assign(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_) + 1, 0);
  for (const Edge& e : edges_)
    cells_along(e.a.plan(), e.b.plan(), [&](std::size_t cell) { ++start_[cell + 1]; });
  for (std::size_t i = 1; i < start_.size(); ++i) start_[i] += start_[i - 1];
  entries_.resize(start_.back());
  std::vector<std::uint32_t> fill(start_.begin(), start_.end() - 1);
  for (std::uint32_t e = 0; e < edges_.size(); ++e)
    cells_along(edges_[e].a.plan(), edges_[e].b.plan(),
                [&](std::size_t cell) { entries_[fill[cell]++] = e; });
  seen_.assign(edges_.size(), 0);
}

void Profiles::gather(Point2 at, Point2 direction, double from, double to) {
  ++query_;
  const Point2 normal{-direction.y, direction.x};
  const auto visit = [&](std::size_t cell) {
    for (std::uint32_t k = start_[cell]; k < start_[cell + 1]; ++k) {
      const std::uint32_t id = entries_[k];
      if (seen_[id] == query_) continue;
      seen_[id] = query_;
      const Edge& e = edges_[id];
      const Point2 a = e.a.plan() - at, b = e.b.plan() - at;
      const double off_a = geometry::dot(a, normal), off_b = geometry::dot(b, normal);
      if ((off_a > 0 && off_b > 0) || (off_a < 0 && off_b < 0)) continue;
      const double sa = geometry::dot(a, direction), sb = geometry::dot(b, direction);
      if (off_a == off_b) {  // the line runs along the edge
        if (sa >= from && sa <= to) knots_.push_back({sa, e.a.z});
        if (sb >= from && sb <= to) knots_.push_back({sb, e.b.z});
        continue;
      }
      const double t = off_a / (off_a - off_b);
      const double s = sa + t * (sb - sa);
      if (s >= from && s <= to) knots_.push_back({s, e.a.z + t * (e.b.z - e.a.z)});
    }
  };
  cells_along(at + from * direction, at + to * direction, visit);
}

std::span<const Knot> Profiles::crossings(Point2 at, Point2 direction, double from, double to) {
  knots_.clear();
  gather(at, direction, from, to);
  return knots_;
}

std::span<const Knot> Profiles::between(Point2 at, Point2 direction, double from, double to) {
  knots_.clear();
  gather(at, direction, from, to);
  for (const double s : {from, to})
    if (const auto z = locator_.height_at(at + s * direction)) knots_.push_back({s, *z});
  std::sort(knots_.begin(), knots_.end(), [](const Knot& a, const Knot& b) { return a.s < b.s; });
  return knots_;
}

std::optional<std::pair<double, double>> Profiles::stretch(Point2 at, Point2 direction) const {
  constexpr double kOn = 1e-9;
  if (geometry::side_of(rim_, at, kOn) < 0 || geometry::side_of(toe_, at, kOn) < 0)
    return std::nullopt;
  double behind = -HUGE_VAL, ahead = HUGE_VAL;
  for (const geometry::Polygon* ring : {&rim_, &toe_}) {
    for (std::size_t i = 0; i < ring->size(); ++i) {
      const Point2 p = (*ring)[i] - at, q = (*ring)[(i + 1) % ring->size()] - at;
      const double across = geometry::cross(direction, q - p);
      if (std::abs(across) <= 1e-12 * (std::abs(q.x - p.x) + std::abs(q.y - p.y))) continue;
      const double share = -geometry::cross(direction, p) / across;
      if (share < -1e-12 || share > 1 + 1e-12) continue;
      const double s = geometry::dot(direction, p + share * (q - p));
      // an anticlockwise ring is left where its edge runs from right to left of the line
      if (across > 0) {
        if (s >= -kOn) ahead = std::min(ahead, s);
      } else if (s <= kOn) {
        behind = std::max(behind, s);
      }
    }
  }
  if (!(behind <= ahead) || !std::isfinite(behind) || !std::isfinite(ahead)) return std::nullopt;
  return std::pair(behind, ahead);
}

std::vector<std::pair<std::size_t, double>> Profiles::shares_at(Point2 p) const {
  std::vector<std::pair<std::size_t, double>> shares;
  const auto t = locator_.triangle_at(p);
  if (!t) return shares;
  const auto c = surface_.corners(*t);
  const double whole = geometry::orient(c[0].plan(), c[1].plan(), c[2].plan());
  for (std::size_t k = 0; k < 3; ++k) {
    const double share = geometry::orient(p, c[(k + 1) % 3].plan(), c[(k + 2) % 3].plan()) / whole;
    shares.emplace_back(source_[at_index(surface_.triangles[at_index(*t)][k])], share);
  }
  return shares;
}

}  // namespace squaredig::base
