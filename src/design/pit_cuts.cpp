#include "design/pit_cuts.h"

#include <algorithm>
#include <set>

#include "design/extras_internal.h"
#include "quantity/number_text.h"

namespace squaredig::design {
namespace {

template <class T>
std::vector<T> for_each_side(const PerSide<T>& given, const Tank& tank, const char* what) {
  std::vector<std::optional<T>> values(tank.sides(), given.all);
  for (const auto& [name, value] : given.by_side) {
    std::size_t side = 0;
    while (side < tank.sides() && tank.side_name(side) != name) ++side;
    if (side == tank.sides())
      refuse(given.place,
             std::string(what) + " for side " + quoted(name) + ", which the tank has not",
             "sides " + tank.side_name(0) + " to " + tank.side_name(tank.sides() - 1),
             "correct the side's name");
    values[side] = value;
  }
  std::vector<T> all;
  for (std::size_t side = 0; side < values.size(); ++side) {
    if (!values[side])
      refuse(given.place, "no " + std::string(what) + " for side " + tank.side_name(side),
             "a " + std::string(what) + " for every side", "add the missing side");
    all.push_back(*values[side]);
  }
  return all;
}

std::vector<double> scaled(const std::vector<Length>& lengths, double factor) {
  std::vector<double> metres;
  metres.reserve(lengths.size());
  for (const Length l : lengths) metres.push_back(l.in_metres() * factor);
  return metres;
}

SideRing toe_ring(const DesignInput& input, const Tank& tank, const geometry::SiteFrame& frame) {
  const auto ring = moved_outward(tank_ring(tank, frame),
                                  scaled(gaps_of(input.pit, tank), input.combined_factor.value()));
  if (ring) return *ring;
  refuse(input.pit.gap.place, "gaps with which the toe crosses itself or two sides in line part",
         "gaps that leave one closed toe line", "correct the gaps");
}

void note_cover(const Cover& cover, const std::vector<Batter>& batters, const Tank& tank,
                PitCuts& pit) {
  if (cover.rings.size() < 2) return;
  if (std::any_of(batters.begin(), batters.end(), [&](Batter b) { return b != batters[0]; }))
    pit.cautions.push_back(
        "At a re-entrant corner the flatter of two unequal batters governs where both compete.");
  for (const auto& [side, other] : cover.sharp)
    pit.cautions.push_back("Side " + tank.side_name(side) + " produced meets side " +
                           tank.side_name(other) +
                           " at under 60 degrees: see the excavated surface there.");
}

// A convex part of the floor, with the batters that govern there, by side number.
struct ConvexPart {
  SideRing ring;
  std::vector<Batter> batters;
  std::vector<double> out;                // how far its benches have come, by side number
  std::vector<Batter> batters_now;        // above the last of them
  std::vector<geometry::ConvexCut> cuts;  // of the floor, then of each bench
};

// Edges in one line become one edge; the flatter of their batters governs on it.
ConvexPart without_straight_corners(const SideRing& ring, const std::vector<Batter>& batters,
                                    const Tank& tank, std::set<std::string>& cautions) {
  ConvexPart part{{}, batters, std::vector<double>(batters.size(), 0.0), {}, {}};
  const std::size_t n = ring.corners.size();
  std::size_t first = 0;
  while (runs_straight(ring, first)) ++first;
  for (std::size_t k = 0; k < n; ++k) {
    const std::size_t i = (first + k) % n, side = ring.side[i];
    if (!runs_straight(ring, i)) {
      part.ring.corners.push_back(ring.corners[i]);
      part.ring.side.push_back(side);
      continue;
    }
    Batter& kept = part.batters[part.ring.side.back()];
    if (kept == batters[side]) continue;
    cautions.insert("Sides " + tank.side_name(std::min(part.ring.side.back(), side)) + " and " +
                    tank.side_name(std::max(part.ring.side.back(), side)) +
                    " lie in one line with unequal batters: the flatter governs on both.");
    kept = Batter::run_per_rise(std::max(kept.run_per_rise(), batters[side].run_per_rise()));
  }
  return part;
}

class PitBuilder {
 public:
  PitBuilder(const DesignInput& input, const Tank& tank, const geometry::SiteFrame& frame)
      : input_(input),
        tank_(tank),
        frame_(frame),
        floor_(plane_in(frame, tank.dig_level)),
        batters_(batters_of(input.pit, tank)),
        toe_(toe_ring(input, tank, frame)) {
    for (std::size_t i = 0; i < tank.sides(); ++i) names_.push_back(tank.side_name(i));
  }

