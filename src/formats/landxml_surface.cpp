#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <unordered_map>
#include <utility>

#include "formats/landxml_handler.h"
#include "formats/landxml_read.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

using Id = std::int64_t;
constexpr std::size_t kSetAsideListed = 1000;

// A whole number as the schema allows it: digits, leading zeros and a plus sign too.
std::optional<Id> whole_number(std::string_view word) {
  if (word.starts_with('+')) word.remove_prefix(1);
  if (word.empty() || word.size() > 18 ||
      word.find_first_not_of("0123456789") != std::string_view::npos)
    return std::nullopt;
  Id value = 0;
  for (const char c : word) value = value * 10 + (c - '0');
  return value;
}

struct Spot {
  int line;
  int column;
};

Place place_of(const std::string& file, Spot spot) { return {file, spot.line, spot.column}; }

struct RawFace {
  std::array<Id, 3> ids;
  Spot spot;
  bool visible;
};

struct StatedSizes {
  std::optional<double> area;
  std::optional<double> lowest;
  std::optional<double> highest;
};

// One Surface as the document holds it, in its own units.
struct RawSurface {
  std::string name;
  int definitions = 0;
  std::vector<Id> ids;
  std::vector<Spot> spots;
  std::vector<std::array<double, 3>> points;  // easting, northing, elevation
  std::vector<RawFace> faces;
  std::size_t faces_read = 0;
  std::vector<SetAside> set_aside;
  std::size_t left_out = 0;
  StatedSizes stated;
  Place place;
};

class SurfaceHandler : public LandXmlHandler {
 public:
  SurfaceHandler(const SourceFile& source, std::optional<std::string> name)
      : LandXmlHandler(source), wanted_(std::move(name)) {}

  std::vector<std::string> names;    // of all surfaces
  std::vector<RawSurface> surfaces;  // those of the name that is wanted

 protected:
  bool start_of(const XmlElement& element) override {
    if (element.name == "Surface") start_surface(element);
    if (!taking_) return false;
    if (element.name == "Definition" && child_of("Surface")) start_definition(element);
    if (element.name == "P" && child_of("Pnts")) return start_point(element);
    return element.name == "F" && child_of("Faces") && start_face(element);
  }
  void left(std::string_view name) override {
    if (name == "Surface") taking_ = false;
  }
  void end_of(std::string_view name, std::string_view text) override {
    if (name == "P")
      end_point(text);
    else
      end_face(text);
  }

 private:
  void start_surface(const XmlElement& element) {
    const std::string name = element.value("name").value_or("");
    names.push_back(name);
    taking_ = !wanted_ || name == *wanted_;
    if (!taking_) return;
    surfaces.emplace_back();
    surfaces.back().name = name;
    surfaces.back().place = element.place;
  }

  void start_definition(const XmlElement& element) {
    RawSurface& surface = surfaces.back();
    if (++surface.definitions == 2)
      faults.add(element.place, "a second definition of surface " + quoted(surface.name),
                 "one definition", "export each as a surface of its own");
    const std::string type = element.value("surfType").value_or("");
    const bool is_grid = type == "grid" || type == "GRID" || type == "Grid";
    if (is_grid) taking_ = false;  // what follows is no triangle
    if (is_grid)
      faults.add(element.place, "surface " + quoted(surface.name) + " is a grid",
                 "a triangulated surface, surfType TIN", "export it as TIN");
    else if (type != "TIN")
      cautions.push_back(source().name + ": surfType " + quoted(type) + " is taken as TIN");
    const auto size = [&](std::string_view attribute) {
      const auto text = element.value(attribute);
      return text ? parse_number(*text) : std::nullopt;
    };
    surface.stated = {size("area2DSurf"), size("elevMin"), size("elevMax")};
  }

  bool start_point(const XmlElement& element) {
    const auto text = element.value("id");
    const auto id = text ? whole_number(*text) : std::nullopt;
    id_ = id.value_or(-1);
    if (!text)
      faults.add(element.place, "a P without id", "an id", "export the file again");
    else if (!id)
      faults.add(element.place, "the id " + quoted(*text) + " of a P",
                 "a whole number of at most 18 digits", "export the file again");
    else if (*id == 0 && !std::exchange(told_zero_, true))
      cautions.push_back(source().name + ": a P has the id 0, which the schema does not allow");
    return true;
  }

