#include "app/stage_sheets.h"

#include "app/version.h"
#include "quantity/day_text.h"
#include "report/base_sheet.h"
#include "report/dig_page.h"
#include "report/dig_sheet.h"
#include "report/pegs_sheet.h"

namespace squaredig::app {
namespace {

report::SheetHead head_of(std::string title, const FileContext& context) {
  return {std::move(title), day_text(context.date), context.revision,
          context.drawing,  context.prepared_by,    kVersion};
}

}  // namespace

Files sheets_of(const dig::DigResult& result, const pegs::PegsResult& pegs,
                const FileContext& context) {
  const report::PitPlan plan{result, &pegs};
  const auto head = head_of("Dig sheet", context);
  return {{"dig.pdf", report::dig_sheet_pdf(plan, head)},
          {"dig.html", report::dig_page(plan, head)}};
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

}  // namespace squaredig::app
