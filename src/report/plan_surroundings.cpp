// What lies round the pit: boundaries, services, the influence line, the strip kept free of spoil.
#include <algorithm>
#include <cmath>
#include <functional>

#include "report/pit_plan_internal.h"
#include "report/plan_marks_internal.h"
#include "report/words.h"

namespace squaredig::report {
namespace {

constexpr Colour kWarning{0.7, 0.05, 0.02};

std::vector<At> line_of(const TankView& view, const SurveyString& string) {
  std::vector<At> line;
  for (const auto& vertex : string.vertices) line.push_back(view(vertex.at.at));
  return line;
}

// Where a line is longest in the box: the middle of that stretch.
std::optional<At> seen_at(const std::vector<At>& line, const Box& box) {
  std::optional<At> best;
  double longest = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const At a = line[i], d{line[i + 1].x - a.x, line[i + 1].y - a.y};
    double from = 0, to = 1;
    const auto cut = [&](double start, double run, double low, double high) {
      if (run == 0) {
        if (start < low || start > high) to = from;
        return;
      }
      const auto [in, out] = std::minmax({(low - start) / run, (high - start) / run});
      from = std::max(from, in);
      to = std::min(to, out);
    };
    cut(a.x, d.x, box.top_left.x, box.bottom_right.x);
    cut(a.y, d.y, box.top_left.y, box.bottom_right.y);
    const double length = (to - from) * std::hypot(d.x, d.y);
    if (length <= longest) continue;
    longest = length;
    best = At{a.x + (from + to) / 2 * d.x, a.y + (from + to) / 2 * d.y};
  }
  return longest > 4 ? best : std::nullopt;
}

// Whether a service comes nearest close to here: then that place's label says enough.
bool nearest_by(const dig::DigResult& dig, const TankView& view, At p) {
  return std::any_of(dig.nearby.begin(), dig.nearby.end(), [&](const auto& nearby) {
    const At at = view(nearby.at);
    return nearby.level && std::abs(at.x - p.x) < 24 && std::abs(at.y - p.y) < 7;
  });
}

void draw_warning(Canvas& canvas, At at, const std::string& words) {
  canvas.fill({{at.x, at.y - 3}, {at.x + 2.8, at.y + 2}, {at.x - 2.8, at.y + 2}}, kPaper,
              {0.7, kWarning});
  canvas.text({at.x, at.y + 1.4}, words, Lettering{8.5, kWarning, Anchor::Middle}.bold());
}

}  // namespace

void draw_spoil_setback(Canvas& canvas, const dig::DigResult& dig, const TankView& view) {
  if (!dig.surroundings.spoil_setback) return;
  // a pen twice as wide as the strip, drawn along the crest
  const double wide = 2 * view.mm(*dig.surroundings.spoil_setback);
  canvas.begin_group({{"class", "spoil"}});
  for (const auto& ring : dig.crest) canvas.polygon(on_page(view, ring), {wide + 0.5, kQuiet});
  for (const auto& ring : dig.crest) canvas.polygon(on_page(view, ring), {wide, kSpoilColour});
  for (const auto& ring : dig.crest) canvas.fill(on_page(view, ring), kPaper);
  canvas.end_group();
}

void draw_site(Canvas& canvas, const dig::DigResult& dig, const TankView& view) {
  const auto& around = dig.surroundings;
  const auto draw = [&](const std::vector<SurveyString>& strings, const Stroke& stroke) {
    for (const auto& string : strings)
      if (const auto line = line_of(view, string); line.size() > 1) canvas.line(line, stroke);
  };
  canvas.begin_group({{"class", "site"}});
  for (const auto& ring : around.influence_line)
    canvas.polygon(on_page(view, ring), influence_stroke());
  draw(around.keep_out, boundary_stroke());
  draw(around.services, service_stroke());
  canvas.end_group();
}

namespace {

using Name = std::function<void(At, const std::string&, Colour)>;

void name_boundaries_and_services(Canvas& canvas, const dig::DigResult& dig, const TankView& view,
                                  const Box& box, const Name& name) {
  const auto& around = dig.surroundings;
  const Box seen = box.inside(6);
  for (const auto& string : around.keep_out)
    if (const auto at = seen_at(line_of(view, string), seen))
      name(*at, string.name, kBoundaryColour);
  for (const auto& string : around.services) {
    const auto at = seen_at(line_of(view, string), seen);
    if (at) name(*at, string.name, kServiceColour);
    for (const auto& vertex : string.vertices) {
      const At p = view(vertex.at.at);
      if (!vertex.has_height || !holds(box, p, 4) || nearest_by(dig, view, p)) continue;
      canvas.disc(p, 0.8, kServiceColour);
      name({p.x, p.y + 4}, level_text(vertex.at.height), kServiceColour);
    }
  }
}

// Where a service comes nearest: its level there, and how clear it is.
void name_nearest(Canvas& canvas, const dig::DigResult& dig, const TankView& view, const Box& box,
                  const Name& name) {
  for (const auto& nearby : dig.nearby) {
    if (!nearby.level) continue;
    const At p = view(nearby.at);
    if (!holds(box, p, 4)) continue;
    canvas.circle(p, 1.2, {0.5, kServiceColour});
    const bool bare = nearby.exposed && *nearby.exposed > Length{};
    name({p.x, p.y + 5},
         level_text(nearby.level) +
             (bare ? ", laid bare" : ", " + metres_text(nearby.distance, 2) + " clear"),
         kServiceColour);
  }
}

}  // namespace

void draw_site_names(Canvas& canvas, const dig::DigResult& dig, const TankView& view,
                     const Box& box) {
  canvas.begin_group({{"class", "site-names"}});
  const Name name = [&](At at, const std::string& words, Colour colour) {
    // turned back where it would run over the edge
    const double width = canvas.text_width(words, Lettering{9}.bold());
    const double x = std::min(at.x + 1.5, box.bottom_right.x - width - 1);
    canvas.text({x, at.y - 1.2}, words, Lettering{9, colour}.bold().on(kPaper));
  };
  name_boundaries_and_services(canvas, dig, view, box, name);
  name_nearest(canvas, dig, view, box, name);
  canvas.end_group();
}

void draw_warnings(Canvas& canvas, const dig::DigResult& dig, const TankView& view,
                   const Box& box) {
  canvas.begin_group({{"class", "warnings"}});
  for (std::size_t i = 0; i < dig.clashes.size(); ++i)
    if (const At at = view(dig.clashes[i].at); holds(box, at, 3))
      draw_warning(canvas, at, std::to_string(i + 1));
  for (const auto& face : dig.vertical_faces)
    if (const At at = view(face.at); holds(box, at, 1))
      canvas.text({at.x + 1, at.y - 1}, "vertical " + metres_text(face.height, 2),
                  Lettering{9, kWarning}.bold().on(kPaper));
  for (const auto& survey : dig.progress) {
    if (!survey.deepest_at || !holds(box, view(*survey.deepest_at), 2)) continue;
    const At at = view(*survey.deepest_at);
    canvas.line({{at.x - 1.6, at.y - 1.6}, {at.x + 1.6, at.y + 1.6}}, {0.8, kWarning});
    canvas.line({{at.x - 1.6, at.y + 1.6}, {at.x + 1.6, at.y - 1.6}}, {0.8, kWarning});
    canvas.text({at.x + 2.2, at.y - 1.2},
                survey.name + ": " + metres_text(survey.deepest_over_dig, 2) + " too deep",
                Lettering{9, kWarning}.bold().on(kPaper));
  }
  canvas.end_group();
}

}  // namespace squaredig::report
