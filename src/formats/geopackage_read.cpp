#include "formats/geopackage_read.h"

#include <fcntl.h>
#include <gdal_priv.h>
#include <ogrsf_frmts.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <limits>
#include <memory>

#include "formats/gdal_hush_internal.h"
#include "formats/input_file.h"
#include "formats/point_intake.h"
#include "formats/string_intake.h"
#include "formats/utf8.h"

namespace squaredig::formats {
namespace {

using Dataset = std::unique_ptr<GDALDataset, decltype(&GDALClose)>;

// An open file, closed with this.
class Handle {
 public:
  explicit Handle(const SourceFile& source)
      : handle_(::open(source.path.c_str(), O_RDONLY | O_CLOEXEC)) {
    if (handle_ < 0) throw Refusal(storage_problem(source.name, "cannot be opened", errno));
  }
  ~Handle() { ::close(handle_); }
  Handle(const Handle&) = delete;
  Handle& operator=(const Handle&) = delete;
  // A name of the open file that has no neighbours.
  std::string path() const { return "/proc/self/fd/" + std::to_string(handle_); }

 private:
  int handle_;
};

// What another program has written beside the package is not in it yet.
void refuse_journal(const SourceFile& source, FaultList& faults) {
  std::error_code none;
  const auto real = std::filesystem::canonical(source.path, none);
  for (const char* const ending : {"-wal", "-journal"}) {
    const auto size = std::filesystem::file_size(real.string() + ending, none);
    if (!none && size > 0)
      faults.add({source.name},
                 "changes that are not in it yet, in " + squaredig::quoted(source.name + ending),
                 "a whole GeoPackage",
                 "close the program that has it open, or save a copy and name that");
  }
}

Dataset open_package(const SourceFile& source, FaultList& faults) {
  refuse_journal(source, faults);
  RegisterOGRGeoPackage();
  const char* const drivers[] = {"GPKG", nullptr};
  // Without immutable the library under it writes journals beside the file, and works in those it
  // finds there; it takes no file for immutable that has one beside its name.
  const char* const options[] = {"IMMUTABLE=YES", "LIST_ALL_TABLES=NO", nullptr};
  const Handle alone(source);
  Dataset file(GDALDataset::Open(alone.path().c_str(), GDAL_OF_VECTOR | GDAL_OF_READONLY, drivers,
                                 options, nullptr),
               &GDALClose);
  if (file == nullptr)
    faults.add({source.name}, "a file that cannot be opened", "a GeoPackage with a vector layer",
               "export it again");
  return file;
}

// The layer that is named, or the only one.
OGRLayer* layer_of(GDALDataset& file, const SourceFile& source, FaultList& faults) {
  std::string list;
  OGRLayer* only = nullptr;
  for (int i = 0; i < file.GetLayerCount(); ++i) {
    OGRLayer* layer = file.GetLayer(i);
    const std::string name = layer->GetName();
    if (source.layer && name == *source.layer) return layer;
    list += (list.empty() ? "" : ", ") + squaredig::quoted(name);
    only = layer;
  }
  if (file.GetLayerCount() == 1 && !source.layer) return only;
  faults.add({source.name}, list.empty() ? "no layer" : "layers " + list,
             source.layer ? "a layer " + squaredig::quoted(*source.layer)
                          : "one layer, or the name of one",
             "name it in the job: { file = \"...\", layer = \"...\" }");
  return nullptr;
}

StatedCrs crs_of(OGRLayer& layer, const SourceFile& source, FaultList& faults) {
  const Place place{source.name};
  StatedCrs stated;
  stated.place = place;
  const OGRSpatialReference* system = layer.GetSpatialRef();
  if (system == nullptr || system->IsLocal() != 0) {
    if (system != nullptr) stated.metres = exact_unit(system->GetLinearUnits());
    stated.metres_up = stated.metres;
    return stated;
  }
  char* wkt = nullptr;
  const char* const options[] = {"FORMAT=WKT2_2018", nullptr};
  system->exportToWkt(&wkt, options);
  const std::string text = wkt == nullptr ? "" : wkt;
  CPLFree(wkt);
  return crs_of_wkt(text, source.grid ? source.grid->epsg : 0, place, faults);
}

// A text of a row: of the first of these fields that the layer has.
class Texts {
 public:
  Texts(OGRLayer& layer, std::initializer_list<const char*> names) {
    for (const char* name : names)
      if (field_ < 0) field_ = layer.GetLayerDefn()->GetFieldIndex(name);
  }
  bool there() const { return field_ >= 0; }
  std::string of(const OGRFeature& row) const {
    return field_ >= 0 && row.IsFieldSetAndNotNull(field_) != 0 ? row.GetFieldAsString(field_) : "";
  }

 private:
  int field_ = -1;
};

class Rows {
 public:
  Rows(OGRLayer& layer, const SourceFile& source, FaultList& faults)
      : label(layer, {"point", "string", "name"}),
        code(layer, {"code"}),
        layer_(layer),
        file_(source.name),
        faults_(faults) {}

  Texts label;
  Texts code;

