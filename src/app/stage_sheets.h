// The sheets and pages of each stage's result, as bytes by name.
#pragma once

#include "app/stage_files.h"
#include "report/record_sheet.h"

namespace squaredig::app {

// `pegs` has the strings the pit is taped from.
Files sheets_of(const dig::DigResult& result, const pegs::PegsResult& pegs,
                const FileContext& context);
Files sheets_of(const field::FieldResult& result, const FileContext& context);
Files sheets_of(const ground::GroundResult& result, const FileContext& context);
Files sheets_of(const pegs::PegsResult& result, const FileContext& context);
Files sheets_of(const base::BaseResult& result, const FileContext& context);
Files sheets_of(const fill::FillResult& result, const FileContext& context);
Files sheets_of(const report::RecordBook& book, const FileContext& context);

}  // namespace squaredig::app
