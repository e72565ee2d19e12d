// What the volume is worth: its standard deviation, and the effect of the survey's spacing.
#include <cmath>

#include "dig/dig_internal.h"
#include "geometry/leave_one_out.h"
#include "geometry/sum.h"

namespace squaredig::dig {
namespace {

using geometry::Point2;

// How the volume moves with each ground vertex: up, and in plan. Up: the integral of the vertex's
// hat function over the dug region. In plan a vertex carries its height along, so that each of its
// triangles sinks by its own slope times the shift, weighted by the same hat.
struct Sensitivity {
  geometry::Sum up, east, north;
};

std::vector<Sensitivity> sensitivities(const Work& work) {
  const auto& surface = work.ground.surface;
  std::vector<Sensitivity> of(surface.vertices.size());
  for (const auto& piece : work.pit.dug.pieces) {
    const auto c = surface.corners(piece.triangle);
    const auto plane = surface.plane(piece.triangle);
    const auto& t = surface.triangles[static_cast<std::size_t>(piece.triangle)];
    const double whole = orient(c[0].plan(), c[1].plan(), c[2].plan());
    for (std::size_t i = 0; i < 3; ++i) {
      const Point2 b = c[(i + 1) % 3].plan(), d = c[(i + 2) % 3].plan();
      const double hat = piece.area * orient(piece.centroid, b, d) / whole;
      auto& vertex = of[static_cast<std::size_t>(t[i])];
      vertex.up.add(hat);
      vertex.east.add(-plane.slope_x * hat);
      vertex.north.add(-plane.slope_y * hat);
    }
  }
  return of;
}

}  // namespace

std::optional<Uncertainty> uncertainty_of(const Work& work) {
  const auto& heights = work.ground.sigma_height;
  const auto& plans = work.ground.sigma_plan;
  if (heights.empty()) return std::nullopt;
  const auto of = sensitivities(work);
  geometry::Sum variance;
  for (std::size_t i = 0; i < of.size(); ++i) {
    const double up = of[i].up.value() * heights[i].in_metres();
    variance.add(up * up);
    if (plans.empty()) continue;
    const double plan = std::hypot(of[i].east.value(), of[i].north.value()) * plans[i].in_metres();
    variance.add(plan * plan);
  }
  const double points = std::sqrt(variance.value());
  const double common = work.ground.sigma_common.value_or(Length{}).in_metres() * work.pit.dug.area;
  return Uncertainty{BankVolume::cubic_metres(std::hypot(points, common)),
                     BankVolume::cubic_metres(points), BankVolume::cubic_metres(common)};
}

std::optional<SpacingEffect> spacing_of(const Work& work) {
  const auto of = sensitivities(work);
  std::vector<geometry::Index> under;
  for (std::size_t i = 0; i < of.size(); ++i)
    if (of[i].up.value() > 0 && work.ground.source[i] != geometry::kNone)
      under.push_back(static_cast<geometry::Index>(i));
  const auto read = geometry::heights_without(work.ground.surface, under);
  geometry::Sum shares, errors, squares, effects;
  SpacingEffect effect;
  for (std::size_t k = 0; k < under.size(); ++k) {
    if (!read[k]) continue;
    const auto i = static_cast<std::size_t>(under[k]);
    const double share = of[i].up.value();
    const double error = work.ground.surface.vertices[i].z - *read[k];
    shares.add(share);
    errors.add(share * error);
    squares.add(share * error * error);
    effects.add(share * error * share * error);
    ++effect.points;
  }
  if (effect.points == 0) return std::nullopt;
  effect.rms = Length::metres(std::sqrt(squares.value() / shares.value()));
  effect.mean = Length::metres(errors.value() / shares.value());
  effect.effect = BankVolume::cubic_metres(std::sqrt(effects.value()));
  return effect;
}

}  // namespace squaredig::dig
