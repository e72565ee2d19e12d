#include "report/storage_drawing.h"

#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"
#include "report/words.h"

namespace squaredig::report {
namespace {

constexpr Colour kGrid{0.8, 0.8, 0.8};
constexpr Colour kWater{0.05, 0.25, 0.5};

// 1, 2 or 5 times a power of ten, so that so many steps cover the range at most.
double round_step(double range, int steps) {
  const double power = std::pow(10.0, std::floor(std::log10(range / steps)));
  for (const double n : {1.0, 2.0, 5.0})
    if (n * power * steps >= range) return n * power;
  return 10 * power;
}

int decimals_of(double step) {
  return std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
}

// Storage to the right, level upward.
struct Axes {
  Box box;
  double low = 0, high = 1, most = 1;
  double x(double m3) const { return box.top_left.x + box.width() * m3 / most; }
  double y(double level) const {
    return box.bottom_right.y - box.height() * (level - low) / (high - low);
  }
};

void draw_axes(Canvas& canvas, const Axes& axes, bool net) {
  const double left = axes.box.top_left.x, right = axes.box.bottom_right.x;
  const double top = axes.box.top_left.y, foot = axes.box.bottom_right.y;
  const double rise = round_step(axes.high - axes.low, 8), step = round_step(axes.most, 8);
  for (double n = std::ceil(axes.low / rise); n * rise <= axes.high; ++n) {
    canvas.line({{left, axes.y(n * rise)}, {right, axes.y(n * rise)}}, {0.15, kGrid});
    canvas.text({left - 1.5, axes.y(n * rise) + 1.1}, fixed(n * rise, decimals_of(rise)),
                {8.5, kInk, Anchor::Right});
  }
  for (double n = 0; n * step <= axes.most * (1 + 1e-9); ++n) {
    canvas.line({{axes.x(n * step), top}, {axes.x(n * step), foot}}, {0.15, kGrid});
    canvas.text({axes.x(n * step), foot + 4}, fixed(n * step, decimals_of(step)),
                {8.5, kInk, Anchor::Middle});
  }
  canvas.line({{left, top}, {left, foot}, {right, foot}}, {0.4});
  canvas.text({left - 1.5, top - 2.2}, "level", Lettering{8.5, kInk, Anchor::Right}.bold());
  canvas.text({right, foot + 8.4},
              std::string("water below the level, m\xC2\xB3 (") +
                  (net ? "voids of the tank)" : "whole space of the tank)"),
              Lettering{8.5, kInk, Anchor::Right}.bold());
}

}  // namespace

void draw_storage(Canvas& canvas, const record::Storage& storage, const Box& box) {
  if (storage.table.size() < 2) return;
  const auto held = [](const record::StorageRow& row) {
    return row.net.value_or(row.gross).in_cubic_metres();
  };
  Axes axes{{{box.top_left.x + 18, box.top_left.y + 6},
             {box.bottom_right.x - 34, box.bottom_right.y - 10}},
            storage.table.front().level.in_metres(),
            storage.table.back().level.in_metres(),
            std::max(1e-6, held(storage.table.back()))};
  if (axes.high <= axes.low) return;
  canvas.begin_group({{"class", "storage"}});
  draw_axes(canvas, axes, storage.net.has_value());
  std::vector<At> curve;
  for (const auto& row : storage.table)
    curve.push_back({axes.x(held(row)), axes.y(row.level.in_metres())});
  canvas.line(curve, {0.8, kWater});
  canvas.text({axes.box.bottom_right.x + 2, curve.back().y + 1.2},
              volume_text(storage.net.value_or(storage.gross)), Lettering{9, kWater}.bold());
  if (storage.outlet && storage.below_outlet) {
    const double y = axes.y(storage.outlet->in_metres());
    if (y > axes.box.top_left.y && y < axes.box.bottom_right.y) {
      const double x = axes.x(storage.below_outlet->in_cubic_metres());
      canvas.line({{axes.box.top_left.x, y}, {axes.box.bottom_right.x, y}}, {0.4, kInk, {2, 1}});
      canvas.line({{x, y}, {x, axes.box.bottom_right.y}}, {0.4, kInk, {2, 1}});
      canvas.text({axes.box.bottom_right.x + 2, y - 0.6}, "outlet " + level_text(storage.outlet),
                  Lettering{9}.bold());
      canvas.text({axes.box.bottom_right.x + 2, y + 3.6},
                  volume_text(*storage.below_outlet) + " below", {9});
    }
  }
  canvas.end_group();
}

}  // namespace squaredig::report
