#include <algorithm>
#include <numeric>

#include "geometry/ordering_internal.h"

namespace squaredig::geometry {
namespace {

struct Record {
  double x, y;
  Index point;
};

std::vector<bool> string_vertices(const TriangulationInput& input) {
  std::vector<bool> of_string(input.points.size());
  for (const Constraint& c : input.constraints)
    for (const Index v : c.vertices) of_string[static_cast<std::size_t>(v)] = true;
  return of_string;
}

std::vector<Record> records_of(const TriangulationInput& input) {
  std::vector<Record> records(input.points.size());
  for (std::size_t i = 0; i < records.size(); ++i) {
    // Adding zero turns -0 into 0, so that one position has one spelling.
    records[i] = {input.points[i].x + 0.0, input.points[i].y + 0.0, static_cast<Index>(i)};
  }
  return records;
}

// Files the records in strips of x, a few to a strip, and sorts each: near to linear for points
// spread over a site, and never worse than sorting them all.
template <class Before>
std::vector<Record> sorted_by_strips(const std::vector<Record>& records, Before before_in_order) {
  if (records.empty()) return {};
  const auto [west, east] = std::minmax_element(
      records.begin(), records.end(), [](const Record& a, const Record& b) { return a.x < b.x; });
  const double left = west->x, width = east->x - left;
  const auto strips = std::clamp<std::size_t>(records.size() / 8, 1, std::size_t{1} << 22U);
  const double scale = width > 0 ? static_cast<double>(strips - 1) / width : 0;
  const auto strip = [&](const Record& r) {
    return static_cast<std::size_t>((r.x - left) * scale);
  };
  std::vector<std::size_t> end(strips + 1, 0);
  for (const Record& r : records) ++end[strip(r) + 1];
  for (std::size_t s = 1; s < end.size(); ++s) end[s] += end[s - 1];
  std::vector<Record> out(records.size());
  for (const Record& r : records) out[end[strip(r)]++] = r;
  std::size_t start = 0;
  for (std::size_t s = 0; s < strips; ++s) {
    std::sort(out.begin() + static_cast<std::ptrdiff_t>(start),
              out.begin() + static_cast<std::ptrdiff_t>(end[s]), before_in_order);
    start = end[s];
  }
  return out;
}

}  // namespace

Placed place_in_order(const TriangulationInput& input) {
  const std::vector<bool> of_string = string_vertices(input);
  const std::vector<Record> records =
      sorted_by_strips(records_of(input), [&](const Record& a, const Record& b) {
        if (a.x != b.x) return a.x < b.x;
        if (a.y != b.y) return a.y < b.y;
        const bool string_a = of_string[static_cast<std::size_t>(a.point)];
        const bool string_b = of_string[static_cast<std::size_t>(b.point)];
        return string_a != string_b ? string_a : a.point < b.point;
      });
  Placed out;
  out.vertices.reserve(records.size());
  out.source.reserve(records.size());
  out.vertex_of.resize(records.size());
  const auto height = [&](Index i) { return input.points[static_cast<std::size_t>(i)].z; };
  for (const Record& r : records) {
    const bool doubled =
        !out.vertices.empty() && out.vertices.back().x == r.x && out.vertices.back().y == r.y;
    if (doubled) {
      const Index kept = out.source.back();
      out.doubled.push_back({kept, r.point, height(r.point) - height(kept)});
    } else {
      out.vertices.push_back({r.x, r.y, height(r.point)});
      out.source.push_back(r.point);
    }
    out.vertex_of[static_cast<std::size_t>(r.point)] = static_cast<Index>(out.vertices.size() - 1);
  }
  std::sort(out.doubled.begin(), out.doubled.end(),
            [](const Doubled& a, const Doubled& b) { return a.dropped < b.dropped; });
  return out;
}

}  // namespace squaredig::geometry
