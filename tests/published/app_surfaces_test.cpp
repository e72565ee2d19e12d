// Volumes between real triangulated surfaces: buildingSMART Finland InfraModel examples, CC BY 4.0;
// the volumes were found by an independent exact overlay, checked there with point sampling.
#include <gtest/gtest.h>

#include "formats/landxml_read.h"
#include "geometry/overlay.h"
#include "ground/build_ground.h"
#include "shared_data.h"

namespace squaredig {
namespace {

ground::GroundSurface surface(const std::string& file, const geometry::SiteFrame& frame) {
  formats::SourceFile source;
  source.path = testing::shared_data("landxml/" + file).string();
  source.name = file;
  ground::GroundInput input;
  input.surface = formats::read_landxml_surface(source).mesh;
  return ground::build_ground(input, frame).ground;
}

geometry::Between between(const std::string& existing, const std::string& design) {
  formats::SourceFile source;
  source.path = testing::shared_data("landxml/" + existing).string();
  source.name = existing;
  const auto first = formats::read_landxml_surface(source).mesh.vertices[0];
  const auto frame = geometry::SiteFrame::around(first);
  const auto upper = surface(existing, frame), lower = surface(design, frame);
  return geometry::between(upper.surface, geometry::Locator(upper.surface), lower.surface);
}

TEST(RealSurfaces, RockBedToLowestLayer) {
  SQUAREDIG_NEEDS_SHARED_DATA("landxml/rockbed_survey.xml");
  const auto b = between("rockbed_survey.xml", "design_lowest_M3.xml");
  EXPECT_NEAR(b.common_area, 1140.7289, 1e-3);
  EXPECT_NEAR(b.above, 448.0791, 1e-3);
  EXPECT_NEAR(b.below, 293.0726, 1e-3);
  EXPECT_NEAR(b.greatest_above, 2.4194, 1e-4);
  EXPECT_NEAR(b.greatest_below, 2.4870, 1e-4);
}

TEST(RealSurfaces, HighestToLowestLayer) {
  SQUAREDIG_NEEDS_SHARED_DATA("landxml/design_highest_Y10.xml");
  const auto b = between("design_highest_Y10.xml", "design_lowest_Y10.xml");
  EXPECT_NEAR(b.common_area, 283.7336, 1e-3);
  EXPECT_NEAR(b.above, 55.2675, 1e-3);
  EXPECT_NEAR(b.below, 0.0330, 1e-3);
  EXPECT_NEAR(b.greatest_above, 0.7117, 1e-4);
  EXPECT_NEAR(b.greatest_below, 0.0237, 1e-4);
}

}  // namespace
}  // namespace squaredig
