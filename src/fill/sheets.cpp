#include "fill/sheets.h"

#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

// Rounded up, but not for the rounding of an exact fit.
long whole_up(double ratio) {
  const double nearest = std::round(ratio);
  return std::lround(std::abs(ratio - nearest) < 1e-9 ? nearest : std::ceil(ratio));
}

// The length of roll a strip takes: with a lap at each join.
Length strip_length(Length wanted, Length roll_length, Length lap) {
  if (wanted <= roll_length + Length::metres(1e-9)) return wanted;
  const long pieces = whole_up((wanted - lap) / (roll_length - lap));
  return wanted + lap * static_cast<double>(pieces - 1);
}

long rolls_for(long strips, Length strip, Length roll_length) {
  if (strip > roll_length + Length::metres(1e-9))  // joined anyway: offcuts are used up
    return whole_up(strip * static_cast<double>(strips) / roll_length);
  const long per_roll = std::max(1L, std::lround(std::floor(roll_length / strip + 1e-9)));
  return whole_up(static_cast<double>(strips) / static_cast<double>(per_roll));
}

Laid lay_one_way(Length along, Length across, const Roll& roll, Length lap) {
  Laid laid;
  laid.strips = strips_across(across, roll.width, lap);
  laid.strip = strip_length(along, roll.length, lap);
  laid.with_laps = roll.width * laid.strip * static_cast<double>(laid.strips);
  laid.rolls = rolls_for(laid.strips, laid.strip, roll.length);
  return laid;
}

struct Wrap {
  Laid girth, ends;
  Area ordered() const { return girth.with_laps + ends.with_laps * 2; }
};

// A girth round base, two sides and top over `length`, and the two ends.
Wrap wrap_one_way(Length length, Length width, Length height, const Roll& roll, Length lap) {
  const Length girth = (width + height) * 2 + lap;
  return {lay_one_way(girth, length, roll, lap),
          lay_rectangle(width + lap * 2, height + lap * 2, roll, lap)};
}

std::string strips_text(const Laid& laid) {
  return std::to_string(laid.strips) + " strips of " + fixed(laid.strip.in_metres(), 2) + " m";
}

}  // namespace

long strips_across(Length width, Length roll_width, Length lap) {
  return std::max(1L, whole_up((width - lap) / (roll_width - lap)));
}

Laid lay_rectangle(Length first, Length second, const Roll& roll, Length lap) {
  Laid along = lay_one_way(first, second, roll, lap);
  Laid across = lay_one_way(second, first, roll, lap);
  across.along = false;
  return across.with_laps < along.with_laps ? across : along;
}

Sheet wrap_box(Length length, Length width, Length height, const std::optional<Roll>& roll,
               Length lap) {
  Sheet sheet;
  sheet.net = (length * width + length * height + width * height) * 2;
  if (!roll) return sheet;
  const Wrap across = wrap_one_way(length, width, height, *roll, lap);
  const Wrap along = wrap_one_way(width, length, height, *roll, lap);
  const bool take_along = along.ordered() < across.ordered();
  const Wrap& wrap = take_along ? along : across;
  sheet.with_laps = wrap.ordered();
  sheet.strips = wrap.girth.strips + 2 * wrap.ends.strips;
  sheet.rolls = wrap.girth.rolls + rolls_for(2 * wrap.ends.strips, wrap.ends.strip, roll->length);
  sheet.ordered = roll->width * roll->length * static_cast<double>(*sheet.rolls);
  sheet.laid = strips_text(wrap.girth) + " round the tank " +
               (take_along ? "lengthwise" : "crosswise") + ", each end " + strips_text(wrap.ends);
  return sheet;
}

Sheet lay_layers(Length length, Length width, int layers, const std::optional<Roll>& roll,
                 Length lap) {
  Sheet sheet;
  sheet.net = length * width * static_cast<double>(layers);
  if (!roll) return sheet;
  const Laid laid = lay_rectangle(length, width, *roll, lap);
  sheet.with_laps = laid.with_laps * static_cast<double>(layers);
  sheet.strips = laid.strips * layers;
  sheet.rolls = rolls_for(*sheet.strips, laid.strip, roll->length);
  sheet.ordered = roll->width * roll->length * static_cast<double>(*sheet.rolls);
  sheet.laid = "each layer " + strips_text(laid) + (laid.along ? " along A-B" : " across A-B");
  return sheet;
}

}  // namespace squaredig::fill
