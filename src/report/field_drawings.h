// The field's points in plan, and the residuals of a set-up as bars.
#pragma once

#include "field/field_result.h"
#include "report/canvas.h"

namespace squaredig::report {

// Grid north is up. Ellipses of one standard deviation, enlarged as the plan says.
void draw_field_plan(Canvas& canvas, const field::FieldResult& field, const Box& box);

// A bar for each reading, as many times its standard deviation as the residual is, in one order
// with the table beneath; readings left out are hollow. Beyond the dashed lines one is suspect.
constexpr double kResidualStep = 5;  // mm
double residual_height(const field::SetupResult& setup);
void draw_residuals(Canvas& canvas, const field::SetupResult& setup, const field::Tests& tests,
                    const Box& box);

}  // namespace squaredig::report
