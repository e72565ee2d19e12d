// The ground in plan, grid north up: its rim, contours with their levels, breaklines, and a
// numbered mark at each finding that has a place.
//
// Source: symbols of our own: every fifth contour heavy, breaklines brown, findings in a red frame.
#pragma once

#include "ground/ground_result.h"
#include "report/canvas.h"

namespace squaredig::report {

void draw_ground_plan(Canvas& canvas, const ground::GroundResult& ground, const Box& box);

}  // namespace squaredig::report
