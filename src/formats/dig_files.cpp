#include "formats/dig_files.h"

#include <array>
#include <cstdint>

#include "formats/dxf_write.h"
#include "formats/gpkg_layers_internal.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

constexpr const char* kExisting = "existing ground";
constexpr const char* kExcavated = "excavated surface";

SurveyString closed_string(std::string name, const std::vector<GridPosition>& ring) {
  SurveyString string;
  string.name = std::move(name);
  for (const auto& corner : ring) string.vertices.push_back({corner, true, 0});
  if (!ring.empty()) string.vertices.push_back({ring.front(), true, 0});
  return string;
}

std::string numbered(const char* name, std::size_t i) {
  return i == 0 ? name : std::string(name) + " " + std::to_string(i + 1);
}

// The corners of a cell, anticlockwise from its first column and row.
std::array<GridPoint, 4> corners_of(const dig::CellGrid& grid, const dig::Cell& cell) {
  const Length half = grid.size / 2;
  const auto at = [&](Length along, Length across) {
    return ahead(cell.centre, grid.bearing, along, across);
  };
  return {at(-half, -half), at(-half, half), at(half, half), at(half, -half)};
}

GpkgLayer cells_layer(const dig::CellGrid& grid) {
  GpkgLayer layer{"cells",
                  GpkgShape::Polygon,
                  {{"cell", GpkgType::Text},
                   {"column", GpkgType::Count},
                   {"row", GpkgType::Count},
                   {"ground", GpkgType::Number},
                   {"dig_level", GpkgType::Number},
                   {"cut_at_centre", GpkgType::Number},
                   {"mean_cut", GpkgType::Number},
                   {"cut_m3", GpkgType::Number},
                   {"area_m2", GpkgType::Number},
                   {"part", GpkgType::Text},
                   {"staff_reading", GpkgType::Number}},
                  {}};
  for (const auto& cell : grid.cells) {
    std::vector<GridPosition> ring;
    for (const GridPoint& p : corners_of(grid, cell)) ring.push_back(on(p, cell.dig_level));
    layer.features.push_back(
        {{std::move(ring)},
         {cell.name(), static_cast<std::int64_t>(cell.column), static_cast<std::int64_t>(cell.row),
          level_or_none(cell.ground), level_or_none(cell.dig_level),
          metres_or_none(cell.cut_at_centre), cell.mean_cut.in_metres(), cell.cut.in_cubic_metres(),
          cell.area.in_square_metres(), cell.part, metres_or_none(cell.staff_reading)}});
  }
  return layer;
}

}  // namespace

std::string dig_xml(const dig::DigResult& result, LandXmlOut document) {
  LandXmlSurfaceOut surface{result.excavated.mesh,
                            "excavated surface inside the crest; a vertical face keeps its toe, "
                            "and its top edge stands 1 mm further out",
                            {},
                            result.excavated.plan_area,
                            result.excavated.surface_area};
  surface.mesh.name = kExcavated;
  surface.breaklines.push_back(closed_string("toe", result.toe));
  for (std::size_t i = 0; i < result.crest.size(); ++i)
    surface.breaklines.push_back(closed_string(numbered("crest", i), result.crest[i]));
  document.surfaces.push_back(std::move(surface));
  document.volumes.push_back(
      {kExisting, kExcavated, Volume::cubic_metres(result.cut.in_cubic_metres()),
       result.fill_to_floor,
       "exact volumes of the pit with true vertical faces, measured in the ground"});
  return landxml_text(document);
}

std::string dig_dxf(const dig::DigResult& result) {
  DxfText dxf;
  dxf.layer("FACES", DxfColour::White).layer("PIT-TOE", DxfColour::Blue);
  dxf.layer("PIT-CREST", DxfColour::Red).layer("CELLS", DxfColour::Green);
  dxf.layer("CELL-CUTS", DxfColour::Green);
  const auto& mesh = result.excavated.mesh;
  for (const auto& face : mesh.faces) {
    const auto corner = [&](std::size_t i) {
      return mesh.vertices[static_cast<std::size_t>(face[i])];
    };
    dxf.triangle("FACES", {corner(0), corner(1), corner(2)});
  }
  dxf.polyline("PIT-TOE", result.toe, DxfRing::Closed);
  for (const auto& ring : result.crest) dxf.polyline("PIT-CREST", ring, DxfRing::Closed);
  const Length letter = result.grid.size / 5;
  for (const auto& cell : result.grid.cells) {
    const auto corners = corners_of(result.grid, cell);
    for (std::size_t i = 0; i < 4; ++i) dxf.line("CELLS", corners[i], corners[(i + 1) % 4]);
    if (!cell.cut_at_centre) continue;
    dxf.text("CELL-CUTS",
             ahead(cell.centre, result.grid.bearing, result.grid.size * -0.35, letter / 2),
             fixed(cell.cut_at_centre->in_metres(), 2), letter, result.grid.bearing);
  }
  return dxf.take();
}

std::string dig_gpkg(const dig::DigResult& result, const std::vector<pegs::ReferencePeg>& pegs,
                     GpkgOut out) {
  out.layers = {rings_layer("toe", {result.toe}), rings_layer("crest", result.crest),
                cells_layer(result.grid), faces_layer(result.excavated), pegs_layer(pegs)};
  return geopackage_bytes(out);
}

}  // namespace squaredig::formats
