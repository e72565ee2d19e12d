#include "formats/geopackage_write.h"

#include <cpl_conv.h>
#include <ogr_spatialref.h>
#include <ogrsf_frmts.h>

#include <cmath>
#include <cstdint>
#include <memory>

#include "formats/gdal_memory_internal.h"
#include "quantity/day_text.h"
#include "quantity/problem.h"

namespace squaredig::formats {
namespace {

// Every time stamp of the file is the job's date.
class TimeStamp {
 public:
  explicit TimeStamp(const std::optional<std::chrono::year_month_day>& date) {
    CPLSetThreadLocalConfigOption("OGR_CURRENT_DATE", (day_text(date) + "T00:00:00.000Z").c_str());
  }
  ~TimeStamp() { CPLSetThreadLocalConfigOption("OGR_CURRENT_DATE", nullptr); }
  TimeStamp(const TimeStamp&) = delete;
  TimeStamp& operator=(const TimeStamp&) = delete;
};

OGRSpatialReference system_of(const std::string& crs) {
  OGRSpatialReference system;
  if (crs.starts_with("EPSG:")) {
    set_epsg(system, crs);
  } else {
    system.SetLocalCS("Undefined Cartesian SRS");
    system.SetLinearUnits("metre", 1);
  }
  return system;
}

OGRwkbGeometryType type_of(GpkgShape shape) {
  switch (shape) {
    case GpkgShape::Point:
      return wkbPoint25D;
    case GpkgShape::PointInPlan:
      return wkbPoint;
    case GpkgShape::Line:
      return wkbLineString25D;
    default:
      return wkbPolygon25D;
  }
}

OGRFieldType type_of(GpkgType type) {
  switch (type) {
    case GpkgType::Text:
      return OFTString;
    case GpkgType::Number:
      return OFTReal;
    default:
      return OFTInteger64;
  }
}

OGRPoint point_of(const GridPosition& p, const std::string& layer) {
  const double e = p.at.easting.in_metres(), n = p.at.northing.in_metres(),
               h = p.height.in_metres();
  if (!std::isfinite(e) || !std::isfinite(n) || !std::isfinite(h))
    refuse({"result"}, "a corner of layer " + layer + " that is not finite", "finite values",
           "this is a fault of the program: please report it with the job");
  return {e, n, h};
}

void add_points(OGRSimpleCurve& curve, const std::vector<GridPosition>& corners,
                const std::string& layer) {
  for (const auto& p : corners) {
    const OGRPoint point = point_of(p, layer);
    curve.addPoint(&point);
  }
}

std::unique_ptr<OGRGeometry> geometry_of(const GpkgFeature& feature, const GpkgLayer& layer) {
  if (layer.shape == GpkgShape::Point)
    return std::make_unique<OGRPoint>(point_of(feature.rings.at(0).at(0), layer.name));
  if (layer.shape == GpkgShape::PointInPlan) {
    auto point = std::make_unique<OGRPoint>(point_of(feature.rings.at(0).at(0), layer.name));
    point->flattenTo2D();
    return point;
  }
  if (layer.shape == GpkgShape::Line) {
    auto line = std::make_unique<OGRLineString>();
    add_points(*line, feature.rings.at(0), layer.name);
    return line;
  }
  auto polygon = std::make_unique<OGRPolygon>();
  for (const auto& corners : feature.rings) {
    OGRLinearRing ring;
    add_points(ring, corners, layer.name);
    ring.closeRings();
    polygon->addRing(&ring);
  }
  return polygon;
}

void set_value(OGRFeature& row, int field, const GpkgValue& value, const std::string& layer) {
  if (const auto* text = std::get_if<std::string>(&value)) {
    row.SetField(field, text->c_str());
  } else if (const auto* number = std::get_if<double>(&value)) {
    if (!std::isfinite(*number))
      refuse({"result"}, "a value of layer " + layer + " that is not finite", "finite values",
             "this is a fault of the program: please report it with the job");
    row.SetField(field, *number);
  } else if (const auto* count = std::get_if<std::int64_t>(&value)) {
    row.SetField(field, static_cast<GIntBig>(*count));
  }
}

void add_layer(GDALDataset& file, const GpkgLayer& layer, OGRSpatialReference& system,
               const MemoryFile& memory) {
  OGRLayer* made = file.CreateLayer(layer.name.c_str(), &system, type_of(layer.shape), nullptr);
  if (made == nullptr) memory.cannot("layer " + layer.name + " cannot be made");
  for (const auto& field : layer.fields) {
    OGRFieldDefn definition(field.name.c_str(), type_of(field.type));
    if (made->CreateField(&definition) != OGRERR_NONE)
      memory.cannot("field " + field.name + " cannot be made");
  }
  for (const auto& feature : layer.features) {
    OGRFeature row(made->GetLayerDefn());
    for (std::size_t i = 0; i < feature.values.size(); ++i)
      set_value(row, static_cast<int>(i), feature.values[i], layer.name);
    row.SetGeometryDirectly(geometry_of(feature, layer).release());
    if (made->CreateFeature(&row) != OGRERR_NONE)
      memory.cannot("a row of layer " + layer.name + " cannot be written");
  }
}

}  // namespace

std::string geopackage_bytes(const GpkgOut& out) {
  const MemoryFile memory("GeoPackage", "gpkg");
  const TimeStamp stamp(out.date);
  RegisterOGRGeoPackage();
  GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GPKG");
  if (driver == nullptr) memory.cannot("GDAL has no GeoPackage");
  OGRSpatialReference system = system_of(out.crs);
  {
    const std::unique_ptr<GDALDataset, decltype(&GDALClose)> file(
        driver->Create(memory.path(), 0, 0, 0, GDT_Unknown, nullptr), &GDALClose);
    if (file == nullptr) memory.cannot("the file cannot be made");
    for (const auto& layer : out.layers) add_layer(*file, layer, system, memory);
  }
  return memory.bytes();
}

}  // namespace squaredig::formats
