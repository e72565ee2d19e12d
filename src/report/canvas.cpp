#include "report/canvas.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>
#include <pango/pangocairo.h>

#include <cmath>
#include <numbers>

#include "quantity/problem.h"

namespace squaredig::report {
namespace {

constexpr double kPointsPerMm = 72.0 / 25.4;

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

void require_ok(cairo_status_t status) {
  if (status == CAIRO_STATUS_SUCCESS) return;
  throw Refusal(Problem{ProblemKind::Storage,
                        {"drawing", 1, 1},
                        cairo_status_to_string(status),
                        "a page that can be drawn",
                        "free some memory and run again"});
}

}  // namespace

struct Canvas::Drawing {
  enum class Kind { Pdf, Svg, Png };
  Kind kind = Kind::Svg;
  PageSize size;
  std::string bytes;
  cairo_surface_t* surface = nullptr;
  cairo_t* cairo = nullptr;

  Drawing() = default;
  Drawing(const Drawing&) = delete;
  Drawing& operator=(const Drawing&) = delete;
  ~Drawing() {
    if (cairo) cairo_destroy(cairo);
    if (surface) cairo_surface_destroy(surface);
  }

  void begin(double scale) {
    require_ok(cairo_surface_status(surface));
    cairo = cairo_create(surface);
    cairo_scale(cairo, scale, scale);
    cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
    cairo_set_line_cap(cairo, CAIRO_LINE_CAP_BUTT);
  }

  void path(const std::vector<At>& points) const {
    cairo_new_path(cairo);
    for (const At p : points) cairo_line_to(cairo, p.x, p.y);
  }

  void ink(Colour c) const { cairo_set_source_rgb(cairo, c.red, c.green, c.blue); }

  void stroke(const Stroke& stroke) const {
    ink(stroke.colour);
    cairo_set_line_width(cairo, stroke.width);
    cairo_set_dash(cairo, stroke.dashes.data(), static_cast<int>(stroke.dashes.size()), 0);
    cairo_stroke(cairo);
  }

