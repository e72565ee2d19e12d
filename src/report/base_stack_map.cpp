#include <algorithm>

#include "quantity/number_text.h"
#include "report/base_maps.h"
#include "report/base_maps_internal.h"
#include "report/map_labels.h"
#include "report/plan_marks_internal.h"

namespace squaredig::report {

std::string whole_mm(Length value) { return fixed(value.in_millimetres(), 0); }

TankView base_view(const base::BaseResult& base, const Box& box) {
  std::vector<GridPoint> points = base.toe;
  points.insert(points.end(), base.tank.begin(), base.tank.end());
  return TankView({base.tank.at(0), base.ab}, points,
                  {{box.top_left.x + 12, box.top_left.y + 12},
                   {box.bottom_right.x - 12, box.bottom_right.y - 22}});
}

void draw_outlines(Canvas& canvas, const base::BaseResult& base, const TankView& view,
                   const Box& box) {
  canvas.begin_group({{"class", "outlines"}});
  canvas.polygon(on_page(view, base.toe), {0.5});
  const auto tank = on_page(view, base.tank);
  canvas.polygon(tank, {1});
  const At middle = middle_of(tank);
  for (std::size_t i = 0; i < tank.size(); ++i)
    draw_corner_letter(
        canvas, i,
        {tank[i].x + (tank[i].x < middle.x ? -7 : 7), tank[i].y + (tank[i].y < middle.y ? -7 : 7)});
  canvas.text({box.bottom_right.x - 15, box.bottom_right.y - 1}, "plan " + view.scale_text(),
              {9, kQuiet, Anchor::Right});
  draw_north(canvas, {box.bottom_right.x - 7, box.bottom_right.y - 6}, view.north());
  canvas.end_group();
}

void draw_legend(Canvas& canvas, const Box& box, const std::string& words) {
  constexpr double kBeside = 55;
  canvas.paragraph({box.top_left.x, box.bottom_right.y - 10}, box.width() - kBeside, words,
                   {8.5, kQuiet});
}

namespace {

// Units as a grid: every joint thin, those listed thick, the widest with its figure.
void draw_joints(Canvas& canvas, const base::StackGap& gap, const TankView& view, const Box& box) {
  canvas.begin_group({{"class", "joints"}});
  for (const auto& joint : gap.joints)
    canvas.line({view(joint.from), view(joint.to)}, {0.15, kQuiet});
  const Length most = abs(gap.widest->opening);
  for (const auto& joint : gap.listed) {
    const Colour colour = joint.opening > Length{} ? kHigh : kLow;
    const double share = most > Length{} ? abs(joint.opening) / most : 0;
    const double width = 0.6 + 1.2 * share;
    const bool top = joint.opening > Length{};
    const Stroke stroke{width, colour, top ? std::vector<double>{} : std::vector<double>{1.2, 0.6}};
    canvas.line({view(joint.from), view(joint.to)}, stroke);
  }
  const auto& widest = *gap.widest;
  const At a = view(widest.from), b = view(widest.to);
  const At middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
  canvas.circle(middle, 4, {0.7});
  MapLabels(box).tell(canvas, {middle.x, middle.y - 5}, whole_mm(most) + " mm", kInk);
  canvas.end_group();
}

// Numbers of columns above the tank and of rows left of it, no nearer than they can be read. A
// joint between two rows is as long as its column is wide.
void number_units(Canvas& canvas, const base::BaseResult& base, const TankView& view) {
  constexpr double kApart = 5;
  const At corner = view(base.tank.front());
  double last_x = -1e9, last_y = -1e9;
  const auto figure = [&](At at, int number) {
    canvas.text(at, std::to_string(number), {7, kQuiet, Anchor::Middle});
  };
  for (const auto& joint : base.stack_gap->joints) {
    const At a = view(joint.from), b = view(joint.to);
    const At middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
    if (joint.row == 1 && joint.to_row == 2 && middle.x - last_x >= kApart) {
      last_x = middle.x;
      figure({middle.x, corner.y - 3.5}, joint.column);
    }
    if (joint.column == 1 && joint.to_column == 2 && middle.y - last_y >= kApart) {
      last_y = middle.y;
      figure({corner.x - 5, middle.y + 1}, joint.row);
    }
  }
}

}  // namespace

bool has_stack_map(const base::BaseResult& base) {
  return base.stack_gap && base.stack_gap->widest;
}

void draw_stack_map(Canvas& canvas, const base::BaseResult& base, const Box& box) {
  const TankView view = base_view(base, box);
  draw_outlines(canvas, base, view, box);
  draw_joints(canvas, *base.stack_gap, view, box);
  number_units(canvas, base, view);
  draw_legend(
      canvas, box,
      "units by column and row from A; heavy: joints that open at the top, heavy dashes: at the "
      "bottom; ring: the widest");
}

}  // namespace squaredig::report
