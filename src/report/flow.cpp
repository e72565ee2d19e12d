#include "report/flow.h"

#include <algorithm>
#include <numeric>
#include <sstream>

namespace squaredig::report {
namespace {

constexpr double kText = 9;
constexpr double kBetweenColumns = 3.5;
constexpr double kRowAir = 1.1;
constexpr Colour kTint{0.94, 0.94, 0.94};

// The widest of its words: a heading can break between them.
double longest_word(const Canvas& canvas, const std::string& text) {
  std::istringstream words(text);
  double longest = 0;
  for (std::string word; words >> word;)
    longest = std::max(longest, canvas.text_width(word, Lettering{kText}.bold()));
  return longest;
}

// As wide as their texts. On too narrow a page headings break first, then the widest column of
// words gives way.
std::vector<double> widths_of(const Canvas& canvas, const Table& table, double room) {
  std::vector<double> widths, spare;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    double body = longest_word(canvas, table.columns[i].heading);
    for (const auto& row : table.rows)
      if (i < row.size()) body = std::max(body, canvas.text_width(row[i], {kText}));
    const double head = canvas.text_width(table.columns[i].heading, Lettering{kText}.bold());
    widths.push_back(std::max(body, head) + kBetweenColumns);
    spare.push_back(std::max(0.0, head - body));
  }
  const auto over = [&] { return std::accumulate(widths.begin(), widths.end(), 0.0) - room; };
  if (over() <= 0) return widths;
  const double all = std::accumulate(spare.begin(), spare.end(), 0.0);
  const double share = all > 0 ? std::min(1.0, over() / all) : 0;
  for (std::size_t i = 0; i < widths.size(); ++i) widths[i] -= share * spare[i];
  if (over() <= 1e-9) return widths;
  const auto widest = std::max_element(widths.begin(), widths.end());
  *widest = std::max(20.0, *widest - over());
  return widths;
}

double height_of(const Canvas& canvas, const std::vector<std::string>& row,
                 const std::vector<double>& widths, const Lettering& lettering) {
  double height = line_step(lettering.points);
  for (std::size_t i = 0; i < row.size(); ++i)
    height = std::max(
        height, canvas.paragraph_height(widths[i] - kBetweenColumns + 0.3, row[i], lettering));
  return height + kRowAir;
}

std::vector<std::string> headings_of(const Table& table) {
  std::vector<std::string> texts;
  for (const auto& column : table.columns) texts.push_back(column.heading);
  return texts;
}

}  // namespace

Flow::Flow(Canvas& canvas, const SheetHead& head, const ResultHead& result, int pages, int first)
    : canvas_(canvas),
      head_(head),
      result_(result),
      pages_(pages),
      page_(first),
      box_(draw_frame(canvas, head, result, first, pages)),
      y_(box_.top_left.y) {}

void Flow::next_page() {
  canvas_.next_page(canvas_.size());
  box_ = draw_frame(canvas_, head_, result_, ++page_, pages_);
  y_ = box_.top_left.y;
}

void Flow::need(double height) {
  constexpr double kHeading = 9;
  if (!heading_.empty()) height += kHeading;
  if (y_ + height > box_.bottom_right.y && y_ > box_.top_left.y) next_page();
  if (heading_.empty()) return;
  y_ = report::heading(canvas_, {box_.top_left.x, y_ + 1}, width(), heading_) + 0.5;
  heading_.clear();
}

void Flow::keep(double height) {
  if (y_ + height > box_.bottom_right.y && y_ > box_.top_left.y) next_page();
}

void Flow::paragraph(std::string_view text, const Lettering& lettering) {
  need(canvas_.paragraph_height(width(), text, lettering));
  y_ = canvas_.paragraph({box_.top_left.x, y_}, width(), text, lettering) + 1;
}

void Flow::table_row(const std::vector<std::string>& cells, const Table& table,
                     const std::vector<double>& widths, double top, double height,
                     const Lettering& lettering) {
  double x = box_.top_left.x;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const double inner = widths[i] - kBetweenColumns;
    if (canvas_.text_width(cells[i], lettering) > inner + 0.3)
      canvas_.paragraph({x, top + 0.3}, inner + 0.3, cells[i], lettering);
    else if (table.columns[i].anchor == Anchor::Left)
      canvas_.text({x, top + 0.3 + lettering.points * 0.353}, cells[i], lettering);
    else
      canvas_.text({x + inner, top + 0.3 + lettering.points * 0.353}, cells[i],
                   lettering.anchored(Anchor::Right));
    x += widths[i];
  }
  y_ = top + height;
}

