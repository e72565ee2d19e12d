#include "report/sheet.h"

#include <algorithm>

namespace squaredig::report {
namespace {

constexpr double kMargin = 10;
constexpr std::string_view kOverprint = "NO BATTER GIVEN: support by others";

void draw_bar(Canvas& canvas, At left) {
  canvas.begin_group({{"class", "bar"}});
  canvas.line({left, {left.x + 100, left.y}}, {0.5});
  for (int i = 0; i <= 10; ++i)
    canvas.line({{left.x + 10 * i, left.y - (i % 5 ? 1.2 : 2.4)}, {left.x + 10 * i, left.y}},
                {0.35});
  canvas.text({left.x + 102.5, left.y}, "measure me: 100 mm", {8.5});
  canvas.end_group();
}

std::string hashes(const ResultHead& result) {
  std::string text = "inputs (SHA-256, first 12 of 64): ";
  for (std::size_t i = 0; i < result.inputs.size(); ++i)
    text += (i ? " \xC2\xB7 " : "") + result.inputs[i].file + "\xC2\xA0" +
            result.inputs[i].sha256.substr(0, 12);
  return text;
}

// The title in a black tab, the job's name beside it.
void draw_title(Canvas& canvas, const SheetHead& head, const ResultHead& result, double right) {
  const Lettering title = Lettering{15, kPaper}.bold();
  const double tab = kMargin + canvas.text_width(head.title, title) + 8;
  canvas.fill({{kMargin, 8}, {tab, 8}, {tab, 18}, {kMargin, 18}}, kInk);
  canvas.text({kMargin + 4, 14.9}, head.title, title);
  const std::string meta = job_line(head);
  const double meta_width =
      std::max(canvas.text_width(meta, {9}), canvas.text_width("metres throughout", {8.5}));
  canvas.text({right, 12}, meta, {9, kInk, Anchor::Right});
  canvas.text({right, 16.6}, "metres throughout", {8.5, kQuiet, Anchor::Right});
  canvas.push_clip({tab + 2, 6}, {right - meta_width - 4, 18.4});
  canvas.text({tab + 5, 14.9}, result.job, Lettering{13}.bold());
  canvas.pop_clip();
  canvas.line({{kMargin, 18}, {right, 18}}, {0.7});
}

}  // namespace

std::string job_line(const SheetHead& head) {
  std::string text = head.date.empty() ? "no date in the job" : head.date;
  const auto add = [&](const char* what, const std::string& value) {
    if (!value.empty()) text += std::string(" \xC2\xB7 ") + what + " " + value;
  };
  add("revision", head.revision);
  add("drawing", head.drawing);
  add("by", head.prepared_by);
  return text;
}

Box draw_frame(Canvas& canvas, const SheetHead& head, const ResultHead& result, int page,
               int pages) {
  const PageSize size = canvas.size();
  const double right = size.width - kMargin, foot = size.height - 8;
  canvas.begin_group({{"class", "frame"}});
  draw_title(canvas, head, result, right);
  const Lettering small{6.5, kQuiet};
  const double wide = right - kMargin;
  // all of them, however many lines they take
  const double hash_top = foot - canvas.paragraph_height(wide, hashes(result), small);
  canvas.paragraph({kMargin, hash_top}, wide, hashes(result), small);
  draw_bar(canvas, {kMargin, hash_top - 2.5});
  canvas.text({right, hash_top - 2.5},
              "page " + std::to_string(page) + " of " + std::to_string(pages) +
                  " \xC2\xB7 squaredig " + head.version,
              {8.5, kInk, Anchor::Right});
  canvas.line({{kMargin, hash_top - 7}, {right, hash_top - 7}}, {0.3});
  canvas.end_group();
  return {{kMargin, 21}, {right, hash_top - 9}};
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
      "No plant over the tank before its designer's cover.",
      "An empty tank can float before it is covered.",
      "\"Conforms\" means the entered tolerances, at the points and time surveyed; nothing about "
      "bearing or how the sides will stand."};
  return words;
}

std::string overprint_of(const ResultHead& result) {
  for (const auto& caution : result.cautions)
    if (caution.starts_with(kOverprint)) return std::string(kOverprint);
  return "";
}

std::optional<Box> draw_overprint(Canvas& canvas, const ResultHead& result, const Box& box) {
  const std::string words = overprint_of(result);
  if (words.empty()) return std::nullopt;
  const double full = canvas.text_width(words, Lettering{10}.bold());
  const double points = std::min(34.0, 10 * 0.86 * box.width() / full);
  // pale: figures drawn over it stay readable
  const Lettering lettering = Lettering{points, {0.93, 0.45, 0.4}, Anchor::Middle}.bold();
  canvas.begin_group({{"class", "overprint"}});
  canvas.text({box.middle().x, box.middle().y + points * 0.13}, words, lettering);
  canvas.end_group();
  const double half = canvas.text_width(words, lettering) / 2, height = points * 0.22;
  return Box{{box.middle().x - half, box.middle().y - height},
             {box.middle().x + half, box.middle().y + height}};
}

std::size_t caution_count(const ResultHead& result) {
  return result.findings.size() + result.cautions.size() + standing_cautions().size();
}

CautionsDrawn draw_cautions(Canvas& canvas, const Box& box, const ResultHead& result, double points,
                            std::size_t from) {
  const At top = box.top_left;
  double y = heading(canvas, top, box.width(), from ? "Cautions, continued" : "Cautions");
  const std::size_t own = result.findings.size() + result.cautions.size();
  const auto text_of = [&](std::size_t i) -> const std::string& {
    if (i < result.findings.size()) return result.findings[i].text;
    return i < own ? result.cautions[i - result.findings.size()] : standing_cautions()[i - own];
  };
  const double more = line_step(points) + 1;  // kept for the words that lead on
  for (std::size_t i = from; i < caution_count(result); ++i) {
    const Lettering lettering{points, kInk, Anchor::Left, i < own ? Weight::Bold : Weight::Regular};
    const double height = canvas.paragraph_height(box.width() - 3, text_of(i), lettering) + 0.6;
    const bool last = i + 1 == caution_count(result);
    if (y + height > box.bottom_right.y - (last ? 0 : more)) {
      canvas.text({top.x, y + points * 0.36}, "More cautions on the next pages.",
                  Lettering{points}.bold());
      return {i, y + more};
    }
    canvas.disc({top.x + 1, y + points * 0.24}, 0.5, kInk);
    y = canvas.paragraph({top.x + 3, y}, box.width() - 3, text_of(i), lettering) + 0.6;
  }
  return {caution_count(result), y};
}

double heading(Canvas& canvas, At at, double width, std::string_view text) {
  canvas.text({at.x, at.y + 4.2}, text, Lettering{10.5}.bold());
  canvas.line({{at.x, at.y + 5.8}, {at.x + width, at.y + 5.8}}, {0.5});
  return at.y + 7.4;
}

double rows(Canvas& canvas, At at, double width, const std::vector<Row>& rows, double points) {
  const double step = line_step(points) * 1.12;
  double y = at.y;
  for (const auto& row : rows) {
    y += step;
    canvas.text({at.x, y - 1}, row.label, {points});
    canvas.text({at.x + width, y - 1}, row.value, Lettering{points, kInk, Anchor::Right}.bold());
  }
  return y + step * 0.5;
}

}  // namespace squaredig::report
