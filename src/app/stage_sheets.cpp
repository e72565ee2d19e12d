#include "app/stage_sheets.h"

#include "app/version.h"
#include "quantity/day_text.h"
#include "report/base_sheet.h"
#include "report/dig_page.h"
#include "report/dig_sheet.h"
#include "report/field_page.h"
#include "report/fill_sheet.h"
#include "report/ground_page.h"
#include "report/pegs_sheet.h"

namespace squaredig::app {
namespace {

report::SheetHead head_of(std::string title, const FileContext& context) {
  return {std::move(title),    context.date ? day_text(*context.date) : "",
          context.revision,    context.drawing,
          context.prepared_by, kVersion};
}

}  // namespace

Files sheets_of(const dig::DigResult& result, const pegs::PegsResult& pegs,
                const FileContext& context) {
  const report::PitPlan plan{result, &pegs};
  const auto head = head_of("Dig sheet", context);
  return {{"dig.pdf", report::dig_sheet_pdf(plan, head)},
          {"dig.html", report::dig_page(plan, head)}};
}

Files sheets_of(const field::FieldResult& result, const FileContext& context) {
  return {{"field.html", report::field_page(result, head_of("Field books", context))}};
}

Files sheets_of(const ground::GroundResult& result, const FileContext& context) {
  return {{"ground.html", report::ground_page(result, head_of("Existing ground", context))}};
}

Files sheets_of(const pegs::PegsResult& result, const FileContext& context) {
  const auto head = head_of("Peg sheet", context);
  return {{"pegs.pdf", report::pegs_sheet_pdf(result, head)},
          {"pegs.html", report::pegs_page(result, head)}};
}

Files sheets_of(const base::BaseResult& result, const FileContext& context) {
  const auto head = head_of("Base report", context);
  return {{"base.pdf", report::base_sheet_pdf(result, head)},
          {"base.html", report::base_page(result, head)}};
}

Files sheets_of(const fill::FillResult& result, const FileContext& context) {
  const auto head = head_of("Fill sheet", context);
  return {{"fill.pdf", report::fill_sheet_pdf(result, head)},
          {"fill.html", report::fill_page(result, head)}};
}

Files sheets_of(const report::RecordBook& book, const FileContext& context) {
  return {{"record.pdf", report::record_sheet_pdf(book, head_of("Hand-over book", context))}};
}

}  // namespace squaredig::app
