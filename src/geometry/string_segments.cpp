#include <algorithm>
#include <cmath>
#include <tuple>

#include "geometry/strings_internal.h"

namespace squaredig::geometry {

namespace {

// A cell holds a few vertices at most, and a search seldom meets more than one cell.
constexpr double kCell = 1e-6;

std::int64_t cell_number(double value) {
  return static_cast<std::int64_t>(std::floor(value / kCell));
}

}  // namespace

std::size_t SnapIndex::CellHash::operator()(const Cell& c) const {
  const auto column = static_cast<std::uint64_t>(c.column), row = static_cast<std::uint64_t>(c.row);
  return (column * 0x9E3779B97F4A7C15ULL) ^ (row * 0xC2B2AE3D27D4EB4FULL);
}

Index SnapIndex::find_or_enter(Point2 p, Index vertex) {
  const Entry* nearest = nullptr;
  double least = kStringSnap;
  const std::int64_t last_column = cell_number(p.x + kStringSnap);
  const std::int64_t last_row = cell_number(p.y + kStringSnap);
  for (std::int64_t column = cell_number(p.x - kStringSnap); column <= last_column; ++column)
    for (std::int64_t row = cell_number(p.y - kStringSnap); row <= last_row; ++row) {
      const auto found = cells_.find({column, row});
      if (found == cells_.end()) continue;
      for (const Entry& e : found->second) {
        const double apart = std::hypot(e.at.x - p.x, e.at.y - p.y);
        if (apart > least || (nearest && apart == least && e.vertex > nearest->vertex)) continue;
        least = apart;
        nearest = &e;
      }
    }
  if (nearest) return nearest->vertex;
  cells_[{cell_number(p.x), cell_number(p.y)}].push_back({p, vertex});
  return vertex;
}

std::vector<StringSegment> segments_of(const TriangulationInput& input, const Placed& placed,
                                       SnapIndex& index) {
  std::vector<Index> used;
  for (const Constraint& c : input.constraints)
    for (const Index v : c.vertices) used.push_back(placed.vertex_of[static_cast<std::size_t>(v)]);
  std::sort(used.begin(), used.end());
  used.erase(std::unique(used.begin(), used.end()), used.end());
  std::unordered_map<Index, Index> stands_for;
  for (const Index v : used)
    stands_for[v] = index.find_or_enter(placed.vertices[static_cast<std::size_t>(v)].plan(), v);
  std::vector<StringSegment> out;
  for (const Constraint& c : input.constraints)
    for (std::size_t i = 1; i < c.vertices.size(); ++i) {
      const auto from = static_cast<std::size_t>(c.vertices[i - 1]);
      const auto to = static_cast<std::size_t>(c.vertices[i]);
      StringSegment s{stands_for[placed.vertex_of[from]],
                      stands_for[placed.vertex_of[to]],
                      c.string,
                      c.kind,
                      input.points[from].z,
                      input.points[to].z};
      if (s.a == s.b) continue;
      if (s.b < s.a) {
        std::swap(s.a, s.b);
        std::swap(s.height_a, s.height_b);
      }
      out.push_back(s);
    }
  std::sort(out.begin(), out.end(), [](const StringSegment& s, const StringSegment& t) {
    return std::tie(s.a, s.b, s.string) < std::tie(t.a, t.b, t.string);
  });
  return out;
}

}  // namespace squaredig::geometry
