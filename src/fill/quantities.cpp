#include <map>

#include "design/footprint.h"
#include "fill/quantities_internal.h"
#include "geometry/sum.h"
#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

using geometry::Plane;
using geometry::Slab;
using geometry::Sum;
using Planes = std::initializer_list<Plane>;

// One kind of fill: its volume, how much of it stands above the existing ground, and its plan area.
struct Amount {
  Sum volume, above, area;
};

struct Amounts {
  Amount bedding, tank, finish;
  std::vector<Amount> lifts, capping;
  std::map<design::Part, Amount> extras;
  Sum fill_to_floor, left_open;
};

class ColumnSums {
 public:
  explicit ColumnSums(const FillLevels& levels) : levels_(levels) {
    amounts_.lifts.resize(levels.lifts.size());
    amounts_.capping.resize(levels.capping.size() - 1);
  }

  void add(const Column& c) {
    column_ = &c;
    if (c.below_floor) {
      const Slab made_up = geometry::slab_between(c.outline, Planes{c.ground}, Planes{c.bottom});
      amounts_.fill_to_floor.add(made_up.volume);
    }
    add_extras(c);
    take(amounts_.bedding, {c.middle}, under_cover({levels_.underside}));
    if (c.zone == Zone::Tank)
      take(amounts_.tank, {c.middle, levels_.underside}, {levels_.tank_top});
    else
      for (std::size_t i = 0; i < levels_.lifts.size(); ++i)
        take(amounts_.lifts[i], {c.middle, levels_.lifts[i].from},
             under_cover({levels_.lifts[i].to}));
    if (c.zone != Zone::Beyond)
      for (std::size_t i = 0; i + 1 < levels_.capping.size(); ++i)
        take(amounts_.capping[i], {c.bottom, levels_.capping[i]}, {levels_.capping[i + 1]});
    take(amounts_.finish, {c.middle, cover_top(c)}, {c.finish});
    if (!c.below_floor)
      amounts_.left_open.add(
          geometry::slab_between(c.outline, left_above(c), Planes{c.ground}).volume);
  }

  Amounts& amounts() { return amounts_; }

 private:
  // Beyond the capping no fill is placed above the finish; under it, all is.
  std::vector<Plane> under_cover(std::vector<Plane> uppers) const {
    if (column_->zone == Zone::Beyond) uppers.push_back(column_->finish);
    return uppers;
  }

  Plane cover_top(const Column& c) const {
    return c.zone == Zone::Beyond ? levels_.tank_top : levels_.capping.back();
  }

  std::vector<Plane> left_above(const Column& c) const {
    if (c.zone == Zone::Beyond) return {c.bottom, c.finish};
    return {c.bottom, c.finish, levels_.capping.back()};
  }

  // Ramp, trench and sump fill: all that belongs to them but for the capping that crosses.
  void add_extras(const Column& c) {
    if (c.owner == design::Part::Floor || c.owner == design::Part::Bench) return;
    Amount& amount = amounts_.extras[c.owner];
    if (c.zone == Zone::Beyond) {
      take(amount, {c.bottom}, {c.middle, c.finish});
      return;
    }
    take(amount, {c.bottom}, {c.middle, levels_.tank_top});
    take(amount, {c.bottom, levels_.capping.back()}, {c.middle, c.finish});
  }

  void take(Amount& amount, std::vector<Plane> lowers, const std::vector<Plane>& uppers) {
    const Slab slab = geometry::slab_between(column_->outline, lowers, uppers);
    if (slab.volume <= 0) return;
    amount.volume.add(slab.volume);
    amount.area.add(slab.area);
    lowers.push_back(column_->ground);
    amount.above.add(geometry::slab_between(column_->outline, lowers, uppers).volume);
  }

  const FillLevels& levels_;
  const Column* column_ = nullptr;
  Amounts amounts_;
};

CompactedVolume placed(const Amount& amount) {
  return CompactedVolume::cubic_metres(amount.volume.value());
}

Volume sum_of_all(const Amounts& amounts, double& above) {
  Sum total, over;
  const auto add = [&](const Amount& a) {
    total.add(a.volume.value());
    over.add(a.above.value());
  };
  add(amounts.bedding);
  add(amounts.tank);
  add(amounts.finish);
  for (const auto& a : amounts.lifts) add(a);
  for (const auto& a : amounts.capping) add(a);
  for (const auto& [part, a] : amounts.extras) add(a);
  total.add(amounts.fill_to_floor.value());
  above = over.value();
  return Volume::cubic_metres(total.value());
}

