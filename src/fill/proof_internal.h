// What proves the fill as built: layers, compaction, lifts, and the uplift screening.
#pragma once

#include "fill/fill.h"
#include "fill/levels_internal.h"

namespace squaredig::fill {

void add_layers(const FillInput& input, const FillContext& context, FillResult& result);
void add_density_tests(const FillInput& input, const FillContext& context, FillResult& result);
void check_lift_log(const FillInput& input, const FillContext& context, FillResult& result);
void add_uplift(const FillInput& input, const FillContext& context, FillResult& result);
void add_materials(const FillInput& input, const FillContext& context, FillResult& result);
void add_sheets(const FillInput& input, const FillContext& context, FillResult& result);

}  // namespace squaredig::fill