  // A laid-out text at 72 points to the inch, one unit being a point.
  PangoLayout* layout(std::string_view text, const Lettering& lettering) const {
    PangoLayout* made = pango_cairo_create_layout(cairo);
    PangoFontDescription* font = pango_font_description_new();
    pango_font_description_set_family(font, "DejaVu Sans");
    pango_font_description_set_absolute_size(font, lettering.points * PANGO_SCALE);
    if (lettering.bold) pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
    pango_layout_set_font_description(made, font);
    pango_font_description_free(font);
    pango_layout_set_text(made, text.data(), static_cast<int>(text.size()));
    return made;
  }
};

Canvas::Canvas(std::unique_ptr<Drawing> drawing) : drawing_(std::move(drawing)) {}
Canvas::~Canvas() = default;
Canvas::Canvas(Canvas&&) noexcept = default;
Canvas& Canvas::operator=(Canvas&&) noexcept = default;

Canvas Canvas::pdf(PageSize size, const std::string& title, const std::string& date) {
  auto d = std::make_unique<Drawing>();
  d->kind = Drawing::Kind::Pdf;
  d->size = size;
  d->surface = cairo_pdf_surface_create_for_stream(append, &d->bytes, size.width * kPointsPerMm,
                                                   size.height * kPointsPerMm);
  cairo_pdf_surface_set_metadata(d->surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
  cairo_pdf_surface_set_metadata(d->surface, CAIRO_PDF_METADATA_CREATE_DATE,
                                 (date + "T00:00:00Z").c_str());
  d->begin(kPointsPerMm);
  return Canvas(std::move(d));
}

Canvas Canvas::svg(PageSize size) {
  auto d = std::make_unique<Drawing>();
  d->kind = Drawing::Kind::Svg;
  d->size = size;
  d->surface = cairo_svg_surface_create_for_stream(append, &d->bytes, size.width * kPointsPerMm,
                                                   size.height * kPointsPerMm);
  d->begin(kPointsPerMm);
  return Canvas(std::move(d));
}

Canvas Canvas::png(PageSize size, double pixels_per_mm) {
  auto d = std::make_unique<Drawing>();
  d->kind = Drawing::Kind::Png;
  d->size = size;
  d->surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24,
                                          static_cast<int>(std::ceil(size.width * pixels_per_mm)),
                                          static_cast<int>(std::ceil(size.height * pixels_per_mm)));
  d->begin(pixels_per_mm);
  d->ink(kPaper);
  cairo_paint(d->cairo);
  return Canvas(std::move(d));
}

PageSize Canvas::size() const { return drawing_->size; }

void Canvas::next_page(PageSize size) {
  cairo_show_page(drawing_->cairo);
  drawing_->size = size;
  if (drawing_->kind == Drawing::Kind::Pdf)
    cairo_pdf_surface_set_size(drawing_->surface, size.width * kPointsPerMm,
                               size.height * kPointsPerMm);
}

void Canvas::line(const std::vector<At>& points, const Stroke& stroke) {
  drawing_->path(points);
  drawing_->stroke(stroke);
}

void Canvas::polygon(const std::vector<At>& corners, const Stroke& stroke) {
  drawing_->path(corners);
  cairo_close_path(drawing_->cairo);
  drawing_->stroke(stroke);
}

void Canvas::fill(const std::vector<At>& corners, Colour colour) {
  drawing_->path(corners);
  drawing_->ink(colour);
  cairo_fill(drawing_->cairo);
}

void Canvas::circle(At centre, double radius, const Stroke& stroke) {
  cairo_new_path(drawing_->cairo);
  cairo_arc(drawing_->cairo, centre.x, centre.y, radius, 0, 2 * std::numbers::pi);
  drawing_->stroke(stroke);
}

void Canvas::disc(At centre, double radius, Colour colour) {
  cairo_new_path(drawing_->cairo);
  cairo_arc(drawing_->cairo, centre.x, centre.y, radius, 0, 2 * std::numbers::pi);
  drawing_->ink(colour);
  cairo_fill(drawing_->cairo);
}

void Canvas::text(At at, std::string_view text, const Lettering& lettering) {
  cairo_t* cairo = drawing_->cairo;
  PangoLayout* layout = drawing_->layout(text, lettering);
  int width = 0;
  pango_layout_get_size(layout, &width, nullptr);
  const double share = lettering.anchor == Anchor::Left     ? 0
                       : lettering.anchor == Anchor::Middle ? 0.5
                                                            : 1;
  cairo_save(cairo);
  cairo_translate(cairo, at.x, at.y);
  cairo_rotate(cairo, -lettering.turned_degrees * std::numbers::pi / 180);
  cairo_scale(cairo, 1 / kPointsPerMm, 1 / kPointsPerMm);
  cairo_move_to(cairo, -share * width / PANGO_SCALE,
                -static_cast<double>(pango_layout_get_baseline(layout)) / PANGO_SCALE);
  drawing_->ink(lettering.colour);
  pango_cairo_show_layout(cairo, layout);
  cairo_restore(cairo);
  g_object_unref(layout);
}

double Canvas::text_width(std::string_view text, const Lettering& lettering) const {
  PangoLayout* layout = drawing_->layout(text, lettering);
  int width = 0;
  pango_layout_get_size(layout, &width, nullptr);
  g_object_unref(layout);
  return static_cast<double>(width) / PANGO_SCALE / kPointsPerMm;
}

double Canvas::paragraph(At top_left, double width, std::string_view text,
                         const Lettering& lettering) {
  cairo_t* cairo = drawing_->cairo;
  PangoLayout* layout = drawing_->layout(text, lettering);
  pango_layout_set_width(layout, static_cast<int>(width * kPointsPerMm * PANGO_SCALE));
  pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  int height = 0;
  pango_layout_get_size(layout, nullptr, &height);
  cairo_save(cairo);
  cairo_translate(cairo, top_left.x, top_left.y);
  cairo_scale(cairo, 1 / kPointsPerMm, 1 / kPointsPerMm);
  cairo_move_to(cairo, 0, 0);
  drawing_->ink(lettering.colour);
  pango_cairo_show_layout(cairo, layout);
  cairo_restore(cairo);
  g_object_unref(layout);
  return top_left.y + static_cast<double>(height) / PANGO_SCALE / kPointsPerMm;
}

void Canvas::push_clip(At top_left, At bottom_right) {
  cairo_save(drawing_->cairo);
  cairo_rectangle(drawing_->cairo, top_left.x, top_left.y, bottom_right.x - top_left.x,
                  bottom_right.y - top_left.y);
  cairo_clip(drawing_->cairo);
}

void Canvas::pop_clip() { cairo_restore(drawing_->cairo); }

std::string Canvas::finish() {
  auto& d = *drawing_;
  if (d.kind == Drawing::Kind::Png)
    require_ok(cairo_surface_write_to_png_stream(d.surface, append, &d.bytes));
  cairo_show_page(d.cairo);
  require_ok(cairo_status(d.cairo));
  cairo_surface_finish(d.surface);
  require_ok(cairo_surface_status(d.surface));
  return std::move(d.bytes);
}

}  // namespace squaredig::report