void add_lifts(const FillContext& context, const FillLevels& levels, const Amounts& amounts,
               FillResult& result) {
  const auto pipes = pipes_by_lift(context, levels, result.head.findings);
  const Elevation underside = context.pit.tank.underside.level;
  for (std::size_t i = 0; i < levels.lifts.size(); ++i) {
    const auto& lift = levels.lifts[i];
    const auto volume = placed(amounts.lifts[i]) - CompactedVolume::filling(pipes[i]);
    result.side_fill.push_back({static_cast<int>(i) + 1,
                                underside + lift.above_underside_from,
                                underside + lift.above_underside_to,
                                volume,
                                {},
                                {},
                                lift.special});
    (lift.special ? result.special : result.side) += volume;
    result.pipe += pipes[i];
  }
}

void add_capping(const FillInput& input, const FillContext& context, const Amounts& amounts,
                 const std::vector<geometry::Polygon>& beside, FillResult& result) {
  double whole = 0;
  for (const auto& part : beside) whole += geometry::area_of(part);
  Elevation from = context.pit.tank.underside.level + context.pit.tank.height;
  for (std::size_t i = 0; i < amounts.capping.size(); ++i) {
    const double area = amounts.capping[i].area.value();
    const Elevation to = from + input.capping[i];
    result.capping.push_back({static_cast<int>(i) + 1,
                              from,
                              to,
                              Area::square_metres(area),
                              placed(amounts.capping[i]),
                              {},
                              {}});
    from = to;
    if (area < whole * (1 - 1e-9))
      result.head.findings.push_back(
          {"capping-stopped",
           "Capping layer " + std::to_string(i + 1) + " reaches only " + fixed(area, 2) + " of " +
               fixed(whole, 2) + " m2: the wall of the hole is nearer than the " +
               fixed(input.capping_beyond.in_metres(), 2) + " m wanted past the footprint."});
  }
}

void add_drawn(const design::Excavation& pit, FillResult& result) {
  const auto& tank = pit.tank;
  result.ab = tank.ab;
  result.tank_height = tank.height;
  result.dig_level = tank.dig_level.level;
  for (const GridPoint p : tank.corners) result.tank_corners.push_back({p, tank.underside.at(p)});
  for (const auto& corner : pit.toe) result.toe.push_back(corner.at);
}

}  // namespace

void add_quantities(const FillInput& input, const FillContext& context, FillResult& result) {
  const auto& pit = context.pit;
  const Length beyond = input.capping_beyond * context.design.combined_factor.value();
  const ColumnSource source{pit, pit.ground, input.finish,
                            design::footprint_parts(pit.tank, pit.frame, Length{}, input.place),
                            design::footprint_parts(pit.tank, pit.frame, beyond, input.place)};
  add_drawn(pit, result);
  const FillLevels levels = levels_of(input, pit);
  ColumnSums sums(levels);
  for (const auto& column : columns_of(source)) sums.add(column);
  auto& amounts = sums.amounts();
  result.bedding = placed(amounts.bedding);
  result.tank = Volume::cubic_metres(amounts.tank.volume.value());
  add_lifts(context, levels, amounts, result);
  add_capping(input, context, amounts, source.beside, result);
  result.ramp = placed(amounts.extras[design::Part::Ramp]);
  result.trench = placed(amounts.extras[design::Part::Trench]);
  result.sump = placed(amounts.extras[design::Part::Sump]);
  result.finish = placed(amounts.finish);
  result.fill_to_floor = Volume::cubic_metres(amounts.fill_to_floor.value());
  double above = 0;
  const Volume sum = sum_of_all(amounts, above);
  result.above_ground = Volume::cubic_metres(above);
  result.left_open = Volume::cubic_metres(amounts.left_open.value());
  const Volume cut = Volume::cubic_metres(pit.dug.volume);
  result.closure = {cut, sum,
                    sum - (cut + result.fill_to_floor + result.above_ground - result.left_open)};
}

}  // namespace squaredig::fill
