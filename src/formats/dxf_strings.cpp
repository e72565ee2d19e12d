#include <cmath>

#include "formats/dxf_common_internal.h"
#include "formats/dxf_read.h"
#include "formats/string_intake.h"

namespace squaredig::formats {
namespace {

enum Flag : unsigned {
  kClosed = 1,
  kFitted = 2,
  kSplined = 4,
  kInSpace = 8,
  kMesh = 16,
  kPolyface = 64
};

class StringsOfDrawing {
 public:
  StringsOfDrawing(const SourceFile& source, StringIntake& intake)
      : file_(source.name), intake_(intake), layers_(source) {}

  void take(const DxfEntity& entity) {
    const unsigned flags = entity.flags(70);
    if (entity.kind == "POLYLINE" && (flags & (kMesh | kPolyface)) != 0) {
      ++meshes_;
      return;
    }
    if (!layers_.wants(entity) || !straight(entity, flags) || !level(entity, flags)) return;
    intake_.begin(entity.layer);
    if (entity.kind == "LINE")
      line(entity);
    else
      vertices(entity, flags);
    intake_.end(entity.kind != "LINE" && (flags & kClosed) != 0, {file_, entity.line, 1});
  }

  void finish() {
    layers_.finish(intake_.faults());
    if (meshes_ > 0)
      intake_.cautions().push_back(file_ + ": not used: " + std::to_string(meshes_) +
                                   " meshes, which are no strings");
  }

 private:
  void fault(int line, std::string found, std::string needed, std::string remedy) {
    intake_.faults().add({file_, line, 1}, std::move(found), std::move(needed), std::move(remedy));
  }

  bool straight(const DxfEntity& entity, unsigned flags) {
    bool curved = entity.kind == "POLYLINE" && (flags & (kFitted | kSplined)) != 0;
    int line = entity.line;
    for (const DxfEntity& vertex : entity.vertices)
      if (vertex.value(42, 0) != 0 && !curved) {
        curved = true;
        line = vertex.line;
      }
    if (curved)
      fault(line, "a curved " + entity.kind + " on layer " + quoted(entity.layer),
            "straight segments", "turn curves into short segments and export it again");
    return !curved;
  }

  // A two-dimensional entity lies in a plane of its own: only the level one is the grid's.
  bool level(const DxfEntity& entity, unsigned flags) {
    const bool flat =
        entity.kind == "LWPOLYLINE" || (entity.kind == "POLYLINE" && (flags & kInSpace) == 0);
    const bool upright =
        entity.value(210, 0) == 0 && entity.value(220, 0) == 0 && entity.value(230, 1) > 0;
    if (flat && !upright)
      fault(entity.line, entity.kind + " in a tilted plane on layer " + quoted(entity.layer),
            "the plane of easting and northing", "export it as a polyline in space");
    return !flat || upright;
  }

  void line(const DxfEntity& entity) {
    for (const int end : {0, 1}) {
      if (!entity.has(10 + end) || !entity.has(20 + end)) {
        fault(entity.line, "a LINE without an end", "groups 10, 20, 11 and 21", "export it again");
        return;
      }
      intake_.vertex(entity.value(10 + end, 0), entity.value(20 + end, 0), height(entity, 30 + end),
                     {file_, entity.line, 1});
    }
  }

  void vertices(const DxfEntity& entity, unsigned flags) {
    const bool light = entity.kind == "LWPOLYLINE";
    const bool in_space = !light && (flags & kInSpace) != 0;
    const auto elevation = height(entity, light ? 38 : 30);
    if (light && entity.has(90) &&
        entity.value(90, 0) != static_cast<double>(entity.vertices.size()))
      fault(entity.line, std::to_string(entity.vertices.size()) + " vertices in an LWPOLYLINE",
            "as many as its group 90 counts", "export it again");
    for (const DxfEntity& vertex : entity.vertices) {
      if (!vertex.has(10) || !vertex.has(20)) {
        fault(vertex.line, "a vertex without groups 10 and 20", "easting and northing",
              "export it again");
        continue;
      }
      intake_.vertex(vertex.value(10, 0), vertex.value(20, 0),
                     in_space ? height(vertex, 30) : elevation, {file_, vertex.line, 1});
    }
  }

  static std::optional<double> height(const DxfEntity& entity, int code) {
    return entity.has(code) ? std::optional(entity.value(code, 0)) : std::nullopt;
  }

  std::string file_;
  StringIntake& intake_;
  DxfLayers layers_;
  std::size_t meshes_ = 0;
};

}  // namespace

StringsFile read_dxf_strings(const SourceFile& source, Heights heights) {
  StringIntake intake(source, heights);
  std::vector<DxfEntity> entities;
  const DxfDrawing drawing = read_dxf(
      source, {"LINE", "POLYLINE", "LWPOLYLINE"},
      [&](DxfEntity&& e) { entities.push_back(std::move(e)); }, intake.faults());
  intake.place_by(crs_of(drawing, source, intake.faults(), intake.assumed(), intake.cautions()));
  if (entities.empty())
    refuse_without("LINE and no polyline", "strings as LINE, POLYLINE or LWPOLYLINE", drawing,
                   source, intake.faults());
  intake.faults().throw_if_any();
  StringsOfDrawing strings(source, intake);
  for (const DxfEntity& entity : entities) strings.take(entity);
  strings.finish();
  tell_passed_over(drawing, source, intake.cautions());
  return intake.finish(drawing.sha256);
}

}  // namespace squaredig::formats