  template <class Take>
  void each(Take take) {
    layer_.ResetReading();
    CPLErrorReset();
    while (const OGRFeatureUniquePtr row = OGRFeatureUniquePtr(layer_.GetNextFeature())) {
      if (number_ < std::numeric_limits<int>::max()) ++number_;
      const OGRGeometry* geometry = row->GetGeometryRef();
      const std::string text = label.of(*row) + code.of(*row);
      if (geometry == nullptr || geometry->IsEmpty() != 0)
        fault("a row without geometry", "a point or line with coordinates");
      else if (!is_utf8(text))
        fault("text that is not UTF-8", "UTF-8, as a GeoPackage has");
      else
        take(*row, *geometry);
    }
    if (CPLGetLastErrorType() >= CE_Failure)
      fault("the layer cannot be read to its end", "a whole GeoPackage");
  }
  void fault(std::string found, std::string needed) {
    faults_.add(place(), std::move(found), std::move(needed), "correct it and export it again");
  }
  Place place() const { return {file_, std::max(number_, 1), 1}; }

 private:
  OGRLayer& layer_;
  std::string file_;
  FaultList& faults_;
  int number_ = 0;
};

std::string kind_of(const OGRGeometry& geometry) { return geometry.getGeometryName(); }

template <class Point>
std::optional<double> height_of(const Point& point) {
  return point.Is3D() ? std::optional(point.getZ()) : std::nullopt;
}

void take_line(const OGRSimpleCurve& line, const std::string& name, bool ring, StringIntake& intake,
               const Place& place) {
  intake.begin(name);
  for (int i = 0; i < line.getNumPoints(); ++i)
    intake.vertex(line.getX(i), line.getY(i),
                  line.Is3D() ? std::optional(line.getZ(i)) : std::nullopt, place);
  intake.end(ring, place);
}

void take_strings(const OGRGeometry& geometry, const std::string& name, StringIntake& intake,
                  Rows& rows, int depth = 0) {
  switch (wkbFlatten(geometry.getGeometryType())) {
    case wkbLineString:
      return take_line(*geometry.toLineString(), name, false, intake, rows.place());
    case wkbPolygon:
      if (geometry.toPolygon()->getNumInteriorRings() > 0)
        rows.fault("a polygon with holes", "lines, or polygons without holes");
      return take_line(*geometry.toPolygon()->getExteriorRing(), name, true, intake, rows.place());
    case wkbMultiLineString:
    case wkbMultiPolygon:
      if (depth == 0)
        for (const OGRGeometry* part : *geometry.toGeometryCollection())
          take_strings(*part, name, intake, rows, 1);
      return;
    default:
      rows.fault("a " + kind_of(geometry), "lines or polygons of straight segments");
  }
}

}  // namespace

PointsFile read_geopackage_points(const SourceFile& source, const PointsWanted& wanted,
                                  PointTable before) {
  std::string sha256 = sha256_of_file(source);
  const GdalAtHome home;
  PointIntake intake(source, wanted, std::move(before));
  const Dataset file = open_package(source, intake.faults());
  intake.faults().throw_if_any();
  OGRLayer* layer = layer_of(*file, source, intake.faults());
  intake.faults().throw_if_any();
  intake.place_by(crs_of(*layer, source, intake.faults()));
  Rows rows(*layer, source, intake.faults());
  if (!source.codes.empty() && !rows.code.there()) rows.fault("no field code", "a field code");
  intake.faults().throw_if_any();
  const auto take = [&](const OGRFeature& row, const OGRPoint& point) {
    const std::string label = rows.label.of(row), code = rows.code.of(row);
    if (!intake.wants_code(code)) return intake.set_aside_code(rows.place().line, code);
    intake.take({point.getX(), point.getY(), height_of(point), label, code, rows.place()});
  };
  rows.each([&](const OGRFeature& row, const OGRGeometry& geometry) {
    const auto kind = wkbFlatten(geometry.getGeometryType());
    if (kind == wkbPoint)
      take(row, *geometry.toPoint());
    else if (kind == wkbMultiPoint)
      for (const OGRPoint* point : *geometry.toMultiPoint()) take(row, *point);
    else
      rows.fault("a " + kind_of(geometry), "points");
  });
  return intake.finish(std::move(sha256));
}

StringsFile read_geopackage_strings(const SourceFile& source, Heights heights) {
  std::string sha256 = sha256_of_file(source);
  const GdalAtHome home;
  StringIntake intake(source, heights);
  const Dataset file = open_package(source, intake.faults());
  intake.faults().throw_if_any();
  OGRLayer* layer = layer_of(*file, source, intake.faults());
  intake.faults().throw_if_any();
  intake.place_by(crs_of(*layer, source, intake.faults()));
  intake.faults().throw_if_any();
  Rows rows(*layer, source, intake.faults());
  rows.each([&](const OGRFeature& row, const OGRGeometry& geometry) {
    const std::string name = rows.label.of(row);
    take_strings(geometry, name.empty() ? layer->GetName() : name, intake, rows);
  });
  return intake.finish(std::move(sha256));
}

}  // namespace squaredig::formats
