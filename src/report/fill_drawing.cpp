#include "report/fill_drawing.h"

#include <algorithm>

#include "report/words.h"

namespace squaredig::report {
namespace {

constexpr Colour kSpecial{0.86, 0.82, 0.7};
constexpr Colour kSide{0.95, 0.94, 0.9};

}  // namespace

void draw_lifts(Canvas& canvas, const fill::FillResult& fill, const Box& box) {
  if (fill.side_fill.empty()) return;
  constexpr double kWide = 46, kLeast = 4.2;
  const Elevation foot = fill.side_fill.front().from, top = fill.side_fill.back().to;
  if (top <= foot) return;
  const double height = box.height() - 10;
  const auto y = [&](Elevation level) {
    return box.bottom_right.y - 4 - height * ((level - foot) / (top - foot));
  };
  const double left = box.top_left.x + 6, right = left + kWide;
  canvas.begin_group({{"class", "lifts"}});
  double label = 1e300;  // labels of thin lifts make room for each other
  const auto tell = [&](Elevation level, const std::string& words, const Lettering& lettering) {
    label = std::min(y(level) + 1.2, label - kLeast);
    canvas.line({{right, y(level)}, {right + 8, label - 1.2}}, {0.2, kQuiet});
    canvas.text({right + 26, label}, level_text(level), lettering.anchored(Anchor::Right));
    canvas.text({right + 29, label}, words, {9});
  };
  tell(foot, "underneath, at A", {9});
  for (const auto& lift : fill.side_fill) {
    canvas.fill(
        {{left, y(lift.to)}, {right, y(lift.to)}, {right, y(lift.from)}, {left, y(lift.from)}},
        lift.special ? kSpecial : kSide, {0.3});
    if (y(lift.from) - y(lift.to) >= kLeast)
      canvas.text({left + kWide / 2, (y(lift.from) + y(lift.to)) / 2 + 1.1},
                  std::to_string(lift.lift) + (lift.special ? " special" : " side"),
                  {9, kInk, Anchor::Middle});
    tell(lift.to, "fill to, lift " + std::to_string(lift.lift), Lettering{10}.bold());
  }
  canvas.end_group();
}

}  // namespace squaredig::report
