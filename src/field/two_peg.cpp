#include "field/two_peg.h"

#include <cmath>

#include "field/level_book.h"

namespace squaredig::field {
namespace {

// What the curve of the earth adds to a reading.
Length bend(const TwoPegReading& r, const std::optional<Earth>& earth) {
  return earth ? curvature_and_refraction(r.distance, earth->radius, earth->refraction) : Length{};
}

// The four readings as two set-ups of first and second staff.
std::array<std::array<const TwoPegReading*, 2>, 2> arranged(
    std::span<const TwoPegReading> readings) {
  std::array<std::array<const TwoPegReading*, 2>, 2> seen{};
  const std::string& setup = readings.front().setup;
  const std::string& staff = readings.front().staff;
  for (const TwoPegReading& r : readings)
    seen[r.setup == setup ? 0 : 1][r.staff == staff ? 0 : 1] = &r;
  for (const auto& row : seen)
    for (const auto* r : row)
      if (r == nullptr || readings.size() != 4)
        refuse(readings.front().place,
               "a two-peg test of " + std::to_string(readings.size()) +
                   " readings that are not two by two",
               "two set-ups with one reading on each of two staffs",
               "complete the test or take it out");
  return seen;
}

}  // namespace

Collimation two_peg_test(std::span<const TwoPegReading> readings,
                         const std::optional<Earth>& earth) {
  const auto seen = arranged(readings);
  std::array<Length, 2> difference, longer;  // second staff above the first; first sight longer by
  for (std::size_t i = 0; i < 2; ++i) {
    const TwoPegReading& a = *seen[i][0];
    const TwoPegReading& b = *seen[i][1];
    difference[i] = (a.reading - bend(a, earth)) - (b.reading - bend(b, earth));
    longer[i] = a.distance - b.distance;
  }
  constexpr double kApart = 1;  // metres
  if (std::abs((longer[0] - longer[1]).in_metres()) < kApart)
    refuse(readings.front().place, "a two-peg test whose set-ups stand alike to the staffs",
           "sights that differ in length between the two set-ups by 1 m or more",
           "repeat it from the middle and from one end");
  Collimation result;
  const double slope = (difference[0] - difference[1]) / (longer[0] - longer[1]);
  result.slope = Ratio::of(slope);
  result.true_difference = difference[0] - longer[0] * slope;
  result.place = readings.front().place;
  for (const TwoPegReading& r : readings)
    result.correct.push_back({r.setup, r.staff, r.reading - bend(r, earth) - r.distance * slope});
  return result;
}

}  // namespace squaredig::field
