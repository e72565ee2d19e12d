#include "formats/geoid_file.h"

#include <gdal_frmts.h>
#include <gdal_priv.h>

#include <array>
#include <cmath>
#include <limits>
#include <memory>

#include "formats/gdal_blocks_internal.h"
#include "formats/gdal_hush_internal.h"
#include "formats/input_file.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

struct Close {
  void operator()(GDALDataset* d) const { GDALClose(d); }
};

class GeoidReader {
 public:
  GeoidReader(const SourceFile& source, Place named_at)
      : source_(source),
        place_(std::move(named_at)),
        file_("the geoid file " + quoted(source.name)) {
    if (source.path.find_first_of("@,") != std::string::npos)
      fault("a geoid file with @ or a comma in its name", "a plain file name", "rename the file");
  }

  GeoidFile read() {
    GeoidFile read;
    read.record.file = source_.name;
    read.record.sha256 = sha256_of_file(source_);
    open();
    read.grid = grid();
    read.record.read = read.record.used = read.grid.separation_m.size();
    return read;
  }

 private:
  [[noreturn]] void fault(const std::string& found, const std::string& needed,
                          const std::string& remedy) const {
    refuse(place_, found, needed, remedy);
  }

  void open() {
    GDALRegister_GTX();
    GDALRegister_GTiff();
    const std::array<const char*, 3> drivers{"GTX", "GTiff", nullptr};
    dataset_.reset(
        GDALDataset::FromHandle(GDALOpenEx(source_.path.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY,
                                           drivers.data(), nullptr, nullptr)));
    if (!dataset_ || dataset_->GetRasterCount() < 1)
      fault(file_ + " cannot be read as a grid", "a whole GTX or GeoTIFF file", "get it again");
    GDALRasterBand* band = dataset_->GetRasterBand(1);
    const std::string holds = band->GetDescription();
    if (!holds.empty() && holds != "geoid_undulation")
      fault(file_ + " holds " + quoted(holds), "separations of geoid and ellipsoid",
            "name another file");
    const GDALDataType type = band->GetRasterDataType();
    if (type != GDT_Float32 && type != GDT_Float64)
      fault(file_ + " holds whole numbers", "separations in metres with their fractions",
            "name another file");
    const double bytes = bytes_of_row_of_blocks(*dataset_);
    if (bytes > kMostBytes)
      fault(file_ + " has " + std::to_string(dataset_->GetRasterCount()) +
                " bands in rows of blocks of " + fixed(bytes / 1e6, 0) + " MB",
            "256 MB at most", "write its separations alone, in strips or tiles");
  }

  field::GeoidGrid grid() {
    std::array<double, 6> t{};
    constexpr double kDegrees = 360;
    if (dataset_->GetGeoTransform(t.data()) != CE_None || t[2] != 0 || t[4] != 0 || t[1] <= 0 ||
        t[5] >= 0 || std::abs(t[3]) > 91 || std::abs(t[0]) > kDegrees)
      fault(file_ + " is not laid out by latitude and longitude",
            "rows of latitude and columns of longitude, in degrees", "name another file");
    field::GeoidGrid grid;
    grid.file = source_.name;
    grid.place = place_;
    grid.columns = static_cast<std::size_t>(dataset_->GetRasterXSize());
    grid.rows = static_cast<std::size_t>(dataset_->GetRasterYSize());
    // a node stands at the middle of its cell
    grid.west = Angle::degrees(t[0] + t[1] / 2);
    grid.north = Angle::degrees(t[3] + t[5] / 2);
    grid.step_longitude = Angle::degrees(t[1]);
    grid.step_latitude = Angle::degrees(-t[5]);
    read_nodes(grid);
    return grid;
  }

  void read_nodes(field::GeoidGrid& grid) {
    constexpr std::size_t kMostNodes = 50'000'000;
    if (grid.rows * grid.columns > kMostNodes)
      fault(file_ + " has " + std::to_string(grid.rows * grid.columns) + " nodes",
            std::to_string(kMostNodes) + " at most", "cut the region of the work out of it");
    GDALRasterBand* band = dataset_->GetRasterBand(1);
    const int columns = dataset_->GetRasterXSize(), rows = dataset_->GetRasterYSize();
    // row by row: what a file claims takes no memory before it is there
    std::vector<float> row(grid.columns);
    for (int i = 0; i < rows; ++i) {
      if (band->RasterIO(GF_Read, 0, i, columns, 1, row.data(), columns, 1, GDT_Float32, 0, 0,
                         nullptr) != CE_None)
        fault(file_ + " is cut short", "every node of the grid", "get it again");
      grid.separation_m.insert(grid.separation_m.end(), row.begin(), row.end());
    }
    int has_nodata = 0;
    const auto nodata = static_cast<float>(band->GetNoDataValue(&has_nodata));
    if (has_nodata == 0) return;
    for (float& n : grid.separation_m)
      if (n == nodata) n = std::numeric_limits<float>::quiet_NaN();
  }

  const SourceFile& source_;
  Place place_;
  std::string file_;
  GdalAtHome home_;
  std::unique_ptr<GDALDataset, Close> dataset_;
};

}  // namespace

GeoidFile read_geoid_file(const SourceFile& source, const Place& named_at) {
  return GeoidReader(source, named_at).read();
}

}  // namespace squaredig::formats
