// The windowed survey against the whole one.
#include <gtest/gtest.h>

#include <random>

#include "geometry/split.h"
#include "ground/whole_survey.h"
#include "ground/windowed_survey.h"

namespace squaredig::ground {
namespace {

using geometry::Point3;

constexpr double kSize = 400;

enum class Lie { Scattered, Grid, Clustered };

GroundInput survey(Lie lie, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> any(0, kSize), small(-4, 4);
  GroundInput input;
  input.points.add_file("ground.csv");
  const auto add = [&](double e, double n) {
    SurveyPoint p;
    p.at =
        grid_position(500000 + std::round(e * 1000) / 1000, 6100000 + std::round(n * 1000) / 1000,
                      60 + std::sin(e / 30) + std::cos(n / 40));
    input.points.add(p, "P", "GL");
  };
  if (lie == Lie::Grid)
    for (double e = 0; e <= kSize; e += 8)
      for (double n = 0; n <= kSize; n += 8) add(e, n);
  else
    for (int i = 0; i < 2500; ++i) {
      const double e = any(random), n = any(random);
      add(e, n);
      if (lie == Lie::Clustered && i % 5 == 0)
        for (int k = 0; k < 4; ++k)
          add(std::clamp(e + small(random), 0.0, kSize), std::clamp(n + small(random), 0.0, kSize));
    }
  for (int s = 0; s < 6; ++s) {
    SurveyString line{"S" + std::to_string(s), "lines.csv", {}};
    double e = any(random), n = any(random);
    for (int v = 0; v < 5; ++v) {
      line.vertices.push_back({grid_position(500000 + e, 6100000 + n, 60), true, v + 2});
      e += 5 * small(random), n += 5 * small(random);
    }
    input.breaklines.push_back(line);
  }
  return input;
}

bool inside(const Region& r, GridPoint p) {
  return p.easting >= r.low.easting && p.easting <= r.high.easting &&
         p.northing >= r.low.northing && p.northing <= r.high.northing;
}

bool enters(const Region& r, const SurveyString& s) {
  GridPoint low = s.vertices[0].at.at, high = low;
  for (const auto& v : s.vertices) {
    low = {std::min(low.easting, v.at.at.easting), std::min(low.northing, v.at.at.northing)};
    high = {std::max(high.easting, v.at.at.easting), std::max(high.northing, v.at.at.northing)};
  }
  return high.easting >= r.low.easting && low.easting <= r.high.easting &&
         high.northing >= r.low.northing && low.northing <= r.high.northing;
}

GroundInput part_of(const GroundInput& all, const Region& window) {
  GroundInput part;
  part.longest_edge = all.longest_edge;
  part.points.add_file("ground.csv");
  for (std::size_t i = 0; i < all.points.size(); ++i)
    if (inside(window, all.points.points[i].at.at))
      part.points.add(all.points.points[i], all.points.label(i), all.points.code(i));
  for (const auto& s : all.breaklines)
    if (enters(window, s)) part.breaklines.push_back(s);
  return part;
}

Region extent_of(const GroundInput& input) {
  Region r{grid_point(1e9, 1e9), grid_point(-1e9, -1e9)};
  const auto take = [&](GridPoint p) {
    r.low = {std::min(r.low.easting, p.easting), std::min(r.low.northing, p.northing)};
    r.high = {std::max(r.high.easting, p.easting), std::max(r.high.northing, p.northing)};
  };
  for (const auto& p : input.points.points) take(p.at.at);
  for (const auto& s : input.breaklines)
    for (const auto& v : s.vertices) take(v.at.at);
  return r;
}

// The triangles that meet the region, in order, corner by corner.
std::vector<std::array<Point3, 3>> over(const GroundSurface& ground, const Region& region) {
  const auto low = ground.frame.to_site(region.low), high = ground.frame.to_site(region.high);
  const geometry::Polygon box{low, {high.x, low.y}, high, {low.x, high.y}};
  std::vector<std::array<Point3, 3>> found;
  for (geometry::Index t = 0; t < static_cast<geometry::Index>(ground.surface.triangles.size());
       ++t) {
    const auto c = ground.surface.corners(t);
    geometry::LabelledPolygon triangle{{c[0].plan(), c[1].plan(), c[2].plan()}, {0, 1, 2}};
    const auto shared = part_inside(std::move(triangle), box, 3);
    if (!shared.empty() && geometry::area_of(shared.corners) > 0) found.push_back(c);
  }
  return found;
}

// Gives the number of vertices that were triangulated for the region.
std::size_t expect_equal_over(const GroundInput& all, const Region& region) {
  const auto frame = geometry::SiteFrame::around(grid_position(500200, 6100200, 60));
  WholeSurvey whole(all, frame);
  const Region window{
      grid_point(region.low.easting.in_metres() - 5, region.low.northing.in_metres() - 5),
      grid_point(region.high.easting.in_metres() + 5, region.high.northing.in_metres() + 5)};
  WindowedSurvey windowed(
      part_of(all, window), window, extent_of(all),
      [&](const Region& r) { return part_of(all, r); }, frame);
  const auto& ground = windowed.surface_for(region);
  EXPECT_EQ(over(ground, region), over(whole.surface_for(region), region));
  return ground.surface.vertices.size();
}

// Where no window will do, the whole that somebody else builds is given, and nothing is read again.
TEST(WindowedSurvey, AWholeBuiltElsewhereIsNotBuiltAgain) {
  auto all = survey(Lie::Scattered, 1);
  all.longest_edge = Length::metres(8);  // shorter than sides in every region
  const auto frame = geometry::SiteFrame::around(grid_position(500200, 6100200, 60));
  WholeSurvey whole(all, frame);
  const Region first{grid_point(500100, 6100100), grid_point(500140, 6100140)};
  int asked = 0;
  WindowedSurvey windowed(
      part_of(all, first), first, extent_of(all),
      [&](const Region& r) {
        EXPECT_LT(part_of(all, r).points.size(), all.points.size());
        return part_of(all, r);
      },
      frame,
      [&]() -> const GroundSurface& {
        ++asked;
        return whole.built().ground;
      });
  EXPECT_EQ(&windowed.surface_for(first), &whole.built().ground);
  EXPECT_EQ(asked, 1);
}

TEST(WindowedSurvey, TrianglesAreTheWholeSurveysBitForBit_window_1) {
  std::size_t kept = 0;
  int regions = 0;
  for (const Lie lie : {Lie::Scattered, Lie::Grid, Lie::Clustered})
    for (unsigned seed = 1; seed <= 6; ++seed) {
      SCOPED_TRACE(seed);
      const auto all = survey(lie, seed);
      std::mt19937 random(seed + 100);
      std::uniform_real_distribution<double> any(20, kSize - 60), size(3, 40);
      for (int i = 0; i < 5; ++i, ++regions) {
        const double e = 500000 + any(random), n = 6100000 + any(random);
        kept += expect_equal_over(
            all, {grid_point(e, n), grid_point(e + size(random), n + size(random))});
      }
    }
  // and that without triangulating everything each time
  EXPECT_LT(kept, 1500U * static_cast<std::size_t>(regions));
}

TEST(WindowedSurvey, AtTheRimAndBeyondItTheWholeSurveyIsTaken) {
  const auto all = survey(Lie::Scattered, 3);
  std::size_t kept = 0;
  for (const double e : {499990.0, 500395.0, 500500.0})
    kept += expect_equal_over(all, {grid_point(e, 6100100), grid_point(e + 15, 6100130)});
  EXPECT_GT(kept, 0U);
}

TEST(WindowedSurvey, LongRimTrianglesAreTakenOffAsInTheWhole) {
  auto all = survey(Lie::Scattered, 4);
  all.longest_edge = Length::metres(14);
  std::size_t kept = 0;
  for (const double e : {500010.0, 500200.0, 500380.0})
    kept += expect_equal_over(all, {grid_point(e, 6100100), grid_point(e + 15, 6100130)});
  EXPECT_GT(kept, 0U);
}

}  // namespace
}  // namespace squaredig::ground
