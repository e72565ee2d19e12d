// Surveys made during the dig against the last one and against the design.
//
// The dug region is laid out in tiles on each of which the existing ground, the excavated surface
// and the surface as it was last are planes. A survey splits the tiles along its triangles; where
// it has none the ground counts as it was last. So what was dug, less what went too deep, and what
// remains always add up to the whole cut.
#include <algorithm>
#include <cmath>
#include <map>
#include <memory>

#include "dig/dig_internal.h"
#include "geometry/polygon.h"
#include "geometry/sum.h"
#include "ground/build_ground.h"
#include "quantity/number_text.h"

namespace squaredig::dig {
namespace {

using geometry::Index;
using geometry::LabelledPolygon;
using geometry::Plane;
using geometry::Point2;

// A surface with the sigmas of its vertices: the ground first, then each survey.
struct Epoch {
  const geometry::Surface* surface;
  std::vector<Length> sigma;
  Length common;
  bool known = true;  // whether sigmas are given
};

struct Tile {
  std::vector<Point2> outline;
  Plane design;
  std::size_t epoch = 0;  // whose surface lies here now
  Index triangle = geometry::kNone;
};

LabelledPolygon plain(std::span<const Point2> outline) {
  return {{outline.begin(), outline.end()}, std::vector<int>(outline.size(), 0)};
}

// What a volume is made of: how much each vertex of each epoch moves it.
class Weights {
 public:
  // A stretch of an epoch's surface over an area, counted `sign` times.
  void add(const std::vector<Epoch>& epochs, const Tile& tile, std::span<const Point2> outline,
           double sign) {
    const auto& surface = *epochs[tile.epoch].surface;
    const auto c = surface.corners(tile.triangle);
    const auto& t = surface.triangles[static_cast<std::size_t>(tile.triangle)];
    const double whole = orient(c[0].plan(), c[1].plan(), c[2].plan());
    const double area = geometry::area_of(outline);
    const Point2 middle = geometry::centroid(outline);
    for (std::size_t i = 0; i < 3; ++i)
      of_[{tile.epoch, t[i]}] +=
          sign * area * orient(middle, c[(i + 1) % 3].plan(), c[(i + 2) % 3].plan()) / whole;
    area_[tile.epoch] += sign * area;
  }

  std::optional<BankVolume> sigma(const std::vector<Epoch>& epochs) const {
    geometry::Sum variance;
    for (const auto& [vertex, weight] : of_) {
      const Epoch& epoch = epochs[vertex.first];
      if (!epoch.known) return std::nullopt;
      const double part = weight * epoch.sigma[static_cast<std::size_t>(vertex.second)].in_metres();
      variance.add(part * part);
    }
    for (const auto& [number, area] : area_) {
      const double part = area * epochs[number].common.in_metres();
      variance.add(part * part);
    }
    return BankVolume::cubic_metres(std::sqrt(variance.value()));
  }

 private:
  std::map<std::pair<std::size_t, Index>, double> of_;
  std::map<std::size_t, double> area_;
};

// The parts of a convex polygon outside a convex window.
void outside(LabelledPolygon rest, std::span<const Point2> window,
             std::vector<std::vector<Point2>>& parts) {
  for (std::size_t i = 0; i < window.size() && !rest.empty(); ++i) {
    const auto in = geometry::HalfPlane::left_of(window[i], window[(i + 1) % window.size()]);
    auto part = part_inside(rest, {-in.a, -in.b, -in.c}, 0);
    if (!part.empty() && geometry::area_of(part.corners) > 0) parts.push_back(part.corners);
    rest = part_inside(rest, in, 0);
  }
}

class Progress {
 public:
  explicit Progress(const Work& work) : work_(work) {
    epochs_.push_back({&work.ground.surface, work.ground.sigma_height,
                       work.ground.sigma_common.value_or(Length{}),
                       !work.ground.sigma_height.empty()});
    for (const auto& piece : work.pit.dug.pieces) {
      const auto outline = work.pit.dug.outline(piece);
      tiles_.push_back({{outline.begin(), outline.end()},
                        work.pit.dug.facets[static_cast<std::size_t>(piece.facet)].plane,
                        0,
                        piece.triangle});
    }
  }

