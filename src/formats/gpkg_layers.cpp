#include "formats/gpkg_layers_internal.h"

namespace squaredig::formats {

GridPosition on(GridPoint p, const std::optional<Elevation>& level) {
  return {p, level.value_or(Elevation{})};
}

GpkgLayer rings_layer(const std::string& name,
                      const std::vector<std::vector<GridPosition>>& rings) {
  GpkgLayer layer{name, GpkgShape::Line, {{"ring", GpkgType::Count}}, {}};
  for (std::size_t i = 0; i < rings.size(); ++i) {
    auto closed = rings[i];
    if (!closed.empty()) closed.push_back(closed.front());
    layer.features.push_back({{std::move(closed)}, {static_cast<std::int64_t>(i + 1)}});
  }
  return layer;
}

GpkgValue metres_or_none(const std::optional<Length>& v) {
  return v ? GpkgValue(v->in_metres()) : GpkgValue();
}
GpkgValue level_or_none(const std::optional<Elevation>& v) {
  return v ? GpkgValue(v->in_metres()) : GpkgValue();
}

GpkgLayer faces_layer(const dig::ExcavatedMesh& excavated) {
  GpkgLayer layer{
      "faces", GpkgShape::Polygon, {{"kind", GpkgType::Text}, {"part", GpkgType::Text}}, {}};
  for (std::size_t i = 0; i < excavated.mesh.faces.size(); ++i) {
    std::vector<GridPosition> ring;
    for (const auto v : excavated.mesh.faces[i])
      ring.push_back(excavated.mesh.vertices[static_cast<std::size_t>(v)]);
    layer.features.push_back({{std::move(ring)}, {excavated.kinds[i], excavated.parts[i]}});
  }
  return layer;
}

GpkgLayer pegs_layer(const std::vector<pegs::ReferencePeg>& pegs) {
  GpkgLayer layer{"pegs",
                  GpkgShape::Point,
                  {{"name", GpkgType::Text},
                   {"string_line", GpkgType::Text},
                   {"beyond_corner_m", GpkgType::Number},
                   {"ground_height", GpkgType::Number}},
                  {}};
  for (const auto& peg : pegs)
    layer.features.push_back(
        {{{on(peg.at, peg.ground)}},
         {peg.name, peg.string_line, peg.beyond_corner.in_metres(), level_or_none(peg.ground)}});
  return layer;
}

}  // namespace squaredig::formats
