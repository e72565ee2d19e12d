#include "fill/proof_internal.h"
#include "quantity/day_text.h"
#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

std::optional<std::size_t> number_of(const design::Tank& tank, const std::string& side) {
  for (std::size_t i = 0; i < tank.sides(); ++i)
    if (tank.side_name(i) == side) return i;
  return std::nullopt;
}

// Of four sides each has one opposite; of any other number every other side counts.
bool opposite(const design::Tank& tank, std::size_t a, std::size_t b) {
  return tank.sides() == 4 ? (a + 2) % 4 == b : a != b;
}

}  // namespace

// In the order of the log, the fill on one side never more than a lift above that opposite.
void check_lift_log(const FillInput& input, const FillContext& context, FillResult& result) {
  if (!input.lift_log) return;
  const auto& tank = context.pit.tank;
  std::vector<Length> height(tank.sides());
  for (const auto& record : *input.lift_log) {
    const auto side = number_of(tank, record.side);
    if (!side)
      refuse(record.place, "side " + quoted(record.side) + ", which the tank has not",
             "a side such as " + tank.side_name(0), "correct the side's name");
    height[*side] = record.above_underside;
    LiftStep step{record.lift, record.side, record.date, record.above_underside, {}, {}, false};
    for (std::size_t other = 0; other < tank.sides(); ++other) {
      const Length ahead = height[*side] - height[other];
      if (!opposite(tank, *side, other) || (!step.opposite.empty() && ahead <= step.ahead))
        continue;
      step.opposite = tank.side_name(other);
      step.ahead = ahead;
    }
    step.too_far = step.ahead > input.side_lift + Length::metres(1e-9);
    if (step.too_far)
      result.head.findings.push_back(
          {"one-sided-fill",
           day_text(record.date) + ", line " + std::to_string(record.place.line) + ": side " +
               record.side + " stands " + fixed(step.ahead.in_metres(), 2) + " m above side " +
               step.opposite + ", more than one lift of " + fixed(input.side_lift.in_metres(), 2) +
               " m: the tank may shift."});
    result.lift_log.push_back(std::move(step));
  }
}

}  // namespace squaredig::fill
