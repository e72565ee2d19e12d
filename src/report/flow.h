// A sheet whose matter flows from page to page: headings, tables, drawings, paragraphs, each whole
// where a page can hold it.
//
// Laws: flow.1  a table that runs over a page takes its headings along; flow.2  each page says its
//   number and how many there are.
#pragma once

#include <functional>

#include "report/sheet.h"
#include "report/table.h"

namespace squaredig::report {

class Flow {
 public:
  // Begins on the canvas's page, which is page `first` of the sheet.
  Flow(Canvas& canvas, const SheetHead& head, const ResultHead& result, int pages, int first = 1);

  // Stays with what follows.
  void heading(std::string text) { heading_ = std::move(text); }
  // Goes to the next page where this one has less room.
  void keep(double height);
  void paragraph(std::string_view text, const Lettering& lettering = {9});
  void table(const Table& table);
  void rows(const std::string& title, const std::vector<Row>& rows);
  // A box of this height for `draw`.
  void drawing(double height, const std::function<void(Canvas&, const Box&)>& draw);
  // Several small drawings side by side, so many in a row.
  void drawings(std::size_t count, std::size_t in_row, double height,
                const std::function<void(Canvas&, const Box&, std::size_t)>& draw);
  // Those from a number on: the ones before stand elsewhere.
  void cautions(std::size_t from = 0);
  int page() const { return page_; }
  double width() const { return box_.width(); }

 private:
  void next_page();
  // Room for so much on this page or the next, with the heading that waits.
  void need(double height);
  void table_row(const std::vector<std::string>& cells, const Table& table,
                 const std::vector<double>& widths, double top, double height,
                 const Lettering& lettering);

  Canvas& canvas_;
  const SheetHead& head_;
  const ResultHead& result_;
  int pages_;
  int page_;
  Box box_;
  double y_;
  std::string heading_;
};

// Writes twice: first to count the pages.
std::string flow_pdf(const SheetHead& head, const ResultHead& result,
                     const std::function<void(Flow&)>& write);

}  // namespace squaredig::report
