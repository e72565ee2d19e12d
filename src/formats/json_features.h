// The features of a GeoJSON file, one after the other, with their lines.
//
// Accuracy: memory is one feature, and what stands beside the features.
// Errors: as geojson_read.h; faults go to the list.
// Source: RFC 7946, RFC 8259.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "formats/fault_list.h"
#include "formats/stated_crs.h"

namespace squaredig::formats {

struct JsonPosition {
  double east = 0;
  double north = 0;
  std::optional<double> up = std::nullopt;
};

// A geometry, its parts each a row of positions: one point, a line, or a ring.
struct JsonFeature {
  std::string kind;  // "Point", "LineString", ...; empty: no geometry
  std::vector<std::vector<JsonPosition>> parts;
  bool holes = false;
  std::string label;
  std::string code;
  bool has_code = false;
  Place place;  // the line in which it ends
};

struct JsonFile {
  StatedCrs crs;
  std::string sha256;
};

JsonFile read_features(const SourceFile& source, const std::vector<std::string>& label_names,
                       const std::function<void(JsonFeature&&)>& take, FaultList& faults);

}  // namespace squaredig::formats
