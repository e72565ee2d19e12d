// GeoPackage out: named layers of points, lines and polygons with heights and their attributes.
//
// What: the bytes of a file, the same for the same content and date on any day.
// Frame and units: the job's grid, metres; heights as the third coordinate.
// Requires: rings without a repeated last corner; as many values as the layer has fields.
// Laws: geopackage.1  the same content gives the same bytes; geopackage.2  every layer, attribute
// and
//   height is read back by another program.
// Accuracy: coordinates and numbers keep every bit.
// Errors: a Refusal where the EPSG code is unknown or the file cannot be made; NaN and infinity are
//   refused by the layer's name.
// Source: OGC GeoPackage 1.2, by GDAL.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "quantity/position.h"

namespace squaredig::formats {

// A point in plan has no height: it was not measured.
enum class GpkgShape { Point, PointInPlan, Line, Polygon };
enum class GpkgType { Text, Number, Count };

struct GpkgField {
  std::string name;
  GpkgType type = GpkgType::Text;
};

using GpkgValue = std::variant<std::monostate, std::string, double, std::int64_t>;

struct GpkgFeature {
  // a point is one corner; a polygon's first ring is its outer one
  std::vector<std::vector<GridPosition>> rings;
  std::vector<GpkgValue> values;
};

struct GpkgLayer {
  std::string name;
  GpkgShape shape = GpkgShape::Point;
  std::vector<GpkgField> fields;
  std::vector<GpkgFeature> features;
};

struct GpkgOut {
  std::string crs;                                  // "EPSG:2157", or "local" for none
  std::optional<std::chrono::year_month_day> date;  // none: 1970-01-01
  std::vector<GpkgLayer> layers;
};

std::string geopackage_bytes(const GpkgOut& out);

}  // namespace squaredig::formats
