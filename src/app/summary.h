// What a run tells a person: a few lines for each stage. Computes nothing of the trade; every
// number is in the result, here it is rounded for reading.
#pragma once

#include <string>
#include <vector>

#include "base/base_result.h"
#include "dig/dig_result.h"
#include "field/field_result.h"
#include "fill/fill_result.h"
#include "ground/ground_result.h"
#include "pegs/pegs_result.h"
#include "record/record_result.h"

namespace squaredig::app {

using Lines = std::vector<std::string>;

Lines summary_of(const field::FieldResult& result);
Lines summary_of(const ground::GroundResult& result);
Lines summary_of(const pegs::PegsResult& result);
Lines summary_of(const dig::DigResult& result);
Lines summary_of(const base::BaseResult& result);
Lines summary_of(const fill::FillResult& result);
Lines summary_of(const record::RecordResult& result);

// "finding: ..." and "caution: ..." lines of a result's head, findings first.
Lines remarks_of(const ResultHead& head);

}  // namespace squaredig::app
