#include "report/page.h"

#include "report/assets.h"
#include "report/markup.h"

namespace squaredig::report {
namespace {

constexpr const char* kPolicy =
    "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:; "
    "base-uri 'none'; form-action 'none'";

std::string list_html(const ResultHead& result) {
  std::string html = "<ul>";
  for (const auto& finding : result.findings)
    html += "<li class=\"own\">" + label_html(finding.text) + "</li>";
  for (const auto& caution : result.cautions)
    html += "<li class=\"own\">" + label_html(caution) + "</li>";
  for (const auto& caution : standing_cautions()) html += "<li>" + escaped(caution) + "</li>";
  return html + "</ul>";
}

Table inputs_table(const ResultHead& result) {
  Table table{
      "Inputs", {{"file", Anchor::Left}, {"read"}, {"used"}, {"SHA-256", Anchor::Left}}, {}, {}};
  for (const auto& input : result.inputs)
    table.rows.push_back(
        {input.file, std::to_string(input.read), std::to_string(input.used), input.sha256});
  return table;
}

std::string assumed_html(const ResultHead& result) {
  if (result.assumed.empty()) return "";
  std::string html = "<h3>Assumed</h3><ul>";
  for (const auto& text : result.assumed) html += "<li>" + label_html(text) + "</li>";
  return html + "</ul>";
}

// A bar for the print: its length is stated in millimetres.
std::string bar_html() {
  Canvas canvas = Canvas::svg({150, 6}, "measure me: 100 mm");
  canvas.line({{1, 5}, {101, 5}}, {0.5});
  for (int i = 0; i <= 10; ++i)
    canvas.line({{1.0 + 10 * i, i % 5 ? 3.8 : 2.6}, {1.0 + 10 * i, 5}}, {0.35});
  canvas.text({103.5, 5}, "measure me: 100 mm", {8.5});
  return "<div class=\"bar\">" + canvas.finish() + "</div>";
}

}  // namespace

std::string label_html(std::string_view text) { return "<bdi>" + escaped(text) + "</bdi>"; }

std::string paragraph_html(std::string_view text) { return "<p>" + label_html(text) + "</p>"; }

std::string drawing_html(const std::string& name, const std::string& svg) {
  return "<div class=\"drawing\" tabindex=\"0\" role=\"region\" aria-label=\"" + escaped(name) +
         ", drawing\">" + svg + "</div>";
}

std::string table_html(const Table& table) {
  const auto kind = [&](std::size_t i) {
    return i < table.columns.size() && table.columns[i].anchor == Anchor::Left ? ""
                                                                               : " class=\"n\"";
  };
  std::string html = "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"" +
                     escaped(table.title) + ", table\"><table><caption>" + label_html(table.title) +
                     "</caption><thead><tr>";
  for (std::size_t i = 0; i < table.columns.size(); ++i)
    html += std::string("<th scope=\"col\"") + kind(i) + ">" + escaped(table.columns[i].heading) +
            "</th>";
  html += "</tr></thead><tbody>";
  for (const auto& row : table.rows) {
    html += "<tr>";
    for (std::size_t i = 0; i < row.size(); ++i) {
      const bool names_row = i == 0 && !row[i].empty();
      // figures are no labels, and there are many of them
      const std::string said = *kind(i) ? escaped(row[i]) : label_html(row[i]);
      html += std::string(names_row ? "<th scope=\"row\"" : "<td") + kind(i) + ">" + said +
              (names_row ? "</th>" : "</td>");
    }
    html += "</tr>";
  }
  html += "</tbody></table></div>";
  for (const auto& note : table.notes) html += paragraph_html(note);
  return html;
}

std::string joined_html(const std::vector<Table>& tables) {
  std::string html;
  for (const auto& table : tables) html += table_html(table);
  return html;
}

std::string rows_html(const std::string& title, const std::vector<Row>& rows) {
  std::string html = "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"" +
                     escaped(title) + ", table\"><table class=\"rows\"><caption>" + escaped(title) +
                     "</caption><tbody>";
  for (const auto& row : rows)
    html += "<tr><th scope=\"row\">" + label_html(row.label) + "</th><td class=\"n\">" +
            label_html(row.value) + "</td></tr>";
  return html + "</tbody></table></div>";
}

Page::Page(const SheetHead& head, const ResultHead& result) : head_(head), result_(result) {}

void Page::section(const std::string& id, const std::string& title, const std::string& html) {
  body_ += "<section id=\"" + id + "\" aria-labelledby=\"" + id + "-h\"><h2 id=\"" + id + "-h\">" +
           escaped(title) + "</h2>" + html + "</section>\n";
}

void Page::folded(const std::string& id, const std::string& title, const std::string& html) {
  body_ += "<section id=\"" + id + "\"><details><summary><h2>" + escaped(title) +
           "</h2></summary>" + html + "</details></section>\n";
}

void Page::data(const std::string& json) {
  // within a script nothing but its end tag is looked for; this keeps every '<' out of the text
  for (const char c : json) data_ += c == '<' ? std::string("\\u003c") : std::string(1, c);
}

std::string Page::finish(const char* script) {
  const std::string overprint = overprint_of(result_);
  std::string html =
      "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"" +
      std::string(kPolicy) +
      "\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
      "<link rel=\"icon\" href=\"data:,\"><title>" +
      escaped(head_.title + ": " + result_.job) + "</title>\n<style>\n" + kPageCss +
      "</style></head>\n<body>\n<header><h1>" + escaped(head_.title) + "</h1><p class=\"job\">" +
      label_html(result_.job) + "</p><p class=\"meta\">" + label_html(job_line(head_)) +
      " \xC2\xB7 metres throughout</p>";
  html +=
      "<div class=\"tools\" role=\"group\" aria-label=\"Display\">"
      "<button type=\"button\" id=\"contrast\" aria-pressed=\"false\">High contrast</button>"
      "<button type=\"button\" id=\"large\" aria-pressed=\"false\">Large text</button>"
      "<button type=\"button\" id=\"print\">Print</button></div></header>\n<main>\n";
  if (!overprint.empty()) html += "<p class=\"overprint\">" + escaped(overprint) + "</p>\n";
  html += body_;
  html +=
      "<section id=\"cautions\" aria-labelledby=\"cautions-h\"><h2 id=\"cautions-h\">Cautions"
      "</h2>" +
      list_html(result_) +
      "</section>\n<section id=\"inputs\"><details><summary>"
      "<h2>Inputs and what was assumed</h2></summary>" +
      table_html(inputs_table(result_)) + assumed_html(result_) +
      "</details></section>\n</main>\n<footer>" + bar_html() + "<p>squaredig " +
      escaped(head_.version) + "</p></footer>\n";
  if (!data_.empty())
    html += "<script type=\"application/json\" id=\"data\">" + data_ + "</script>\n";
  html += std::string("<script>\n") + kPageJs + script + "</script>\n</body></html>\n";
  return html;
}

}  // namespace squaredig::report
