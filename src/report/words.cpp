#include "report/words.h"

#include "quantity/angle_text.h"
#include "quantity/number_text.h"

namespace squaredig::report {

std::string metres_text(const std::optional<Length>& value, int decimals) {
  return value ? fixed(value->in_metres(), decimals) : "";
}

std::string level_text(const std::optional<Elevation>& value) {
  return value ? fixed(value->in_metres(), 3) : "";
}

std::string mm_text(const std::optional<Length>& value) {
  return value ? fixed(value->in_millimetres(), 1) : "";
}

std::string signed_mm_text(const std::optional<Length>& value) {
  if (!value) return "";
  const std::string text = fixed(value->in_millimetres(), 1);
  return *value > Length{} && text != "0.0" ? "+" + text : text;
}

std::string easting_text(GridPoint p) { return fixed(p.easting.in_metres(), 3); }
std::string northing_text(GridPoint p) { return fixed(p.northing.in_metres(), 3); }
std::string bearing_text(Bearing bearing) { return dms_text(bearing.from_north(), 0); }
std::string turn_text(const std::optional<Angle>& turn) { return turn ? dms_text(*turn, 0) : ""; }

std::string area_text(Area area) { return fixed(area.in_square_metres(), 1) + " m\xC2\xB2"; }

std::string cubic_metres_text(double m3, int decimals) {
  return fixed(m3, decimals) + " m\xC2\xB3";
}

}  // namespace squaredig::report