  ProgressResult next(const ProgressSurvey& survey) {
    ground::GroundInput input;
    input.points = survey.points;
    input.sigma_height = survey.sigma_height;
    surfaces_.push_back(
        std::make_unique<ground::BuiltGround>(ground::build_ground(input, work_.pit.frame)));
    const auto& built = surfaces_.back()->ground;
    epochs_.push_back({&built.surface, built.sigma_height, survey.sigma_common.value_or(Length{}),
                       !built.sigma_height.empty()});
    ProgressResult result;
    result.name = survey.name;
    take(built.surface, result);
    against_design(result);
    if (work_.input.bulking) add_loose(result);
    return result;
  }

 private:
  Plane plane_of(const Tile& tile) const {
    return epochs_[tile.epoch].surface->plane(tile.triangle);
  }

  static double volume_between(std::span<const Point2> outline, const Plane& top,
                               const Plane& bottom) {
    std::vector<double> depths;
    for (const Point2 p : outline) depths.push_back(top.at(p) - bottom.at(p));
    return geometry::integral_over(outline, depths);
  }

  // Lays the new surface over the tiles and measures what changed.
  void take(const geometry::Surface& surface, ProgressResult& result) {
    const geometry::Locator locator(surface);
    const std::size_t epoch = epochs_.size() - 1;
    std::vector<Tile> next;
    geometry::Sum dug, surveyed;
    Weights weights;
    for (const Tile& tile : tiles_) {
      std::vector<std::vector<Point2>> left{tile.outline};
      for (const Index t : near(locator, tile.outline)) {
        const auto c = surface.corners(t);
        const std::array<Point2, 3> window{c[0].plan(), c[1].plan(), c[2].plan()};
        std::vector<std::vector<Point2>> still;
        for (const auto& part : left) {
          const auto shared = part_inside(plain(part), window, 0);
          if (shared.empty() || geometry::area_of(shared.corners) <= 0) {
            still.push_back(part);
            continue;
          }
          const Tile covered{shared.corners, tile.design, epoch, t};
          dug.add(volume_between(covered.outline, plane_of(tile), plane_of(covered)));
          surveyed.add(geometry::area_of(covered.outline));
          weights.add(epochs_, Tile{{}, {}, tile.epoch, tile.triangle}, covered.outline, 1);
          weights.add(epochs_, covered, covered.outline, -1);
          next.push_back(covered);
          outside(plain(part), window, still);
        }
        left = std::move(still);
      }
      for (auto& part : left)
        next.push_back({std::move(part), tile.design, tile.epoch, tile.triangle});
    }
    tiles_ = std::move(next);
    result.dug = BankVolume::cubic_metres(dug.value());
    result.dug_sigma = weights.sigma(epochs_);
    result.surveyed = Area::square_metres(surveyed.value());
  }

