// The hand-over book: what was designed, set out, dug, verified and filled, each answer with its
// day and the inputs it came from, and what the tank holds.
//
// Laws: record_sheet.1  every figure in it is a field of a result; record_sheet.2  a stage that was
//   not run has no chapter, and the book says so.
// Source: contents common practice, no source.
#pragma once

#include "base/base_result.h"
#include "dig/dig_result.h"
#include "fill/fill_result.h"
#include "pegs/pegs_result.h"
#include "record/record_result.h"
#include "report/sheet.h"

namespace squaredig::report {

struct RecordBook {
  const record::RecordResult& record;
  const pegs::PegsResult* pegs = nullptr;
  const dig::DigResult* dig = nullptr;
  const base::BaseResult* base = nullptr;
  const fill::FillResult* fill = nullptr;
};

std::string record_sheet_pdf(const RecordBook& book, const SheetHead& head);

}  // namespace squaredig::report
