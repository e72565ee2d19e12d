#include <algorithm>
#include <numeric>

#include "geometry/ordering_internal.h"

namespace squaredig::geometry {
namespace {

struct Record {
  double x, y, z;
  Index point;
  bool on_string;
};

// By place; at one place a string's vertex first, then the one given first.
bool comes_before(const Record& a, const Record& b) {
  if (a.x != b.x) return a.x < b.x;
  if (a.y != b.y) return a.y < b.y;
  return a.on_string != b.on_string ? a.on_string : a.point < b.point;
}

std::vector<Record> records_of(const TriangulationInput& input) {
  std::vector<Record> records(input.points.size());
  for (std::size_t i = 0; i < records.size(); ++i) {
    // Adding zero turns -0 into 0, so that one position has one spelling.
    const Point3& p = input.points[i];
    records[i] = {p.x + 0.0, p.y + 0.0, p.z, static_cast<Index>(i), false};
  }
  for (const Constraint& c : input.constraints)
    for (const Index v : c.vertices) records[static_cast<std::size_t>(v)].on_string = true;
  return records;
}

// Moves the records into strips and gives where each strip ends.
template <class StripOf>
std::vector<std::size_t> file_in_strips(const std::vector<Record>& from, std::vector<Record>& to,
                                        std::size_t count, StripOf strip) {
  std::vector<std::size_t> end(count + 1, 0);
  for (const Record& r : from) ++end[strip(r) + 1];
  for (std::size_t s = 1; s < end.size(); ++s) end[s] += end[s - 1];
  for (const Record& r : from) to[end[strip(r)]++] = r;
  return end;
}

// Files the records in strips of x, a few to a strip, and sorts each: near to linear for points
// spread over a site, and never worse than sorting them all. They go through broad strips first, so
// that what is written at one time stays near.
void sort_by_strips(std::vector<Record>& records) {
  if (records.empty()) return;
  const auto [west, east] = std::minmax_element(
      records.begin(), records.end(), [](const Record& a, const Record& b) { return a.x < b.x; });
  constexpr std::size_t kInBroad = 2048;
  const double left = west->x, width = east->x - left;
  const std::size_t broad = std::clamp<std::size_t>(records.size() / 8 / kInBroad, 1, 2048);
  const std::size_t strips = broad * kInBroad;
  const double scale = width > 0 ? static_cast<double>(strips - 1) / width : 0;
  const auto strip = [&](const Record& r) {
    return static_cast<std::size_t>((r.x - left) * scale);
  };
  std::vector<Record> other(records.size());
  file_in_strips(records, other, broad, [&](const Record& r) { return strip(r) / kInBroad; });
  const std::vector<std::size_t> end = file_in_strips(other, records, strips, strip);
  std::size_t start = 0;
  for (std::size_t s = 0; s < strips; ++s) {
    std::sort(records.begin() + static_cast<std::ptrdiff_t>(start),
              records.begin() + static_cast<std::ptrdiff_t>(end[s]), comes_before);
    start = end[s];
  }
}

}  // namespace

Placed place_in_order(const TriangulationInput& input) {
  std::vector<Record> records = records_of(input);
  sort_by_strips(records);
  Placed out;
  out.vertices.reserve(records.size());
  out.source.reserve(records.size());
  if (!input.constraints.empty()) out.vertex_of.assign(records.size(), kNone);
  double kept_height = 0;
  for (const Record& r : records) {
    const bool doubled =
        !out.vertices.empty() && out.vertices.back().x == r.x && out.vertices.back().y == r.y;
    if (doubled) {
      out.doubled.push_back({out.source.back(), r.point, r.z - kept_height});
    } else {
      out.vertices.push_back({r.x, r.y, r.z});
      out.source.push_back(r.point);
      kept_height = r.z;
    }
    if (r.on_string)
      out.vertex_of[static_cast<std::size_t>(r.point)] =
          static_cast<Index>(out.vertices.size() - 1);
  }
  std::sort(out.doubled.begin(), out.doubled.end(),
            [](const Doubled& a, const Doubled& b) { return a.dropped < b.dropped; });
  return out;
}

}  // namespace squaredig::geometry
