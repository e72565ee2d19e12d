#include "formats/geotiff_write.h"

#include <gdal.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include <array>
#include <cmath>
#include <memory>

#include "formats/gdal_memory_internal.h"
#include "quantity/problem.h"

namespace squaredig::formats {
namespace {

constexpr float kNoData = -9999;

void set_crs(GDALDataset& file, const std::string& crs, const MemoryFile& memory) {
  if (!crs.starts_with("EPSG:")) return;
  OGRSpatialReference system;
  set_epsg(system, crs);
  if (file.SetSpatialRef(&system) != CE_None)
    memory.cannot("the CRS " + crs + " cannot be written");
}

std::array<double, 6> geotransform(const Raster& raster) {
  const double size = raster.cell.in_metres();
  const double s = sine(raster.bearing.from_north());
  const double c = cosine(raster.bearing.from_north());
  return {raster.origin.easting.in_metres(),  size * s, size * c,
          raster.origin.northing.in_metres(), size * c, -size * s};
}

std::vector<float> values_of(const Raster& raster) {
  const auto wanted =
      static_cast<std::size_t>(raster.columns) * static_cast<std::size_t>(raster.rows);
  std::vector<float> values;
  values.reserve(raster.cells.size());
  for (const auto& cell : raster.cells) {
    if (cell && !std::isfinite(*cell))
      refuse({"result"}, "a cell that is not finite", "finite values",
             "this is a fault of the program: please report it with the job");
    values.push_back(cell ? static_cast<float>(*cell) : kNoData);
  }
  if (raster.columns < 1 || raster.rows < 1 || values.size() != wanted)
    refuse({"result"}, "a raster of " + std::to_string(values.size()) + " cells",
           std::to_string(wanted) + " cells, one at least",
           "this is a fault of the program: please report it with the job");
  return values;
}

void write_band(GDALDataset& file, const Raster& raster, std::vector<float>& values,
                const MemoryFile& memory) {
  auto transform = geotransform(raster);
  GDALRasterBand* band = file.GetRasterBand(1);
  if (file.SetGeoTransform(transform.data()) != CE_None ||
      band->SetNoDataValue(static_cast<double>(kNoData)) != CE_None)
    memory.cannot("the grid cannot be written");
  band->SetDescription(raster.description.c_str());
  if (band->RasterIO(GF_Write, 0, 0, raster.columns, raster.rows, values.data(), raster.columns,
                     raster.rows, GDT_Float32, 0, 0) != CE_None)
    memory.cannot("the cells cannot be written");
}

}  // namespace

std::string geotiff_bytes(const Raster& raster) {
  const MemoryFile memory("GeoTIFF", "tif");
  GDALRegister_GTiff();
  GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
  if (driver == nullptr) memory.cannot("GDAL has no GeoTIFF");
  const std::array<const char*, 4> options = {"COMPRESS=DEFLATE", "PREDICTOR=3", "NUM_THREADS=1",
                                              nullptr};
  std::vector<float> values = values_of(raster);
  {
    const std::unique_ptr<GDALDataset, decltype(&GDALClose)> file(
        driver->Create(memory.path(), raster.columns, raster.rows, 1, GDT_Float32,
                       const_cast<char**>(options.data())),
        &GDALClose);
    if (file == nullptr) memory.cannot("the file cannot be made");
    set_crs(*file, raster.crs, memory);
    write_band(*file, raster, values, memory);
  }
  return memory.bytes();
}

}  // namespace squaredig::formats
