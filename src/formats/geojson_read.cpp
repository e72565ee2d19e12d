#include "formats/geojson_read.h"

#include "formats/json_features.h"
#include "formats/point_intake.h"
#include "formats/string_intake.h"

namespace squaredig::formats {
namespace {

bool is_points(const std::string& kind) { return kind == "Point" || kind == "MultiPoint"; }

void wrong_kind(const JsonFeature& feature, const std::string& needed, FaultList& faults) {
  faults.add(feature.place, "a " + feature.kind, needed, "export them to a file of their own");
}

void give_points(const std::vector<JsonFeature>& features, bool codes_asked, PointIntake& intake) {
  for (const JsonFeature& feature : features) {
    if (feature.kind.empty()) {
      intake.set_aside(feature.place.line, "the feature has no geometry");
    } else if (codes_asked && !feature.has_code) {
      intake.faults().add(feature.place, "a point without the property code", "its code",
                          "export the codes too");
    } else if (!intake.wants_code(feature.code)) {
      for (const auto& part : feature.parts)
        for (std::size_t i = 0; i < part.size(); ++i)
          intake.set_aside_code(feature.place.line, feature.code);
    } else {
      for (const auto& part : feature.parts)
        for (const JsonPosition& p : part)
          intake.take({p.east, p.north, p.up, feature.label, feature.code, feature.place});
    }
  }
}

}  // namespace

PointsFile read_geojson_points(const SourceFile& source, const PointsWanted& wanted,
                               PointTable before) {
  PointIntake intake(source, wanted, std::move(before));
  std::vector<JsonFeature> features;
  const auto take = [&](JsonFeature&& feature) {
    if (feature.kind.empty() || is_points(feature.kind))
      features.push_back(std::move(feature));
    else
      wrong_kind(feature, "points", intake.faults());
  };
  JsonFile file = read_features(source, {"point", "name"}, take, intake.faults());
  intake.place_by(file.crs);
  intake.faults().throw_if_any();
  give_points(features, !source.codes.empty(), intake);
  return intake.finish(std::move(file.sha256));
}

StringsFile read_geojson_strings(const SourceFile& source, Heights heights) {
  StringIntake intake(source, heights);
  std::vector<JsonFeature> features;
  std::size_t without = 0;
  const auto take = [&](JsonFeature&& feature) {
    if (feature.kind.empty())
      ++without;
    else if (is_points(feature.kind))
      wrong_kind(feature, "lines or polygons", intake.faults());
    else if (feature.holes)
      wrong_kind(feature, "polygons without holes", intake.faults());
    else
      features.push_back(std::move(feature));
  };
  JsonFile file = read_features(source, {"string", "name"}, take, intake.faults());
  intake.place_by(file.crs);
  intake.faults().throw_if_any();
  for (const JsonFeature& feature : features)
    for (const auto& part : feature.parts) {
      intake.begin(feature.label.empty() ? feature.kind : feature.label);
      for (const JsonPosition& p : part) intake.vertex(p.east, p.north, p.up, feature.place);
      intake.end(feature.kind == "Polygon" || feature.kind == "MultiPolygon", feature.place);
    }
  if (without > 0)
    intake.cautions().push_back(source.name + ": not used: " + std::to_string(without) +
                                " features without geometry");
  return intake.finish(std::move(file.sha256));
}

}  // namespace squaredig::formats
