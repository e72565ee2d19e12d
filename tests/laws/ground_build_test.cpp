#include <gtest/gtest.h>

#include "ground/build_ground.h"
#include "unit/ground/made_input.h"

namespace squaredig::ground {
namespace {
using namespace testing;

GroundInput random_input(std::size_t count, unsigned seed) {
  std::mt19937 random(seed);
  const auto millimetres = [&](std::uint64_t metres) {
    return static_cast<double>(random() % (metres * 1000)) / 1000;
  };
  GroundInput input;
  for (std::size_t i = 0; i < count; ++i) {
    const double x = millimetres(60), y = millimetres(60);
    add_point(input, x, y, rolling(x, y) + millimetres(1) / 20);
  }
  return input;
}

TEST(BuildGround, EachPositionIsAVertexOnce_ground_1) {
  GroundInput input = random_input(800, 91);
  add_point(input, 5, 5, 61);
  add_point(input, 5, 5, 62);
  input.breaklines = {string_of("top", {{3, 50, 64}, {55, 10, 64}})};
  const BuiltGround built = build_ground(input, frame());
  std::vector<int> seen(input.points.size());
  for (std::size_t v = 0; v < built.row.size(); ++v) {
    const geometry::Index source = built.ground.source[v];
    if (source == geometry::kNone) continue;
    ++seen[static_cast<std::size_t>(source)];
    EXPECT_EQ(built.row[v], source);
    EXPECT_EQ(built.ground.surface.vertices[v],
              frame().to_site(input.points.points[static_cast<std::size_t>(source)].at));
  }
  ASSERT_EQ(built.doubled.size(), 1U);
  for (std::size_t i = 0; i < seen.size(); ++i)
    EXPECT_EQ(seen[i], static_cast<geometry::Index>(i) == built.doubled[0].dropped ? 0 : 1);
  EXPECT_EQ(built.ground.surface.vertices.size(), 803U);
}

TEST(BuildGround, AReadySurfaceKeepsItsFaces_ground_2) {
  const BuiltGround made = build_ground(random_input(300, 92), frame());
  SurfaceMesh mesh{"old", {}, {}, "old.xml"};
  for (const auto& v : made.ground.surface.vertices) mesh.vertices.push_back(frame().to_grid(v));
  mesh.faces = made.ground.surface.triangles;
  std::mt19937 random(93);
  for (auto& face : mesh.faces) {
    std::rotate(face.begin(), face.begin() + random() % 3, face.end());
    if (random() % 2 == 0) std::swap(face[0], face[1]);
  }
  std::reverse(mesh.faces.begin(), mesh.faces.end());
  GroundInput input;
  input.surface = mesh;
  const geometry::Surface& surface = build_ground(input, frame()).ground.surface;
  ASSERT_EQ(surface.triangles.size(), mesh.faces.size());
  for (std::size_t f = 0; f < mesh.faces.size(); ++f) {
    auto given = mesh.faces[f];
    auto read = surface.triangles[f];
    std::sort(given.begin(), given.end());
    std::sort(read.begin(), read.end());
    EXPECT_EQ(given, read);
  }
  EXPECT_EQ(surface.vertices, made.ground.surface.vertices);
  EXPECT_EQ(geometry::verify(surface), std::vector<std::string>{});
}

TEST(BuildGround, AVertexTakesItsOwnSigmaElseTheJobs_ground_3) {
  GroundInput input = random_input(50, 94);
  input.breaklines = {string_of("top", {{3, 50, 64}, {55, 10, 64}})};
  input.points.points[7].sigma_height_mm = 4;
  EXPECT_TRUE(build_ground(input, frame()).ground.sigma_height.empty());
  input.sigma_height = Length::millimetres(15);
  input.sigma_common = Length::millimetres(5);
  const GroundSurface ground = build_ground(input, frame()).ground;
  EXPECT_EQ(ground.sigma_common, Length::millimetres(5));
  ASSERT_EQ(ground.sigma_height.size(), ground.surface.vertices.size());
  for (std::size_t v = 0; v < ground.source.size(); ++v)
    EXPECT_EQ(ground.sigma_height[v], Length::millimetres(ground.source[v] == 7 ? 4 : 15));
}

struct Circumcircle {
  geometry::Point2 centre;
  double radius = 0;
};

Circumcircle circle_of(const std::array<geometry::Point3, 3>& c) {
  const geometry::Point2 a = c[0].plan(), u = c[1].plan() - a, v = c[2].plan() - a;
  const double d = 2 * cross(u, v), uu = dot(u, u), vv = dot(v, v);
  const geometry::Point2 r{(v.y * uu - u.y * vv) / d, (u.x * vv - v.x * uu) / d};
  return {a + r, std::hypot(r.x, r.y)};
}

// Positions of the corners of each triangle whose circle lies in the window.
std::vector<std::array<geometry::Point3, 3>> certain(const geometry::Surface& s, double low,
                                                     double high) {
  std::vector<std::array<geometry::Point3, 3>> out;
  for (std::size_t t = 0; t < s.triangles.size(); ++t) {
    const auto corners = s.corners(static_cast<geometry::Index>(t));
    const Circumcircle c = circle_of(corners);
    const double r = c.radius + 1e-6;
    if (c.centre.x - r > low && c.centre.x + r < high && c.centre.y - r > low &&
        c.centre.y + r < high)
      out.push_back(corners);
  }
  return out;
}

// A triangle whose circle lies in a window is settled by the points of the window alone, ties of
// cocircular points included: what makes it possible to read a window of a large survey.
TEST(BuildGround, AWindowEqualsTheWholeWhereItsCirclesLieInside_survey_1) {
  for (const GroundInput& whole : {random_input(3000, 95), grid_input(60, 60, 1, rolling)}) {
    GroundInput window;
    for (std::size_t i = 0; i < whole.points.size(); ++i) {
      const geometry::Point3 p = frame().to_site(whole.points.points[i].at);
      if (p.x >= 20 && p.x <= 40 && p.y >= 20 && p.y <= 40) add_point(window, p.x, p.y, p.z + 60);
    }
    const auto of_whole = certain(build_ground(whole, frame()).ground.surface, 20, 40);
    const auto of_window = certain(build_ground(window, frame()).ground.surface, 20, 40);
    EXPECT_GT(of_whole.size(), 300U);
    ASSERT_EQ(of_whole.size(), of_window.size());
    for (std::size_t t = 0; t < of_whole.size(); ++t)
      for (std::size_t i = 0; i < 3; ++i) EXPECT_EQ(of_whole[t][i].plan(), of_window[t][i].plan());
  }
}

}  // namespace
}  // namespace squaredig::ground
