// What the field page says: rows and tables from the result.
#pragma once

#include "field/field_result.h"
#include "report/sheet.h"
#include "report/words.h"

namespace squaredig::report {

Table reduced_table(const field::FieldResult& field);
Table withheld_table(const field::FieldResult& field);
std::vector<Row> setup_rows(const field::SetupResult& setup);
Table residual_table(const field::SetupResult& setup, const field::Tests& tests);
// Runs, page sums, residuals, heights, the two-peg test.
std::vector<Table> level_tables(const field::LevelResult& levels);
std::vector<Row> fit_rows(const field::FitResult& fit);
Table fit_table(const field::FitResult& fit);
std::vector<Row> gnss_rows(const field::GnssResult& gnss);
std::vector<Table> gnss_tables(const field::GnssResult& gnss);

}  // namespace squaredig::report
