#include "report/sheet.h"

namespace squaredig::report {
namespace {

constexpr Colour kQuiet{0.35, 0.35, 0.35};
constexpr double kMargin = 10;

void draw_bar(Canvas& canvas, At left) {
  const Stroke stroke{0.5};
  canvas.line({left, {left.x + 100, left.y}}, stroke);
  for (int i = 0; i <= 10; ++i)
    canvas.line({{left.x + 10 * i, left.y - (i % 5 ? 1.0 : 2.0)}, {left.x + 10 * i, left.y}},
                stroke);
  canvas.text({left.x + 102, left.y}, "measure me: 100 mm", {7});
}

std::string hashes(const ResultHead& result) {
  std::string text = "Inputs (SHA-256, first 12): ";
  for (const auto& input : result.inputs)
    text += input.file + " " + input.sha256.substr(0, 12) + "  ";
  return text;
}

std::string job_line(const SheetHead& head) {
  std::string text = head.date;
  if (!head.revision.empty()) text += "   revision " + head.revision;
  if (!head.drawing.empty()) text += "   drawing " + head.drawing;
  if (!head.prepared_by.empty()) text += "   by " + head.prepared_by;
  return text;
}

}  // namespace

Frame draw_frame(Canvas& canvas, const SheetHead& head, const ResultHead& result, int page,
                 int pages) {
  const PageSize size = canvas.size();
  const double right = size.width - kMargin;
  canvas.text({kMargin, 16}, head.title, {16, kInk, Anchor::Left, true});
  const double after = kMargin + canvas.text_width(head.title, {16, kInk, Anchor::Left, true}) + 6;
  canvas.push_clip({after, 5}, {right - 60, 20});
  canvas.text({after, 16}, result.job, {11});
  canvas.pop_clip();
  canvas.text({right, 12}, job_line(head), {8, kInk, Anchor::Right});
  canvas.text({right, 16.5}, "all lengths and levels in metres", {8, kQuiet, Anchor::Right});
  canvas.line({{kMargin, 19}, {right, 19}}, {0.6});
  const double foot = size.height - kMargin;
  canvas.line({{kMargin, foot - 8}, {right, foot - 8}}, {0.3});
  draw_bar(canvas, {kMargin, foot - 2});
  canvas.push_clip({kMargin, foot - 1}, {right - 50, foot + 4});
  canvas.text({kMargin, foot + 2.5}, hashes(result), {5.5, kQuiet});
  canvas.pop_clip();
  canvas.text({right, foot - 2}, "page " + std::to_string(page) + " of " + std::to_string(pages),
              {8, kInk, Anchor::Right});
  canvas.text({right, foot + 2.5}, "squaredig " + head.version, {6, kQuiet, Anchor::Right});
  return {{kMargin, 22}, {right, foot - 10}};
}

const std::vector<std::string>& standing_cautions() {
  static const std::vector<std::string> words{
      "Dimensions only. Batters, shoring, dewatering, access and entry are decided on site by a "
      "competent person under local law.",
      "Rain, vibration and loads change the ground: inspect again.",
      "No leave to enter or to stand within the machine's reach.",
      "Locate buried and overhead services; only those entered are shown.",
      "Fence the edge; keep spoil and plant back as directed.",
      "Nearby footings can be undermined: ask the engineer.",
      "No plant over the tank before its designer's cover. An empty tank can float before it is "
      "covered."};
  return words;
}

double draw_cautions(Canvas& canvas, At top_left, double width, const ResultHead& result,
                     double points) {
  double y = heading(canvas, top_left, width, "Cautions");
  const auto line = [&](const std::string& text, bool ours) {  // ours: of this job
    canvas.text({top_left.x, y + points * 0.36}, "\xE2\x80\xA2", {points});
    y = canvas.paragraph({top_left.x + 3, y}, width - 3, text, {points, kInk, Anchor::Left, ours});
  };
  for (const auto& text : result.cautions) line(text, true);
  for (const auto& finding : result.findings) line(finding.text, true);
  for (const auto& text : standing_cautions()) line(text, false);
  return y;
}

double heading(Canvas& canvas, At at, double width, std::string_view text) {
  canvas.text({at.x, at.y + 4}, text, {10, kInk, Anchor::Left, true});
  canvas.line({{at.x, at.y + 5.5}, {at.x + width, at.y + 5.5}}, {0.3});
  return at.y + 7;
}

double rows(Canvas& canvas, At at, double width, const std::vector<Row>& rows, double points) {
  const double step = points * 0.353 * 1.45;
  double y = at.y;
  for (const auto& row : rows) {
    y += step;
    canvas.text({at.x, y}, row.label, {points});
    canvas.text({at.x + width, y}, row.value, {points, kInk, Anchor::Right, true});
  }
  return y + step * 0.6;
}

}  // namespace squaredig::report
