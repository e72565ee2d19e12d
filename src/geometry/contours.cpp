#include "geometry/contours.h"

#include <algorithm>
#include <cstdint>
#include <map>

namespace squaredig::geometry {
namespace {

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

// For each vertex how many of the levels it stands at or above. A triangle is crossed by the levels
// above its lowest corner and not above its highest: what lies between its corners' counts.
std::vector<std::uint16_t> levels_passed(const Surface& surface, std::span<const double> levels) {
  std::vector<std::uint16_t> passed(surface.vertices.size());
  if (levels.empty()) return passed;
  const auto steps = static_cast<double>(levels.size() - 1);
  const double per_metre = steps > 0 ? steps / (levels.back() - levels.front()) : 0;
  for (std::size_t v = 0; v < passed.size(); ++v) {
    const double z = surface.vertices[v].z;
    // a guess that is right for even steps, put right where it is not
    const double guess = std::clamp((z - levels.front()) * per_metre, 0.0, steps);
    auto count = static_cast<std::size_t>(guess);
    while (count < levels.size() && levels[count] <= z) ++count;
    while (count > 0 && levels[count - 1] > z) --count;
    passed[v] = static_cast<std::uint16_t>(count);
  }
  return passed;
}

struct Crossed {
  std::size_t first, last;  // numbers of levels, the last not among them
};

Crossed crossed_by(const std::vector<std::uint16_t>& passed, const std::array<Index, 3>& corners) {
  const auto [a, b, c] = corners;
  const std::uint16_t at_a = passed[at(a)], at_b = passed[at(b)], at_c = passed[at(c)];
  return {std::min({at_a, at_b, at_c}), std::max({at_a, at_b, at_c})};
}

bool has_more_stretches(const Surface& surface, const std::vector<std::uint16_t>& passed,
                        std::size_t most) {
  std::size_t count = 0;
  for (const auto& corners : surface.triangles) {
    const Crossed crossed = crossed_by(passed, corners);
    count += crossed.last - crossed.first;
    if (count > most) return true;
  }
  return false;
}

// The lines of one level through the triangles that it crosses.
class Tracing {
 public:
  Tracing(const Surface& surface, std::size_t number, double level,
          const std::vector<Index>& triangles, std::vector<bool>& open,
          std::vector<LevelLine>& lines)
      : surface_(surface), number_(number), level_(level), open_(open), lines_(lines) {
    for (const Index t : triangles) open_[at(t)] = true;
    for (const Index t : triangles)
      if (open_[at(t)] && surface_.neighbours[at(t)][down(t)] == kNone) trace(t);
    for (const Index t : triangles)
      if (open_[at(t)]) trace(t);
  }

 private:
  bool above(Index t, std::size_t corner) const {
    return surface_.vertices[at(surface_.triangles[at(t)][corner % 3])].z >= level_;
  }
  // The edge on which the triangle, walked anticlockwise, goes below the level, or above it.
  std::size_t down(Index t) const {
    std::size_t i = 0;
    while (!above(t, i) || above(t, i + 1)) ++i;
    return i;
  }
  std::size_t up(Index t) const {
    std::size_t i = 0;
    while (above(t, i) || !above(t, i + 1)) ++i;
    return i;
  }
  Point2 point_on(Index t, std::size_t edge) const {
    // from the smaller vertex, so that both triangles beside the edge find the same point
    const auto [from, to] =
        std::minmax(surface_.triangles[at(t)][edge], surface_.triangles[at(t)][(edge + 1) % 3]);
    const Point3 &p = surface_.vertices[at(from)], &q = surface_.vertices[at(to)];
    if (q.z == level_) return q.plan();  // to the last bit, as the other edges there give it
    return p.plan() + ((level_ - p.z) / (q.z - p.z)) * (q.plan() - p.plan());
  }

  void trace(Index first) {
    LevelLine line{number_, {}, false};
    const auto add = [&](Point2 p) {
      if (line.points.empty() || line.points.back() != p) line.points.push_back(p);
    };
    add(point_on(first, down(first)));
    for (Index t = first; t != kNone;) {
      if (!open_[at(t)]) {
        line.closed = true;  // round to the first triangle
        break;
      }
      open_[at(t)] = false;
      const std::size_t leaving = up(t);
      add(point_on(t, leaving));
      t = surface_.neighbours[at(t)][leaving];
    }
    if (line.closed && line.points.size() > 1 && line.points.front() == line.points.back())
      line.points.pop_back();
    if (line.points.size() > 1) lines_.push_back(std::move(line));
  }

  const Surface& surface_;
  std::size_t number_;
  double level_;
  std::vector<bool>& open_;
  std::vector<LevelLine>& lines_;
};

}  // namespace

std::optional<std::vector<LevelLine>> level_lines_within(std::size_t most, const Surface& surface,
                                                         std::span<const double> levels) {
  const auto passed = levels_passed(surface, levels);
  if (has_more_stretches(surface, passed, most)) return std::nullopt;
  std::vector<std::vector<Index>> by_level(levels.size());
  for (std::size_t t = 0; t < surface.triangles.size(); ++t) {
    const Crossed crossed = crossed_by(passed, surface.triangles[t]);
    for (std::size_t i = crossed.first; i < crossed.last; ++i)
      by_level[i].push_back(static_cast<Index>(t));
  }
  std::vector<LevelLine> lines;
  std::vector<bool> open(surface.triangles.size());
  for (std::size_t i = 0; i < levels.size(); ++i)
    Tracing(surface, i, levels[i], by_level[i], open, lines);
  return lines;
}

std::vector<std::vector<Point2>> rim_of(const Surface& surface) {
  std::multimap<Index, Index> next;
  for (std::size_t t = 0; t < surface.triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i)
      if (surface.neighbours[t][i] == kNone)
        next.emplace(surface.triangles[t][i], surface.triangles[t][(i + 1) % 3]);
  std::vector<std::vector<Point2>> rings;
  while (!next.empty()) {
    std::vector<Point2> ring;
    for (auto edge = next.begin(); edge != next.end();) {
      ring.push_back(surface.vertices[at(edge->first)].plan());
      const Index to = edge->second;
      next.erase(edge);
      edge = next.find(to);
    }
    rings.push_back(std::move(ring));
  }
  return rings;
}

}  // namespace squaredig::geometry
