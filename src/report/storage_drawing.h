// Level against storage: the curve read from the storage table.
#pragma once

#include "record/record_result.h"
#include "report/canvas.h"

namespace squaredig::report {

void draw_storage(Canvas& canvas, const record::Storage& storage, const Box& box);

}  // namespace squaredig::report
