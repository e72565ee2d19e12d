#include <cairo-pdf.h>

#include <cmath>
#include <numbers>

#include "quantity/problem.h"
#include "report/drawing_internal.h"

namespace squaredig::report {
namespace {

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

class CairoDrawing : public Drawing {
 public:
  ~CairoDrawing() override {
    if (cairo_) cairo_destroy(cairo_);
    if (surface_) cairo_surface_destroy(surface_);
  }

  void stroke(const std::vector<At>& points, Ends ends, const Stroke& stroke) override {
    path({points}, ends);
    draw(stroke);
  }
  void fill(const std::vector<std::vector<At>>& areas, Colour colour, const Stroke* edge) override {
    path(areas, Ends::Closed);
    ink(colour);
    cairo_fill_preserve(cairo_);
    if (edge)
      draw(*edge);
    else
      cairo_new_path(cairo_);
  }
  void circle(At centre, double radius, const Stroke& stroke) override {
    round(centre, radius);
    draw(stroke);
  }
  void disc(At centre, double radius, Colour colour) override {
    round(centre, radius);
    ink(colour);
    cairo_fill(cairo_);
  }
  void text(At at, std::string_view text, const Lettering& lettering) override;
  void push_clip(const Box& box) override {
    cairo_save(cairo_);
    cairo_rectangle(cairo_, box.top_left.x, box.top_left.y, box.width(), box.height());
    cairo_clip(cairo_);
  }
  void pop_clip() override { cairo_restore(cairo_); }
  void begin_group(const Attributes&) override {}
  void end_group() override {}
  std::string finish() override {
    cairo_show_page(cairo_);
    require_ok(cairo_status(cairo_));
    cairo_surface_finish(surface_);
    require_ok(cairo_surface_status(surface_));
    return std::move(bytes_);
  }

 protected:
  void begin(cairo_surface_t* surface, double scale) {
    surface_ = surface;
    require_ok(cairo_surface_status(surface));
    cairo_ = cairo_create(surface);
    cairo_scale(cairo_, scale, scale);
    cairo_set_line_join(cairo_, CAIRO_LINE_JOIN_ROUND);
    cairo_set_line_cap(cairo_, CAIRO_LINE_CAP_BUTT);
  }
  void ink(Colour c) const { cairo_set_source_rgb(cairo_, c.red, c.green, c.blue); }

  std::string bytes_;
  cairo_surface_t* surface_ = nullptr;
  cairo_t* cairo_ = nullptr;

 private:
  void path(const std::vector<std::vector<At>>& parts, Ends ends) const {
    cairo_new_path(cairo_);
    for (const auto& points : parts) {
      cairo_new_sub_path(cairo_);
      for (const At p : points) cairo_line_to(cairo_, p.x, p.y);
      if (ends == Ends::Closed) cairo_close_path(cairo_);
    }
  }
  void round(At centre, double radius) const {
    cairo_new_path(cairo_);
    cairo_arc(cairo_, centre.x, centre.y, radius, 0, 2 * std::numbers::pi);
  }
  void draw(const Stroke& stroke) const {
    ink(stroke.colour);
    cairo_set_line_width(cairo_, stroke.width);
    cairo_set_dash(cairo_, stroke.dashes.data(), static_cast<int>(stroke.dashes.size()), 0);
    cairo_stroke(cairo_);
  }
};

void CairoDrawing::text(At at, std::string_view text, const Lettering& lettering) {
  const Layout layout(cairo_, text, lettering);
  const double share = lettering.anchor == Anchor::Left     ? 0
                       : lettering.anchor == Anchor::Middle ? 0.5
                                                            : 1;
  cairo_save(cairo_);
  cairo_translate(cairo_, at.x, at.y);
  cairo_rotate(cairo_, -lettering.turned_degrees * std::numbers::pi / 180);
  cairo_scale(cairo_, 1 / kPointsPerMm, 1 / kPointsPerMm);
  const At from{-share * layout.width_points(), -layout.baseline_points()};
  if (lettering
          .halo) {  // a box: an outline round every letter would make the file ten times larger
    const double p = lettering.points;
    cairo_rectangle(cairo_, from.x - 0.1 * p, -0.84 * p, layout.width_points() + 0.2 * p, 0.95 * p);
    ink(*lettering.halo);
    cairo_fill(cairo_);
  }
  cairo_move_to(cairo_, from.x, from.y);
  ink(lettering.colour);
  pango_cairo_show_layout(cairo_, layout.get());
  cairo_restore(cairo_);
}

class PdfDrawing : public CairoDrawing {
 public:
  PdfDrawing(PageSize size, const std::string& title, const std::string& date) {
    cairo_surface_t* surface = cairo_pdf_surface_create_for_stream(
        append, &bytes_, size.width * kPointsPerMm, size.height * kPointsPerMm);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE,
                                   ((date.empty() ? "1970-01-01" : date) + "T00:00:00Z").c_str());
    begin(surface, kPointsPerMm);
  }
  void next_page(PageSize size) override {
    cairo_show_page(cairo_);
    cairo_pdf_surface_set_size(surface_, size.width * kPointsPerMm, size.height * kPointsPerMm);
  }
};

class PngDrawing : public CairoDrawing {
 public:
  PngDrawing(PageSize size, double pixels_per_mm) {
    begin(cairo_image_surface_create(CAIRO_FORMAT_RGB24,
                                     static_cast<int>(std::ceil(size.width * pixels_per_mm)),
                                     static_cast<int>(std::ceil(size.height * pixels_per_mm))),
          pixels_per_mm);
    ink(kPaper);
    cairo_paint(cairo_);
  }
  void next_page(PageSize) override {
    ink(kPaper);
    cairo_paint(cairo_);
  }
  std::string finish() override {
    require_ok(cairo_surface_write_to_png_stream(surface_, append, &bytes_));
    return CairoDrawing::finish();
  }
};

}  // namespace

std::unique_ptr<Drawing> drawing_on_pdf(PageSize size, const std::string& title,
                                        const std::string& date) {
  return std::make_unique<PdfDrawing>(size, title, date);
}

std::unique_ptr<Drawing> drawing_on_png(PageSize size, double pixels_per_mm) {
  return std::make_unique<PngDrawing>(size, pixels_per_mm);
}

}  // namespace squaredig::report
