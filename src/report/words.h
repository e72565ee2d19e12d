// Values as texts for sheets and pages. An absent value is an empty text.
#pragma once

#include <optional>
#include <string>

#include "quantity/angle.h"
#include "quantity/position.h"
#include "quantity/result_head.h"
#include "quantity/tolerance.h"
#include "report/table.h"

namespace squaredig::report {

std::string metres_text(const std::optional<Length>& value, int decimals);
std::string level_text(const std::optional<Elevation>& value);
std::string mm_text(const std::optional<Length>& value);         // "18.3"
std::string signed_mm_text(const std::optional<Length>& value);  // "+18.3"
std::string easting_text(GridPoint p);
std::string northing_text(GridPoint p);
std::string bearing_text(Bearing bearing);  // "127 30 00"
std::string turn_text(const std::optional<Angle>& turn);
std::string area_text(Area area);  // "244.0 m²"
template <class AnyVolume>
std::string volume_text(AnyVolume volume, int decimals = 1);
std::string cubic_metres_text(double m3, int decimals);

template <class AnyVolume>
std::string volume_text(AnyVolume volume, int decimals) {
  return cubic_metres_text(volume.in_cubic_metres(), decimals);
}

// A column of words, and one of figures.
inline Column words_column(std::string heading) { return {std::move(heading), Anchor::Left}; }
inline Column figures_column(std::string heading) { return {std::move(heading), Anchor::Right}; }

}  // namespace squaredig::report
