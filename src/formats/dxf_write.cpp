#include "formats/dxf_write.h"

#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"
#include "quantity/problem.h"

namespace squaredig::formats {
namespace {

[[noreturn]] void fault_of_ours(const std::string& found, const std::string& needed) {
  refuse({"result"}, found, needed,
         "this is a fault of the program: please report it with the job");
}

void append_tag(std::string& text, int code, std::string_view value) {
  const std::string number = std::to_string(code);
  text.append(number.size() < 3 ? 3 - number.size() : 0, ' ');
  text += number;
  text += '\n';
  text += value;
  text += '\n';
}

void append_tags(std::string& text, std::initializer_list<std::pair<int, std::string_view>> tags) {
  for (const auto& [code, value] : tags) append_tag(text, code, value);
}

void append_unit(std::string& text, unsigned unit) {
  constexpr std::string_view kDigits = "0123456789ABCDEF";
  text += "\\U+";
  for (const unsigned shift : {12U, 8U, 4U, 0U}) text += kDigits[(unit >> shift) & 15U];
}

// The next character of UTF-8 text and how many bytes it takes; the replacement character for a
// byte that is none.
struct Character {
  unsigned code = 0xFFFD;
  std::size_t bytes = 1;
};
Character next_character(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned lead = byte(0);
  if (lead < 0x80) return {lead, 1};
  const std::size_t bytes = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < bytes) return {};
  unsigned code = lead & (0xFFU >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(i) & 0xC0U) != 0x80) return {};
    code = (code << 6U) | (byte(i) & 0x3FU);
  }
  return {code, bytes};
}

void append_character(std::string& text, unsigned code) {
  if (code < 0x10000) return append_unit(text, code);
  append_unit(text, 0xD800 + ((code - 0x10000) >> 10U));
  append_unit(text, 0xDC00 + ((code - 0x10000) & 0x3FFU));
}

// What a drawing program would take for a command: the second of %%, the backslash of \U+ and \M+.
bool would_command(std::string_view rest, std::string_view written) {
  if (rest[0] == '%') return !written.empty() && written.back() == '%';
  return rest.starts_with("\\U+") || rest.starts_with("\\M+");
}

// Plain ASCII, everything else spelled as \U+XXXX; in pieces no longer than a string may be.
std::vector<std::string> escaped(std::string_view label) {
  constexpr std::size_t kLongest = 240;  // of 255, so that no character is cut
  std::vector<std::string> pieces(1);
  while (!label.empty()) {
    if (pieces.back().size() > kLongest) pieces.emplace_back();
    std::string& text = pieces.back();
    const Character c = next_character(label);
    if (c.code < 0x20 || c.code >= 0x7F || would_command(label, text))
      append_character(text, c.code);
    else if (c.code == '^')
      text += "^ ";
    else
      text += static_cast<char>(c.code);
    label.remove_prefix(c.bytes);
  }
  return pieces;
}

}  // namespace

DxfText& DxfText::layer(std::string name, DxfColour colour) {
  layers_.push_back({std::move(name), colour});
  return *this;
}

void DxfText::tag(int code, std::string_view value) { append_tag(entities_, code, value); }

void DxfText::tag(int code, double value) {
  if (!std::isfinite(value))
    fault_of_ours("a drawing coordinate that is not finite", "finite coordinates");
  tag(code, shortest(value == 0 ? 0.0 : value));
}

void DxfText::begin(std::string_view entity, std::string_view layer) {
  if (std::none_of(layers_.begin(), layers_.end(), [&](const Layer& l) { return l.name == layer; }))
    fault_of_ours("the drawing layer " + quoted(layer), "a layer that was declared");
  tag(0, entity);
  tag(8, layer);
}

void DxfText::place(int code, GridPoint at, std::optional<Elevation> height) {
  const double e = at.easting.in_metres();
  const double n = at.northing.in_metres();
  tag(code, e);
  tag(code + 10, n);
  if (height) tag(code + 20, height->in_metres());
  if (!extent_) extent_ = {e, n, e, n};
  extent_ = {std::min((*extent_)[0], e), std::min((*extent_)[1], n), std::max((*extent_)[2], e),
             std::max((*extent_)[3], n)};
}

