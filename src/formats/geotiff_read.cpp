#include <gdal_frmts.h>
#include <gdal_priv.h>

#include <charconv>
#include <cmath>
#include <memory>

#include "formats/gdal_blocks_internal.h"
#include "formats/gdal_hush_internal.h"
#include "formats/input_file.h"
#include "formats/raster_internal.h"
#include "formats/raster_read.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

using Dataset = std::unique_ptr<GDALDataset, decltype(&GDALClose)>;

void fault(PointIntake& intake, std::string found, std::string needed, std::string remedy) {
  intake.faults().add({intake.file()}, std::move(found), std::move(needed), std::move(remedy));
}

Dataset open_raster(const SourceFile& source, PointIntake& intake) {
  GDALRegister_GTiff();
  const char* const drivers[] = {"GTiff", nullptr};
  Dataset file(GDALDataset::Open(source.path.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY, drivers,
                                 nullptr, nullptr),
               &GDALClose);
  if (file == nullptr)
    fault(intake, "a file that cannot be opened", "a GeoTIFF", "export it again");
  return file;
}

// Everything about the raster that would make heights or places of its cells other than they look.
void check(GDALDataset& file, PointIntake& intake) {
  if (file.GetRasterCount() != 1)
    return fault(intake, std::to_string(file.GetRasterCount()) + " bands", "one band of heights",
                 "export the heights alone");
  GDALRasterBand& band = *file.GetRasterBand(1);
  const GDALDataType type = band.GetRasterDataType();
  if (GDALDataTypeIsComplex(type) != 0 || type == GDT_Unknown)
    fault(intake, "values that are no plain numbers", "heights as plain numbers",
          "export it again");
  if (band.GetColorTable() != nullptr)
    fault(intake, "a picture with a colour table", "heights", "export the heights themselves");
  int stated = 0;
  const double scale = band.GetScale(&stated), offset = band.GetOffset(&stated);
  if (scale != 1 || offset != 0)
    fault(intake, "values scaled by " + shortest(scale) + " with offset " + shortest(offset),
          "heights as they are", "export the heights themselves");
  const double cells = double{1} * band.GetXSize() * band.GetYSize();
  if (cells > kMostCells)
    fault(intake, shortest(cells) + " cells", "1e9 cells at most", "export a smaller area");
  int block_columns = 0, block_rows = 0;
  band.GetBlockSize(&block_columns, &block_rows);
  const double row = static_cast<double>(sizeof(double)) * band.GetXSize();
  if (bytes_of_row_of_blocks(file) > kMostBytes || row > kMostBytes)
    fault(intake,
          "rows of " + std::to_string(band.GetXSize()) + " cells in blocks of " +
              std::to_string(block_columns) + " by " + std::to_string(block_rows),
          "a row of blocks of 256 MB at most", "export it in strips or tiles");
  std::array<double, 6> at{};
  if (file.GetGeoTransform(at.data()) != CE_None)
    fault(intake, "no place on the ground", "a corner and a cell size", "export it as GeoTIFF");
  else if (!(std::abs(at[1] * at[5] - at[2] * at[4]) > 0) || !std::isfinite(at[0] + at[3]))
    fault(intake, "cells without area", "a cell size above 0", "export it again");
}

std::optional<double> unit_named(const std::string& name) {
  for (const char* const metre : {"m", "metre", "meter", "metres", "meters"})
    if (name == metre) return 1.0;
  for (const char* const foot : {"ft", "foot", "feet"})
    if (name == foot) return metres_per(LengthUnit::Foot);
  for (const char* const foot : {"us-ft", "ftUS", "US survey foot"})
    if (name == foot) return metres_per(LengthUnit::UsSurveyFoot);
  return std::nullopt;
}

StatedCrs crs_of(GDALDataset& file, const SourceFile& source, PointIntake& intake) {
  const Place place{source.name};
  StatedCrs stated;
  if (const OGRSpatialReference* system = file.GetSpatialRef(); system != nullptr) {
    char* wkt = nullptr;
    const char* const options[] = {"FORMAT=WKT2_2018", nullptr};
    system->exportToWkt(&wkt, options);
    const std::string text = wkt == nullptr ? "" : wkt;
    CPLFree(wkt);
    stated = crs_of_wkt(text, source.grid ? source.grid->epsg : 0, place, intake.faults());
  }
  stated.place = place;
  const std::string unit = file.GetRasterBand(1)->GetUnitType();
  const auto up = unit_named(unit);
  if (!unit.empty() && !up)
    fault(intake, "heights in " + quoted(unit), "heights in metres or feet", "export it in metres");
  if (up && stated.metres_up && *up != *stated.metres_up)
    fault(intake, "heights in " + quoted(unit),
          unit_words(*stated.metres_up) + " as the height system has",
          "export it again, in one unit");
  if (up) stated.metres_up = up;
  return stated;
}

// A 32-bit value as the decimal it was written for: 62.35 and not 62.3499984741.
double height_of(double value, bool narrow) {
  if (!narrow) return value;
  std::array<char, 64> text{};
  const auto [end, error] =
      std::to_chars(text.data(), text.data() + text.size(), static_cast<float>(value));
  return parse_number({text.data(), static_cast<std::size_t>(end - text.data())}).value_or(value);
}

void read_cells(GDALDataset& file, PointIntake& intake) {
  GDALRasterBand& band = *file.GetRasterBand(1);
  std::array<double, 6> at{};
  file.GetGeoTransform(at.data());
  int stated = 0;
  const double no_data = band.GetNoDataValue(&stated);
  const bool narrow = band.GetRasterDataType() == GDT_Float32;
  CellIntake cells(intake);
  Place place{intake.file(), 0, 1};  // the cell's number stands for its line
  std::vector<double> row(static_cast<std::size_t>(band.GetXSize()));
  for (int j = 0; j < band.GetYSize(); ++j) {
    if (band.RasterIO(GF_Read, 0, j, band.GetXSize(), 1, row.data(), band.GetXSize(), 1,
                      GDT_Float64, 0, 0, nullptr) != CE_None)
      return fault(intake, "row " + std::to_string(j + 1) + " cannot be read", "a whole raster",
                   "export it again");
    for (std::size_t i = 0; i < row.size(); ++i) {
      const double column = static_cast<double>(i) + 0.5, line = j + 0.5;
      const double value = row[i];
      ++place.line;
      if (std::isnan(value) || (stated != 0 && value == no_data))
        cells.no_data(place);
      else
        cells.height(at[0] + column * at[1] + line * at[2], at[3] + column * at[4] + line * at[5],
                     height_of(value, narrow), place);
    }
  }
  cells.finish(stated != 0);
}

}  // namespace

PointsFile read_geotiff_points(const SourceFile& source, const PointsWanted& wanted,
                               PointTable before) {
  std::string sha256 = sha256_of_file(source);
  const GdalAtHome home;
  PointIntake intake(source, wanted, std::move(before));
  const Dataset file = open_raster(source, intake);
  intake.faults().throw_if_any();
  check(*file, intake);
  intake.faults().throw_if_any();
  intake.place_by(crs_of(*file, source, intake));
  intake.faults().throw_if_any();
  read_cells(*file, intake);
  return intake.finish(std::move(sha256));
}

}  // namespace squaredig::formats
