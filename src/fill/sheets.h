// Sheet materials cut from rolls: strips with laps, rolls, waste.
//
// What: an area laid in parallel strips, each lapping the next; a strip longer than a roll is
// joined
//   with the same lap. Both directions are tried and the one that orders less is taken.
// Frame and units: plan metres.
// Requires: roll wider and longer than the lap.
// Laws: sheets.1  n strips of width w lapping by o cover n w - (n - 1) o, never less than the
// width;
//   sheets.2  an exact fit takes no strip more; sheets.3  no lap is negative.
// Accuracy: counts are exact; a remainder below 1e-9 of a strip is none.
// Source: n = ceil((W - o) / (r - o)), take-off rule, derived check rows G01 to G05.
#pragma once

#include "fill/fill_input.h"
#include "fill/fill_result.h"

namespace squaredig::fill {

long strips_across(Length width, Length roll_width, Length lap);

// A rectangle laid in strips.
struct Laid {
  long strips = 0;
  Length strip;    // length of one, joins included
  Area with_laps;  // of all strips
  long rolls = 0;
  bool along = true;  // strips run along the first side
};
Laid lay_rectangle(Length first, Length second, const Roll& roll, Length lap);

// The skin of a box: base, sides and top. Strips run round it as a girth across its length or its
// width, whichever orders less, and close with a lap; the two ends are laid as rectangles.
Sheet wrap_box(Length length, Length width, Length height, const std::optional<Roll>& roll,
               Length lap);

// `layers` rectangles one over the other.
Sheet lay_layers(Length length, Length width, int layers, const std::optional<Roll>& roll,
                 Length lap);

}  // namespace squaredig::fill