DxfText& DxfText::point(std::string_view layer, GridPoint at, std::optional<Elevation> height) {
  begin("POINT", layer);
  place(10, at, height);
  return *this;
}

DxfText& DxfText::text(std::string_view layer, GridPoint at, std::string_view label, Length letter,
                       Bearing along) {
  constexpr double kLineSpacing = 1.5;  // letters
  Length down{};
  for (const std::string& piece : escaped(label)) {
    begin("TEXT", layer);
    place(10, ahead(at, along, {}, down), Elevation{});
    tag(40, letter.in_metres());
    tag(1, piece);
    // drawings turn anticlockwise from east
    if (const double turn = std::fmod(450 - along.in_degrees(), 360.0); turn != 0) tag(50, turn);
    down += letter * kLineSpacing;
  }
  return *this;
}

DxfText& DxfText::line(std::string_view layer, GridPoint from, GridPoint to) {
  begin("LINE", layer);
  place(10, from, Elevation{});
  place(11, to, Elevation{});
  return *this;
}

DxfText& DxfText::polyline(std::string_view layer, const std::vector<GridPosition>& corners,
                           DxfRing ring) {
  constexpr int kThreeDimensions = 8;
  begin("POLYLINE", layer);
  tag(66, "1");
  tag(10, 0.0);
  tag(20, 0.0);
  tag(30, 0.0);
  tag(70, std::to_string(kThreeDimensions + (ring == DxfRing::Closed ? 1 : 0)));
  for (const GridPosition& corner : corners) {
    begin("VERTEX", layer);
    place(10, corner.at, corner.height);
    tag(70, "32");
  }
  begin("SEQEND", layer);
  return *this;
}

DxfText& DxfText::triangle(std::string_view layer, const std::array<GridPosition, 3>& corners) {
  begin("3DFACE", layer);
  for (int i = 0; i < 4; ++i) {
    const GridPosition& corner = corners[static_cast<std::size_t>(std::min(i, 2))];
    place(10 + i, corner.at, corner.height);
  }
  return *this;
}

std::string DxfText::header() const {
  std::string text;
  append_tags(
      text,
      {{0, "SECTION"}, {2, "HEADER"}, {9, "$ACADVER"}, {1, "AC1009"}, {9, "$INSUNITS"}, {70, "6"}});
  const auto box = extent_.value_or(std::array<double, 4>{});
  for (const std::size_t i : {std::size_t{0}, std::size_t{2}}) {
    append_tag(text, 9, i == 0 ? "$EXTMIN" : "$EXTMAX");
    append_tag(text, 10, shortest(box[i]));
    append_tag(text, 20, shortest(box[i + 1]));
    append_tag(text, 30, "0");
  }
  append_tag(text, 0, "ENDSEC");
  return text;
}

std::string DxfText::tables() const {
  std::string text;
  append_tags(text, {{0, "SECTION"}, {2, "TABLES"}});
  append_tags(text, {{0, "TABLE"}, {2, "LTYPE"}, {70, "1"}});
  append_tags(text, {{0, "LTYPE"},
                     {2, "CONTINUOUS"},
                     {70, "64"},
                     {3, "Solid line"},
                     {72, "65"},
                     {73, "0"},
                     {40, "0"}});
  append_tags(text, {{0, "ENDTAB"}, {0, "TABLE"}, {2, "LAYER"}});
  append_tag(text, 70, std::to_string(layers_.size()));
  for (const Layer& l : layers_) {
    append_tags(text, {{0, "LAYER"}, {2, l.name}, {70, "64"}});
    append_tag(text, 62, std::to_string(static_cast<int>(l.colour)));
    append_tag(text, 6, "CONTINUOUS");
  }
  append_tags(text, {{0, "ENDTAB"}, {0, "ENDSEC"}});
  return text;
}

std::string DxfText::take() const {
  std::string text = header() + tables();
  append_tags(text, {{0, "SECTION"}, {2, "ENTITIES"}});
  text += entities_;
  append_tags(text, {{0, "ENDSEC"}, {0, "EOF"}});
  return text;
}

}  // namespace squaredig::formats
