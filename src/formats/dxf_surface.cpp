#include <array>
#include <cmath>
#include <cstring>
#include <unordered_map>

#include "formats/dxf_common_internal.h"
#include "formats/dxf_read.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

constexpr std::size_t kSetAsideListed = 1000;
constexpr unsigned kMesh = 16;
constexpr unsigned kPolyface = 64;
constexpr unsigned kMeshVertex = 64;
constexpr unsigned kMeshFace = 128;
constexpr double kOutOfPlane = 0.001;  // metres: the last digit that drawings are written with

using Corner = std::array<double, 3>;  // in the drawing's unit

struct CornerHash {
  std::size_t operator()(const Corner& p) const {
    std::size_t hash = 0;
    for (const double value : p)
      hash = hash * 1099511628211U ^ std::hash<double>()(value == 0 ? 0 : value);
    return hash;
  }
};

struct DrawnFace {
  std::array<Corner, 4> corners;
  int count;
  int line;
};

class SurfaceOfDrawing {
 public:
  SurfaceOfDrawing(const SourceFile& source, SurfaceFile& file, FaultList& faults)
      : source_(source), file_(file), faults_(faults), layers_(source) {}

  void take(const DxfEntity& entity) {
    const bool face = entity.kind == "3DFACE";
    if (!face && (entity.flags(70) & (kPolyface | kMesh)) == 0) {
      ++polylines_;
      return;
    }
    if (!layers_.wants(entity)) return;
    if (face)
      take_face(entity);
    else if ((entity.flags(70) & kMesh) != 0)
      fault(entity.line, "a mesh of rows and columns", "3DFACE or polyface",
            "export the surface as 3DFACE");
    else
      take_polyface(entity);
  }

  void finish(const Placing& placing) {
    layers_.finish(faults_);
    if (!faults_.empty()) return;
    placing_ = placing;
    for (const DrawnFace& face : faces_) add(face);
    if (split_ > 0)
      file_.cautions.push_back(
          source_.name + ": " + std::to_string(split_) +
          " faces of four corners in one plane are taken as two triangles each");
    if (polylines_ > 0)
      file_.cautions.push_back(source_.name + ": not used: " + std::to_string(polylines_) +
                               " POLYLINE, which are no faces");
  }

 private:
  void fault(int line, std::string found, std::string needed, std::string remedy) {
    faults_.add({source_.name, line, 1}, std::move(found), std::move(needed), std::move(remedy));
  }

  void take_face(const DxfEntity& entity) {
    DrawnFace face{{}, 4, entity.line};
    for (int i = 0; i < 4; ++i) {
      const bool there = entity.has(10 + i) && entity.has(20 + i) && entity.has(30 + i);
      // a face of three corners may leave the fourth out
      if (!there && i == 3 && !entity.has(13) && !entity.has(23) && !entity.has(33)) {
        face.count = 3;
      } else if (!there) {
        fault(entity.line, "a 3DFACE whose corner " + std::to_string(i + 1) + " is not whole",
              "easting, northing and height of each corner", "export it again");
        return;
      }
      face.corners[static_cast<std::size_t>(i)] = {entity.value(10 + i, 0), entity.value(20 + i, 0),
                                                   entity.value(30 + i, 0)};
    }
    faces_.push_back(face);
  }

  void take_polyface(const DxfEntity& mesh) {
    std::vector<Corner> corners;
    for (const DxfEntity& vertex : mesh.vertices)
      if ((vertex.flags(70) & kMeshVertex) != 0) {
        if (!vertex.has(10) || !vertex.has(20) || !vertex.has(30))
          fault(vertex.line, "a vertex of a polyface that is not whole",
                "easting, northing and height", "export it again");
        corners.push_back({vertex.value(10, 0), vertex.value(20, 0), vertex.value(30, 0)});
      }
    for (const DxfEntity& vertex : mesh.vertices)
      if ((vertex.flags(70) & (kMeshFace | kMeshVertex)) == kMeshFace)
        take_mesh_face(vertex, corners);
  }

  void take_mesh_face(const DxfEntity& record, const std::vector<Corner>& corners) {
    DrawnFace face{{}, 0, record.line};
    for (int code = 71; code <= 74; ++code) {
      const double number = std::abs(record.value(code, 0));  // below zero: the edge is hidden
      if (number == 0) continue;
      if (number != std::floor(number) || number > static_cast<double>(corners.size())) {
        fault(record.line,
              "vertex " + shortest(number) + " of a polyface of " + std::to_string(corners.size()),
              "the number of one of its vertices", "export it again");
        return;
      }
      face.corners[static_cast<std::size_t>(face.count++)] =
          corners[static_cast<std::size_t>(number) - 1];
    }
    if (face.count < 3)
      return fault(record.line, "a face of " + std::to_string(face.count) + " corners",
                   "three or four", "export it again");
    faces_.push_back(face);
  }

