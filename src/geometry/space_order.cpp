#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

#include "geometry/space_order_internal.h"

namespace squaredig::geometry {
namespace {

// 22 steps of the curve tell places apart down to a four-millionth of the box: a far outlier costs
// a survey nothing.
constexpr int kSteps = 22;
constexpr int kRoundBits = 4;

struct Stop {
  std::uint64_t place;  // round, then along the curve
  Index vertex;
};

// The curve in one of four turnings: for each quarter of a square, in the order of its bits (x, y),
// its place along the curve and the turning of the curve within it.
struct Turning {
  std::uint8_t place[4];
  std::uint8_t next[4];
};
constexpr Turning kTurnings[4] = {{{0, 1, 3, 2}, {1, 0, 2, 0}},
                                  {{0, 3, 1, 2}, {0, 3, 1, 1}},
                                  {{2, 1, 3, 0}, {2, 2, 0, 3}},
                                  {{2, 3, 1, 0}, {3, 1, 3, 2}}};

// Two steps at once: indexed by turning and the two bits of x and of y, (x, y) = (xx, yy); the
// place in the low four bits, the turning above them.
constexpr std::array<std::uint8_t, 64> two_steps() {
  std::array<std::uint8_t, 64> table{};
  for (unsigned turning = 0; turning < 4; ++turning)
    for (unsigned bits = 0; bits < 16; ++bits) {
      const unsigned x = bits >> 2U, y = bits & 3U;
      const Turning& first = kTurnings[turning];
      const unsigned high = (x >> 1U) << 1U | y >> 1U, low = (x & 1U) << 1U | (y & 1U);
      const Turning& second = kTurnings[first.next[high]];
      table[turning << 4U | bits] = static_cast<std::uint8_t>(
          second.next[low] << 4U | first.place[high] << 2U | second.place[low]);
    }
  return table;
}
constexpr std::array<std::uint8_t, 64> kTwoSteps = two_steps();

std::uint64_t along_curve(std::uint32_t x, std::uint32_t y) {
  std::uint64_t place = 0;
  unsigned turning = 0;
  for (int step = kSteps - 2; step >= 0; step -= 2) {
    const unsigned both = kTwoSteps[turning << 4U | ((x >> step) & 3U) << 2U | ((y >> step) & 3U)];
    place = place << 4U | (both & 15U);
    turning = both >> 4U;
  }
  return place;
}

// Each round has about four times the points of the one before; which point goes in which is drawn
// by mixing its number (the finaliser of MurmurHash3), the same on every run.
std::uint64_t round_of(std::uint64_t number) {
  std::uint64_t mixed = number + 0x9E3779B97F4A7C15ULL;
  mixed = (mixed ^ (mixed >> 33U)) * 0xFF51AFD7ED558CCDULL;
  mixed = (mixed ^ (mixed >> 33U)) * 0xC4CEB9FE1A85EC53ULL;
  mixed ^= mixed >> 33U;
  std::uint64_t round = (1U << kRoundBits) - 1;
  for (; round > 0 && (mixed & 3U) == 0; --round) mixed >>= 2U;
  return round;
}

std::vector<Stop> stops_of(const std::vector<Point3>& vertices) {
  double left = HUGE_VAL, low = HUGE_VAL, right = -HUGE_VAL, high = -HUGE_VAL;
  for (const Point3& v : vertices) {
    left = std::min(left, v.x), right = std::max(right, v.x);
    low = std::min(low, v.y), high = std::max(high, v.y);
  }
  const auto cells = static_cast<double>((1U << kSteps) - 1);
  const double extent = std::max(right - left, high - low);
  const double scale = extent > 0 ? cells / extent : 0;
  std::vector<Stop> stops;
  stops.reserve(vertices.size());
  for (const Point3& v : vertices)
    stops.push_back({round_of(stops.size()) << (2 * kSteps) |
                         along_curve(static_cast<std::uint32_t>((v.x - left) * scale),
                                     static_cast<std::uint32_t>((v.y - low) * scale)),
                     static_cast<Index>(stops.size())});
  return stops;
}

// By counting, a few bits of the place at a time, the lowest first.
void sort_by_place(std::vector<Stop>& stops) {
  constexpr int kBits = 12;
  constexpr std::uint64_t kMask = (1U << kBits) - 1;
  std::vector<Stop> other(stops.size());
  for (int shift = 0; shift < kRoundBits + 2 * kSteps; shift += kBits) {
    std::vector<std::size_t> start(kMask + 2, 0);
    for (const Stop& s : stops) ++start[(s.place >> shift & kMask) + 1];
    for (std::size_t b = 1; b < start.size(); ++b) start[b] += start[b - 1];
    for (const Stop& s : stops) other[start[s.place >> shift & kMask]++] = s;
    stops.swap(other);
  }
}

}  // namespace

std::vector<Index> hilbert_order(const std::vector<Point3>& vertices) {
  std::vector<Stop> stops = stops_of(vertices);
  sort_by_place(stops);
  std::vector<Index> order;
  order.reserve(stops.size());
  for (const Stop& s : stops) order.push_back(s.vertex);
  return order;
}

}  // namespace squaredig::geometry
