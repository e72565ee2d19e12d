// What the hand-over book says in words and tables beside the chapters of the stages.
#pragma once

#include "report/record_sheet.h"
#include "report/words.h"

namespace squaredig::report {

Table answers_table(const record::RecordResult& record);
Table level_table(const dig::DigResult& dig);  // designed levels at the corners
// Figures with their limits and answers.
Table figures_table(const std::string& title, const std::vector<record::Figure>& figures);
// The tank's corners as designed and, where the base was surveyed, as built.
Table tank_table(const record::RecordResult& record);
std::vector<Row> storage_rows(const record::Storage& storage);
Table storage_table(const record::Storage& storage);
// The inputs of each answer with their whole checksums.
std::vector<Table> input_tables(const record::RecordResult& record);
// The chapters that are missing, in words; empty where all are there.
std::string missing_chapters(const RecordBook& book);

}  // namespace squaredig::report
