// Words beside places of a map that cover none of its figures.
//
// What: of a word and the place it speaks of, the nearest place that is still free.
// Frame and units: the page's, millimetres.
// Requires: figures kept clear before words are told.
// Laws: map_labels.1  a word that found room covers no figure and no earlier word; map_labels.2  it
//   stays inside the drawing's sides.
// Accuracy: half a millimetre. Errors: none. Source: our own.
#pragma once

#include <string>
#include <vector>

#include "report/canvas.h"

namespace squaredig::report {

class MapLabels {
 public:
  explicit MapLabels(const Box& drawing) : drawing_(drawing) {}

  void keep_clear(const Box& figure) { taken_.push_back(figure); }
  // `wanted` is the middle of the baseline. Where nothing near is free it stands there all the
  // same, pale round its letters.
  void tell(Canvas& canvas, At wanted, const std::string& words, Colour colour);

 private:
  bool is_free(const Box& words) const;

  Box drawing_;
  std::vector<Box> taken_;
};

}  // namespace squaredig::report
