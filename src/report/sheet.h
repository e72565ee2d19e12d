// The frame every sheet stands in: title, what the job says of itself, cautions, the bar to
// measure, inputs with their hashes, page x of y.
//
// Source: layout of our own; a bar to check the print's scale is common practice, no source.
#pragma once

#include "quantity/result_head.h"
#include "report/canvas.h"

namespace squaredig::report {

// What a sheet says of the job beside the stage's result.
struct SheetHead {
  std::string title;  // "Dig sheet"
  std::string date;   // "2026-03-20"; empty: the job has none
  std::string revision;
  std::string drawing;
  std::string prepared_by;
  std::string version;
};

// "2026-03-20 · revision B · drawing 104 · by ..."
std::string job_line(const SheetHead& head);

// Draws title strip and footer; gives what is left for the page's own matter.
Box draw_frame(Canvas& canvas, const SheetHead& head, const ResultHead& result, int page,
               int pages);

// The words on every sheet.
const std::vector<std::string>& standing_cautions();
// The words to be printed across the drawing; empty: none.
std::string overprint_of(const ResultHead& result);
// Across the box, before the figures are drawn. Gives the room it takes; nothing without words.
std::optional<Box> draw_overprint(Canvas& canvas, const ResultHead& result, const Box& box);

// Findings and cautions of the result, then those of every sheet, from number `from` on, as many as
// the box holds.
struct CautionsDrawn {
  std::size_t next = 0;  // the first that found no room
  double y = 0;          // below the last line
};
CautionsDrawn draw_cautions(Canvas& canvas, const Box& box, const ResultHead& result, double points,
                            std::size_t from);
std::size_t caution_count(const ResultHead& result);

// A rule with a heading above it; gives the y below.
double heading(Canvas& canvas, At at, double width, std::string_view text);

struct Row {
  std::string label, value;
};
// Label on the left, value on the right; gives the y below.
double rows(Canvas& canvas, At at, double width, const std::vector<Row>& rows, double points = 9);

}  // namespace squaredig::report
