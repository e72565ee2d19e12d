#include <algorithm>

#include "design/footprint.h"
#include "fill/columns_internal.h"
#include "fill/proof_internal.h"
#include "geometry/sum.h"
#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

using geometry::Plane;
constexpr double kWater = 9.81;  // kN/m3

// What stands over the footprint up to a level, above and below the water.
struct Cover {
  geometry::Sum dry, wet;
  void add(const Column& column, const Plane& from, const Plane& to, const Plane& water) {
    const std::vector<Plane> lowers{column.middle, from};
    const double all = geometry::slab_between(column.outline, lowers, std::vector{to}).volume;
    const double below =
        geometry::slab_between(column.outline, lowers, std::vector{to, water}).volume;
    wet.add(below);
    dry.add(all - below);
  }
  double weight(double unit_weight) const {
    return dry.value() * unit_weight + wet.value() * (unit_weight - kWater);
  }
};

class Screening {
 public:
  Screening(const FillInput& input, const FillContext& context)
      : context_(context), levels_(levels_of(input, context.pit)), water_level_(water_plane()) {
    const ColumnSource source{
        context.pit,
        context.pit.ground,
        input.finish,
        design::footprint_parts(context.pit.tank, context.pit.frame, Length{}, input.place),
        {}};
    columns_ = columns_of(source);
    std::erase_if(columns_, [](const Column& c) { return c.zone != Zone::Tank; });
  }

  double up() const {
    geometry::Sum displaced;
    for (const auto& c : columns_)
      displaced.add(geometry::slab_between(c.outline, std::vector{levels_.underside},
                                           std::vector{levels_.tank_top, water_level_})
                        .volume);
    return kWater * displaced.value();
  }

  // The even cover over the tank top that weighs so much: found by halving, the weight below the
  // water and above it being different.
  Length cover_of(double weight) const {
    if (weight <= 0) return {};
    double wettest = 0;
    for (const auto& c : columns_)
      for (const auto p : c.outline)
        wettest = std::max(wettest, water_level_.at(p) - levels_.tank_top.at(p));
    double low = 0;
    double high = wettest + (weight + kWater * wettest * area()) / (unit_weight() * area());
    for (int i = 0; i < 60; ++i) {
      const double middle = (low + high) / 2;
      (weight_of(middle) < weight ? low : high) = middle;
    }
    return Length::metres(high);
  }

  // Weight over the footprint from the tank top to one of the capping levels, or to the finish.
  double cover_weight(std::size_t capping_layers, bool finished) const {
    Cover cover;
    for (const auto& c : columns_) {
      cover.add(c, levels_.tank_top, levels_.capping[capping_layers], water_level_);
      if (finished) cover.add(c, levels_.capping.back(), c.finish, water_level_);
    }
    return cover.weight(unit_weight());
  }

  double least_cover() const {
    double least = 1e300;
    for (const auto& c : columns_)
      for (const auto p : c.outline)
        least = std::min(
            least, std::max(c.finish.at(p), levels_.capping.back().at(p)) - levels_.tank_top.at(p));
    return least;
  }

  double area() const {
    geometry::Sum area;
    for (const auto& c : columns_) area.add(geometry::area_of(c.outline));
    return area.value();
  }

  double unit_weight() const {
    return context_.water ? context_.water->cover_unit_weight.in_kilonewtons_per_cubic_metre() : 0;
  }
  const FillLevels& levels() const { return levels_; }
  bool empty() const { return columns_.empty(); }

 private:
  double weight_of(double thickness) const {
    Plane to = levels_.tank_top;
    to.height += thickness;
    Cover cover;
    for (const auto& c : columns_) cover.add(c, levels_.tank_top, to, water_level_);
    return cover.weight(unit_weight());
  }

  Plane water_plane() const {
    const double level = context_.water ? context_.pit.frame.to_site(context_.water->level) : -1e6;
    return {context_.pit.frame.to_site(context_.pit.tank.corners[0]), level, 0, 0};
  }

  const FillContext& context_;
  FillLevels levels_;
  Plane water_level_;
  std::vector<Column> columns_;
};

UpliftStage stage(const std::string& name, double up, double down) {
  UpliftStage s{name, Force::kilonewtons(up), Force::kilonewtons(down), std::nullopt};
  if (up > 0) s.ratio = down / up;
  return s;
}

void judge_cover(const FillInput& input, const Screening& screening, FillResult& result) {
  const Length found = Length::metres(screening.least_cover());
  result.least_cover_wanted = input.least_cover;
  result.least_cover_found = found;
  if (found < *input.least_cover - Length::metres(1e-9))
    result.head.findings.push_back({"cover", "Least cover over the tank is " +
                                                 fixed(found.in_metres(), 3) +
                                                 " m, the module's designer wants " +
                                                 fixed(input.least_cover->in_metres(), 3) + " m."});
}

// The stages of filling in their order, with what the water lifts and what holds the tank down.
std::vector<UpliftStage> stages_of(const Screening& screening, double empty) {
  const double up = screening.up();
  const std::size_t cappings = screening.levels().capping.size();
  std::vector<UpliftStage> stages = {stage("tank placed, empty, nothing over it", up, empty),
                                     stage("side fill placed, nothing over the tank", up, empty)};
  for (std::size_t i = 1; i < cappings; ++i)
    stages.push_back(stage("capping layer " + std::to_string(i) + " placed", up,
                           empty + screening.cover_weight(i, false)));
  stages.push_back(stage("finished", up, empty + screening.cover_weight(cappings - 1, true)));
  return stages;
}

constexpr const char* kDefinition =
    "Screening only: up = weight of the water the tank displaces below the water level (9.81 "
    "kN/m3); down = empty weight of the tank and weight of what lies over its footprint, less "
    "9.81 kN/m3 below the water level; no friction along the walls. The engineer and the "
    "module's designer decide.";

}  // namespace

void add_uplift(const FillInput& input, const FillContext& context, FillResult& result) {
  const Screening screening(input, context);
  if (screening.empty()) return;
  if (input.least_cover) judge_cover(input, screening, result);
  if (!context.water) return;
  const double empty = context.design.tank.empty_weight.value_or(Force{}).in_kilonewtons();
  result.uplift = stages_of(screening, empty);
  result.uplift_definition = kDefinition;
  const double wanted = context.water->ratio_wanted.value();
  result.cover_wanted = screening.cover_of(wanted * screening.up() - empty);
  result.uplift_inputs = {context.water->level, context.water->cover_unit_weight,
                          context.water->ratio_wanted, Force::kilonewtons(empty)};
  if (!context.design.tank.empty_weight)
    result.head.assumed.emplace_back(
        "empty_weight_kn: 0, as [tank] does not say: the tank's own weight does not hold it down");
  for (const auto& s : result.uplift)
    if (s.ratio && *s.ratio < wanted)
      result.head.findings.push_back(
          {"uplift", "Uplift screening, " + s.stage + ": ratio " + fixed(*s.ratio, 2) +
                         ", wanted " + shortest(wanted) + ". Keep the water down until it is."});
}

}  // namespace squaredig::fill
