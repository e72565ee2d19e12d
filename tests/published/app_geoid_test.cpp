// Separations read from a geoid file and interpolated, against the vertical grid shift of PROJ on
// the same file. PROJ answers beside nodes without value, from those that have one; here that is
// refused.
#include <gtest/gtest.h>
#include <proj.h>

#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <optional>
#include <random>

#include "field/geoid.h"
#include "formats/geoid_file.h"
#include "refusal_text.h"
#include "shared_data.h"
#include "temporary_folder.h"

namespace squaredig {
namespace {

constexpr unsigned kSeed = 52;

field::GeoidGrid grid_of(const std::string& path) {
  formats::SourceFile source;
  source.path = path;
  source.name = "geoid.gtx";
  return formats::read_geoid_file(source, {"job.toml", 6, 9}).grid;
}

class VerticalShift {
 public:
  explicit VerticalShift(const std::string& path)
      : context_(proj_context_create()),
        shift_(proj_create(context_, ("+proj=vgridshift +multiplier=1 +grids=" + path).c_str())) {}
  VerticalShift(const VerticalShift&) = delete;
  VerticalShift& operator=(const VerticalShift&) = delete;
  ~VerticalShift() {
    proj_destroy(shift_);
    proj_context_destroy(context_);
  }
  // Not finite where PROJ has no answer.
  double at(geodesy::Geographic g) const {
    proj_errno_reset(shift_);
    return proj_trans(shift_, PJ_FWD,
                      proj_coord(g.longitude.in_radians(), g.latitude.in_radians(), 0, HUGE_VAL))
        .v[2];
  }
  bool made() const { return shift_ != nullptr; }

 private:
  PJ_CONTEXT* context_;
  PJ* shift_;
};

std::optional<double> separation_at(const field::GeoidGrid& grid, geodesy::Geographic g) {
  std::optional<double> n;
  testing::refusal_text([&] { n = field::separation(grid, g, {"gnss.csv", 2, 1}).in_metres(); });
  return n;
}

void expect_alike(const std::string& path, int points) {
  const field::GeoidGrid grid = grid_of(path);
  const VerticalShift other(path);
  ASSERT_TRUE(other.made());
  std::mt19937_64 random(kSeed);
  const Angle south = grid.north - grid.step_latitude * static_cast<double>(grid.rows - 1);
  const Angle east = grid.west + grid.step_longitude * static_cast<double>(grid.columns - 1);
  std::uniform_real_distribution<double> latitude(south.in_degrees(), grid.north.in_degrees());
  std::uniform_real_distribution<double> longitude(grid.west.in_degrees(), east.in_degrees());
  double most = 0;
  for (int i = 0; i < points; ++i) {
    const geodesy::Geographic g{Angle::degrees(latitude(random)),
                                Angle::degrees(longitude(random))};
    const auto n = separation_at(grid, g);
    ASSERT_TRUE(n) << g.latitude.in_degrees() << " " << g.longitude.in_degrees();
    most = std::max(most, std::abs(*n - other.at(g)));
  }
  EXPECT_LT(most, 1e-6) << path << ", seed " << kSeed;
}

TEST(GeoidAgainstProj, TheInstalledWorldGrid) {
  const std::string path = "/usr/share/proj/egm96_15.gtx";
  if (!std::ifstream(path)) GTEST_SKIP() << "skipped: no file " << path;
  expect_alike(path, 20000);
}

TEST(GeoidAgainstProj, ADownsampledWorldGrid) {
  SQUAREDIG_NEEDS_SHARED_DATA("geoid/egm96_15_downsampled.gtx");
  const auto path = testing::shared_data("geoid/egm96_15_downsampled.gtx").string();
  expect_alike(path, 20000);
  // its known separation, as the file's source gives it
  EXPECT_NEAR(*separation_at(grid_of(path), {Angle::degrees(52), Angle::degrees(5)}), 43.6825,
              5e-5);
}

TEST(GeoidAgainstProj, ATiledFile) {
  SQUAREDIG_NEEDS_SHARED_DATA("geoid/test_vgrid_pixelispoint.tif");
  expect_alike(testing::shared_data("geoid/test_vgrid_pixelispoint.tif").string(), 2000);
}

template <class T>
void put_big_endian(std::ofstream& out, T value) {
  const auto bytes = std::bit_cast<std::array<char, sizeof(T)>>(value);
  for (std::size_t i = sizeof(T); i-- > 0;) out.put(bytes[i]);
}

// Rows from the south; a node without value is -88.8888, as the format has it.
void write_gtx(const std::string& path, const std::vector<std::vector<float>>& rows) {
  std::ofstream out(path, std::ios::binary);
  for (const double v : {53.0, -7.0, 0.1, 0.1}) put_big_endian(out, v);
  put_big_endian(out, static_cast<std::int32_t>(rows.size()));
  put_big_endian(out, static_cast<std::int32_t>(rows[0].size()));
  for (const auto& row : rows)
    for (const float v : row) put_big_endian(out, v);
}

TEST(GeoidAgainstProj, BesideAHoleAndOutsideNothingIsGiven) {
  const testing::TemporaryFolder folder;
  const std::string path = (folder.path() / "geoid.gtx").string();
  std::vector<std::vector<float>> rows(9, std::vector<float>(11));
  for (std::size_t r = 0; r < 9; ++r)
    for (std::size_t c = 0; c < 11; ++c)
      rows[r][c] = static_cast<float>(57 + 0.3 * std::sin(static_cast<double>(3 * r + c * c)));
  constexpr std::size_t kRow = 3, kColumn = 6;
  rows[kRow][kColumn] = -88.8888F;
  write_gtx(path, rows);
  const field::GeoidGrid grid = grid_of(path);
  const VerticalShift other(path);
  ASSERT_TRUE(other.made());
  std::mt19937_64 random(kSeed);
  std::uniform_real_distribution<double> latitude(52.9, 53.9), longitude(-7.1, -5.9);
  int alike = 0, beside = 0, outside = 0;
  for (int i = 0; i < 5000; ++i) {
    const geodesy::Geographic g{Angle::degrees(latitude(random)),
                                Angle::degrees(longitude(random))};
    const double up = (g.latitude.in_degrees() - 53) * 10;
    const double right = (g.longitude.in_degrees() + 7) * 10;
    const bool inside = up > 0 && up < 8 && right > 0 && right < 10;
    const bool at_hole = std::abs(up - kRow) < 1 && std::abs(right - kColumn) < 1;
    const auto n = separation_at(grid, g);
    ASSERT_EQ(n.has_value(), inside && !at_hole) << up << " " << right << " seed " << kSeed;
    if (n) {
      ++alike;
      EXPECT_NEAR(*n, other.at(g), 1e-6);
    }
    if (!inside) {
      ++outside;
      EXPECT_FALSE(std::isfinite(other.at(g)));
    } else if (at_hole) {
      ++beside;
      EXPECT_TRUE(std::isfinite(other.at(g)));  // from the nodes that are left
    }
  }
  EXPECT_GT(alike, 3000);
  EXPECT_GT(beside, 100);
  EXPECT_GT(outside, 1000);
}

}  // namespace
}  // namespace squaredig
