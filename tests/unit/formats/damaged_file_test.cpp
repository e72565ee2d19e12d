// Good files with random damage: what comes out is sound, or refused with a place; never a crash, a
// NaN or a face that leads nowhere.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "formats/landxml_read.h"
#include "formats/landxml_write.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

constexpr unsigned kSeed = 1276;
constexpr int kRounds = 150;

// One to three bytes changed, left out, or doubled with what follows them.
std::string damaged(std::string bytes, std::mt19937& draw) {
  for (auto n = 1 + draw() % 3; n > 0; --n) {
    const auto at = static_cast<std::size_t>(draw() % bytes.size());
    switch (draw() % 3) {
      case 0:
        bytes[at] = static_cast<char>(draw() % 256);
        break;
      case 1:
        bytes.erase(at, 1 + draw() % 20);
        break;
      default:
        bytes.insert(at, bytes.substr(at, 1 + draw() % 20));
        break;
    }
    if (bytes.empty()) bytes = "x";
  }
  return bytes;
}

void expect_finite(const GridPosition& p) {
  EXPECT_TRUE(std::isfinite(p.at.easting.in_metres()) && std::isfinite(p.at.northing.in_metres()) &&
              std::isfinite(p.height.in_metres()));
}

// Runs the reader; a Refusal must place each of its problems in the file.
template <class Read>
void sound_or_refused(const SourceFile& source, int round, Read read) {
  SCOPED_TRACE("seed " + std::to_string(kSeed) + " round " + std::to_string(round));
  try {
    read();
  } catch (const Refusal& refusal) {
    ASSERT_FALSE(refusal.problems().empty());
    for (const Problem& problem : refusal.problems()) {
      EXPECT_EQ(problem.place.file, source.name);
      EXPECT_EQ(problem.kind, ProblemKind::Input);
      EXPECT_GE(problem.place.line, 1);
      EXPECT_GE(problem.place.column, 1);
    }
  }
}

TEST(DamagedFile, PointsCsv) {
  std::string good = "\xEF\xBB\xBFpoint;easting;northing;height;code;sigma_height_mm\r\n";
  for (int i = 0; i < 30; ++i)
    good += "\"P \"\"" + std::to_string(i) + "\";715830,25;734697," + std::to_string(i) +
            ";62,35;GL;5\r\n";
  std::mt19937 draw(kSeed);
  for (int round = 0; round < kRounds; ++round) {
    const SourceFile source = squaredig::testing::text_file(damaged(good, draw));
    sound_or_refused(source, round, [&] {
      const auto file = read_points_csv(source);
      for (const auto& point : file.points.points) expect_finite(point.at);
      EXPECT_EQ(file.record.used, file.points.size());
    });
  }
}

TEST(DamagedFile, LandXml) {
  LandXmlOut document;
  document.job = "damaged";
  document.crs = "EPSG:2157";
  SurfaceMesh mesh;
  mesh.name = "ground";
  mesh.vertices = {grid_position(0, 0, 10), grid_position(9, 0, 10.5), grid_position(9, 9, 11.25),
                   grid_position(0, 9, 12)};
  mesh.faces = {{0, 1, 2}, {0, 2, 3}};
  const SurveyString kerb{"kerb", "", {{mesh.vertices[0]}, {mesh.vertices[2]}}};
  document.surfaces.push_back({mesh, "", {kerb}});
  document.points = {{"A1", "PEG", "", grid_point(1, 2), Elevation::metres(3)}};
  const std::string good = landxml_text(document);
  std::mt19937 draw(kSeed);
  for (int round = 0; round < kRounds; ++round) {
    const SourceFile source = squaredig::testing::text_file(damaged(good, draw), "g.xml");
    sound_or_refused(source, round, [&] {
      const auto surface = read_landxml_surface(source);
      for (const auto& vertex : surface.mesh.vertices) expect_finite(vertex);
      for (const auto& face : surface.mesh.faces)
        for (const auto corner : face)
          EXPECT_LT(static_cast<std::size_t>(corner), surface.mesh.vertices.size());
    });
    sound_or_refused(source, round, [&] {
      for (const auto& point : read_landxml_points(source).points.points) expect_finite(point.at);
    });
    sound_or_refused(source, round, [&] {
      for (const auto& string : read_landxml_breaklines(source, Heights::Needed).strings)
        for (const auto& vertex : string.vertices) expect_finite(vertex.at);
    });
  }
}

}  // namespace
}  // namespace squaredig::formats
