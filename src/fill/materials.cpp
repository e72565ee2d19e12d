#include "fill/proof_internal.h"
#include "fill/sheets.h"
#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

class MaterialList {
 public:
  MaterialList(const FillInput& input, const FillContext& context, FillResult& result)
      : input_(input), context_(context), result_(result) {}

  void add(const std::string& what, CompactedVolume placed, std::optional<Density> density) {
    if (placed.in_cubic_metres() <= 0) return;
    Material m;
    m.what = what;
    m.placed = placed;
    measure_otherwise(m);
    if (density) m.tonnes = placed.in_cubic_metres() * density->in_tonnes_per_cubic_metre();
    result_.materials.push_back(std::move(m));
  }

  // What the placed volume takes in the ground and loose.
  template <class Placed>
  void measure_otherwise(Placed& m) const {
    m.in_the_ground =
        BankVolume::cubic_metres(m.placed.in_cubic_metres() / input_.compacted_per_bank.value());
    if (context_.bulking)
      m.loose =
          LooseVolume::cubic_metres(m.in_the_ground.in_cubic_metres() * context_.bulking->value());
  }

 private:
  const FillInput& input_;
  const FillContext& context_;
  FillResult& result_;
};

}  // namespace

void add_materials(const FillInput& input, const FillContext& context, FillResult& result) {
  MaterialList list(input, context, result);
  const PlacedDensities densities = input.placed_density.value_or(PlacedDensities{});
  list.add("bedding", result.bedding, densities.bedding);
  list.add("special side fill", result.special, densities.special);
  list.add("side fill", result.side, densities.side);
  CompactedVolume capping;
  for (const auto& layer : result.capping) capping += layer.placed;
  list.add("capping", capping, densities.capping);
  list.add("ramp fill", result.ramp, std::nullopt);
  list.add("trench fill", result.trench, std::nullopt);
  list.add("sump fill", result.sump, std::nullopt);
  list.add("finish", result.finish, std::nullopt);
  list.add("fill to floor", CompactedVolume::filling(result.fill_to_floor), std::nullopt);
  for (auto& lift : result.side_fill) list.measure_otherwise(lift);
  for (auto& layer : result.capping) list.measure_otherwise(layer);
  result.factors.push_back("1 m3 in the ground becomes " +
                           shortest(input.compacted_per_bank.value()) + " m3 compacted.");
  if (context.bulking)
    result.factors.push_back("1 m3 in the ground becomes " + shortest(context.bulking->value()) +
                             " m3 loose.");
}

void add_sheets(const FillInput& input, const FillContext& context, FillResult& result) {
  const auto& tank = context.pit.tank;
  const double scale = context.design.combined_factor.value();
  // of an outline that is no rectangle, the box along A-B that holds it
  Length length, width;
  for (const GridPoint p : tank.corners) {
    length = std::max(length, tank.along_ab(p));
    width = std::max(width, tank.across_ab(p));
  }
  length = length / scale;
  width = width / scale;
  if (tank.sides() != 4)
    result.head.cautions.emplace_back(
        "Sheet materials are counted for the rectangle along A-B that holds the tank.");
  const Length beyond = input.capping_beyond * 2;
  result.geotextile = wrap_box(length, width, tank.height, input.geotextile, input.geotextile_lap);
  result.liner = wrap_box(length, width, tank.height, input.liner, input.liner_lap);
  result.geogrid = lay_layers(length + beyond, width + beyond, input.geogrid_layers, input.geogrid,
                              input.geogrid_lap);
}

}  // namespace squaredig::fill
