#include <cmath>

#include "base/checks_internal.h"
#include "quantity/number_text.h"

namespace squaredig::base {

std::string in_mm(Length v) { return fixed(v.in_millimetres(), 1) + " mm"; }

std::string signed_mm(Length v) { return (v > Length{} ? "+" : "") + in_mm(v); }

std::string tied(const design::Tank& tank, GridPoint p) {
  return fixed(tank.along_ab(p).in_metres(), 2) + " m along A-B, " +
         fixed(tank.across_ab(p).in_metres(), 2) + " m in";
}

namespace {

// In millimetres or percent.
double plain(const Amount& amount) {
  if (const auto* length = std::get_if<Length>(&amount)) return length->in_millimetres();
  if (const auto* fall = std::get_if<Fall>(&amount)) return fall->in_percent();
  return std::get<Ratio>(amount).in_percent();
}

// How many readings bring the own part down far enough; a better instrument in any case.
std::string how(double own2, double room2, const MadeOf& made_of) {
  constexpr double kMost = 100;  // readings in place of one
  const double times = own2 / room2;
  if (times > kMost) return ": only a better instrument does that";
  const auto now = static_cast<double>(made_of.readings);
  return ": " + fixed(std::ceil(now * times - 1e-9), 0) + " readings of " + made_of.of +
         " instead of " + fixed(now, 0) + ", or a better instrument";
}

}  // namespace

std::string to_settle(const Check& check, const Floor& floor, const MadeOf& made_of) {
  if (check.verdict != Verdict::NotProven || !check.value || !check.limit || !check.uncertainty)
    return {};
  if (floor.coverage_factor <= 0) return {};
  const bool length = std::holds_alternative<Length>(*check.value);
  const std::string unit = length ? " mm" : " %";
  const int decimals = length ? 2 : 4;
  const double k = floor.coverage_factor;
  const double value = plain(*check.value);  // the mean alone is asked either way
  const double asked = check.name == "level mean" ? std::abs(value) : value;
  const double most = std::abs(asked - plain(*check.limit)) / k;
  const double now = plain(*check.uncertainty) / k;
  if (most < 1e-6)
    return "; on its limit: proven neither way by any instrument, its standard uncertainty is " +
           fixed(now, decimals) + unit;
  const double shared = made_of.shared ? 1000 * floor.sigma_common : 0;
  const std::string words = "; proven either way once its standard uncertainty is below " +
                            fixed(most, decimals) + unit + ", now " + fixed(now, decimals) + unit;
  if (most <= shared)
    return words + ", and " + fixed(shared, decimals) + unit +
           " of that all points share: no further reading helps, only a better carrying over of "
           "the level";
  return words + how(now * now - shared * shared, most * most - shared * shared, made_of);
}

}  // namespace squaredig::base
