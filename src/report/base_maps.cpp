#include "report/base_maps.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>

#include "quantity/number_text.h"
#include "report/base_maps_internal.h"
#include "report/depth_ramp.h"
#include "report/map_labels.h"
#include "report/plan_marks_internal.h"
#include "report/words.h"

namespace squaredig::report {
namespace {

std::string signed_whole_mm(Length value) {
  const std::string text = whole_mm(value);
  return value > Length{} && text != "0" ? "+" + text : text;
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

Colour colour_of(base::Work work) { return work == base::Work::Trim ? kHigh : kLow; }

void draw_patches(Canvas& canvas, const base::BaseResult& base, const TankView& view) {
  canvas.begin_group({{"class", "repair"}});
  for (const auto& patch : base.repair)
    draw_rings(canvas, view, patch.rings, {0.6, colour_of(patch.work), {1.6, 0.8}});
  canvas.end_group();
}

void tell_patches(Canvas& canvas, const base::BaseResult& base, const TankView& view,
                  MapLabels& labels) {
  for (const auto& patch : base.repair) {
    const At top = top_of(view, patch.rings, view(patch.deepest.at));
    labels.tell(canvas, {top.x + 4, top.y - 1}, "no. " + std::to_string(patch.number),
                colour_of(patch.work));
  }
}

void draw_rule(Canvas& canvas, const base::BaseResult& base, const TankView& view) {
  if (!base.straightedge) return;
  const auto& rule = *base.straightedge;
  canvas.begin_group({{"class", "straightedge"}});
  canvas.line({view(rule.from), view(rule.to)}, {1});
  for (const GridPoint p : {rule.touch_from, rule.touch_to}) canvas.disc(view(p), 0.9, kInk);
  canvas.end_group();
}

// Where it stands most open, and by how much.
void tell_rule(Canvas& canvas, const base::BaseResult& base, const TankView& view,
               MapLabels& labels) {
  if (!base.straightedge) return;
  const auto& rule = *base.straightedge;
  const At from = view(rule.from), to = view(rule.to);
  canvas.circle(view(rule.worst), 4.2, {0.7});
  const At low = from.y > to.y ? from : to;
  labels.tell(canvas, {low.x, low.y + 4}, "rule " + whole_mm(rule.opening) + " mm", kInk);
}

// A question mark beside each point that stands alone.
void draw_outliers(Canvas& canvas, const base::BaseResult& base, const TankView& view,
                   MapLabels& labels) {
  for (const auto& outlier : base.outliers)
    for (const auto& p : base.points)
      if (p.place == outlier.place) {
        const At at = view(p.at.at);
        labels.tell(canvas, {at.x + 6.2, at.y + 1}, "?", kInk);
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
  std::map<std::pair<std::int64_t, std::int64_t>, std::vector<At>> taken;
  for (const auto* p : order) {
    const At at = view(p->at.at);
    const std::int64_t column = std::lround(at.x / kWide), row = std::lround(at.y / kDeep);
    bool room = true;
    for (std::int64_t c = column - 1; c <= column + 1; ++c)
      for (std::int64_t r = row - 1; r <= row + 1; ++r)
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

// The colours, what is drawn between, and over all the figures, which nothing may cross: a dash
// through a 3 makes it an 8.
template <class Between>
MapLabels draw_tags(Canvas& canvas, const std::vector<Tag>& tags, const Box& box,
                    const Between& between) {
  std::vector<At> places;
  places.reserve(tags.size());
  for (const Tag& tag : tags) places.push_back(tag.at);
  const double points = size_at(places);
  const double w = points * kMmPerPoint * 1.35, h = points * kMmPerPoint * 0.75;
  const auto frame = [&](At p) {
    return std::vector<At>{
        {p.x - w, p.y - h}, {p.x + w, p.y - h}, {p.x + w, p.y + h}, {p.x - w, p.y + h}};
  };
  for (const Tag& tag : tags) canvas.fill(frame(tag.at), tag.ground);
  between();
  MapLabels labels(box);
  canvas.begin_group({{"class", "points"}});
  for (const Tag& tag : tags) {
    if (tag.framed) canvas.polygon(frame(tag.at), {0.4});
    const Lettering plain = Lettering{points, kInk, Anchor::Middle}.on(tag.ground);
    const Lettering lettering = tag.framed ? plain.bold() : plain;
    canvas.text({tag.at.x, tag.at.y + points * 0.13}, tag.figure, lettering);
    const double half = canvas.text_width(tag.figure, lettering) / 2, deep = h * 0.6;
    labels.keep_clear({{tag.at.x - half, tag.at.y - deep}, {tag.at.x + half, tag.at.y + deep}});
  }
  canvas.end_group();
  return labels;
}

using SkinPatches = std::optional<std::vector<base::SkinPatch>>;

void draw_skin(Canvas& canvas, const TankView& view, const SkinPatches& patches, Colour colour) {
  if (!patches) return;
  for (const auto& patch : *patches) {
    draw_rings(canvas, view, patch.rings, {0.7, kPaper});
    draw_rings(canvas, view, patch.rings, {0.7, colour, {1.6, 0.8}});
  }
}

// The largest patches with their area and their worst.
void tell_skin(Canvas& canvas, const TankView& view, MapLabels& labels, const SkinPatches& patches,
               Colour colour) {
  constexpr std::size_t kMostTold = 4;
  if (!patches) return;
  for (std::size_t i = 0; i < std::min(kMostTold, patches->size()); ++i) {
    const auto& patch = patches->at(i);
    const At top = top_of(view, patch.rings, view(patch.at));
    labels.tell(canvas, {top.x, top.y - 1},
                area_text(patch.area) + ", " + whole_mm(patch.worst) + " mm", colour);
  }
}

void tell_bedding(Canvas& canvas, const base::Skin& skin, const TankView& view, MapLabels& labels) {
  tell_skin(canvas, view, labels, skin.too_thin, kHigh);
  tell_skin(canvas, view, labels, skin.too_thick, kLow);
  const auto mark = [&](GridPoint p, const char* word, Colour colour) {
    canvas.circle(view(p), 3.6, {0.6, colour});
    labels.tell(canvas, {view(p).x, view(p).y + 6.8}, word, colour);
  };
  mark(skin.thinnest_at, "thinnest", kHigh);
  mark(skin.thickest_at, "thickest", kLow);
}

}  // namespace

void draw_deviation_map(Canvas& canvas, const base::BaseResult& base, const Box& box) {
  const TankView view = base_view(base, box);
  Length most;
  for (const auto& p : base.points) most = std::max(most, abs(p.deviation));
  std::vector<Tag> tags;
  for (const auto* p : drawn_points(base, view))
    tags.push_back({view(p->at.at), deviation_colour(most > Length{} ? p->deviation / most : 0),
                    signed_whole_mm(p->deviation),
                    p->verdict == Verdict::DoesNotConform || p->verdict == Verdict::NotProven});
  MapLabels labels = draw_tags(canvas, tags, box, [&] {
    draw_outlines(canvas, base, view, box);
    draw_patches(canvas, base, view);
    draw_rule(canvas, base, view);
  });
  draw_holes(canvas, base, view);
  draw_outliers(canvas, base, view, labels);
  tell_patches(canvas, base, view, labels);
  tell_rule(canvas, base, view, labels);
  draw_legend(
      canvas, box,
      std::string("mm, + high, - low; framed: outside or not proven; dashed: repair, by its "
                  "number; heavy line: straightedge at its worst, ringed where it gapes") +
          left_out_words(base, tags.size()) +
          (base.outliers.empty() ? "" : "; ?: stands alone, level it again") +
          (base.holes.empty() ? "" : "; +: survey here too"));
}

void draw_bedding_map(Canvas& canvas, const base::BaseResult& base, const Box& box) {
  const TankView view = base_view(base, box);
  Length most;
  for (const auto& p : base.points) most = std::max(most, p.bedding);
  std::vector<Tag> tags;
  for (const auto* p : drawn_points(base, view))
    tags.push_back({view(p->at.at), depth_colour(most > Length{} ? p->bedding / most : 0),
                    whole_mm(p->bedding)});
  MapLabels labels = draw_tags(canvas, tags, box, [&] {
    draw_outlines(canvas, base, view, box);
    if (!base.skin) return;
    draw_skin(canvas, view, base.skin->too_thin, kHigh);
    draw_skin(canvas, view, base.skin->too_thick, kLow);
  });
  if (base.skin) tell_bedding(canvas, *base.skin, view, labels);
  draw_legend(
      canvas, box,
      "mm of bedding up to the underside of the tank; dashed: where it leaves its least or most" +
          left_out_words(base, tags.size()));
}

}  // namespace squaredig::report
