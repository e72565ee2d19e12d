#include <algorithm>
#include <cmath>

#include "design/footprint.h"
#include "fill/columns_internal.h"
#include "fill/proof_internal.h"
#include "geometry/overlay.h"
#include "geometry/polygon.h"
#include "geometry/sum.h"
#include "geometry/triangulate.h"
#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

using geometry::PlaneFacet;
constexpr double kOneSided = 1.645;  // normal quantile of 0.95

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
  geometry::Point2 thinnest_at, thickest_at;
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
      if (o.differences[i] > t.thickest)
        t.thickest = o.differences[i], t.thickest_at = o.corners[i];
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
  return Length::metres(kOneSided * std::sqrt(worst));
}

// What the layer lies on: the tank top, or the surface of the layer below.
struct Bottom {
  geometry::Plane tank_top;
  std::optional<geometry::Surface> surface;
};

// The surveyed points over the capping, each with the thickness under it.
std::vector<LayerPoint> points_of(const LayerSurvey& layer, const Bottom& bottom,
                                  const std::vector<geometry::Polygon>& parts,
                                  const geometry::SiteFrame& frame) {
  std::optional<geometry::Locator> below;
  if (bottom.surface) below.emplace(*bottom.surface);
  std::vector<LayerPoint> told;
  for (std::size_t i = 0; i < layer.points.size(); ++i) {
    const GridPosition& at = layer.points.points[i].at;
    const geometry::Point2 p = frame.to_site(at.at);
    const bool inside = std::any_of(parts.begin(), parts.end(), [&](const geometry::Polygon& part) {
      return geometry::side_of(part, p, 1e-9) >= 0;
    });
    const auto level = below ? below->height_at(p) : std::optional(bottom.tank_top.at(p));
    if (inside && level)
      told.push_back({std::string(layer.points.label(i)), at,
                      Length::metres(frame.to_site(at.height) - *level)});
  }
  return told;
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
  told.thickest = Length::metres(t.thickest);
  told.thickest_at = context.pit.frame.to_grid(t.thickest_at);
  told.tolerance = input.layer_tolerance;
  told.uncertainty = uncertainty_of(layer, i ? &input.layers[i - 1] : nullptr);
  if (i < input.capping.size()) told.planned = input.capping[i];
  if (told.planned && input.layer_tolerance)
    told.verdict =
        judge(t.thinnest, t.thickest, told.planned->in_metres(), input.layer_tolerance->in_metres(),
              told.uncertainty.value_or(Length{}).in_metres());
  return told;
}

void tell(const LayerBuilt& layer, ResultHead& head) {
  const std::string name = "Layer " + quoted(layer.name) + ": ";
  const auto mm = [](Length l) { return fixed(l.in_millimetres(), 0) + " mm"; };
  if (!layer.uncertainty)
    head.cautions.push_back(name + "points without a stated sigma, judged without uncertainty.");
  if (layer.area < layer.wanted_area * (1 - 1e-6))
    head.cautions.push_back(name + "surveyed over " + fixed(layer.area.in_square_metres(), 1) +
                            " of " + fixed(layer.wanted_area.in_square_metres(), 1) +
                            " m2; the rest was not measured.");
  if (layer.verdict == Verdict::DoesNotConform || layer.verdict == Verdict::NotProven)
    head.findings.push_back({"layer", name + words(layer.verdict) + ", thinnest " +
                                          mm(layer.thinnest) + ", thickest " + mm(layer.thickest) +
                                          ", planned " + mm(*layer.planned) + "."});
}

}  // namespace

// Each survey is the top of one capping layer, in order; the first lies on the tank top.
void add_layers(const FillInput& input, const FillContext& context, FillResult& result) {
  if (input.layers.empty()) return;
  result.head.assumed.emplace_back(
      "confidence of a layer's thickness: 0.95, one-sided, as [fill] has no key for it: 1.645 "
      "standard deviations");
  const auto& pit = context.pit;
  const auto parts = design::footprint_parts(
      pit.tank, pit.frame, input.capping_beyond * context.design.combined_factor.value(),
      input.place);
  double whole = 0;
  for (const auto& part : parts) whole += geometry::area_of(part);
  Bottom bottom{levels_of(input, pit).tank_top, {}};
  std::vector<PlaneFacet> facets;
  facets.reserve(parts.size());
  for (const auto& part : parts) facets.push_back({part, bottom.tank_top});
  for (std::size_t i = 0; i < input.layers.size(); ++i) {
    auto top = surface_of(input.layers[i], pit.frame);
    const Thickness t = measure(top, facets);
    if (t.area.value() <= 0)
      refuse(input.layers[i].place,
             "layer " + quoted(input.layers[i].name) + " surveyed beside the layer below it",
             "points over the capping", "check the file's coordinates");
    LayerBuilt layer = built(input, context, i, t);
    layer.wanted_area =
        i < result.capping.size() ? result.capping[i].area : Area::square_metres(whole);
    layer.points = points_of(input.layers[i], bottom, parts, pit.frame);
    tell(layer, result.head);
    result.layers.push_back(std::move(layer));
    facets = within(geometry::facets_of(top), parts);
    bottom.surface = std::move(top);
  }
}

}  // namespace squaredig::fill