  static std::vector<Index> near(const geometry::Locator& locator,
                                 const std::vector<Point2>& outline) {
    Point2 low = outline[0], high = outline[0];
    for (const Point2 p : outline) {
      low = {std::min(low.x, p.x), std::min(low.y, p.y)};
      high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    return locator.triangles_in(low, high);
  }

  struct Side {
    geometry::Sum volume, area;
    Weights weights;
    double greatest = 0;
    Point2 at;
  };

  // The part of the tile where the surface lies above (sign 1) or below (-1) the design.
  void add_side(const Tile& tile, double sign, Side& side) {
    const Plane now = plane_of(tile);
    std::vector<double> values;
    for (const Point2 p : tile.outline) values.push_back(sign * (now.at(p) - tile.design.at(p)));
    const auto part = part_above(plain(tile.outline), values, 0);
    if (part.empty()) return;
    std::vector<double> depths;
    for (const Point2 p : part.corners) {
      depths.push_back(sign * (now.at(p) - tile.design.at(p)));
      if (depths.back() > side.greatest) side.greatest = depths.back(), side.at = p;
    }
    const double area = geometry::area_of(part.corners);
    const double volume = geometry::integral_over(part.corners, depths);
    if (area <= 0) return;
    side.volume.add(volume);
    side.area.add(area);
    side.weights.add(epochs_, tile, part.corners, sign);
    if (sign < 0) add_to_plan(part.corners, volume, area);
  }

  // By the cell of the dig sheet that holds the middle of the part.
  void add_to_plan(std::span<const Point2> part, double volume, double area) {
    const auto& tank = work_.pit.tank;
    const GridPoint middle = work_.pit.frame.to_grid(geometry::centroid(part));
    const auto index = [&](Length along) {
      return static_cast<int>(std::floor(along / work_.input.cell));
    };
    auto& cell = plan_[{index(tank.across_ab(middle)), index(tank.along_ab(middle))}];
    cell.first += volume;
    cell.second += area;
  }

  void against_design(ProgressResult& result) {
    Side above, below;
    plan_.clear();
    for (const Tile& tile : tiles_) {
      add_side(tile, 1, above);
      add_side(tile, -1, below);
    }
    result.remaining = BankVolume::cubic_metres(above.volume.value());
    result.remaining_sigma = above.weights.sigma(epochs_);
    result.over_dig = BankVolume::cubic_metres(below.volume.value());
    result.over_dig_sigma = below.weights.sigma(epochs_);
    result.over_dig_area = Area::square_metres(below.area.value());
    result.deepest_over_dig = Length::metres(below.greatest);
    if (below.greatest > 0) result.deepest_at = work_.pit.frame.to_grid(below.at);
    for (const auto& [key, cell] : plan_)
      result.over_dig_plan.push_back(
          {"c" + std::to_string(key.second) + "r" + std::to_string(key.first),
           BankVolume::cubic_metres(cell.first), Area::square_metres(cell.second)});
  }

  void add_loose(ProgressResult& result) const {
    const auto loosened = [&](BankVolume v) {
      return LooseVolume::cubic_metres(v.in_cubic_metres() * work_.input.bulking->value());
    };
    result.dug_loose = loosened(result.dug);
    result.remaining_loose = loosened(result.remaining);
    result.over_dig_loose = loosened(result.over_dig);
  }

  const Work& work_;
  std::vector<std::unique_ptr<ground::BuiltGround>> surfaces_;
  std::vector<Epoch> epochs_;
  std::vector<Tile> tiles_;
  std::map<std::pair<int, int>, std::pair<double, double>> plan_;
};

// What bedding may not make up is told; without a limit any depth is.
Length told_from(const Work& work) {
  const auto& bedding = work.design.bedding;
  return bedding.most ? *bedding.most - bedding.thickness : Length{};
}

}  // namespace

void add_progress(const Work& work, DigResult& result) {
  if (work.input.progress.empty()) return;
  Progress progress(work);
  for (const auto& survey : work.input.progress) {
    result.progress.push_back(progress.next(survey));
    const auto& now = result.progress.back();
    if (now.deepest_over_dig <= told_from(work)) continue;
    result.head.findings.push_back(
        {"over-dig", "Survey " + quoted(now.name) + " lies below the design over " +
                         fixed(now.over_dig_area.in_square_metres(), 1) + " m2, by up to " +
                         fixed(now.deepest_over_dig.in_metres(), 2) + " m near " +
                         at_text(*now.deepest_at) + ": " +
                         fixed(now.over_dig.in_cubic_metres(), 2) +
                         " m3 were dug too deep. Ask the engineer what fills them."});
  }
}

}  // namespace squaredig::dig
