// Surfaces and points of real surveys: buildingSMART Finland InfraModel examples, CC BY 4.0. The
// counts, areas and heights are those of the samples' own list of known truths.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "formats/landxml_read.h"
#include "formats/landxml_write.h"
#include "shared_data.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

struct Truth {
  const char* file;
  std::size_t points;
  std::size_t faces;
  std::size_t breaklines;
  std::size_t vertices;
  double plan_area;     // below zero: not known
  double surface_area;  // below zero: not known
};

constexpr std::array<Truth, 4> kTruths = {
    {{"rockbed_survey.xml", 2037, 3244, 67, 1107, 2160.710, 2380.468},
     {"design_lowest_M3.xml", 4997, 8881, 39, 5008, 22249.885, -1},
     {"design_highest_Y10.xml", 307, 547, 13, 307, 315.506, 332.426},
     {"design_lowest_Y10.xml", 330, 589, 17, 330, 283.821, 297.906}}};

SourceFile shared(const std::string& file) {
  SourceFile source;
  source.path = squaredig::testing::shared_data("landxml/" + file).string();
  source.name = file;
  return source;
}

// Sums of the triangles' areas in plan and in space, computed here and nowhere else.
std::array<double, 2> areas(const SurfaceMesh& mesh) {
  double plan = 0;
  double space = 0;
  for (const auto& face : mesh.faces) {
    const auto& a = mesh.vertices[static_cast<std::size_t>(face[0])];
    const auto edge = [&](int i) {
      const auto& p = mesh.vertices[static_cast<std::size_t>(face[static_cast<std::size_t>(i)])];
      return std::array{(p.at.easting - a.at.easting).in_metres(),
                        (p.at.northing - a.at.northing).in_metres(),
                        (p.height - a.height).in_metres()};
    };
    const auto u = edge(1);
    const auto v = edge(2);
    const double z = u[0] * v[1] - u[1] * v[0];
    plan += std::abs(z) / 2;
    space += std::hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], z) / 2;
  }
  return {plan, space};
}

TEST(RealLandXml, SurfacesHaveTheirKnownSizes) {
  SQUAREDIG_NEEDS_SHARED_DATA("landxml/rockbed_survey.xml");
  for (const Truth& truth : kTruths) {
    SCOPED_TRACE(truth.file);
    SourceFile in_its_system = shared(truth.file);
    in_its_system.grid = GridWanted{3875, 0};
    const auto surface = read_landxml_surface(in_its_system);
    EXPECT_EQ(surface.mesh.vertices.size(), truth.points);
    EXPECT_EQ(surface.mesh.faces.size(), truth.faces);
    EXPECT_TRUE(surface.assumed.empty());
    const auto [plan, space] = areas(surface.mesh);
    EXPECT_NEAR(plan, truth.plan_area, 0.0005);  // known to three decimals
    if (truth.surface_area > 0) {
      EXPECT_NEAR(space, truth.surface_area, 0.0005);
    }
    const auto strings = read_landxml_breaklines(shared(truth.file), Heights::Needed);
    EXPECT_EQ(strings.strings.size(), truth.breaklines);
    EXPECT_EQ(strings.record.read, truth.vertices);
  }
}

TEST(RealLandXml, HeightsRunAsKnown) {
  SQUAREDIG_NEEDS_SHARED_DATA("landxml/rockbed_survey.xml");
  const auto range = [](const std::string& file) {
    const auto mesh = read_landxml_surface(shared(file)).mesh;
    const auto [low, high] = std::minmax_element(
        mesh.vertices.begin(), mesh.vertices.end(),
        [](const GridPosition& a, const GridPosition& b) { return a.height < b.height; });
    return std::array{low->height.in_metres(), high->height.in_metres()};
  };
  EXPECT_EQ(range("rockbed_survey.xml"), (std::array{13.809, 21.948}));
  EXPECT_EQ(range("design_lowest_M3.xml"), (std::array{15.300, 21.774}));
}

TEST(RealLandXml, PointsAsKnown) {
  SQUAREDIG_NEEDS_SHARED_DATA("landxml/cgpoints_columns.xml");
  const auto columns = read_landxml_points(shared("cgpoints_columns.xml"));
  EXPECT_EQ(columns.points.size(), 37U);
  EXPECT_EQ(columns.points.label(0), "3036");
  EXPECT_EQ(columns.points.points[0].at, grid_position(21530666.426, 6783020.064, 17.4));
  EXPECT_EQ(read_landxml_points(shared("rockbed_survey.xml")).points.size(), 988U);
}

TEST(RealLandXml, WrittenAndReadBackTheyAreTheSame) {
  SQUAREDIG_NEEDS_SHARED_DATA("landxml/rockbed_survey.xml");
  const auto surface = read_landxml_surface(shared("rockbed_survey.xml"));
  LandXmlOut document;
  document.job = "round trip";
  document.crs = "EPSG:3875";
  document.surfaces.push_back({surface.mesh, ""});
  const auto back =
      read_landxml_surface(squaredig::testing::text_file(landxml_text(document), "back.xml"));
  EXPECT_EQ(back.mesh.vertices, surface.mesh.vertices);
  EXPECT_EQ(back.mesh.faces, surface.mesh.faces);
}

}  // namespace
}  // namespace squaredig::formats
