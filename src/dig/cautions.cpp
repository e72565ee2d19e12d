// What to beware of: faces without a batter, spoil, water, and how the corners were taken.
#include <algorithm>
#include <cmath>
#include <map>

#include "dig/dig_internal.h"
#include "quantity/number_text.h"

namespace squaredig::dig {
namespace {

using geometry::Point2;

constexpr const char* kNoBatter = "NO BATTER GIVEN: support by others. ";
constexpr double kHair = 1e-6;

// Every place where the height of a vertical face may turn: corners of the crest and of the facets.
std::vector<Point2> turning_points(const Work& work) {
  std::vector<Point2> points;
  for (const auto& ring : work.pit.dug.rings)
    for (const auto& p : ring.corners) points.push_back(p.plan());
  for (const auto& facet : work.pit.dug.facets)
    points.insert(points.end(), facet.outline.begin(), facet.outline.end());
  return points;
}

// The excavated surface, or the ground where that is lower or nothing is dug.
std::optional<double> left_at(const Work& work, Point2 p) {
  auto height = work.locator.height_at(p);
  const auto dug = work.pit.surface_at(work.pit.frame.to_grid(p));
  if (height && dug) height = std::min(*height, work.pit.frame.to_site(*dug));
  return height;
}

std::string face_name(const Work& work, const geometry::ConvexCut& cut,
                      const geometry::CutBound& bound) {
  const auto part = static_cast<design::Part>(cut.part);
  if (bound.side == geometry::kNone || part == design::Part::Trench || part == design::Part::Sump)
    return std::string("of ") + design::name_of(part);
  return "on side " + work.pit.tank.side_name(static_cast<std::size_t>(bound.side)) +
         (part == design::Part::Bench ? ", above a bench" : "");
}

void measure(const Work& work, const geometry::CutBound& bound, const std::vector<Point2>& turning,
             VerticalFace& face) {
  for (const Point2 p : turning) {
    if (std::abs(bound.inside.at(p)) > kHair / 2) continue;
    const Point2 in{kHair * bound.inside.a, kHair * bound.inside.b};
    // a hair along as well: at a corner the face may stand to one side alone
    for (const double along : {-1.0, 1.0}) {
      const Point2 q = p + along * Point2{-in.y, in.x};
      if (!work.pit.dug_at(work.pit.frame.to_grid(q + in))) continue;
      const auto below = left_at(work, q + in), above = left_at(work, q - in);
      if (!below || !above || *above - *below <= face.height.in_metres()) continue;
      face.height = Length::metres(*above - *below);
      face.at = work.pit.frame.to_grid(p);
    }
  }
}

void add_face_cautions(const Work& work, DigResult& result) {
  const auto& limit = work.design.pit.vertical_caution_depth;
  for (const auto& face : result.vertical_faces)
    if (limit && face.height > *limit)
      result.head.cautions.push_back(kNoBatter + ("The vertical face " + face.name) + " is " +
                                     fixed(face.height.in_metres(), 2) + " m high near " +
                                     at_text(face.at) + ", more than the entered " +
                                     fixed(limit->in_metres(), 2) + " m.");
}

void add_water_caution(const Work& work, DigResult& result) {
  if (!work.input.water_level) return;
  const auto& tank = work.pit.tank;
  Length most;
  std::size_t corner = 0;
  for (std::size_t i = 0; i < tank.sides(); ++i)
    if (const Length above = *work.input.water_level - tank.dig_level.at(tank.corners[i]);
        above > most)
      most = above, corner = i;
  if (most <= Length{}) return;
  result.head.cautions.push_back(
      "Groundwater at the level entered, " + fixed(work.input.water_level->in_metres(), 3) +
      ", stands " + fixed(most.in_metres(), 2) + " m above the dig level at corner " +
      design::Tank::corner_name(corner) + ": dewatering is decided on site by a competent person.");
}

}  // namespace

void add_vertical_faces(const Work& work, DigResult& result) {
  const auto turning = turning_points(work);
  std::map<std::string, VerticalFace> faces;
  for (const auto& cut : work.pit.pit.cuts)
    for (const auto& bound : cut.bounds) {
      VerticalFace face;
      face.name = face_name(work, cut, bound);
      measure(work, bound, turning, face);
      auto& kept = faces[face.name];
      if (face.height > kept.height) kept = face;
    }
  for (auto& [name, face] : faces)
    if (face.height > Length::millimetres(1)) result.vertical_faces.push_back(face);
}

void add_cautions(const Work& work, DigResult& result) {
  auto& cautions = result.head.cautions;
  cautions = work.pit.cautions;
  cautions.emplace_back(
      work.design.pit.corners == design::Corners::Mitre
          ? "Corners are mitred: both batters run on until they meet."
          : "Corners are rounded by chords at most 6 degrees apart, which hold at "
            "most 0.1 percent more than the cone.");
  if (!work.design.pit.batter_given_by)
    cautions.push_back(kNoBatter + std::string("Nobody is named who gave the batters."));
  add_face_cautions(work, result);
  if (work.input.spoil_setback)
    cautions.push_back("Keep spoil and plant at least the entered " +
                       fixed(work.input.spoil_setback->in_metres(), 2) +
                       " m back from the crest, or further as directed on site.");
  add_water_caution(work, result);
}

}  // namespace squaredig::dig
