// One drawing code for paper and screen: PDF, SVG and PNG from the same calls.
//
// What: strokes, fills and lettering on a page, in millimetres from its top left corner, y down.
// Requires: finite coordinates.
// Laws: canvas.1  the same calls give the same bytes, on any day; canvas.2  a millimetre is a
//   millimetre: a stroke 100 long measures 100 mm on paper; canvas.3  text stays text in PDF and
//   SVG.
// Accuracy: 0.01 mm.
// Errors: Refusal (storage) when the drawing library gives up.
// Source: cairo and pango; PDF 1.5, SVG 1.1.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace squaredig::report {

struct At {
  double x = 0, y = 0;
};

struct Colour {
  double red = 0, green = 0, blue = 0;
};
constexpr Colour kInk{0, 0, 0};
constexpr Colour kPaper{1, 1, 1};

struct Stroke {
  double width = 0.25;
  Colour colour = kInk;
  std::vector<double> dashes = {};
};

enum class Anchor { Left, Middle, Right };

struct Lettering {
  double points = 9;
  Colour colour = kInk;
  Anchor anchor = Anchor::Left;
  bool bold = false;
  double turned_degrees = 0;  // anticlockwise
};

struct PageSize {
  double width = 0, height = 0;  // mm
};
constexpr PageSize kA3Landscape{420, 297};
constexpr PageSize kA4Portrait{210, 297};
constexpr PageSize kA4Landscape{297, 210};

class Canvas {
 public:
  // `date` as "2026-03-20"; stands in the document's own data.
  static Canvas pdf(PageSize size, const std::string& title, const std::string& date);
  static Canvas svg(PageSize size);
  static Canvas png(PageSize size, double pixels_per_mm);
  ~Canvas();
  Canvas(Canvas&&) noexcept;
  Canvas& operator=(Canvas&&) noexcept;

  PageSize size() const;
  // Ends the page; the next one may have another size. Only a PDF has several pages.
  void next_page(PageSize size);

  void line(const std::vector<At>& points, const Stroke& stroke);
  void polygon(const std::vector<At>& corners, const Stroke& stroke);
  void fill(const std::vector<At>& corners, Colour colour);
  void circle(At centre, double radius, const Stroke& stroke);
  void disc(At centre, double radius, Colour colour);
  // `at` is the baseline's anchor.
  void text(At at, std::string_view text, const Lettering& lettering);
  double text_width(std::string_view text, const Lettering& lettering) const;
  // Text broken into lines of at most `width`; gives the y below the last line.
  double paragraph(At top_left, double width, std::string_view text, const Lettering& lettering);
  // What is drawn until pop_clip stays inside the box.
  void push_clip(At top_left, At bottom_right);
  void pop_clip();

  // Ends the drawing and gives its bytes.
  std::string finish();

 private:
  struct Drawing;
  explicit Canvas(std::unique_ptr<Drawing> drawing);
  std::unique_ptr<Drawing> drawing_;
};

}  // namespace squaredig::report
