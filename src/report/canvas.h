// One drawing code for paper and screen: PDF, SVG and PNG from the same calls.
//
// What: strokes, fills and lettering on a page, in millimetres from its top left corner, y down.
// Requires: finite coordinates.
// Laws: canvas.1  the same calls give the same bytes, on any day; canvas.2  a millimetre is a
//   millimetre: a stroke 100 long measures 100 mm on paper; canvas.3  text stays text in PDF and
//   SVG, and whatever it says it is text alone.
// Accuracy: 0.01 mm.
// Errors: Refusal (storage) when the drawing library gives up.
// Source: cairo and pango; PDF 1.5, SVG 1.1.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace squaredig::report {

struct At {
  double x = 0, y = 0;
};

struct Box {
  At top_left, bottom_right;
  double width() const { return bottom_right.x - top_left.x; }
  double height() const { return bottom_right.y - top_left.y; }
  At middle() const {
    return {(top_left.x + bottom_right.x) / 2, (top_left.y + bottom_right.y) / 2};
  }
  Box inside(double margin) const {
    return {{top_left.x + margin, top_left.y + margin},
            {bottom_right.x - margin, bottom_right.y - margin}};
  }
};

struct Colour {
  double red = 0, green = 0, blue = 0;
};
constexpr Colour kInk{0, 0, 0};
constexpr Colour kPaper{1, 1, 1};
constexpr Colour kQuiet{0.33, 0.33, 0.33};

struct Stroke {
  double width = 0.25;
  Colour colour = kInk;
  std::vector<double> dashes = {};
};

enum class Anchor { Left, Middle, Right };
enum class Weight { Regular, Bold };

struct Lettering {
  double points = 9;
  Colour colour = kInk;
  Anchor anchor = Anchor::Left;
  Weight weight = Weight::Regular;
  double turned_degrees = 0;                  // anticlockwise
  std::optional<Colour> halo = std::nullopt;  // drawn round the letters, over what lies below

  Lettering bold() const;
  Lettering anchored(Anchor at) const;
  Lettering on(Colour ground) const;  // with a halo
};

struct PageSize {
  double width = 0, height = 0;  // mm
};
constexpr PageSize kA3Landscape{420, 297};
constexpr PageSize kA4Portrait{210, 297};
constexpr PageSize kA4Landscape{297, 210};

// Names a group of strokes for the page that shows the SVG: class, data-..., and the like.
using Attributes = std::vector<std::pair<std::string, std::string>>;

class Drawing;

class Canvas {
 public:
  // `date` as "2026-03-20"; stands in the document's own data, 1970-01-01 where it is empty.
  static Canvas pdf(PageSize size, const std::string& title, const std::string& date);
  // `title` is what a screen reader says; empty: it passes by.
  static Canvas svg(PageSize size, const std::string& title);
  static Canvas png(PageSize size, double pixels_per_mm);
  ~Canvas();
  Canvas(Canvas&&) noexcept;
  Canvas& operator=(Canvas&&) noexcept;

  PageSize size() const { return size_; }
  // Ends the page; the next one may have another size. Only a PDF has several pages.
  void next_page(PageSize size);

  void line(const std::vector<At>& points, const Stroke& stroke);
  void polygon(const std::vector<At>& corners, const Stroke& stroke);
  void fill(const std::vector<At>& corners, Colour colour);
  void fill(const std::vector<At>& corners, Colour colour, const Stroke& edge);
  // Many areas of one colour as one thing to draw.
  void fill_each(const std::vector<std::vector<At>>& areas, Colour colour, const Stroke& edge);
  void circle(At centre, double radius, const Stroke& stroke);
  void disc(At centre, double radius, Colour colour);
  // `at` is the baseline's anchor.
  void text(At at, std::string_view text, const Lettering& lettering);
  double text_width(std::string_view text, const Lettering& lettering) const;
  // Text broken into lines of at most `width`; gives the y below the last line.
  double paragraph(At top_left, double width, std::string_view text, const Lettering& lettering);
  double paragraph_height(double width, std::string_view text, const Lettering& lettering) const;
  // What is drawn until pop_clip stays inside the box.
  void push_clip(At top_left, At bottom_right);
  void pop_clip();
  // Seen in SVG alone.
  void begin_group(const Attributes& attributes);
  void end_group();

  // Ends the drawing and gives its bytes.
  std::string finish();

 private:
  Canvas(PageSize size, std::unique_ptr<Drawing> drawing);
  PageSize size_;
  std::unique_ptr<Drawing> drawing_;
};

// The step from one line of text to the next, in millimetres.
double line_step(double points);

}  // namespace squaredig::report
