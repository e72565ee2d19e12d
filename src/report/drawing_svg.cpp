// SVG as text, so that letters stay letters and a page can find each part by its class: the vector
// format of cairo itself turns letters into outlines.
#include <cmath>

#include "quantity/number_text.h"
#include "report/drawing_internal.h"
#include "report/markup.h"

namespace squaredig::report {
namespace {

// Hundredths of a millimetre, without trailing zeros.
std::string mm(double value) {
  std::string text = fixed(value, 2);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string hex(Colour c) {
  constexpr const char* kDigits = "0123456789abcdef";
  std::string text = "#";
  for (const double channel : {c.red, c.green, c.blue}) {
    const int n = static_cast<int>(std::lround(255 * channel));
    text += kDigits[n / 16];
    text += kDigits[n % 16];
  }
  return text;
}

class SvgDrawing : public Drawing {
 public:
  SvgDrawing(PageSize size, const std::string& title) {
    out_ = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + mm(size.width) + " " +
           mm(size.height) +
           "\" font-family=\"'DejaVu Sans',Verdana,sans-serif\" stroke-linejoin=\"round\"" +
           (title.empty() ? " aria-hidden=\"true\">"
                          : " role=\"img\" aria-label=\"" + escaped(title) + "\">");
  }
  void next_page(PageSize) override {}
  void stroke(const std::vector<At>& points, Ends ends, const Stroke& stroke) override {
    path({points}, ends);
    out_ += " fill=\"none\"" + pen(stroke) + "/>";
  }
  void fill(const std::vector<std::vector<At>>& areas, Colour colour, const Stroke* edge) override {
    path(areas, Ends::Closed);
    out_ += " fill=\"" + hex(colour) + "\"" + (edge ? pen(*edge) : "") + "/>";
  }
  void circle(At centre, double radius, const Stroke& stroke) override {
    out_ += round(centre, radius) + " fill=\"none\"" + pen(stroke) + "/>";
  }
  void disc(At centre, double radius, Colour colour) override {
    out_ += round(centre, radius) + " fill=\"" + hex(colour) + "\"/>";
  }
  void text(At at, std::string_view text, const Lettering& lettering) override;
  void push_clip(const Box& box) override {
    const std::string x = mm(box.top_left.x), y = mm(box.top_left.y);
    const std::string w = mm(box.width()), h = mm(box.height());
    out_ += "<svg x=\"" + x + "\" y=\"" + y + "\" width=\"" + w + "\" height=\"" + h +
            "\" viewBox=\"" + x + " " + y + " " + w + " " + h + "\">";
  }
  void pop_clip() override { out_ += "</svg>"; }
  void begin_group(const Attributes& attributes) override {
    out_ += "<g";
    for (const auto& [name, value] : attributes) out_ += " " + name + "=\"" + escaped(value) + "\"";
    out_ += ">";
  }
  void end_group() override { out_ += "</g>"; }
  std::string finish() override { return std::move(out_) + "</svg>\n"; }

 private:
  void path(const std::vector<std::vector<At>>& parts, Ends ends) {
    out_ += "<path d=\"";
    for (const auto& points : parts) {
      for (std::size_t i = 0; i < points.size(); ++i)
        out_ += (i ? "L" : "M") + mm(points[i].x) + " " + mm(points[i].y);
      if (ends == Ends::Closed) out_ += "Z";
    }
    out_ += "\"";
  }
  static std::string round(At centre, double radius) {
    return "<circle cx=\"" + mm(centre.x) + "\" cy=\"" + mm(centre.y) + "\" r=\"" + mm(radius) +
           "\"";
  }
  static std::string pen(const Stroke& stroke) {
    std::string text =
        " stroke=\"" + hex(stroke.colour) + "\" stroke-width=\"" + mm(stroke.width) + "\"";
    if (stroke.dashes.empty()) return text;
    text += " stroke-dasharray=\"";
    for (std::size_t i = 0; i < stroke.dashes.size(); ++i)
      text += (i ? " " : "") + mm(stroke.dashes[i]);
    return text + "\"";
  }

  std::string out_;
};

void SvgDrawing::text(At at, std::string_view text, const Lettering& lettering) {
  const double size = lettering.points / kPointsPerMm;
  out_ += "<text x=\"" + mm(at.x) + "\" y=\"" + mm(at.y) + "\" font-size=\"" + mm(size) + "\"";
  if (lettering.anchor != Anchor::Left)
    out_ += lettering.anchor == Anchor::Middle ? " text-anchor=\"middle\"" : " text-anchor=\"end\"";
  if (lettering.weight == Weight::Bold) out_ += " font-weight=\"bold\"";
  if (lettering.turned_degrees != 0)
    out_ += " transform=\"rotate(" + mm(-lettering.turned_degrees) + " " + mm(at.x) + " " +
            mm(at.y) + ")\"";
  if (lettering.halo)
    // wide enough to meet over a decimal point: a line seen above it makes a colon of it
    out_ += " stroke=\"" + hex(*lettering.halo) + "\" stroke-width=\"" + mm(0.56 * size) +
            "\" paint-order=\"stroke\"";
  if (lettering.colour.red + lettering.colour.green + lettering.colour.blue > 0)
    out_ += " fill=\"" + hex(lettering.colour) + "\"";
  out_ += ">" + escaped(text) + "</text>";
}

}  // namespace

std::unique_ptr<Drawing> drawing_on_svg(PageSize size, const std::string& title) {
  return std::make_unique<SvgDrawing>(size, title);
}

}  // namespace squaredig::report
