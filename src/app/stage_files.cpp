#include "app/stage_files.h"

#include "app/stages.h"
#include "app/version.h"
#include "formats/base_csv.h"
#include "formats/base_json.h"
#include "formats/cells_csv.h"
#include "formats/dig_files.h"
#include "formats/dig_json.h"
#include "formats/field_json.h"
#include "formats/field_points_csv.h"
#include "formats/fill_json.h"
#include "formats/geotiff_write.h"
#include "formats/ground_json.h"
#include "formats/landxml_write.h"
#include "formats/pegs_csv.h"
#include "formats/pegs_drawing.h"
#include "formats/pegs_json.h"
#include "formats/record_files.h"
#include "formats/record_json.h"
#include "formats/repair_files.h"

namespace squaredig::app {

namespace {

formats::LandXmlOut document(const ResultHead& head, const FileContext& context) {
  formats::LandXmlOut document;
  document.job = head.job;
  document.tool_version = kVersion;
  document.date = context.date;
  document.crs = context.crs;
  document.heights = context.heights;
  return document;
}

// The cut at the centre of each cell, along the tank or north up.
std::string cut_tif(const dig::CutRaster& cut, const FileContext& context) {
  formats::Raster raster;
  raster.origin = cut.origin;
  raster.bearing = cut.bearing;
  raster.cell = cut.size;
  raster.columns = cut.columns;
  raster.rows = cut.rows;
  for (const auto& value : cut.cut)
    raster.cells.push_back(value ? std::optional(value->in_metres()) : std::nullopt);
  raster.crs = context.crs;
  raster.description = "cut at the cell's centre, metres";
  return formats::geotiff_bytes(raster);
}

}  // namespace

Files files_of(const field::FieldResult& result, const FileContext&) {
  return {{"points.csv", formats::field_points_csv(result)},
          {"field.json", formats::field_json(result, kVersion)}};
}

Files files_of(const ground::GroundResult& result, const FileContext&) {
  return {{"ground.json", formats::ground_json(result, kVersion)}};
}

formats::FilePieces ground_xml(const ground::GroundResult& result, SurfaceMesh surface,
                               const FileContext& context) {
  auto xml = std::make_shared<formats::LandXmlOut>(document(result.head, context));
  xml->surfaces.push_back({std::move(surface), "existing ground", result.breaklines,
                           result.plan_area, result.surface_area});
  return formats::landxml_pieces(xml);
}

Files files_of(const pegs::PegsResult& result, const FileContext& context) {
  Files files = {{"pegs.csv", formats::pegs_csv(result)},
                 {"pegs.dxf", formats::pegs_dxf(result)},
                 {"pegs.xml", formats::pegs_xml(result, document(result.head, context))},
                 {"pegs.json", formats::pegs_json(result, kVersion)}};
  if (!result.polar.empty()) files["pegs-polar.csv"] = formats::pegs_polar_csv(result);
  if (auto map = formats::pegs_geojson(result, context.crs))
    files["pegs.geojson"] = std::move(*map);
  return files;
}

Files files_of(const dig::DigResult& result, const FileContext& context) {
  return {{"cells.csv", formats::cells_csv(result.grid)},
          {"cut.tif", cut_tif(result.raster, context)},
          {"dig.dxf", formats::dig_dxf(result)},
          {"dig.xml", formats::dig_xml(result, document(result.head, context))},
          {"dig.json", formats::dig_json(result, kVersion)}};
}

Files dig_map(const dig::DigResult& result, const std::vector<pegs::ReferencePeg>& pegs,
              const FileContext& context) {
  return {{"dig.gpkg", formats::dig_gpkg(result, pegs, {context.crs, context.date, {}})}};
}

Files files_of(const base::BaseResult& result, const FileContext&) {
  return {{"base.csv", formats::base_csv(result)},
          {"base.json", formats::base_json(result, kVersion)},
          {"repair.csv", formats::repair_csv(result)},
          {"repair.dxf", formats::repair_dxf(result)}};
}

Files files_of(const fill::FillResult& result, const FileContext&) {
  return {{"quantities.csv", formats::quantities_csv(result)},
          {"fill.json", formats::fill_json(result, kVersion)}};
}

Files files_of(const record::RecordResult& result, const FileContext&) {
  return {{"storage.csv", formats::storage_csv(result.storage)},
          {"record.json", formats::record_json(result, kVersion)}};
}

Files record_map(const record::RecordResult& result, const StageResults& stages,
                 const FileContext& context) {
  const auto found = [](const auto& r) { return r ? &*r : nullptr; };
  return {{"record.gpkg", formats::record_gpkg({result, found(stages.pegs), found(stages.dig),
                                                found(stages.base), found(stages.fill)},
                                               {context.crs, context.date, {}})}};
}

std::vector<std::string> file_names(job::Stage stage) {
  switch (stage) {
    case job::Stage::Field:
      return {"field.html", "field.json", "points.csv"};
    case job::Stage::Pegs:
      return {"pegs.csv",  "pegs-polar.csv", "pegs.dxf", "pegs.geojson",
              "pegs.html", "pegs.json",      "pegs.pdf", "pegs.xml"};
    case job::Stage::Dig:
      return {"cells.csv", "cut.tif",  "dig.dxf", "dig.gpkg",
              "dig.html",  "dig.json", "dig.pdf", "dig.xml"};
    case job::Stage::Base:
      return {"base.csv", "base.html", "base.json", "base.pdf", "repair.csv", "repair.dxf"};
    case job::Stage::Fill:
      return {"fill.html", "fill.json", "fill.pdf", "quantities.csv"};
    case job::Stage::Record:
      return {"record.gpkg", "record.json", "record.pdf", "storage.csv"};
    default:
      return {"ground.html", "ground.json", "ground.xml"};
  }
}

}  // namespace squaredig::app
