#include "formats/dxf_write.h"
#include "formats/pegs_drawing.h"

namespace squaredig::formats {
namespace {

constexpr const char* kPegs = "PEGS";
constexpr const char* kLabels = "PEG-LABELS";
constexpr const char* kStrings = "STRING-LINES";
constexpr const char* kTank = "TANK";
constexpr const char* kToe = "PIT-TOE";
constexpr const char* kCrest = "PIT-CREST";
constexpr const char* kPipes = "PIPES";
constexpr const char* kShafts = "SHAFTS";

Length letter() { return Length::metres(0.3); }

void label(DxfText& dxf, GridPoint at, std::string_view text) {
  dxf.text(kLabels, ahead(at, Bearing::degrees(45), letter()), text, letter());
}

// Each string once, between the two pegs that carry its name.
void draw_strings(DxfText& dxf, const std::vector<pegs::ReferencePeg>& pegs) {
  for (std::size_t i = 0; i < pegs.size(); ++i)
    for (std::size_t j = i + 1; j < pegs.size(); ++j)
      if (pegs[i].string_line == pegs[j].string_line) dxf.line(kStrings, pegs[i].at, pegs[j].at);
}

void draw_tank(DxfText& dxf, const pegs::PegsResult& result) {
  std::vector<GridPosition> outline;
  for (const auto& corner : result.corners) {
    outline.push_back(corner.at);
    label(dxf, corner.at.at, corner.name);
  }
  dxf.polyline(kTank, outline, DxfRing::Closed);
}

void draw_pit(DxfText& dxf, const pegs::PegsResult& result) {
  for (std::size_t i = 0; i < result.toe.size(); ++i)
    dxf.line(kToe, result.toe[i], result.toe[(i + 1) % result.toe.size()]);
  for (const auto& ring : result.crest) dxf.polyline(kCrest, ring, DxfRing::Closed);
}

}  // namespace

std::string pegs_dxf(const pegs::PegsResult& result) {
  DxfText dxf;
  dxf.layer(kPegs, DxfColour::Red)
      .layer(kLabels, DxfColour::White)
      .layer(kStrings, DxfColour::Yellow);
  dxf.layer(kTank, DxfColour::Green).layer(kToe, DxfColour::Cyan).layer(kCrest, DxfColour::Blue);
  dxf.layer(kPipes, DxfColour::Magenta).layer(kShafts, DxfColour::Magenta);
  for (const auto& peg : result.reference) {
    dxf.point(kPegs, peg.at, peg.ground);
    label(dxf, peg.at, peg.name);
  }
  draw_strings(dxf, result.reference);
  draw_tank(dxf, result);
  draw_pit(dxf, result);
  for (const auto& pipe : result.pipes) {
    dxf.point(kPipes, pipe.at, pipe.invert);
    label(dxf, pipe.at, pipe.name);
  }
  for (const auto& shaft : result.shafts) {
    dxf.point(kShafts, shaft.at, shaft.cover_level);
    label(dxf, shaft.at, shaft.name);
  }
  return dxf.take();
}

std::string pegs_xml(const pegs::PegsResult& result, LandXmlOut document) {
  document.points_name = "set-out points";
  for (const auto& p : result.reference)
    document.points.push_back({p.name, "PEG", "string line " + p.string_line, p.at, p.ground});
  for (const auto& c : result.corners)
    document.points.push_back(
        {c.name, "CORNER", "tank corner at its underside", c.at.at, c.at.height});
  for (const auto& p : result.pipes)
    document.points.push_back(
        {p.name, "PIPE", "centre line at the tank's outer face, invert", p.at, p.invert});
  for (const auto& s : result.shafts)
    document.points.push_back({s.name, "SHAFT", "access shaft, cover level", s.at, s.cover_level});
  return landxml_text(document);
}

}  // namespace squaredig::formats
