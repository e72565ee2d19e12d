// A page: one self-contained HTML file with its style and script in it, which asks the network for
// nothing.
//
// Laws: page.1  labels are text alone, isolated from the direction of what stands beside them;
//   page.2  the page forbids every request (content security policy); page.3  the same bytes every
//   time.
// Source: HTML living standard; CSP level 3; layout of our own.
#pragma once

#include "report/sheet.h"
#include "report/table.h"

namespace squaredig::report {

class Page {
 public:
  Page(const SheetHead& head, const ResultHead& result);
  // A section under a heading; `id` is a plain word. `html` is taken as it stands.
  void section(const std::string& id, const std::string& title, const std::string& html);
  // The same, shown when asked for.
  void folded(const std::string& id, const std::string& title, const std::string& html);
  // Data the script reads, as JSON text.
  void data(const std::string& json);
  // Cautions, inputs and the script at the end.
  std::string finish(const char* script);

 private:
  const SheetHead& head_;
  const ResultHead& result_;
  std::string body_, data_;
};

// A label between <bdi> marks.
std::string label_html(std::string_view text);
std::string paragraph_html(std::string_view text);
// A drawing too wide for a phone can be moved sideways.
std::string drawing_html(const std::string& name, const std::string& svg);
std::string table_html(const Table& table);
std::string joined_html(const std::vector<Table>& tables);
std::string rows_html(const std::string& title, const std::vector<Row>& rows);

}  // namespace squaredig::report
