#include "ground/build_ground.h"

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "ground/ready_surface_internal.h"
#include "ground/rows_internal.h"
#include "quantity/number_text.h"

namespace squaredig::ground {
namespace {

using geometry::Index;

bool all_have_heights(const SurveyString& s) {
  return std::all_of(s.vertices.begin(), s.vertices.end(),
                     [](const StringVertex& v) { return v.has_height; });
}

// The vertices of an outline without the one that closes it.
std::size_t open_count(const SurveyString& s) {
  const std::size_t n = s.vertices.size();
  return n > 1 && s.vertices.front().at.at == s.vertices.back().at.at ? n - 1 : n;
}

geometry::Polygon polygon_of(const SurveyString& s, const geometry::SiteFrame& frame) {
  geometry::Polygon out;
  for (std::size_t v = 0; v < open_count(s); ++v) out.push_back(frame.to_site(s.vertices[v].at.at));
  return out;
}

void find_missing_heights(const GroundInput& input, std::vector<Problem>& problems) {
  const std::string needed = "a height for every ground point";
  const std::string remedy = "give the height or take the row out";
  for (std::size_t i = 0; i < input.points.size(); ++i)
    if (!input.points.points[i].has_height)
      problems.push_back({ProblemKind::Input, input.points.place(i),
                          "point " + quoted(input.points.label(i)) + " without a height", needed,
                          remedy});
  for (const SurveyString& s : input.breaklines)
    for (const StringVertex& v : s.vertices)
      if (!v.has_height)
        problems.push_back({ProblemKind::Input,
                            {s.file, v.line, 1},
                            "a vertex of string " + quoted(s.name) + " without a height",
                            "a height for every vertex of a breakline",
                            remedy});
}

void check_outlines(const GroundInput& input, const geometry::SiteFrame& frame,
                    std::vector<Problem>& problems) {
  for (const SurveyString& s : input.outline) {
    const Place place{s.file, s.vertices.empty() ? 1 : s.vertices.front().line, 1};
    const std::string name = "outline " + quoted(s.name);
    if (open_count(s) < 3) {
      problems.push_back({ProblemKind::Input, place,
                          name + " with " + std::to_string(open_count(s)) + " vertices",
                          "three or more, in order round the survey", "complete the outline"});
      continue;
    }
    const auto crossing = geometry::self_crossing(polygon_of(s, frame));
    if (crossing)
      problems.push_back({ProblemKind::Input,
                          {s.file, s.vertices[crossing->first].line, 1},
                          name + " meets itself: its sides from lines " +
                              std::to_string(s.vertices[crossing->first].line) + " and " +
                              std::to_string(s.vertices[crossing->second].line) + " touch",
                          "an outline that goes round once",
                          "put its vertices in order"});
  }
}

// The triangulation's input, and the row of each of its points.
struct Prepared {
  geometry::TriangulationInput input;
  std::vector<Index> string_rows;  // of the points that come after the survey points
};

void add_string(const Rows& rows, std::size_t number, geometry::StringKind kind,
                const geometry::SiteFrame& frame, Prepared& out) {
  const bool outline = kind == geometry::StringKind::Outline;
  const SurveyString& s = rows.string(number);
  geometry::Constraint constraint{{}, static_cast<Index>(number), kind};
  const std::size_t count = outline ? open_count(s) : s.vertices.size();
  for (std::size_t v = 0; v < count; ++v) {
    constraint.vertices.push_back(static_cast<Index>(out.input.points.size()));
    out.input.points.push_back(frame.to_site(s.vertices[v].at));
    out.string_rows.push_back(rows.first_row(number) + static_cast<Index>(v));
  }
  if (outline) constraint.vertices.push_back(constraint.vertices.front());
  out.input.constraints.push_back(std::move(constraint));
}

Prepared prepare(const GroundInput& input, const geometry::SiteFrame& frame,
                 std::vector<std::string>& cautions) {
  Prepared out;
  out.input.points.reserve(input.points.size());
  for (const SurveyPoint& p : input.points.points) out.input.points.push_back(frame.to_site(p.at));
  const Rows rows(input);
  for (std::size_t s = 0; s < input.breaklines.size(); ++s)
    add_string(rows, s, geometry::StringKind::Breakline, frame, out);
  for (std::size_t o = 0; o < input.outline.size(); ++o) {
    const SurveyString& s = input.outline[o];
    out.input.keep.push_back(polygon_of(s, frame));
    if (all_have_heights(s))
      add_string(rows, input.breaklines.size() + o, geometry::StringKind::Outline, frame, out);
    else
      cautions.push_back(s.file + ": outline " + quoted(s.name) +
                         " has vertices without a height: it bounds the ground, triangle by "
                         "triangle, and adds no vertices to it");
  }
  if (input.longest_edge) out.input.longest_edge = input.longest_edge->in_metres();
  return out;
}

Place first_place(const GroundInput& input) {
  if (!input.points.files.empty()) return {input.points.files.front(), 1, 1};
  if (!input.breaklines.empty()) return {input.breaklines.front().file, 1, 1};
  return {};
}

// Why there is no triangle.
[[noreturn]] void refuse_nothing(const GroundInput& input, const geometry::Triangulated& made,
                                 std::size_t positions) {
  const std::string three = "three positions or more that are not on one line";
  if (positions < 3)
    refuse(first_place(input),
           std::to_string(positions) +
               (positions == 1 ? " position with a height" : " positions with heights"),
           three, "survey more points, or take more codes");
  if (made.rim_triangles_removed > 0)
    refuse(first_place(input),
           "no triangle with all sides up to longest_edge, " +
               shortest(input.longest_edge->in_metres()) + " m",
           "a longest_edge above the spacing of the points", "give a larger longest_edge");
  if (!input.outline.empty())
    refuse({input.outline.front().file, 1, 1}, "no ground inside the outline",
           "an outline round surveyed points", "check the outline's coordinates");
  refuse(first_place(input), std::to_string(positions) + " positions on one line", three,
         "survey points on both sides of the line");
}

// Looked for first, in the order of the table: few surveys give a point its own sigma, and vertices
// lie in another order.
template <class Given>
bool any_point(const GroundInput& input, Given given) {
  return std::any_of(input.points.points.begin(), input.points.points.end(), given);
}

// The sigma of each vertex; none at all where one has none.
std::vector<Length> sigmas(const GroundInput& input, const std::vector<Index>& source) {
  if (!any_point(input, [](const SurveyPoint& p) { return p.sigma_height().has_value(); })) {
    if (!input.sigma_height) return {};
    std::vector<Length> alike(source.size(), *input.sigma_height);
    return alike;
  }
  std::vector<Length> out;
  out.reserve(source.size());
  for (const Index point : source) {
    std::optional<Length> sigma = input.sigma_height;
    if (point != geometry::kNone) {
      const auto own = input.points.points[static_cast<std::size_t>(point)].sigma_height();
      if (own) sigma = own;
    }
    if (!sigma) return {};
    out.push_back(*sigma);
  }
  return out;
}

// A point's own, zero where it has none; empty where no point has one.
std::vector<Length> plan_sigmas(const GroundInput& input, const std::vector<Index>& source) {
  if (!any_point(input, [](const SurveyPoint& p) { return p.sigma_plan().has_value(); })) return {};
  std::vector<Length> out(source.size());
  bool any = false;
  for (std::size_t i = 0; i < source.size(); ++i) {
    if (source[i] == geometry::kNone) continue;
    const auto own = input.points.points[static_cast<std::size_t>(source[i])].sigma_plan();
    if (own) out[i] = *own, any = true;
  }
  return any ? out : std::vector<Length>{};
}

void name_rows(const GroundInput& input, const std::vector<Index>& string_rows,
               geometry::Triangulated& made, BuiltGround& built) {
  const auto points = static_cast<Index>(input.points.size());
  const auto row = [&](Index i) {
    return i < points ? i : string_rows[static_cast<std::size_t>(i - points)];
  };
  built.row = std::move(made.source);
  built.ground.source = built.row;
  for (Index& s : built.ground.source)
    if (s >= points) s = geometry::kNone;
  for (Index& r : built.row) r = row(r);
  for (geometry::Doubled& d : made.doubled) {
    d.kept = row(d.kept);
    d.dropped = row(d.dropped);
  }
}

enum class NoTriangle { Refused, LeftEmpty };

BuiltGround from_points(const GroundInput& input, const geometry::SiteFrame& frame,
                        NoTriangle none) {
  std::vector<Problem> problems;
  find_missing_heights(input, problems);
  check_outlines(input, frame, problems);
  refuse_all(std::move(problems));
  BuiltGround built;
  built.ground.frame = frame;
  Prepared prepared = prepare(input, frame, built.cautions);
  const std::size_t given = prepared.input.points.size();
  geometry::Triangulated made = geometry::triangulate(std::move(prepared.input));
  if (made.surface.triangles.empty() && none == NoTriangle::Refused)
    refuse_nothing(input, made, given - made.doubled.size());
  name_rows(input, prepared.string_rows, made, built);
  built.ground.surface = std::move(made.surface);
  built.doubled = std::move(made.doubled);
  built.crossings = std::move(made.crossings);
  built.touches = std::move(made.touches);
  built.rim_triangles_removed = made.rim_triangles_removed;
  if (built.rim_triangles_removed > 0)
    built.cautions.push_back(std::to_string(built.rim_triangles_removed) +
                             " triangles at the rim with a side longer than " +
                             shortest(input.longest_edge->in_metres()) +
                             " m are not taken for ground");
  return built;
}

BuiltGround with_sigmas(const GroundInput& input, BuiltGround built) {
  built.ground.sigma_common = input.sigma_common;
  built.ground.sigma_height = sigmas(input, built.ground.source);
  built.ground.sigma_plan = plan_sigmas(input, built.ground.source);
  return built;
}

}  // namespace

BuiltGround build_ground(const GroundInput& input, const geometry::SiteFrame& frame) {
  if (!input.surface) return with_sigmas(input, from_points(input, frame, NoTriangle::Refused));
  BuiltGround built = with_sigmas(input, from_ready_surface(*input.surface, frame));
  if (!(input.breaklines.empty() && input.outline.empty()))
    built.cautions.emplace_back("breaklines and outline are not applied to a ready surface");
  return built;
}

BuiltGround build_part(const GroundInput& input, const geometry::SiteFrame& frame) {
  return with_sigmas(input, from_points(input, frame, NoTriangle::LeftEmpty));
}

}  // namespace squaredig::ground
