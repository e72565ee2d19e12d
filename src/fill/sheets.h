// Sheet materials cut from rolls: strips with laps, rolls, waste.
//
// What: an area laid in parallel strips, each lapping the next; a strip longer than a roll is
//   joined with the same lap. Strips and joined pieces are cut from rolls longest first, each from
//   the first roll that still has it. Both directions are tried: the one that takes fewer rolls is
//   kept, of two that take as many the one with less in laps.
// Frame and units: plan metres.
// Requires: roll wider and longer than the lap.
// Laws: sheets.1  n strips of width w lapping by o cover n w - (n - 1) o, never less than the
// width;
//   sheets.2  an exact fit takes no strip more and no roll more; sheets.3  no lap is negative;
//   sheets.4  no roll is cut longer than it is.
// Accuracy: counts are exact; a remainder below 1e-9 of a strip is none. Errors: none.
// Source: n = ceil((W - o) / (r - o)), take-off rule, derived; first fit
//   decreasing takes at most 11/9 of the fewest rolls and 2/3 (Dosa 2007, from memory).
#pragma once

#include "fill/fill_input.h"
#include "fill/fill_result.h"

namespace squaredig::fill {

std::int64_t strips_across(Length width, Length roll_width, Length lap);

// Equal pieces of a roll's width.
struct Pieces {
  std::int64_t count = 0;
  Length length;
};
// The rolls that the pieces are cut from. Requires: no piece longer than a roll.
std::int64_t rolls_for(std::vector<Pieces> pieces, Length roll_length);

// A rectangle laid in strips.
struct Laid {
  std::int64_t strips = 0;
  Length strip;    // length of one, joins included
  Area with_laps;  // of all strips
  std::vector<Pieces> pieces;
  bool along = true;  // strips run along the first side
};
// `times` such rectangles, one over the other or apart.
Laid lay_rectangle(Length first, Length second, const Roll& roll, Length lap,
                   std::int64_t times = 1);

// The skin of a box: base, sides and top. Strips run round it as a girth across its length or its
// width, whichever orders less, and close with a lap; the two ends are laid as rectangles.
Sheet wrap_box(Length length, Length width, Length height, const std::optional<Roll>& roll,
               Length lap);

// `layers` rectangles one over the other.
Sheet lay_layers(Length length, Length width, int layers, const std::optional<Roll>& roll,
                 Length lap);

}  // namespace squaredig::fill
