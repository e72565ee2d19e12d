#include "report/record_sheet.h"

#include "report/base_maps.h"
#include "report/base_words.h"
#include "report/dig_words.h"
#include "report/fill_words.h"
#include "report/flow.h"
#include "report/peg_drawings.h"
#include "report/pegs_words.h"
#include "report/pit_plan.h"
#include "report/record_words.h"
#include "report/storage_drawing.h"

namespace squaredig::report {
namespace {

constexpr double kDrawing = 110;  // mm

void write(Flow& flow, const std::vector<Table>& tables) {
  for (const auto& table : tables) flow.table(table);
}

void tell_findings(Flow& flow, const ResultHead& result) {
  for (const auto& finding : result.findings) flow.paragraph("Finding: " + finding.text);
}

void chapter(Flow& flow, const char* title) {
  flow.keep(80);
  flow.heading(title);
}

void tell_figures(Flow& flow, const RecordBook& book, const std::string& name) {
  for (const auto& stage : book.record.stages)
    if (stage.stage == name && !stage.figures.empty())
      flow.table(figures_table("Figures of the " + name + " stage", stage.figures));
}

void designed(Flow& flow, const RecordBook& book) {
  flow.heading("Designed");
  if (!book.record.designed.empty())
    flow.table(figures_table("The tank as designed", book.record.designed));
  if (!book.record.tank_designed.empty()) flow.table(tank_table(book.record));
  if (!book.dig) return;
  flow.table(level_table(*book.dig));
  flow.table(batter_table(*book.dig));
}

void set_out(Flow& flow, const RecordBook& book) {
  if (!book.pegs) return;
  chapter(flow, "Set out");
  for (const auto& line : peg_verdicts(*book.pegs)) flow.paragraph(line, Lettering{11}.bold());
  tell_figures(flow, book, "pegs");
  flow.drawing(kDrawing,
               [&](Canvas& canvas, const Box& box) { draw_peg_plan(canvas, *book.pegs, box); });
  write(flow, peg_tables(*book.pegs));
  for (const auto& table : squareness_tables(*book.pegs))
    if (table.title.find("judged") == std::string::npos) flow.table(table);  // among the figures
  tell_findings(flow, book.pegs->head);
}

void dug(Flow& flow, const RecordBook& book) {
  if (!book.dig) return;
  chapter(flow, "Dug");
  flow.drawing(kDrawing, [&](Canvas& canvas, const Box& box) {
    const PitPlan plan{*book.dig, book.pegs};
    draw_pit_plan(canvas, plan, whole_pit(plan, box), box);
  });
  flow.drawing(52, [&](Canvas& canvas, const Box& box) { draw_sections(canvas, *book.dig, box); });
  flow.rows("Quantities", quantity_rows(*book.dig));
  tell_figures(flow, book, "dig");
  write(flow, around_tables(*book.dig));
  write(flow, progress_tables(*book.dig));
  tell_findings(flow, book.dig->head);
}

void verified(Flow& flow, const RecordBook& book) {
  if (!book.base) return;
  chapter(flow, "Verified");
  flow.paragraph(base_verdict(*book.base), Lettering{11}.bold());
  if (book.base->surveyed) flow.paragraph("Surveyed " + *book.base->surveyed + ".");
  flow.paragraph(kBaseHolds, Lettering{10}.bold());
  flow.table(check_table(*book.base));
  flow.drawing(kDrawing, [&](Canvas& canvas, const Box& box) {
    draw_deviation_map(canvas, *book.base, box);
  });
  tell_figures(flow, book, "base");
  flow.rows("Base, measures", base_rows(*book.base));
  write(flow, base_tables(*book.base));
  tell_findings(flow, book.base->head);
}

void filled(Flow& flow, const RecordBook& book) {
  if (!book.fill) return;
  chapter(flow, "Filled");
  for (const auto& line : fill_verdicts(*book.fill)) flow.paragraph(line, Lettering{11}.bold());
  tell_figures(flow, book, "fill");
  flow.rows("Fill", fill_rows(*book.fill));
  write(flow, lift_tables(*book.fill));
  write(flow, proof_tables(*book.fill));
  tell_findings(flow, book.fill->head);
}

void stored(Flow& flow, const RecordBook& book) {
  const auto& storage = book.record.storage;
  flow.heading("What the tank holds");
  flow.drawing(80, [&](Canvas& canvas, const Box& box) { draw_storage(canvas, storage, box); });
  flow.rows("Storage", storage_rows(storage));
  flow.table(storage_table(storage));
}

}  // namespace

std::string record_sheet_pdf(const RecordBook& book, const SheetHead& head) {
  return flow_pdf(head, book.record.head, [&](Flow& flow) {
    flow.table(answers_table(book.record));
    if (const auto missing = missing_chapters(book); !missing.empty()) flow.paragraph(missing);
    designed(flow, book);
    set_out(flow, book);
    dug(flow, book);
    verified(flow, book);
    filled(flow, book);
    stored(flow, book);
    flow.heading("Inputs of each answer");
    write(flow, input_tables(book.record));
    flow.cautions();
  });
}

}  // namespace squaredig::report
