// What the fill sheet says: rows and tables from the result.
#pragma once

#include "fill/fill_result.h"
#include "report/sheet.h"
#include "report/words.h"

namespace squaredig::report {

inline constexpr const char* kPlacedMeasure =
    "Volumes as placed: compacted, in their place. What it takes to fill them stands in the order "
    "list.";

// What goes back, and how the sum agrees with the hole.
std::vector<Row> fill_rows(const fill::FillResult& fill);
// Order list, lifts, capping, sheets.
std::vector<Table> order_tables(const fill::FillResult& fill);
std::vector<Table> lift_tables(const fill::FillResult& fill);
// Layers as built, density tests, uplift: those that are there.
std::vector<Table> proof_tables(const fill::FillResult& fill);
// "Layers as built: conforms", one line for each thing judged.
std::vector<std::string> fill_verdicts(const fill::FillResult& fill);

}  // namespace squaredig::report
