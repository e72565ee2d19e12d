#include "app/stage_sheets.h"

#include "app/version.h"
#include "report/dig_sheet.h"

namespace squaredig::app {
namespace {

std::string two_digits(unsigned n) { return (n < 10 ? "0" : "") + std::to_string(n); }

std::string date_text(const std::optional<std::chrono::year_month_day>& date) {
  if (!date) return "1970-01-01";
  return std::to_string(static_cast<int>(date->year())) + "-" +
         two_digits(static_cast<unsigned>(date->month())) + "-" +
         two_digits(static_cast<unsigned>(date->day()));
}

report::SheetHead head_of(std::string title, const FileContext& context) {
  return {std::move(title), date_text(context.date), context.revision,
          context.drawing,  context.prepared_by,     kVersion};
}

}  // namespace

Files sheets_of(const dig::DigResult& result, const pegs::PegsResult& pegs,
                const FileContext& context) {
  return {{"dig.pdf", report::dig_sheet_pdf({result, &pegs}, head_of("Dig sheet", context))}};
}

}  // namespace squaredig::app