  PitCuts build() {
    PitCuts pit;
    pit.toe = toe_.corners;
    pit.toe_sides = toe_.side;
    const Cover cover = covered_by_convex(toe_);
    note_cover(cover, batters_, tank_, pit);
    std::set<std::string> in_line;
    std::vector<ConvexPart> parts;
    for (const auto& ring : cover.rings)
      parts.push_back(without_straight_corners(ring, batters_, tank_, in_line));
    pit.cautions.insert(pit.cautions.end(), in_line.begin(), in_line.end());
    for (auto& part : parts)
      part.cuts = {convex_cut(spec(part.ring, floor_, part.batters, Part::Floor))};
    add_benches(parts);
    for (std::size_t level = 0; level <= input_.pit.benches.size(); ++level)
      for (const auto& part : parts) pit.cuts.push_back(part.cuts[level]);
    const PitBase base{input_, tank_, frame_, floor_, toe_};
    add_ramps(base, pit);
    add_trenches(base, pit);
    add_sumps(base, pit);
    return pit;
  }

 private:
  CutSpec spec(const SideRing& ring, const geometry::Plane& floor,
               const std::vector<Batter>& batters, Part part) const {
    return {ring, floor, batters, names_, input_.pit.corners, part, input_.pit.batter.place};
  }

  // Each bench is a floor of its own, parallel to the floor and further out on every side: the
  // floor's convex parts, each moved outward, so that a bench of no width is no bench.
  void add_benches(std::vector<ConvexPart>& parts) const {
    std::vector<Bench> benches = input_.pit.benches;
    std::stable_sort(benches.begin(), benches.end(),
                     [](const Bench& a, const Bench& b) { return a.above_floor < b.above_floor; });
    for (auto& part : parts) {
      part.batters_now = part.batters;
      double below = 0;
      for (const Bench& bench : benches) {
        const double height = bench.above_floor.in_metres();
        widen(part, height - below, 0);
        const SideRing contour = convex_moved_outward(part.ring, part.out);
        widen(part, 0, bench.width.in_metres() * input_.combined_factor.value());
        part.batters_now =
            bench.batter ? std::vector<Batter>(tank_.sides(), *bench.batter) : part.batters;
        geometry::Plane plane = floor_;
        plane.height += height;
        const auto cut = convex_cut(
            spec(convex_moved_outward(part.ring, part.out), plane, part.batters_now, Part::Bench));
        for (auto& lower : part.cuts) stop_at(cut, contour.corners, lower);
        part.cuts.push_back(cut);
        below = height;
      }
    }
  }

  // A steeper batter above a bench holds back what lies below it too: where a face of the bench
  // nowhere cuts into the lower cut up to the bench's level, it bounds that cut above.
  static void stop_at(const geometry::ConvexCut& bench, const geometry::Polygon& contour,
                      geometry::ConvexCut& lower) {
    for (const auto& face : bench.faces) {
      const auto clear = [&](geometry::Point2 p) {
        return face.plane.at(p) <= geometry::height_of(lower, p) + 1e-9;
      };
      if (std::all_of(lower.toe.begin(), lower.toe.end(), clear) &&
          std::all_of(contour.begin(), contour.end(), clear))
        lower.faces.push_back(face);
    }
    lower.bounds.insert(lower.bounds.end(), bench.bounds.begin(), bench.bounds.end());
  }

  void widen(ConvexPart& part, double rise, double width) const {
    const auto& corners = part.ring.corners;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const std::size_t side = part.ring.side[i];
      const double grade = outward_grade(floor_, corners[i], corners[(i + 1) % corners.size()]);
      const Batter batter = part.batters_now[side];
      part.out[side] += width;
      if (!batter.vertical()) part.out[side] += rise / (1 / batter.run_per_rise() - grade);
    }
  }

  const DesignInput& input_;
  const Tank& tank_;
  const geometry::SiteFrame& frame_;
  geometry::Plane floor_;
  std::vector<Batter> batters_;
  SideRing toe_;
  std::vector<std::string> names_;
};

}  // namespace

std::vector<Length> gaps_of(const PitInput& pit, const Tank& tank) {
  return for_each_side(pit.gap, tank, "gap");
}

std::vector<Batter> batters_of(const PitInput& pit, const Tank& tank) {
  return for_each_side(pit.batter, tank, "batter");
}

PitCuts pit_cuts(const DesignInput& input, const Tank& tank, const geometry::SiteFrame& frame) {
  return PitBuilder(input, tank, frame).build();
}

}  // namespace squaredig::design
