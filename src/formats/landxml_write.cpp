#include "formats/landxml_write.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "formats/utf8.h"
#include "quantity/day_text.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

void append_number(std::string& text, double value) {
  if (!std::isfinite(value))
    refuse({"result"}, "a coordinate that is not finite", "finite coordinates",
           "this is a fault of the program: please report it with the job");
  text += shortest(value);
}

// Ids count from 1.
void append_id(std::string& text, std::size_t index) {
  std::array<char, 24> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), index + 1).ptr;
  text.append(digits.data(), end);
}

void append_place(std::string& text, GridPoint at) {
  append_number(text, at.northing.in_metres());
  text += ' ';
  append_number(text, at.easting.in_metres());
}

void append_place(std::string& text, const GridPosition& at) {
  append_place(text, at.at);
  text += ' ';
  append_number(text, at.height.in_metres());
}

// ` name="value"`, or nothing where the value is empty.
std::string attribute(std::string_view name, std::string_view value) {
  return value.empty() ? std::string() : " " + std::string(name) + "=\"" + xml_text(value) + "\"";
}

std::string attribute(std::string_view name, std::optional<double> value) {
  return value ? attribute(name, shortest(*value)) : std::string();
}

void append_head(std::string& text, const LandXmlOut& document) {
  text +=
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<LandXML xmlns=\"http://www.landxml.org/schema/LandXML-1.2\" date=\"" +
      day_text(document.date) +
      "\" time=\"00:00:00\" version=\"1.2\" language=\"English\" readOnly=\"false\">\n"
      "<Units><Metric areaUnit=\"squareMeter\" linearUnit=\"meter\" volumeUnit=\"cubicMeter\" "
      "temperatureUnit=\"celsius\" pressureUnit=\"HPA\" angularUnit=\"decimal degrees\" "
      "directionUnit=\"decimal degrees\"/></Units>\n<CoordinateSystem" +
      attribute("name", document.crs);
  if (document.crs.starts_with("EPSG:")) text += attribute("epsgCode", document.crs.substr(5));
  text += attribute("verticalCoordinateSystemName", document.heights) + "/>\n<Project name=\"" +
          xml_text(document.job) + "\"/>\n<Application name=\"squaredig\"" +
          attribute("version", document.tool_version) + "/>\n";
}

void append_points(std::string& text, const LandXmlOut& document) {
  if (document.points.empty()) return;
  text += "<CgPoints" + attribute("name", document.points_name) + ">\n";
  for (const LandXmlPointOut& point : document.points) {
    text += "<CgPoint" + attribute("name", point.name) + attribute("code", point.code) +
            attribute("desc", point.description) + ">";
    if (point.height)
      append_place(text, GridPosition{point.at, *point.height});
    else
      append_place(text, point.at);
    text += "</CgPoint>\n";
  }
  text += "</CgPoints>\n";
}

void append_breaklines(std::string& text, const std::vector<SurveyString>& strings) {
  if (strings.empty()) return;
  text += "<SourceData><Breaklines>\n";
  for (const SurveyString& string : strings) {
    const bool has_heights = std::all_of(string.vertices.begin(), string.vertices.end(),
                                         [](const StringVertex& v) { return v.has_height; });
    const char* list = has_heights ? "PntList3D" : "PntList2D";
    text += "<Breakline brkType=\"standard\"" + attribute("name", string.name) + "><" + list + ">";
    for (std::size_t i = 0; i < string.vertices.size(); ++i) {
      if (i > 0) text += ' ';
      if (has_heights)
        append_place(text, string.vertices[i].at);
      else
        append_place(text, string.vertices[i].at.at);
    }
    text += std::string("</") + list + "></Breakline>\n";
  }
  text += "</Breaklines></SourceData>\n";
}

void append_definition(std::string& text, const LandXmlSurfaceOut& surface) {
  const auto metres2 = [](const std::optional<Area>& area) {
    return area ? std::optional(area->in_square_metres()) : std::nullopt;
  };
  const auto& vertices = surface.mesh.vertices;
  text += "<Definition surfType=\"TIN\"" + attribute("area2DSurf", metres2(surface.plan_area)) +
          attribute("area3DSurf", metres2(surface.surface_area));
  if (!vertices.empty()) {
    const auto [low, high] = std::minmax_element(
        vertices.begin(), vertices.end(),
        [](const GridPosition& a, const GridPosition& b) { return a.height < b.height; });
    text += attribute("elevMax", high->height.in_metres()) +
            attribute("elevMin", low->height.in_metres());
  }
  text += ">\n<Pnts>\n";
}

// Vertices from one number to another, the last not among them.
std::string vertices_text(const SurfaceMesh& mesh, std::size_t first, std::size_t last) {
  std::string text;
  text.reserve((last - first) * 72);
  for (std::size_t i = first; i < last; ++i) {
    text += "<P id=\"";
    append_id(text, i);
    text += "\">";
    append_place(text, mesh.vertices[i]);
    text += "</P>\n";
  }
  return text;
}

