// What a canvas draws on: one class for each kind of page.
#pragma once

#include <cairo.h>
#include <pango/pangocairo.h>

#include "report/canvas.h"

namespace squaredig::report {

constexpr double kPointsPerMm = 72.0 / 25.4;
constexpr const char* kFontFamily = "DejaVu Sans";

class Drawing {
 public:
  enum class Ends { Open, Closed };
  Drawing() = default;
  Drawing(const Drawing&) = delete;
  Drawing& operator=(const Drawing&) = delete;
  virtual ~Drawing() = default;
  virtual void next_page(PageSize size) = 0;
  virtual void stroke(const std::vector<At>& points, Ends ends, const Stroke& stroke) = 0;
  // `edge` may be null
  virtual void fill(const std::vector<std::vector<At>>& areas, Colour colour,
                    const Stroke* edge) = 0;
  virtual void circle(At centre, double radius, const Stroke& stroke) = 0;
  virtual void disc(At centre, double radius, Colour colour) = 0;
  virtual void text(At at, std::string_view text, const Lettering& lettering) = 0;
  virtual void push_clip(const Box& box) = 0;
  virtual void pop_clip() = 0;
  virtual void begin_group(const Attributes& attributes) = 0;
  virtual void end_group() = 0;
  virtual std::string finish() = 0;
};

std::unique_ptr<Drawing> drawing_on_pdf(PageSize size, const std::string& title,
                                        const std::string& date);
std::unique_ptr<Drawing> drawing_on_png(PageSize size, double pixels_per_mm);
std::unique_ptr<Drawing> drawing_on_svg(PageSize size, const std::string& title);

// A laid-out text, one unit being a point. `cairo` may be null: then it is only measured.
class Layout {
 public:
  Layout(cairo_t* cairo, std::string_view text, const Lettering& lettering);
  ~Layout() { g_object_unref(layout_); }
  Layout(const Layout&) = delete;
  Layout& operator=(const Layout&) = delete;
  double width_points() const;
  double baseline_points() const;
  // The byte ranges of the lines when broken at this width.
  std::vector<std::pair<int, int>> lines_within(double width_mm) const;
  PangoLayout* get() const { return layout_; }

 private:
  PangoLayout* layout_;
};

}  // namespace squaredig::report