  // The corners without repetition.
  static DrawnFace plain(const DrawnFace& face) {
    DrawnFace out{{}, 0, face.line};
    for (int i = 0; i < face.count; ++i) {
      const Corner& corner = face.corners[static_cast<std::size_t>(i)];
      bool fresh = true;
      for (int j = 0; j < out.count; ++j)
        fresh = fresh && out.corners[static_cast<std::size_t>(j)] != corner;
      if (fresh) out.corners[static_cast<std::size_t>(out.count++)] = corner;
    }
    return out;
  }

  void add(const DrawnFace& drawn) {
    ++file_.record.read;
    const DrawnFace face = plain(drawn);
    if (face.count < 3) return set_aside(face.line, "the face has no area: two corners at most");
    ++file_.record.used;
    std::array<std::int32_t, 4> c{};
    for (std::size_t i = 0; i < static_cast<std::size_t>(face.count); ++i)
      c[i] = number_of(face.corners[i]);
    if (face.count == 3) {
      file_.mesh.faces.push_back({c[0], c[1], c[2]});
    } else if (in_one_plane(c, face.line)) {
      ++split_;
      file_.mesh.faces.push_back({c[0], c[1], c[2]});
      file_.mesh.faces.push_back({c[0], c[2], c[3]});
    }
  }

  std::int32_t number_of(const Corner& corner) {
    const auto [found, fresh] =
        numbers_.try_emplace(corner, static_cast<std::int32_t>(file_.mesh.vertices.size()));
    if (fresh) {
      file_.mesh.vertices.push_back(placing_.at(corner[0], corner[1], corner[2]));
      file_.extent.add(file_.mesh.vertices.back().at);
    }
    return found->second;
  }

  // Both diagonals then give one surface.
  bool in_one_plane(const std::array<std::int32_t, 4>& c, int line) {
    const auto edge = [&](std::int32_t to) {
      const GridPosition& a = file_.mesh.vertices[static_cast<std::size_t>(c[0])];
      const GridPosition& b = file_.mesh.vertices[static_cast<std::size_t>(to)];
      return Corner{(b.at.easting - a.at.easting).in_metres(),
                    (b.at.northing - a.at.northing).in_metres(), (b.height - a.height).in_metres()};
    };
    const Corner u = edge(c[1]), v = edge(c[2]), w = edge(c[3]);
    const double first = u[0] * v[1] - u[1] * v[0], second = v[0] * w[1] - v[1] * w[0];
    if (!(first * second > 0)) {
      fault(line, "a face of four corners that is folded in plan", "triangles",
            "export the surface as triangles");
      return false;
    }
    const double at_w =
        (u[2] * (w[0] * v[1] - w[1] * v[0]) + v[2] * (u[0] * w[1] - u[1] * w[0])) / first;
    const double off = std::abs(w[2] - at_w);
    if (off > kOutOfPlane)
      fault(line, "a face of four corners, the last " + fixed(off * 1000, 1) + " mm out of plane",
            "triangles: either diagonal could be meant", "export the surface as triangles");
    return off <= kOutOfPlane;
  }

  void set_aside(int line, std::string why) {
    auto& rows = file_.record.set_aside;
    if (++aside_ <= kSetAsideListed)
      rows.push_back({line, std::move(why)});
    else
      rows.back() = {rows.back().line, std::to_string(aside_ - kSetAsideListed + 1) +
                                           " faces from here on that are not listed one by one"};
  }

  const SourceFile& source_;
  SurfaceFile& file_;
  FaultList& faults_;
  DxfLayers layers_;
  Placing placing_;
  std::vector<DrawnFace> faces_;
  std::unordered_map<Corner, std::int32_t, CornerHash> numbers_;
  std::size_t polylines_ = 0;
  std::size_t split_ = 0;
  std::size_t aside_ = 0;
};

}  // namespace

SurfaceFile read_dxf_surface(const SourceFile& source) {
  SurfaceFile file;
  FaultList faults;
  SurfaceOfDrawing surface(source, file, faults);
  const DxfDrawing drawing = read_dxf(
      source, {"3DFACE", "POLYLINE"}, [&](DxfEntity&& e) { surface.take(e); }, faults);
  const Placing placing(crs_of(drawing, source, faults, file.assumed, file.cautions), source,
                        faults, file.assumed, file.cautions);
  surface.finish(placing);
  if (file.mesh.faces.empty())
    refuse_without("3DFACE and no polyface", "a surface of triangles as 3DFACE", drawing, source,
                   faults);
  faults.throw_if_any();
  tell_passed_over(drawing, source, file.cautions);
  file.mesh.name = source.layer.value_or("");
  file.mesh.file = source.name;
  file.record.file = source.name;
  file.record.sha256 = drawing.sha256;
  return file;
}

}  // namespace squaredig::formats
