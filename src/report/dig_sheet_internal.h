// The parts of the dig sheet after its first page: the plan for the cab and the list of cells.
#pragma once

#include "report/dig_sheet.h"

namespace squaredig::report {

constexpr Colour kStop{0.7, 0, 0};
constexpr double kUnderStrip = 9;  // mm below the first line of the symbols

// Depth ramp, symbols, north arrow and some words; `left` begins the first line of the symbols.
void draw_strip(Canvas& canvas, const dig::DigResult& dig, const TankView& view, At left,
                double right, const std::string& words);

// The plan for the cab: windows of whole cells, each large enough to be read.
struct Windows {
  int columns = 0, rows = 0;  // cells in one window; 0: the whole pit fits one page
  int across = 1, down = 1;   // windows
  double cell = 0;            // mm
  int count() const { return across * down; }
};

Windows windows_for(const PitPlan& plan, const Box& page);
void draw_cab(Canvas& canvas, const PitPlan& plan, const SheetHead& head, const Windows& windows,
              int n, int page, int pages);

// Cells with their readings, two columns of them to a page.
std::vector<const dig::Cell*> listed(const dig::DigResult& dig);
std::size_t lines_of_list(const Box& page);
void draw_list(Canvas& canvas, const std::vector<const dig::Cell*>& cells, std::size_t first,
               const Box& page);

}  // namespace squaredig::report
