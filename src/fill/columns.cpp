#include <algorithm>

#include "fill/columns_internal.h"
#include "geometry/overlay.h"

namespace squaredig::fill {
namespace {

using geometry::Plane;
using geometry::Polygon;

bool is_extra(design::Part part) {
  return part == design::Part::Ramp || part == design::Part::Trench || part == design::Part::Sump;
}

struct Ready {
  geometry::Surface surface;
  std::vector<geometry::PlaneFacet> facets;
};

class ColumnMaker {
 public:
  explicit ColumnMaker(const ColumnSource& source) : source_(source) {
    for (const auto& cut : source.pit.pit.cuts)
      if (!is_extra(static_cast<design::Part>(cut.part))) plain_cuts_.push_back(cut);
    if (plain_cuts_.size() != source.pit.pit.cuts.size())
      plain_facets_ = geometry::lower_envelope(plain_cuts_, box());
    if (const auto* mesh = std::get_if<SurfaceMesh>(&source.finish)) finish_ = ready(*mesh);
  }

  std::vector<Column> make() {
    const auto& dug = source_.pit.dug;
    for (const auto& piece : dug.pieces) {
      const auto& facet = dug.facets[static_cast<std::size_t>(piece.facet)];
      const auto owner =
          static_cast<design::Part>(dug.cuts[static_cast<std::size_t>(facet.cut)].part);
      const auto outline = dug.outline(piece);
      Column column{{outline.begin(), outline.end()},
                    facet.plane,
                    facet.plane,
                    source_.ground.surface.plane(piece.triangle),
                    {},
                    owner,
                    Zone::Beyond,
                    false};
      if (is_extra(owner))
        split_extra(column);
      else
        split_zones(column);
    }
    add_below_floor();
    return std::move(columns_);
  }

 private:
  geometry::Box2 box() const {
    geometry::Box2 box{source_.pit.pit.toe[0], source_.pit.pit.toe[0]};
    const auto take = [&](geometry::Point2 p) {
      box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
      box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
    };
    for (const auto p : source_.pit.pit.toe) take(p);
    for (const auto& ring : source_.pit.dug.rings)
      for (const auto& p : ring.corners) take(p.plan());
    return {box.low - geometry::Point2{1, 1}, box.high + geometry::Point2{1, 1}};
  }

  Ready ready(const SurfaceMesh& mesh) const {
    Ready made;
    for (const auto& v : mesh.vertices)
      made.surface.vertices.push_back(source_.pit.frame.to_site(v));
    made.surface.triangles = mesh.faces;
    made.facets = geometry::facets_of(made.surface);
    return made;
  }

  // What the pit would be here without the ramp, trench or sump.
  void split_extra(const Column& column) {
    std::vector<Polygon> rest{column.outline};
    for (const auto& facet : plain_facets_) {
      std::vector<Polygon> next;
      for (auto& polygon : rest) {
        auto split = geometry::split_at(polygon, facet.outline);
        next.insert(next.end(), split.outside.begin(), split.outside.end());
        if (!split.inside.empty()) under_plain(column, split.inside, facet.plane);
      }
      rest = std::move(next);
    }
    for (auto& polygon : rest) under_ground(column, std::move(polygon));
  }

  void under_plain(const Column& column, const Polygon& polygon, const Plane& plain) {
    auto split = geometry::split_where_above(polygon, plain, column.ground);
    if (!split.above.empty()) under_ground(column, std::move(split.above));
    if (split.below.empty()) return;
    Column below = column;
    below.outline = std::move(split.below);
    below.middle = plain;
    split_zones(below);
  }

  void under_ground(Column column, Polygon polygon) {
    column.outline = std::move(polygon);
    column.middle = column.ground;
    split_zones(column);
  }

  void split_zones(const Column& column) {
    auto rest = take_zone(column, {column.outline}, source_.tank, Zone::Tank);
    rest = take_zone(column, std::move(rest), source_.beside, Zone::Beside);
    for (auto& polygon : rest) emit(column, std::move(polygon), Zone::Beyond);
  }

  std::vector<Polygon> take_zone(const Column& column, std::vector<Polygon> rest,
                                 const std::vector<Polygon>& rings, Zone zone) {
    for (const auto& ring : rings) {
      std::vector<Polygon> next;
      for (const auto& polygon : rest) {
        auto split = geometry::split_at(polygon, ring);
        next.insert(next.end(), split.outside.begin(), split.outside.end());
        if (!split.inside.empty()) emit(column, std::move(split.inside), zone);
      }
      rest = std::move(next);
    }
    return rest;
  }

  void emit(Column column, Polygon polygon, Zone zone) {
    column.outline = std::move(polygon);
    column.zone = zone;
    if (std::holds_alternative<ExistingGround>(source_.finish)) {
      column.finish = column.ground;
      columns_.push_back(std::move(column));
    } else if (const auto* level = std::get_if<Elevation>(&source_.finish)) {
      column.finish = {column.outline[0], source_.pit.frame.to_site(*level), 0, 0};
      columns_.push_back(std::move(column));
    } else {
      under_finish(column);
    }
  }

  // Where the finish surface ends, the existing ground is the finish.
  void under_finish(const Column& column) {
    std::vector<Polygon> rest{column.outline};
    for (const auto& facet : finish_.facets) {
      std::vector<Polygon> next;
      for (const auto& polygon : rest) {
        auto split = geometry::split_at(polygon, facet.outline);
        next.insert(next.end(), split.outside.begin(), split.outside.end());
        if (split.inside.empty()) continue;
        columns_.push_back(column);
        columns_.back().outline = std::move(split.inside);
        columns_.back().finish = facet.plane;
      }
      rest = std::move(next);
    }
    for (auto& polygon : rest) {
      columns_.push_back(column);
      columns_.back().outline = std::move(polygon);
      columns_.back().finish = column.ground;
    }
  }

  // Where the ground lies below the floor, over the floors of pit, trenches and sumps.
  void add_below_floor() {
    std::vector<geometry::PlaneFacet> floors;
    for (const auto& facet : source_.pit.dug.facets) {
      const auto part = source_.pit.dug.cuts[static_cast<std::size_t>(facet.cut)].part;
      if (facet.kind == geometry::FacetKind::Floor &&
          part != static_cast<geometry::Index>(design::Part::Ramp))
        floors.push_back({facet.outline, facet.plane});
    }
    const geometry::Locator locator(source_.ground.surface);
    geometry::overlay(source_.ground.surface, locator, floors, [&](const geometry::Overlap& o) {
      const Plane floor = floors[o.facet].plane;
      const Plane ground = source_.ground.surface.plane(o.triangle);
      auto split = geometry::split_where_above(o.corners, floor, ground);
      if (split.above.empty()) return;
      split_zones({std::move(split.above),
                   floor,
                   floor,
                   ground,
                   {},
                   design::Part::Floor,
                   Zone::Beyond,
                   true});
    });
  }

  const ColumnSource& source_;
  std::vector<geometry::ConvexCut> plain_cuts_;
  std::vector<geometry::Facet> plain_facets_;
  Ready finish_;
  std::vector<Column> columns_;
};

}  // namespace

std::vector<Column> columns_of(const ColumnSource& source) { return ColumnMaker(source).make(); }

}  // namespace squaredig::fill
