// Layers that more than one GeoPackage holds.
#pragma once

#include "dig/dig_result.h"
#include "formats/geopackage_write.h"
#include "pegs/pegs_result.h"

namespace squaredig::formats {

// A point whose height may be unknown: then it is zero.
GridPosition on(GridPoint p, const std::optional<Elevation>& level);
GpkgValue metres_or_none(const std::optional<Length>& v);
GpkgValue level_or_none(const std::optional<Elevation>& v);

// Closed rings as lines, numbered from 1.
GpkgLayer rings_layer(const std::string& name, const std::vector<std::vector<GridPosition>>& rings);
GpkgLayer faces_layer(const dig::ExcavatedMesh& excavated);
GpkgLayer pegs_layer(const std::vector<pegs::ReferencePeg>& pegs);

}  // namespace squaredig::formats
