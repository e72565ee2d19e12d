#include "fill/fill.h"

#include "fill/quantities_internal.h"

namespace squaredig::fill {

FillResult fill(const FillInput& input, const FillContext& context) {
  FillResult result;
  add_quantities(input, context, result);
  return result;
}

}  // namespace squaredig::fill
