// reduce: a job's field books to coordinates on its grid.
//
// What: level book first, for heights; then GNSS, fitted to the site grid where pairs are given;
//   then the total station, hung on control, levelled and GNSS points.
// Frame and units: the job's grid. A fit moves what GNSS gave; without GNSS it moves what the total
//   station gave.
// Requires: settings as checked by the job file.
// Laws: reduce.1 a control point is never given other coordinates; reduce.2 the same books give the
//   same bytes.
// Accuracy: that of its parts.
// Errors: Refusal of the parts; GNSS heights with neither a geoid file nor a fit in height.
// Source: definitions.
#pragma once

#include "field/field_input.h"
#include "field/field_result.h"

namespace squaredig::field {

FieldResult reduce(const FieldInput& input, ResultHead head);

}  // namespace squaredig::field
