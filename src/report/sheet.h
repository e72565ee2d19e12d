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
  std::string date;   // "2026-03-20"
  std::string revision;
  std::string drawing;
  std::string prepared_by;
  std::string version;
};

struct Frame {
  At top_left, bottom_right;  // what is left for the page's own matter
};

// Draws title strip and footer.
Frame draw_frame(Canvas& canvas, const SheetHead& head, const ResultHead& result, int page,
                 int pages);

// The cautions of every sheet, then the result's own. Gives the y below the last line.
double draw_cautions(Canvas& canvas, At top_left, double width, const ResultHead& result,
                     double points);

// The words on every sheet.
const std::vector<std::string>& standing_cautions();

// A light rule with a heading above it; gives the y below.
double heading(Canvas& canvas, At at, double width, std::string_view text);

struct Row {
  std::string label, value;
};
// Label on the left, value on the right; gives the y below.
double rows(Canvas& canvas, At at, double width, const std::vector<Row>& rows, double points = 9);

}  // namespace squaredig::report
