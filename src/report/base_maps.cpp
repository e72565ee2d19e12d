#include "report/base_maps.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "quantity/number_text.h"
#include "report/depth_ramp.h"
#include "report/plan_marks_internal.h"
#include "report/words.h"

namespace squaredig::report {
namespace {

constexpr Colour kHigh{0.62, 0.08, 0.02};
constexpr Colour kLow{0.02, 0.2, 0.55};

std::string whole_mm(Length value) { return fixed(value.in_millimetres(), 0); }

std::string signed_whole_mm(Length value) {
  const std::string text = whole_mm(value);
  return value > Length{} && text != "0" ? "+" + text : text;
}

TankView view_of(const base::BaseResult& base, const Box& box) {
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

// The largest size at which figures at the points hardly meet.
double size_at(const std::vector<At>& points) {
  double least = 1e9;
  for (std::size_t i = 0; i < points.size() && i < 2000; ++i)
    for (std::size_t k = i + 1; k < std::min(points.size(), i + 60); ++k) {
      // a figure is about twice as wide as it is high
      const double apart =
          std::max(std::abs(points[i].x - points[k].x) / 2, std::abs(points[i].y - points[k].y));
      if (apart > 0.3) least = std::min(least, apart);
    }
  return std::clamp(least / 0.353 / 1.05, 5.0, 9.5);
}

constexpr double kMmPerPoint = 0.353;

// A word by a place, pale round the letters, held inside the drawing.
void tell(Canvas& canvas, const Box& box, At at, const std::string& words, Colour colour) {
  const Lettering lettering = Lettering{8.5, colour, Anchor::Middle}.bold().on(kPaper);
  const double half = canvas.text_width(words, lettering) / 2 + 1;
  canvas.text({std::clamp(at.x, box.top_left.x + half, box.bottom_right.x - half), at.y}, words,
              lettering);
}

void draw_rings(Canvas& canvas, const TankView& view,
                const std::vector<std::vector<GridPoint>>& rings, const Stroke& stroke) {
  for (const auto& ring : rings) canvas.polygon(on_page(view, ring), stroke);
}

// The highest place of some rings on the page.
At top_of(const TankView& view, const std::vector<std::vector<GridPoint>>& rings, At otherwise) {
  At top = otherwise;
  for (const auto& ring : rings)
    for (const At p : on_page(view, ring))
      if (p.y < top.y) top = p;
  return top;
}

void draw_patches(Canvas& canvas, const base::BaseResult& base, const TankView& view,
                  const Box& box) {
  canvas.begin_group({{"class", "repair"}});
  for (const auto& patch : base.repair) {
    const Colour colour = patch.work == base::Work::Trim ? kHigh : kLow;
    draw_rings(canvas, view, patch.rings, {0.6, colour, {1.6, 0.8}});
    const At top = top_of(view, patch.rings, view(patch.deepest.at));
    tell(canvas, box, {top.x + 4, top.y - 1}, "no. " + std::to_string(patch.number), colour);
  }
  canvas.end_group();
}

// Below the figures.
void draw_rule(Canvas& canvas, const base::BaseResult& base, const TankView& view) {
  if (!base.straightedge) return;
  const auto& rule = *base.straightedge;
  canvas.begin_group({{"class", "straightedge"}});
  canvas.line({view(rule.from), view(rule.to)}, {1});
  for (const GridPoint p : {rule.touch_from, rule.touch_to}) canvas.disc(view(p), 0.9, kInk);
  canvas.end_group();
}

// Above them: where it stands most open, and by how much.
void tell_rule(Canvas& canvas, const base::BaseResult& base, const TankView& view, const Box& box) {
  if (!base.straightedge) return;
  const auto& rule = *base.straightedge;
  const At from = view(rule.from), to = view(rule.to);
  canvas.circle(view(rule.worst), 4.2, {0.7});
  const At low = from.y > to.y ? from : to;
  tell(canvas, box, {low.x, low.y + 4}, "rule " + whole_mm(rule.opening) + " mm", kInk);
}

// A question mark beside each point that stands alone.
void draw_outliers(Canvas& canvas, const base::BaseResult& base, const TankView& view,
                   const Box& box) {
  for (const auto& outlier : base.outliers)
    for (const auto& p : base.points)
      if (p.place == outlier.place) {
        const At at = view(p.at.at);
        tell(canvas, box, {at.x + 6.2, at.y + 1}, "?", kInk);
      }
}

// Where one more point is wanted.
void draw_holes(Canvas& canvas, const base::BaseResult& base, const TankView& view) {
  canvas.begin_group({{"class", "holes"}});
  for (const auto& hole : base.holes) {
    const At p = view(hole.at);
    canvas.line({{p.x - 1.6, p.y}, {p.x + 1.6, p.y}}, {0.5});
    canvas.line({{p.x, p.y - 1.6}, {p.x, p.y + 1.6}}, {0.5});
  }
  canvas.end_group();
}

// A figure on its colour, at a point.
struct Tag {
  At at;
  Colour ground;
  std::string figure;
  bool framed = false;
};

// The points whose figures can be drawn: of those too near to each other the one farthest from the
// dig level.
std::vector<const base::JudgedPoint*> drawn_points(const base::BaseResult& base,
                                                   const TankView& view) {
  constexpr double kWide = 4.8, kDeep = 2.7;  // of the smallest figure on its colour
  std::vector<const base::JudgedPoint*> order, drawn;
  for (const auto& p : base.points) order.push_back(&p);
  std::stable_sort(order.begin(), order.end(), [](const auto* a, const auto* b) {
    return abs(a->deviation) > abs(b->deviation);
  });
  std::map<std::pair<long, long>, std::vector<At>> taken;
  for (const auto* p : order) {
    const At at = view(p->at.at);
    const long column = std::lround(at.x / kWide), row = std::lround(at.y / kDeep);
    bool room = true;
    for (long c = column - 1; c <= column + 1; ++c)
      for (long r = row - 1; r <= row + 1; ++r)
        for (const At other : taken[{c, r}])
          room = room && (std::abs(other.x - at.x) >= kWide || std::abs(other.y - at.y) >= kDeep);
    if (!room) continue;
    taken[{column, row}].push_back(at);
    drawn.push_back(p);
  }
  std::sort(drawn.begin(), drawn.end());  // as they stand in the file
  return drawn;
}

std::string left_out_words(const base::BaseResult& base, std::size_t drawn) {
  if (drawn == base.points.size()) return "";
  return "; " + std::to_string(drawn) + " of " + std::to_string(base.points.size()) +
         " points: of those too near each other the one farthest off";
}

// The colours, what is drawn between, and over all the figures.
template <class Between>
void draw_tags(Canvas& canvas, const std::vector<Tag>& tags, const Between& between) {
  std::vector<At> places;
  for (const Tag& tag : tags) places.push_back(tag.at);
  const double points = size_at(places);
  const double w = points * kMmPerPoint * 1.35, h = points * kMmPerPoint * 0.75;
  const auto frame = [&](At p) {
    return std::vector<At>{
        {p.x - w, p.y - h}, {p.x + w, p.y - h}, {p.x + w, p.y + h}, {p.x - w, p.y + h}};
  };
  for (const Tag& tag : tags) canvas.fill(frame(tag.at), tag.ground);
  between();
  canvas.begin_group({{"class", "points"}});
  for (const Tag& tag : tags) {
    if (tag.framed) canvas.polygon(frame(tag.at), {0.4});
    const Lettering lettering = Lettering{points, kInk, Anchor::Middle}.on(tag.ground);
    canvas.text({tag.at.x, tag.at.y + points * 0.13}, tag.figure,
                tag.framed ? lettering.bold() : lettering);
  }
  canvas.end_group();
}

// Left of the scale and the north arrow.
void legend(Canvas& canvas, const Box& box, const std::string& words) {
  constexpr double kBeside = 55;
  canvas.paragraph({box.top_left.x, box.bottom_right.y - 10}, box.width() - kBeside, words,
                   {8.5, kQuiet});
}

// Each patch of skin that leaves its limit; the largest with their area and their worst.
void draw_skin(Canvas& canvas, const TankView& view, const Box& box,
               const std::optional<std::vector<base::SkinPatch>>& patches, Colour colour) {
  constexpr std::size_t kMostTold = 4;
  if (!patches) return;
  for (const auto& patch : *patches) {
    draw_rings(canvas, view, patch.rings, {0.7, kPaper});
    draw_rings(canvas, view, patch.rings, {0.7, colour, {1.6, 0.8}});
  }
  for (std::size_t i = 0; i < std::min(kMostTold, patches->size()); ++i) {
    const auto& patch = patches->at(i);
    const At top = top_of(view, patch.rings, view(patch.at));
    tell(canvas, box, {top.x, top.y - 1},
         area_text(patch.area) + ", " + whole_mm(patch.worst) + " mm", colour);
  }
}

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
  tell(canvas, box, {middle.x, middle.y - 5}, whole_mm(most) + " mm", kInk);
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

void draw_deviation_map(Canvas& canvas, const base::BaseResult& base, const Box& box) {
  const TankView view = view_of(base, box);
  Length most;
  for (const auto& p : base.points) most = std::max(most, abs(p.deviation));
  std::vector<Tag> tags;
  for (const auto* p : drawn_points(base, view))
    tags.push_back({view(p->at.at), deviation_colour(most > Length{} ? p->deviation / most : 0),
                    signed_whole_mm(p->deviation),
                    p->verdict == Verdict::DoesNotConform || p->verdict == Verdict::NotProven});
  draw_tags(canvas, tags, [&] {
    draw_outlines(canvas, base, view, box);
    draw_rule(canvas, base, view);
  });
  draw_holes(canvas, base, view);
  draw_patches(canvas, base, view, box);
  tell_rule(canvas, base, view, box);
  draw_outliers(canvas, base, view, box);
  legend(canvas, box,
         std::string("mm, + high, - low; framed: outside or not proven; dashed: repair, by its "
                     "number; heavy line: straightedge at its worst, ringed where it gapes") +
             left_out_words(base, tags.size()) +
             (base.outliers.empty() ? "" : "; ?: stands alone, level it again") +
             (base.holes.empty() ? "" : "; +: survey here too"));
}

void draw_bedding_map(Canvas& canvas, const base::BaseResult& base, const Box& box) {
  const TankView view = view_of(base, box);
  Length most;
  for (const auto& p : base.points) most = std::max(most, p.bedding);
  std::vector<Tag> tags;
  for (const auto* p : drawn_points(base, view))
    tags.push_back({view(p->at.at), depth_colour(most > Length{} ? p->bedding / most : 0),
                    whole_mm(p->bedding)});
  draw_tags(canvas, tags, [&] { draw_outlines(canvas, base, view, box); });
  if (base.skin) {
    draw_skin(canvas, view, box, base.skin->too_thin, kHigh);
    draw_skin(canvas, view, box, base.skin->too_thick, kLow);
    const auto mark = [&](GridPoint p, const char* word, Colour colour) {
      canvas.circle(view(p), 3.6, {0.6, colour});
      tell(canvas, box, {view(p).x, view(p).y + 6.8}, word, colour);
    };
    mark(base.skin->thinnest_at, "thinnest", kHigh);
    mark(base.skin->thickest_at, "thickest", kLow);
  }
  legend(
      canvas, box,
      "mm of bedding up to the underside of the tank; dashed: where it leaves its least or most" +
          left_out_words(base, tags.size()));
}

bool has_stack_map(const base::BaseResult& base) {
  return base.stack_gap && base.stack_gap->widest;
}

void draw_stack_map(Canvas& canvas, const base::BaseResult& base, const Box& box) {
  const TankView view = view_of(base, box);
  draw_outlines(canvas, base, view, box);
  draw_joints(canvas, *base.stack_gap, view, box);
  number_units(canvas, base, view);
  legend(canvas, box,
         "units by column and row from A; heavy: joints that open at the top, heavy dashes: at the "
         "bottom; ring: the widest");
}

}  // namespace squaredig::report
