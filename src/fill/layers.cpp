#include <algorithm>
#include <cmath>

#include "design/footprint.h"
#include "fill/columns_internal.h"
#include "fill/proof_internal.h"
#include "geometry/overlay.h"
#include "geometry/sum.h"
#include "geometry/triangulate.h"
#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

using geometry::PlaneFacet;

std::vector<PlaneFacet> within(const std::vector<PlaneFacet>& facets,
                               const std::vector<geometry::Polygon>& parts) {
  std::vector<PlaneFacet> kept;
  for (const auto& facet : facets)
    for (const auto& part : parts) {
      auto split = geometry::split_at(facet.outline, part);
      if (!split.inside.empty()) kept.push_back({std::move(split.inside), facet.plane});
    }
  return kept;
}

geometry::Surface surface_of(const LayerSurvey& layer, const geometry::SiteFrame& frame) {
  geometry::TriangulationInput input;
  for (const auto& p : layer.points.points) input.points.push_back(frame.to_site(p.at));
  auto made = geometry::triangulate(input);
  if (made.surface.triangles.empty())
    refuse(layer.place, "layer " + quoted(layer.name) + " with points that span no area",
           "at least three points, not on a line", "survey the layer over its whole extent");
  return std::move(made.surface);
}

struct Thickness {
  geometry::Sum volume, area;
  double thinnest = 1e300, thickest = -1e300;
  geometry::Point2 thinnest_at;
};

Thickness measure(const geometry::Surface& top, const std::vector<PlaneFacet>& bottom) {
  Thickness t;
  const geometry::Locator locator(top);
  geometry::overlay(top, locator, bottom, [&](const geometry::Overlap& o) {
    t.volume.add(geometry::integral_over(o.corners, o.differences));
    t.area.add(geometry::area_of(o.corners));
    for (std::size_t i = 0; i < o.corners.size(); ++i) {
      if (o.differences[i] < t.thinnest)
        t.thinnest = o.differences[i], t.thinnest_at = o.corners[i];
      t.thickest = std::max(t.thickest, o.differences[i]);
    }
  });
  return t;
}

// The expanded uncertainty of one thickness, from the points' own sigmas where they have them all.
std::optional<Length> uncertainty_of(const LayerSurvey& layer, const LayerSurvey* below) {
  double worst = 0;
  for (const auto* survey : {&layer, below}) {
    if (!survey) continue;
    double largest = 0;
    for (const auto& p : survey->points.points) {
      if (!p.sigma_height()) return std::nullopt;
      largest = std::max(largest, p.sigma_height()->in_metres());
    }
    worst += largest * largest;
  }
  return Length::metres(1.645 * std::sqrt(worst));
}

Verdict judge(double thinnest, double thickest, double planned, double tolerance, double u) {
  constexpr double kGrace = 1e-12;
  const double low = thinnest - (planned - tolerance), high = planned + tolerance - thickest;
  const double inside = std::min(low, high);
  if (inside < -u - kGrace) return Verdict::DoesNotConform;
  return inside < u - kGrace ? Verdict::NotProven : Verdict::Conforms;
}

LayerBuilt built(const FillInput& input, const FillContext& context, std::size_t i,
                 const Thickness& t) {
  const auto& layer = input.layers[i];
  LayerBuilt told;
  told.name = layer.name;
  told.area = Area::square_metres(t.area.value());
  told.volume = CompactedVolume::cubic_metres(t.volume.value());
  told.mean_thickness = Length::metres(t.volume.value() / t.area.value());
  told.thinnest = Length::metres(t.thinnest);
  told.thinnest_at = context.pit.frame.to_grid(t.thinnest_at);
  told.uncertainty = uncertainty_of(layer, i ? &input.layers[i - 1] : nullptr);
  if (i < input.capping.size()) told.planned = input.capping[i];
  if (told.planned && input.layer_tolerance)
    told.verdict =
        judge(t.thinnest, t.thickest, told.planned->in_metres(), input.layer_tolerance->in_metres(),
              told.uncertainty.value_or(Length{}).in_metres());
  return told;
}

}  // namespace

// Each survey is the top of one capping layer, in order; the first lies on the tank top.
void add_layers(const FillInput& input, const FillContext& context, FillResult& result) {
  if (input.layers.empty()) return;
  const auto& pit = context.pit;
  const auto parts = design::footprint_parts(
      pit.tank, pit.frame, input.capping_beyond * context.design.combined_factor.value(),
      input.place);
  const FillLevels levels = levels_of(input, pit);
  std::vector<PlaneFacet> bottom;
  for (const auto& part : parts) bottom.push_back({part, levels.tank_top});
  for (std::size_t i = 0; i < input.layers.size(); ++i) {
    const auto top = surface_of(input.layers[i], pit.frame);
    const Thickness t = measure(top, bottom);
    if (t.area.value() <= 0)
      refuse(input.layers[i].place,
             "layer " + quoted(input.layers[i].name) + " surveyed beside the layer below it",
             "points over the capping", "check the file's coordinates");
    result.layers.push_back(built(input, context, i, t));
    if (!result.layers.back().uncertainty)
      result.head.cautions.push_back(
          "Layer " + quoted(input.layers[i].name) +
          ": points without a stated sigma, judged without uncertainty.");
    if (result.layers.back().verdict == Verdict::DoesNotConform ||
        result.layers.back().verdict == Verdict::NotProven)
      result.head.findings.push_back({"layer", "Layer " + quoted(input.layers[i].name) + ": " +
                                                   words(result.layers.back().verdict) +
                                                   ", thinnest " + fixed(t.thinnest * 1000, 0) +
                                                   " mm."});
    bottom = within(geometry::facets_of(top), parts);
  }
}

}  // namespace squaredig::fill
