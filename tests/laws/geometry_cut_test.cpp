// Laws of the cutting kernel: splitting, overlay, lower envelope, cut and its second answer.
#include <gtest/gtest.h>

#include <limits>

#include "geometry/closure.h"
#include "geometry/overlay.h"
#include "geometry/sum.h"
#include "grounds.h"

namespace squaredig::geometry {
namespace {

using squaredig::testing::grid_surface;
using squaredig::testing::rough_ground;

LabelledPolygon square(double size) {
  return {{{0, 0}, {size, 0}, {size, size}, {0, size}}, {0, 1, 2, 3}};
}

// A pit with a toe box, floor at z and faces rising at `rise` on all sides.
ConvexCut box_cut(double x0, double y0, double x1, double y1, double z, double rise) {
  ConvexCut cut;
  cut.toe = {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
  cut.floor = {{x0, y0}, z, 0, 0};
  cut.faces = {{{{x0, y0}, z, 0, -rise}, 0},
               {{{x1, y0}, z, rise, 0}, 1},
               {{{x1, y1}, z, 0, rise}, 2},
               {{{x0, y1}, z, -rise, 0}, 3}};
  return cut;
}

TEST(Sum, KeepsWhatRoundingLoses_sum_1) {
  Sum sum;
  for (const double term : {1.0, 1e100, -1e100, -1.0, 2.0}) sum.add(term);
  EXPECT_EQ(sum.value(), 2.0);
}

TEST(Split, BothPartsShareTheLine_split_1) {
  std::mt19937 random(4);
  std::uniform_real_distribution<double> any(-1, 1);
  for (int i = 0; i < 200; ++i) {
    const auto whole = square(3);
    std::vector<double> above, below;
    const double a = any(random), b = any(random), c = any(random);
    for (const Point2 p : whole.corners) {
      above.push_back(a * (p.x - 1.5) + b * (p.y - 1.5) + c);
      below.push_back(-above.back());
    }
    const auto upper = part_above(whole, above, 9), lower = part_above(whole, below, 9);
    EXPECT_NEAR(area_of(upper.corners) + area_of(lower.corners), 9, 1e-12);
    for (std::size_t k = 0; k < upper.corners.size(); ++k) {
      if (upper.labels[k] != 9) continue;
      EXPECT_NE(std::find(lower.corners.begin(), lower.corners.end(), upper.corners[k]),
                lower.corners.end());
    }
  }
}

TEST(Split, NothingAboveKeepsNothing_split_2) {
  const std::vector<double> zero(4, 0.0), touching{0, -1, -2, -1};
  EXPECT_TRUE(part_above(square(1), zero, 9).empty());
  EXPECT_TRUE(part_above(square(1), touching, 9).empty());
}

TEST(Overlay, SwappingTheSurfacesSwapsAboveAndBelow_overlay_1) {
  const auto a = grid_surface(10, 1.7, rough_ground(1, 0, 1));
  const auto b = grid_surface(11, 2.3, rough_ground(2, 0, 1));
  const Locator in_a(a), in_b(b);
  const auto ab = between(a, in_a, facets_of(b)), ba = between(b, in_b, facets_of(a));
  EXPECT_NEAR(ab.above, ba.below, 1e-9 * ab.above);
  EXPECT_NEAR(ab.below, ba.above, 1e-9 * ab.below);
  EXPECT_NEAR(ab.common_area, ba.common_area, 1e-9 * ab.common_area);
}

TEST(Overlay, RaisingAddsTheAreaTimesTheRise_overlay_2) {
  auto a = grid_surface(10, 1.7, rough_ground(1, 0, 1));
  const auto facets = facets_of(grid_surface(11, 2.3, rough_ground(2, 0, 1)));
  const auto before = between(a, Locator(a), facets);
  for (auto& v : a.vertices) v.z += 0.25;
  const auto after = between(a, Locator(a), facets);
  EXPECT_NEAR(after.above - after.below, before.above - before.below + 0.25 * before.common_area,
              1e-9 * before.common_area);
}

TEST(Overlay, SplittingAFacetChangesNoSum_overlay_3) {
  const auto a = grid_surface(10, 1.7, rough_ground(3, 0, 1));
  const Locator locator(a);
  const Plane plane{{0, 0}, 0.1, 0.02, -0.03};
  const std::vector<PlaneFacet> whole{{{{-5, -4}, {6, -4}, {6, 5}, {-5, 5}}, plane}};
  const std::vector<PlaneFacet> halves{{{{-5, -4}, {6, -4}, {6, 5}}, plane},
                                       {{{-5, -4}, {6, 5}, {-5, 5}}, plane}};
  const auto one = between(a, locator, whole), two = between(a, locator, halves);
  EXPECT_NEAR(one.above, two.above, 1e-9 * one.above);
  EXPECT_NEAR(one.below, two.below, 1e-9 * one.above);
  EXPECT_NEAR(one.common_area, 99, 1e-9);
}

std::vector<ConvexCut> several() {
  auto walled = box_cut(1, 1, 4, 3, -1.4, 1);
  walled.faces.erase(walled.faces.begin() + 1);
  walled.bounds = {{{-1, 0, 4}, 1}};
  return {box_cut(-6, -3, 6, 3, 0, 1), box_cut(-2, -5, 1, 2, -0.8, 0.7), walled,
          box_cut(-6, -3, 6, 3, 0, 1)};
}

const Box2 kBox{{-15, -15}, {15, 15}};

double lowest(const std::vector<ConvexCut>& cuts, Point2 p) {
  double z = std::numeric_limits<double>::infinity();
  for (const auto& cut : cuts)
    if (in_domain(cut, p)) z = std::min(z, height_of(cut, p));
  return z;
}

TEST(Envelope, FacetsTileTheDomain_envelope_1) {
  double area = 0;
  for (const auto& facet : lower_envelope(several(), kBox)) area += area_of(facet.outline);
  EXPECT_NEAR(area, 900, 1e-9);
  // a cut with a vertical side alone ends there
  const std::vector<ConvexCut> walled{several()[2]};
  area = 0;
  for (const auto& facet : lower_envelope(walled, kBox)) area += area_of(facet.outline);
  EXPECT_NEAR(area, 19 * 30, 1e-9);
}

TEST(Envelope, NoCutIsLowerThanTheFacet_envelope_2) {
  const auto cuts = several();
  for (const auto& facet : lower_envelope(cuts, kBox)) {
    Point2 middle{0, 0};
    for (const Point2 p : facet.outline)
      middle = middle + (1.0 / static_cast<double>(facet.outline.size())) * p;
    EXPECT_NEAR(facet.plane.at(middle), lowest(cuts, middle), 1e-9);
  }
}

TEST(Envelope, OrderOfCutsChangesNothing_envelope_3) {
  auto cuts = several();
  const auto ground = grid_surface(14, 1.3, rough_ground(8, 2, 0.5));
  const double volume = removed_volume(ground, cuts);
  std::mt19937 random(5);
  for (int i = 0; i < 6; ++i) {
    std::shuffle(cuts.begin(), cuts.end(), random);
    EXPECT_NEAR(removed_volume(ground, cuts), volume, 1e-9 * volume);
  }
}

TEST(Cut, PieceAreasSumToTheAreaInsideTheRings_cut_1) {
  for (unsigned seed = 1; seed <= 30; ++seed) {
    SCOPED_TRACE(seed);
    const auto removed = cut(grid_surface(14, 1.3, rough_ground(seed, 2, 0.6)), several());
    double rings = 0, pieces = 0;
    for (const auto& ring : removed.rings) rings += ring.area;
    for (const auto& piece : removed.pieces) pieces += piece.area;
    EXPECT_NEAR(rings, removed.area, 1e-9 * removed.area);
    EXPECT_NEAR(pieces, removed.area, 1e-9 * removed.area);
  }
}

TEST(Cut, MovingChangesNoVolume_cut_2) {
  const auto ground = grid_surface(14, 1.3, rough_ground(3, 2, 0.6));
  const double volume = removed_volume(ground, several());
  auto moved = ground;
  auto cuts = several();
  const Point2 d{173, -261};
  for (auto& v : moved.vertices) v.x += d.x, v.y += d.y, v.z += 12;
  for (auto& c : cuts) {
    for (auto& p : c.toe) p = p + d;
    c.floor.about = c.floor.about + d, c.floor.height += 12;
    for (auto& f : c.faces) f.plane.about = f.plane.about + d, f.plane.height += 12;
    for (auto& b : c.bounds) b.inside.c -= b.inside.a * d.x + b.inside.b * d.y;
  }
  EXPECT_NEAR(removed_volume(moved, cuts), volume, 1e-6);
}

TEST(Cut, DeeperNeverTakesLess_cut_3) {
  const auto ground = grid_surface(20, 1.3, rough_ground(6, 2, 0.6));
  double before = 0;
  for (double z = 2.5; z > -3; z -= 0.37) {
    const double volume = removed_volume(ground, {box_cut(-6, -3, 6, 3, z, 1)});
    EXPECT_GE(volume, before);
    before = volume;
  }
}

TEST(Cut, RaisingTheSurfaceAddsTheAreaToFirstOrder_cut_4) {
  auto ground = grid_surface(20, 1.3, rough_ground(6, 2, 0.4));
  const auto before = cut(ground, several());
  const double d = 1e-4;
  for (auto& v : ground.vertices) v.z += d;
  const auto after = cut(ground, several());
  // the crest moves outward by about d on its whole length: second order
  EXPECT_NEAR((after.volume - before.volume) / d, before.area, 0.01 * before.area);
  EXPECT_NEAR(after.volume - before.volume, d * (before.area + after.area) / 2, 1e-8);
}

TEST(Cut, RepeatingACutChangesNothing_cut_5) {
  const auto ground = grid_surface(14, 1.3, rough_ground(9, 2, 0.6));
  auto cuts = several();
  const auto once = cut(ground, cuts);
  cuts.push_back(cuts[1]);
  const auto twice = cut(ground, cuts);
  EXPECT_NEAR(twice.volume, once.volume, 1e-9 * once.volume);
  EXPECT_NEAR(twice.area, once.area, 1e-9 * once.area);
  EXPECT_EQ(twice.rings.size(), once.rings.size());
}

TEST(Closure, FluxEqualsTheVolume_closure_1) {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    SCOPED_TRACE(seed);
    const auto ground = grid_surface(14, 1.3, rough_ground(seed, 2, 0.6));
    const auto removed = cut(ground, several());
    EXPECT_NEAR(flux_of(ground, removed).volume, removed.volume, 1e-9 * removed.volume);
  }
}

TEST(Closure, VectorAreasOfAClosedSolidSumToZero_closure_2) {
  const auto ground = grid_surface(14, 1.3, rough_ground(2, 2, 0.6));
  auto removed = cut(ground, several());
  auto flux = flux_of(ground, removed);
  EXPECT_NEAR(flux.open_x, 0, 1e-9 * removed.area);
  EXPECT_NEAR(flux.open_y, 0, 1e-9 * removed.area);
  // a crest that is off by a centimetre on one corner opens the solid
  removed.rings[0].corners[0].x += 0.01;
  removed.rings[0].corners[0].y += 0.01;
  flux = flux_of(ground, removed);
  EXPECT_GT(std::abs(flux.open_x) + std::abs(flux.open_y), 1e-7);
}

// Ground that touches the cuts along edges and faces: exact grids, level ground at crest heights,
// a breakline along a vertical side.
TEST(Cut, GroundThatTouchesFacesAndEdgesClosesAllTheSame) {
  const auto level = grid_surface(12, 1.0, [](double, double) { return 2.0; });
  auto walled = box_cut(-6, -3, 6, 3, 0, 1);
  walled.faces.erase(walled.faces.begin() + 1);
  walled.bounds = {{{-1, 0, 6}, 1}};  // x = 6 is a line of the grid
  const std::vector<std::vector<ConvexCut>> jobs{
      {box_cut(-6, -3, 6, 3, 0, 1)},
      {walled},
      {walled, box_cut(2, -1, 6, 1, -1, 0.5)},
      {box_cut(-6, -3, 6, 3, 0, 1), box_cut(-6, -3, 6, 3, 1, 1)},
      {box_cut(-6, -3, 0, 3, 0, 1), box_cut(0, -3, 6, 3, 0, 1)}};
  for (const auto& cuts : jobs) {
    const auto removed = cut(level, cuts);
    const auto flux = flux_of(level, removed);
    EXPECT_NEAR(flux.volume, removed.volume, 1e-9 * removed.volume);
    EXPECT_NEAR(flux.open_x, 0, 1e-9 * removed.area);
    ASSERT_EQ(removed.rings.size(), 1U);
    EXPECT_NEAR(removed.rings[0].area, removed.area, 1e-9 * removed.area);
  }
  // the surface coincides with a face over an area: nothing is taken there
  const auto coplanar =
      grid_surface(12, 1.0, [](double x, double) { return std::max(2.0, x - 6); });
  const auto removed = cut(coplanar, {box_cut(-6, -3, 6, 3, 0, 1)});
  EXPECT_NEAR(removed.volume, 12 * 6 * 2 + 18 * 4 + 4.0 / 3 * 8, 1e-9);
}

}  // namespace
}  // namespace squaredig::geometry
