// DXF out: drawings of Release 12 (AC1009), which every drawing program reads.
//
// What: points, texts, lines, polylines with heights and triangles on named layers.
// Frame and units: the job's grid in metres, east first; $INSUNITS says metres.
// Requires: layer names of capitals, digits, - and _, at most 31, declared before they are used.
// Laws: dxf_write.1  every label is read back byte for byte once \U+XXXX is undone; dxf_write.2 the
// same content gives the
//   same bytes; dxf_write.3  a triangle keeps each corner's own height.
// Accuracy: shortest numbers that read back to the last bit.
// Errors: NaN, infinity and an undeclared layer are refused as faults of the program.
// Source: DXF reference, Release 12 (from memory): characters beyond ASCII as \U+XXXX, a caret as
// "^ ".
//   A doubled percent sign and a backslash before U+ are spelled \U+XXXX too.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/angle.h"

namespace squaredig::formats {

// Colours of the drawing index that every program shows alike.
enum class DxfColour { Red = 1, Yellow = 2, Green = 3, Cyan = 4, Blue = 5, Magenta = 6, White = 7 };

enum class DxfRing { Open, Closed };

class DxfText {
 public:
  DxfText& layer(std::string name, DxfColour colour);

  DxfText& point(std::string_view layer, GridPoint at, std::optional<Elevation> height);
  // Text starting at a point, along a bearing (90 degrees: to the east). What is longer than a
  // string of this release may be, 255 characters when written, goes on in a second line below.
  DxfText& text(std::string_view layer, GridPoint at, std::string_view label, Length letter,
                Bearing along = Bearing::degrees(90));
  DxfText& line(std::string_view layer, GridPoint from, GridPoint to);
  // Heights vary from corner to corner.
  DxfText& polyline(std::string_view layer, const std::vector<GridPosition>& corners, DxfRing ring);
  DxfText& triangle(std::string_view layer, const std::array<GridPosition, 3>& corners);

  // The whole file.
  std::string take() const;

 private:
  std::string header() const;
  std::string tables() const;
  void begin(std::string_view entity, std::string_view layer);
  void tag(int code, std::string_view value);
  void tag(int code, double value);
  void place(int code, GridPoint at, std::optional<Elevation> height);

  struct Layer {
    std::string name;
    DxfColour colour;
  };
  std::vector<Layer> layers_;
  std::string entities_;
  std::optional<std::array<double, 4>> extent_;  // least east, north, greatest east, north
};

}  // namespace squaredig::formats
