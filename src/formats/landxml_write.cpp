#include "formats/landxml_write.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "formats/csv_rows.h"
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
  std::array<char, 24> digits;
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
  for (std::size_t i = 0; i < vertices.size(); ++i) {
    text += "<P id=\"";
    append_id(text, i);
    text += "\">";
    append_place(text, vertices[i]);
    text += "</P>\n";
  }
  text += "</Pnts>\n<Faces>\n";
  for (const auto& face : surface.mesh.faces) {
    text += "<F>";
    for (std::size_t i = 0; i < 3; ++i) {
      if (i > 0) text += ' ';
      append_id(text, static_cast<std::size_t>(face[i]));
    }
    text += "</F>\n";
  }
  text += "</Faces>\n</Definition>\n";
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

std::size_t rough_size(const LandXmlOut& document) {
  std::size_t size = 4096 + 160 * document.points.size();
  for (const auto& surface : document.surfaces)
    size += 72 * surface.mesh.vertices.size() + 32 * surface.mesh.faces.size();
  return size;
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
  text.reserve(rough_size(document));
  append_head(text, document);
  append_points(text, document);
  if (!document.surfaces.empty()) {
    text += "<Surfaces>\n";
    for (const LandXmlSurfaceOut& surface : document.surfaces) {
      text += "<Surface name=\"" + xml_text(surface.mesh.name) + "\"" +
              attribute("desc", surface.description) + ">\n";
      append_breaklines(text, surface.breaklines);
      append_definition(text, surface);
      text += "</Surface>\n";
    }
    append_volumes(text, document.volumes);
    text += "</Surfaces>\n";
  }
  text += "</LandXML>\n";
  return text;
}

}  // namespace squaredig::formats