  void end_point(std::string_view text) {
    const std::string what = id_ < 0 ? "a P" : "P " + std::to_string(id_);
    const auto values = numbers(text, what);
    if (values && values->size() != 3)
      faults.add(text_place(),
                 std::to_string(values->size()) + (values->size() == 1 ? " number" : " numbers") +
                     " in " + what,
                 "northing, easting and elevation", "correct it");
    // a point with a fault keeps its id, so that faces naming it are not faults as well
    const bool good = values && values->size() == 3;
    RawSurface& surface = surfaces.back();
    surface.ids.push_back(id_);
    surface.spots.push_back({text_place().line, text_place().column});
    surface.points.push_back(good ? std::array{(*values)[1], (*values)[0], (*values)[2]}
                                  : std::array{0.0, 0.0, 0.0});
  }

  bool start_face(const XmlElement& element) {
    ++surfaces.back().faces_read;
    const auto mark = element.value("i");
    visible_ = !mark || xml_words(*mark) != std::vector<std::string_view>{"1"};
    if (mark && visible_ && *mark != "0" && !std::exchange(told_mark_, true))
      cautions.push_back(source().name + ":" + std::to_string(element.place.line) +
                         ": the mark i=" + quoted(*mark) +
                         " of a face is not known; the face is kept");
    return true;
  }

  void end_face(std::string_view text) {
    const auto words = xml_words(text);
    RawFace face{{}, {text_place().line, text_place().column}, visible_};
    bool good = words.size() == 3;
    for (std::size_t i = 0; good && i < 3; ++i) {
      const auto id = whole_number(words[i]);
      good = id.has_value();
      face.ids[i] = id.value_or(-1);
    }
    if (!good) {
      faults.add(text_place(),
                 "face " + std::to_string(surfaces.back().faces_read) + " with " + quoted(text),
                 "three ids of points, blanks between", "export the surface again as triangles");
      return;
    }
    const auto& [a, b, c] = face.ids;
    if (visible_ && (a == b || b == c || c == a)) {
      face.visible = false;
      set_aside(face.spot.line, "the face names a point twice and has no area");
    } else if (!visible_) {
      set_aside(face.spot.line, "the face is marked invisible");
    }
    surfaces.back().faces.push_back(face);
  }

  void set_aside(int line, std::string why) {
    auto& rows = surfaces.back().set_aside;
    ++surfaces.back().left_out;
    if (rows.size() < kSetAsideListed) rows.push_back({line, std::move(why)});
  }

  std::optional<std::string> wanted_;
  bool taking_ = false;
  bool visible_ = true;
  bool told_zero_ = false;
  bool told_mark_ = false;
  Id id_ = -1;
};

std::string list_of(const std::vector<std::string>& names) {
  std::string list;
  for (const auto& name : names) list += (list.empty() ? "" : ", ") + quoted(name);
  return list;
}

// Each id's point. Doubled ids are faults.
std::unordered_map<Id, std::int32_t> numbered(const RawSurface& surface, const std::string& file,
                                              FaultList& faults) {
  std::unordered_map<Id, std::int32_t> points;
  points.reserve(surface.ids.size());
  for (std::size_t i = 0; i < surface.ids.size(); ++i) {
    if (surface.ids[i] < 0) continue;
    const auto [at, fresh] = points.try_emplace(surface.ids[i], static_cast<std::int32_t>(i));
    if (!fresh)
      faults.add(place_of(file, surface.spots[i]),
                 "the id " + std::to_string(surface.ids[i]) + " of a P again",
                 "each id once, and it stands in line " +
                     std::to_string(surface.spots[static_cast<std::size_t>(at->second)].line),
                 "export the file again");
  }
  return points;
}

void take_faces(const RawSurface& raw, const std::string& file, SurfaceMesh& mesh,
                FaultList& faults) {
  const auto points = numbered(raw, file, faults);
  mesh.faces.reserve(raw.faces.size());
  for (const RawFace& face : raw.faces) {
    std::array<std::int32_t, 3> corners{};
    for (std::size_t i = 0; i < 3; ++i) {
      const auto found = points.find(face.ids[i]);
      if (found == points.end())
        faults.add(place_of(file, face.spot),
                   "a face names point " + std::to_string(face.ids[i]) + ", which is not there",
                   "the id of a P of its surface", "export the file again");
      else
        corners[i] = found->second;
    }
    if (face.visible) mesh.faces.push_back(corners);
  }
}

