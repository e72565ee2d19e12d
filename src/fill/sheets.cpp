#include "fill/sheets.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

constexpr Length kGrace = Length::metres(1e-9);

// Rounded up, but not for the rounding of an exact fit.
std::int64_t whole_up(double ratio) {
  const double nearest = std::round(ratio);
  return std::lround(std::abs(ratio - nearest) < 1e-9 ? nearest : std::ceil(ratio));
}

// The pieces of one strip: whole rolls lapped at each join, and what is left.
std::vector<Pieces> pieces_of(Length wanted, Length roll_length, Length lap) {
  if (wanted <= roll_length + kGrace) return {{1, std::min(wanted, roll_length)}};
  const std::int64_t pieces = whole_up((wanted - lap) / (roll_length - lap));
  const Length last = wanted - (roll_length - lap) * static_cast<double>(pieces - 1);
  return {{pieces - 1, roll_length}, {1, std::min(last, roll_length)}};
}

Laid lay_one_way(Length lengthwise, Length crosswise, const Roll& roll, Length lap,
                 std::int64_t times) {
  Laid laid;
  laid.strips = strips_across(crosswise, roll.width, lap) * times;
  laid.pieces = pieces_of(lengthwise, roll.length, lap);
  for (auto& piece : laid.pieces) {
    laid.strip += piece.length * static_cast<double>(piece.count);
    piece.count *= laid.strips;
  }
  laid.with_laps = roll.width * laid.strip * static_cast<double>(laid.strips);
  return laid;
}

std::vector<Pieces> joined(std::vector<Pieces> a, const std::vector<Pieces>& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

struct Wrap {
  Laid girth, ends;
  Area with_laps() const { return girth.with_laps + ends.with_laps; }
  std::int64_t rolls(const Roll& roll) const {
    return rolls_for(joined(girth.pieces, ends.pieces), roll.length);
  }
};

// A girth round base, two sides and top over the length `along`, and the two ends.
Wrap wrap_one_way(Length along, Length across, Length height, const Roll& roll, Length lap) {
  const Length girth = (across + height) * 2 + lap;
  return {lay_one_way(girth, along, roll, lap, 1),
          lay_rectangle(across + lap * 2, height + lap * 2, roll, lap, 2)};
}

std::string strips_text(std::int64_t strips, Length strip) {
  return std::to_string(strips) + (strips == 1 ? " strip of " : " strips of ") +
         fixed(strip.in_metres(), 2) + " m";
}

void order(Sheet& sheet, std::int64_t rolls, const Roll& roll) {
  sheet.rolls = rolls;
  sheet.ordered = roll.width * roll.length * static_cast<double>(rolls);
  sheet.waste = *sheet.ordered - *sheet.with_laps;
}

}  // namespace

std::int64_t rolls_for(std::vector<Pieces> pieces, Length roll_length) {
  std::sort(pieces.begin(), pieces.end(),
            [](const Pieces& a, const Pieces& b) { return a.length > b.length; });
  std::vector<Length> left;  // of each roll
  for (const auto& piece : pieces)
    for (std::int64_t i = 0; i < piece.count; ++i) {
      auto roll = std::find_if(left.begin(), left.end(),
                               [&](Length l) { return piece.length <= l + kGrace; });
      if (roll == left.end()) roll = left.insert(left.end(), roll_length);
      *roll -= piece.length;
    }
  return static_cast<std::int64_t>(left.size());
}

std::int64_t strips_across(Length width, Length roll_width, Length lap) {
  return std::max(1L, whole_up((width - lap) / (roll_width - lap)));
}

Laid lay_rectangle(Length first, Length second, const Roll& roll, Length lap, std::int64_t times) {
  Laid along = lay_one_way(first, second, roll, lap, times);
  Laid across = lay_one_way(second, first, roll, lap, times);
  across.along = false;
  const std::int64_t rolls = rolls_for(along.pieces, roll.length);
  const std::int64_t rolls_across = rolls_for(across.pieces, roll.length);
  if (rolls != rolls_across) return rolls_across < rolls ? across : along;
  return across.with_laps < along.with_laps ? across : along;
}

Sheet wrap_box(Length length, Length width, Length height, const std::optional<Roll>& roll,
               Length lap) {
  Sheet sheet;
  sheet.net = (length * width + length * height + width * height) * 2;
  if (!roll) return sheet;
  const Wrap across = wrap_one_way(length, width, height, *roll, lap);
  const Wrap along = wrap_one_way(width, length, height, *roll, lap);
  const std::int64_t rolls_across = across.rolls(*roll), rolls_along = along.rolls(*roll);
  const bool lengthwise = rolls_along != rolls_across ? rolls_along < rolls_across
                                                      : along.with_laps() < across.with_laps();
  const Wrap& wrap = lengthwise ? along : across;
  sheet.with_laps = wrap.with_laps();
  sheet.strips = wrap.girth.strips + wrap.ends.strips;
  order(sheet, std::min(rolls_along, rolls_across), *roll);
  sheet.laid = strips_text(wrap.girth.strips, wrap.girth.strip) + " round the tank " +
               (lengthwise ? "lengthwise" : "crosswise") + ", on each end " +
               strips_text(wrap.ends.strips / 2, wrap.ends.strip);
  return sheet;
}

Sheet lay_layers(Length length, Length width, int layers, const std::optional<Roll>& roll,
                 Length lap) {
  Sheet sheet;
  sheet.net = length * width * static_cast<double>(layers);
  if (!roll || layers == 0) return sheet;
  const Laid laid = lay_rectangle(length, width, *roll, lap, layers);
  sheet.with_laps = laid.with_laps;
  sheet.strips = laid.strips;
  order(sheet, rolls_for(laid.pieces, roll->length), *roll);
  sheet.laid = "in each layer " + strips_text(laid.strips / layers, laid.strip) +
               (laid.along ? " along A-B" : " across A-B");
  return sheet;
}

}  // namespace squaredig::fill
