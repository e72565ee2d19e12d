#include "formats/geopackage_write.h"

#include <cpl_conv.h>
#include <cpl_vsi.h>
#include <ogr_spatialref.h>
#include <ogrsf_frmts.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "quantity/problem.h"

namespace squaredig::formats {
namespace {

constexpr const char* kInMemory = "/vsimem/squaredig.gpkg";

[[noreturn]] void cannot(const std::string& what) {
  throw Refusal(Problem{ProblemKind::Storage,
                        {"GeoPackage"},
                        what + ": " + CPLGetLastErrorMsg(),
                        "a working GDAL",
                        "check the installation of GDAL and PROJ"});
}

// Messages go into the Refusal, and every time stamp of the file is the job's date.
class Session {
 public:
  explicit Session(const std::optional<std::chrono::year_month_day>& date) {
    CPLPushErrorHandler(CPLQuietErrorHandler);
    const auto day = date.value_or(std::chrono::year{1970} / 1 / 1);
    const auto digits = [](int number, std::size_t width) {
      const std::string text = std::to_string(number);
      return std::string(width - std::min(width, text.size()), '0') + text;
    };
    const std::string stamp = digits(int{day.year()}, 4) + "-" +
                              digits(static_cast<int>(unsigned{day.month()}), 2) + "-" +
                              digits(static_cast<int>(unsigned{day.day()}), 2) + "T00:00:00.000Z";
    CPLSetThreadLocalConfigOption("OGR_CURRENT_DATE", stamp.c_str());
  }
  ~Session() {
    CPLSetThreadLocalConfigOption("OGR_CURRENT_DATE", nullptr);
    CPLPopErrorHandler();
  }
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;
};

OGRSpatialReference system_of(const std::string& crs) {
  OGRSpatialReference system;
  system.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  if (!crs.starts_with("EPSG:")) {
    system.SetLocalCS("Undefined Cartesian SRS");
    system.SetLinearUnits("metre", 1);
  } else if (system.SetFromUserInput(crs.c_str()) != OGRERR_NONE) {
    refuse({"job.toml"}, "the CRS " + quoted(crs), "an EPSG code that PROJ knows",
           "correct crs, or use \"local\"");
  }
  return system;
}

OGRwkbGeometryType type_of(GpkgShape shape) {
  switch (shape) {
    case GpkgShape::Point:
      return wkbPoint25D;
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
  } else if (const auto* count = std::get_if<long long>(&value)) {
    row.SetField(field, static_cast<GIntBig>(*count));
  }
}

void add_layer(GDALDataset& file, const GpkgLayer& layer, OGRSpatialReference& system) {
  OGRLayer* made = file.CreateLayer(layer.name.c_str(), &system, type_of(layer.shape), nullptr);
  if (made == nullptr) cannot("layer " + layer.name + " cannot be made");
  for (const auto& field : layer.fields) {
    OGRFieldDefn definition(field.name.c_str(), type_of(field.type));
    if (made->CreateField(&definition) != OGRERR_NONE)
      cannot("field " + field.name + " cannot be made");
  }
  for (const auto& feature : layer.features) {
    OGRFeature row(made->GetLayerDefn());
    for (std::size_t i = 0; i < feature.values.size(); ++i)
      set_value(row, static_cast<int>(i), feature.values[i], layer.name);
    row.SetGeometryDirectly(geometry_of(feature, layer).release());
    if (made->CreateFeature(&row) != OGRERR_NONE)
      cannot("a row of layer " + layer.name + " cannot be written");
  }
}

std::string taken_from_memory() {
  vsi_l_offset size = 0;
  GByte* bytes = VSIGetMemFileBuffer(kInMemory, &size, TRUE);
  if (bytes == nullptr) cannot("the file is not there");
  std::string file(reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(size));
  CPLFree(bytes);
  return file;
}

}  // namespace

std::string geopackage_bytes(const GpkgOut& out) {
  const Session session(out.date);
  RegisterOGRGeoPackage();
  GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GPKG");
  if (driver == nullptr) cannot("GDAL has no GeoPackage");
  OGRSpatialReference system = system_of(out.crs);
  {
    const std::unique_ptr<GDALDataset, decltype(&GDALClose)> file(
        driver->Create(kInMemory, 0, 0, 0, GDT_Unknown, nullptr), &GDALClose);
    if (file == nullptr) cannot("the file cannot be made");
    try {
      for (const auto& layer : out.layers) add_layer(*file, layer, system);
    } catch (...) {
      VSIUnlink(kInMemory);
      throw;
    }
  }
  return taken_from_memory();
}

}  // namespace squaredig::formats