double plan_area(const RawSurface& raw, const SurfaceMesh& mesh) {
  double twice = 0;
  for (const auto& face : mesh.faces) {
    const auto& a = raw.points[static_cast<std::size_t>(face[0])];
    const auto& b = raw.points[static_cast<std::size_t>(face[1])];
    const auto& c = raw.points[static_cast<std::size_t>(face[2])];
    twice += std::abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]));
  }
  return twice / 2;
}

// Sizes that the document states beside its triangles: a difference is worth telling.
void tell_stated(const RawSurface& raw, const SurfaceMesh& mesh, const std::string& file,
                 const LandXmlUnits& units, double scale, std::vector<std::string>& cautions) {
  const auto tell = [&](const char* what, double stated, double found, double least) {
    if (std::abs(stated - found) > least)
      cautions.push_back(file + ": surface " + quoted(raw.name) + ": the file states " + what +
                         " " + fixed(stated, 3) + ", its triangles have " + fixed(found, 3));
  };
  if (raw.stated.area) {
    const double unit = units.square_metres.value_or(scale * scale);
    const double found = plan_area(raw, mesh) * scale * scale / unit;
    tell("a plan area of", *raw.stated.area, found, 1e-3 * std::abs(found));
  }
  if (raw.points.empty()) return;
  const auto by_height = [](const auto& a, const auto& b) { return a[2] < b[2]; };
  const auto [low, high] = std::minmax_element(raw.points.begin(), raw.points.end(), by_height);
  const double least = 0.001 / scale;
  if (raw.stated.lowest) tell("a lowest height of", *raw.stated.lowest, (*low)[2], least);
  if (raw.stated.highest) tell("a highest height of", *raw.stated.highest, (*high)[2], least);
}

// The one surface that is meant; a fault and null where it is not clear.
const RawSurface* chosen(const SurfaceHandler& handler, const SourceFile& source,
                         const std::optional<std::string>& name, FaultList& faults) {
  if (handler.surfaces.size() == 1) return &handler.surfaces.front();
  if (handler.surfaces.empty())
    faults.add({source.name},
               handler.names.empty() ? "no surface" : "surfaces " + list_of(handler.names),
               name ? "a surface " + quoted(*name) : "a triangulated surface",
               name ? "correct the name" : "export the surface with its triangles");
  else
    faults.add(
        handler.surfaces[1].place, "several surfaces: " + list_of(handler.names),
        name ? "one surface of the name " + quoted(*name) : "one surface, or the name of one",
        "name it in the job: { file = \"...\", name = \"...\" }");
  return nullptr;
}

InputRecord record_of(const RawSurface& raw, const SourceFile& source, std::string sha256) {
  InputRecord record{source.name, std::move(sha256), raw.faces_read, raw.faces_read - raw.left_out,
                     raw.set_aside};
  const std::size_t aside = raw.left_out;
  if (aside > record.set_aside.size())
    record.set_aside.push_back(
        {record.set_aside.back().line, std::to_string(aside - record.set_aside.size()) +
                                           " faces from here on that are not listed one by one"});
  return record;
}

}  // namespace

SurfaceFile read_landxml_surface(const SourceFile& source, const std::optional<std::string>& name) {
  SurfaceHandler handler(source, name);
  std::string sha256 = read_xml(source, handler, handler.faults);
  SurfaceFile surface;
  const Placing placing(handler.stated(), source, handler.faults, surface.assumed,
                        handler.cautions);
  const RawSurface* raw = chosen(handler, source, name, handler.faults);
  handler.faults.throw_if_any();
  surface.mesh.name = raw->name;
  surface.mesh.file = source.name;
  take_faces(*raw, source.name, surface.mesh, handler.faults);
  if (surface.mesh.faces.empty())
    handler.faults.add(raw->place, "surface " + quoted(raw->name) + " has no triangle",
                       "a triangulated surface", "export the surface with its triangles");
  handler.faults.throw_if_any();
  surface.mesh.vertices.reserve(raw->points.size());
  for (const auto& p : raw->points) {
    surface.mesh.vertices.push_back(placing.at(p[0], p[1], p[2]));
    surface.extent.add(surface.mesh.vertices.back().at);
  }
  surface.cautions = std::move(handler.cautions);
  const double unit = handler.units.metres.value_or(1);
  tell_stated(*raw, surface.mesh, source.name, handler.units, unit, surface.cautions);
  surface.record = record_of(*raw, source, std::move(sha256));
  return surface;
}

}  // namespace squaredig::formats