std::string faces_text(const SurfaceMesh& mesh, std::size_t first, std::size_t last) {
  std::string text;
  text.reserve((last - first) * 36);
  for (std::size_t f = first; f < last; ++f) {
    const auto& face = mesh.faces[f];
    text += "<F>";
    append_id(text, static_cast<std::size_t>(face[0]));
    text += ' ';
    append_id(text, static_cast<std::size_t>(face[1]));
    text += ' ';
    append_id(text, static_cast<std::size_t>(face[2]));
    text += "</F>\n";
  }
  return text;
}

void append_volumes(std::string& text, const std::vector<LandXmlVolumeOut>& volumes) {
  if (volumes.empty()) return;
  text += "<SurfVolumes surfVolCalcMethod=\"composite\">\n";
  for (const LandXmlVolumeOut& volume : volumes) {
    text += "<SurfVolume surfBase=\"" + xml_text(volume.base_surface) + "\" surfCompare=\"" +
            xml_text(volume.compared_surface) + "\" volCut=\"";
    append_number(text, volume.cut.in_cubic_metres());
    text += "\" volFill=\"";
    append_number(text, volume.fill.in_cubic_metres());
    text += "\" volTotal=\"";
    append_number(text, (volume.cut - volume.fill).in_cubic_metres());
    text += "\"" + attribute("desc", volume.description) + "/>\n";
  }
  text += "</SurfVolumes>\n";
}

// Cuts `count` into pieces of about a megabyte of text.
template <class Text>
void add_in_pieces(FilePieces& pieces, std::size_t count, Text text) {
  constexpr std::size_t kInPiece = 16384;
  for (std::size_t first = 0; first < count; first += kInPiece)
    pieces.push_back(
        [text, first, last = std::min(first + kInPiece, count)] { return text(first, last); });
}

void add_surface(FilePieces& pieces, const LandXmlOut& document, const LandXmlSurfaceOut& surface) {
  pieces.push_back([&document, &surface] {
    std::string text = &surface == document.surfaces.data() ? "<Surfaces>\n" : "";
    text += "<Surface name=\"" + xml_text(surface.mesh.name) + "\"" +
            attribute("desc", surface.description) + ">\n";
    append_breaklines(text, surface.breaklines);
    append_definition(text, surface);
    return text;
  });
  const SurfaceMesh& mesh = surface.mesh;
  add_in_pieces(pieces, mesh.vertices.size(), [&mesh](std::size_t first, std::size_t last) {
    return vertices_text(mesh, first, last);
  });
  pieces.push_back([] { return std::string("</Pnts>\n<Faces>\n"); });
  add_in_pieces(pieces, mesh.faces.size(), [&mesh](std::size_t first, std::size_t last) {
    return faces_text(mesh, first, last);
  });
  pieces.push_back([] { return std::string("</Faces>\n</Definition>\n</Surface>\n"); });
}

// The pieces refer to the document.
FilePieces pieces_of(const LandXmlOut& document) {
  FilePieces pieces;
  pieces.push_back([&document] {
    std::string text;
    append_head(text, document);
    append_points(text, document);
    return text;
  });
  for (const LandXmlSurfaceOut& surface : document.surfaces) add_surface(pieces, document, surface);
  pieces.push_back([&document] {
    std::string text;
    if (!document.surfaces.empty()) {
      append_volumes(text, document.volumes);
      text += "</Surfaces>\n";
    }
    text += "</LandXML>\n";
    return text;
  });
  return pieces;
}

}  // namespace

std::string xml_text(std::string_view text) {
  std::string escaped;
  for (std::size_t i = 0; i < text.size();) {
    const char c = text[i];
    std::size_t size = 1;
    while (i + size < text.size() && (static_cast<unsigned char>(text[i + size]) & 0xC0) == 0x80)
      ++size;
    const std::string_view character = text.substr(i, size);
    i += size;
    const bool control = static_cast<unsigned char>(c) < 0x20 || character == "\xEF\xBF\xBE" ||
                         character == "\xEF\xBF\xBF";
    if (c == '&')
      escaped += "&amp;";
    else if (c == '<')
      escaped += "&lt;";
    else if (c == '>')
      escaped += "&gt;";
    else if (c == '"')
      escaped += "&quot;";
    else if (c == '\t' || c == '\n' || c == '\r')
      escaped += "&#" + std::to_string(static_cast<int>(c)) + ";";
    else
      escaped += control || !is_utf8(character) ? std::string_view("\xEF\xBF\xBD") : character;
  }
  return escaped;
}

std::string landxml_text(const LandXmlOut& document) {
  std::string text;
  for (const FilePiece& piece : pieces_of(document)) text += piece();
  return text;
}

FilePieces landxml_pieces(const std::shared_ptr<const LandXmlOut>& document) {
  FilePieces pieces = pieces_of(*document);
  for (FilePiece& piece : pieces) piece = [document, made = std::move(piece)] { return made(); };
  return pieces;
}

}  // namespace squaredig::formats
