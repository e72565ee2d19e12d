#include "report/canvas.h"

#include "report/drawing_internal.h"
#include "report/markup.h"

namespace squaredig::report {

Lettering Lettering::bold() const {
  Lettering other = *this;
  other.weight = Weight::Bold;
  return other;
}

Lettering Lettering::anchored(Anchor at) const {
  Lettering other = *this;
  other.anchor = at;
  return other;
}

Lettering Lettering::on(Colour ground) const {
  Lettering other = *this;
  other.halo = ground;
  return other;
}

double line_step(double points) { return points * 1.3 / kPointsPerMm; }

Canvas::Canvas(PageSize size, std::unique_ptr<Drawing> drawing)
    : size_(size), drawing_(std::move(drawing)) {}
Canvas::~Canvas() = default;
Canvas::Canvas(Canvas&&) noexcept = default;
Canvas& Canvas::operator=(Canvas&&) noexcept = default;

Canvas Canvas::pdf(PageSize size, const std::string& title, const std::string& date) {
  return {size, drawing_on_pdf(size, clean_text(title), date)};
}

Canvas Canvas::svg(PageSize size, const std::string& title) {
  return {size, drawing_on_svg(size, title)};
}

Canvas Canvas::png(PageSize size, double pixels_per_mm) {
  return {size, drawing_on_png(size, pixels_per_mm)};
}

void Canvas::next_page(PageSize size) {
  drawing_->next_page(size);
  size_ = size;
}

void Canvas::line(const std::vector<At>& points, const Stroke& stroke) {
  drawing_->stroke(points, Drawing::Ends::Open, stroke);
}

void Canvas::polygon(const std::vector<At>& corners, const Stroke& stroke) {
  drawing_->stroke(corners, Drawing::Ends::Closed, stroke);
}

void Canvas::fill(const std::vector<At>& corners, Colour colour) {
  drawing_->fill({corners}, colour, nullptr);
}

void Canvas::fill(const std::vector<At>& corners, Colour colour, const Stroke& edge) {
  drawing_->fill({corners}, colour, &edge);
}

void Canvas::fill_each(const std::vector<std::vector<At>>& areas, Colour colour,
                       const Stroke& edge) {
  if (!areas.empty()) drawing_->fill(areas, colour, &edge);
}

void Canvas::circle(At centre, double radius, const Stroke& stroke) {
  drawing_->circle(centre, radius, stroke);
}

void Canvas::disc(At centre, double radius, Colour colour) {
  drawing_->disc(centre, radius, colour);
}

void Canvas::text(At at, std::string_view text, const Lettering& lettering) {
  drawing_->text(at, clean_text(text), lettering);
}

double Canvas::text_width(std::string_view text, const Lettering& lettering) const {
  return Layout(nullptr, clean_text(text), lettering).width_points() / kPointsPerMm;
}

double Canvas::paragraph(At top_left, double width, std::string_view text,
                         const Lettering& lettering) {
  const std::string clean = clean_text(text);
  double y = top_left.y;
  for (const auto& [start, length] : Layout(nullptr, clean, lettering).lines_within(width)) {
    const std::string_view line(clean.data() + start, static_cast<std::size_t>(length));
    drawing_->text({top_left.x, y + lettering.points / kPointsPerMm}, line, lettering);
    y += line_step(lettering.points);
  }
  return y;
}

double Canvas::paragraph_height(double width, std::string_view text,
                                const Lettering& lettering) const {
  const auto lines = Layout(nullptr, clean_text(text), lettering).lines_within(width);
  return static_cast<double>(lines.size()) * line_step(lettering.points);
}

void Canvas::push_clip(At top_left, At bottom_right) {
  drawing_->push_clip({top_left, bottom_right});
}
void Canvas::pop_clip() { drawing_->pop_clip(); }
void Canvas::begin_group(const Attributes& attributes) { drawing_->begin_group(attributes); }
void Canvas::end_group() { drawing_->end_group(); }
std::string Canvas::finish() { return drawing_->finish(); }

}  // namespace squaredig::report
