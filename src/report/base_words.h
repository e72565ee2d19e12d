// What the base report says: tables and sentences from the result.
#pragma once

#include "base/base_result.h"
#include "report/sheet.h"
#include "report/words.h"

namespace squaredig::report {

inline constexpr const char* kBaseHolds =
    "Valid for the base as surveyed; check again after rain, traffic or frost.";
inline constexpr const char* kBaseMeans =
    "\"Conforms\" means the entered tolerances, at the points and time surveyed; nothing about "
    "bearing or how the sides will stand.";

std::string base_verdict(const base::BaseResult& base);
Table check_table(const base::BaseResult& base);
std::vector<Row> base_rows(const base::BaseResult& base);
// Repair list, holes in the survey, outliers, compaction, what the repair did: those that are
// there.
std::vector<Table> base_tables(const base::BaseResult& base);
Table point_table(const base::BaseResult& base);

}  // namespace squaredig::report
