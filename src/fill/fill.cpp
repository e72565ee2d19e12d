#include "fill/fill.h"

#include "fill/proof_internal.h"
#include "fill/quantities_internal.h"

namespace squaredig::fill {

FillResult fill(const FillInput& input, const FillContext& context) {
  FillResult result;
  add_quantities(input, context, result);
  add_materials(input, context, result);
  add_sheets(input, context, result);
  add_layers(input, context, result);
  add_density_tests(input, context, result);
  check_lift_log(input, context, result);
  add_uplift(input, context, result);
  return result;
}

}  // namespace squaredig::fill