void Flow::table(const Table& table) {
  const auto widths = widths_of(canvas_, table, width() + kBetweenColumns);
  const auto headings = headings_of(table);
  const Lettering bold = Lettering{kText}.bold();
  const double heading_height = height_of(canvas_, headings, widths, bold);
  const double total = std::accumulate(widths.begin(), widths.end(), -kBetweenColumns);
  const auto head = [&] {
    table_row(headings, table, widths, y_, heading_height, bold);
    canvas_.line({{box_.top_left.x, y_}, {box_.top_left.x + total, y_}}, {0.4});
    y_ += 0.5;
  };
  // a short table stays whole
  double whole = heading_height + 7;
  for (const auto& row : table.rows) whole += height_of(canvas_, row, widths, {kText});
  need(whole < 0.6 * box_.height() ? whole : heading_height + 20);
  if (!table.title.empty()) {
    canvas_.text({box_.top_left.x, y_ + 4}, table.title, Lettering{9.5}.bold());
    y_ += 5.6;
  }
  head();
  std::size_t number = 0;
  for (const auto& row : table.rows) {
    const double height = height_of(canvas_, row, widths, {kText});
    if (y_ + height > box_.bottom_right.y) {
      next_page();
      head();
    }
    if (number++ % 2 == 1) {
      const double left = box_.top_left.x, right = left + total;
      canvas_.fill({{left, y_}, {right, y_}, {right, y_ + height}, {left, y_ + height}}, kTint);
    }
    table_row(row, table, widths, y_, height, {kText});
  }
  y_ += 1;
  for (const auto& note : table.notes) paragraph(note);
  y_ += 2;
}

void Flow::rows(const std::string& title, const std::vector<Row>& rows) {
  heading(title);
  need(static_cast<double>(rows.size()) * line_step(kText) * 1.12 + 3);
  double wide = 95;  // the longest label beside its value
  for (const auto& row : rows)
    wide = std::max(wide, canvas_.text_width(row.label, {kText}) + kBetweenColumns +
                              canvas_.text_width(row.value, Lettering{kText}.bold()));
  y_ = report::rows(canvas_, {box_.top_left.x, y_}, std::min(width(), wide), rows, kText) + 1;
}

void Flow::drawing(double height, const std::function<void(Canvas&, const Box&)>& draw) {
  need(height);
  draw(canvas_, {{box_.top_left.x, y_}, {box_.bottom_right.x, y_ + height}});
  y_ += height + 2;
}

void Flow::drawings(std::size_t count, std::size_t in_row, double height,
                    const std::function<void(Canvas&, const Box&, std::size_t)>& draw) {
  const double each = width() / static_cast<double>(in_row);
  for (std::size_t i = 0; i < count; i += in_row) {
    need(height);
    for (std::size_t k = i; k < std::min(count, i + in_row); ++k) {
      const double x = box_.top_left.x + each * static_cast<double>(k - i);
      draw(canvas_, {{x, y_}, {x + each - 3, y_ + height}}, k);
    }
    y_ += height + 2;
  }
}

void Flow::cautions(std::size_t from) {
  need(40);
  CautionsDrawn drawn =
      draw_cautions(canvas_, {{box_.top_left.x, y_}, box_.bottom_right}, result_, 9, from);
  while (drawn.next < caution_count(result_)) {
    next_page();
    drawn = draw_cautions(canvas_, box_, result_, 9, drawn.next);
  }
  y_ = drawn.y + 2;
}

std::string flow_pdf(const SheetHead& head, const ResultHead& result,
                     const std::function<void(Flow&)>& write) {
  Canvas counting = Canvas::svg(kA4Portrait, "");
  Flow count(counting, head, result, 1);
  write(count);
  Canvas canvas = Canvas::pdf(kA4Portrait, head.title + ": " + result.job, head.date);
  Flow flow(canvas, head, result, count.page());
  write(flow);
  return canvas.finish();
}

}  // namespace squaredig::report
