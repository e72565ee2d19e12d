// A staff on a stone, a wrong code, a slip of the pen: points that stand off the plane of their
// neighbours by more than the base's own roughness and the survey's uncertainty explain, and alone.
// Neighbours that stand off the same way bear each other out: together they are a hump or a hollow
// of the ground. The worst goes first, then its neighbours are looked at without it, so that it
// blames none of them.
#include <algorithm>
#include <cmath>
#include <set>

#include "base/checks_internal.h"
#include "geometry/fit_plane.h"
#include "quantity/number_text.h"

namespace squaredig::base {
namespace {

using geometry::Point2;

constexpr std::size_t kNeighbours = 8;
constexpr double kBeyond = 6;          // times the scale of all departures
constexpr double kBearsOut = 1.0 / 3;  // of a departure: a neighbour as far off bears it out
constexpr double kSamePlace = 0.001;   // metres, where no uncertainty in plan is stated

struct Off {
  double by = 0;      // above the plane of the neighbours
  double scaled = 0;  // divided by how well that plane is known there
  bool alone = true;  // no neighbour bears it out
};

class Departures {
 public:
  Departures(const Floor& floor, const DugSurface& dug)
      : floor_(floor),
        next_to_(floor.points.size()),
        twins_(floor.points.size()),
        gone_(floor.points.size(), false) {
    find_twins();
    find_neighbours(dug);
    off_.resize(floor.points.size());
    for (std::size_t i = 0; i < off_.size(); ++i) off_[i] = depart(i);
  }

  // Of those that stand alone the one farthest beyond what is usual, if there is one.
  std::optional<std::size_t> worst() const {
    const double usual = scale();
    std::optional<std::size_t> found;
    double most = kBeyond;
    for (std::size_t i = 0; i < off_.size(); ++i) {
      const double own = std::max(usual, floor_.points[i].sigma);
      if (gone_[i] || !off_[i].alone || own <= 0) continue;
      if (std::abs(off_[i].scaled) / own <= most) continue;
      most = std::abs(off_[i].scaled) / own;
      found = i;
    }
    return found;
  }

  void set_aside(std::size_t i) {
    gone_[i] = true;
    for (const std::size_t j : round(i)) off_[j] = depart(j);
  }
  double by(std::size_t i) const { return off_[i].by; }

  // A point at the same place that says otherwise.
  std::optional<std::size_t> contradicted_by(std::size_t i) const {
    for (const std::size_t j : twins_[i]) {
      const double apart = floor_.points[i].deviation - floor_.points[j].deviation;
      if (!gone_[j] && std::abs(apart) > std::abs(off_[i].by) / 2) return j;
    }
    return std::nullopt;
  }

 private:
  // Two points at one place, as far as their uncertainty in plan can tell.
  void find_twins() {
    std::vector<std::size_t> order(floor_.points.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return floor_.points[a].at.x < floor_.points[b].at.x;
    });
    double widest = 0;
    for (const FloorPoint& p : floor_.points) widest = std::max(widest, p.sigma_plan);
    const double reach = std::max(kSamePlace, floor_.coverage_factor * std::sqrt(2) * widest);
    for (std::size_t a = 0; a < order.size(); ++a)
      for (std::size_t b = a + 1; b < order.size(); ++b) {
        const FloorPoint &p = floor_.points[order[a]], &q = floor_.points[order[b]];
        if (q.at.x - p.at.x > reach) break;
        const double same = floor_.coverage_factor * std::hypot(p.sigma_plan, q.sigma_plan);
        const Point2 apart = q.at - p.at;
        if (std::hypot(apart.x, apart.y) > std::max(kSamePlace, same)) continue;
        twins_[order[a]].push_back(order[b]);
        twins_[order[b]].push_back(order[a]);
      }
  }

  // Corners of the same triangles. Of several points at one position the surface has one: the
  // others take its neighbours.
  void find_neighbours(const DugSurface& dug) {
    for (geometry::Index t = 0; t < dug.surveyed_triangles; ++t) {
      const auto& ids = dug.surface.triangles[static_cast<std::size_t>(t)];
      for (std::size_t k = 0; k < 3; ++k) {
        const std::size_t a = dug.source[static_cast<std::size_t>(ids[k])];
        const std::size_t b = dug.source[static_cast<std::size_t>(ids[(k + 1) % 3])];
        next_to_[a].push_back(b);
        next_to_[b].push_back(a);
      }
    }
    const auto measured = next_to_;
    for (std::size_t i = 0; i < measured.size(); ++i) {
      if (!measured[i].empty()) continue;
      for (const std::size_t twin : twins_[i])
        if (next_to_[i].empty()) next_to_[i] = measured[twin];
    }
  }

  // Median of the sizes, as the standard deviation of a normal spread.
  double scale() const {
    std::vector<double> sizes;
    for (std::size_t i = 0; i < off_.size(); ++i)
      if (!gone_[i]) sizes.push_back(std::abs(off_[i].scaled));
    const auto middle = sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2);
    std::nth_element(sizes.begin(), middle, sizes.end());
    return 1.4826 * *middle;
  }

  bool counts_beside(std::size_t i, std::size_t j) const {
    return !gone_[j] && std::find(twins_[i].begin(), twins_[i].end(), j) == twins_[i].end();
  }

  // The corners next to a point and those next to them.
  std::set<std::size_t> round(std::size_t i) const {
    std::set<std::size_t> near;
    for (const std::size_t a : next_to_[i]) {
      near.insert(a);
      near.insert(next_to_[a].begin(), next_to_[a].end());
    }
    near.erase(i);
    return near;
  }

  // Those of them that count, nearest first, at most so many.
  std::vector<geometry::Point3> near(std::size_t i, std::size_t most) const {
    std::vector<std::pair<double, std::size_t>> order;
    for (const std::size_t j : round(i)) {
      const Point2 d = floor_.points[j].at - floor_.points[i].at;
      if (counts_beside(i, j)) order.emplace_back(geometry::dot(d, d), j);
    }
    std::sort(order.begin(), order.end());
    std::vector<geometry::Point3> points;
    for (const auto& [d, j] : order)
      if (points.size() < most)
        points.push_back(
            {floor_.points[j].at.x, floor_.points[j].at.y, floor_.points[j].deviation});
    return points;
  }

  Off depart(std::size_t i) const {
    const auto points = near(i, kNeighbours);
    if (points.size() < 5) return {};
    const auto fit = geometry::fit_least_squares(points);
    if (!fit) return {};
    const Point2 d = floor_.points[i].at - fit->plane.about;
    const double variance = 1 + fit->var_height + d.x * d.x * fit->var_xx +
                            2 * d.x * d.y * fit->var_xy + d.y * d.y * fit->var_yy;
    const double by = floor_.points[i].deviation - fit->plane.at(floor_.points[i].at);
    return {by, by / std::sqrt(variance), !borne_out(i)};
  }

  // A wider plane than that of the departure, so that a hollow of a few points does not carry it
  // down with it.
  bool borne_out(std::size_t i) const {
    const auto fit = geometry::fit_least_squares(near(i, floor_.points.size()));
    if (!fit) return false;
    const auto off = [&](std::size_t j) {
      return floor_.points[j].deviation - fit->plane.at(floor_.points[j].at);
    };
    const double own = off(i);
    return std::any_of(next_to_[i].begin(), next_to_[i].end(), [&](std::size_t j) {
      return counts_beside(i, j) && off(j) / own >= kBearsOut;
    });
  }

  const Floor& floor_;
  std::vector<std::vector<std::size_t>> next_to_;
  std::vector<std::vector<std::size_t>> twins_;  // at the same place
  std::vector<bool> gone_;
  std::vector<Off> off_;
};

}  // namespace

std::vector<OutlierRow> find_outliers(const Floor& floor, const DugSurface& dug) {
  const std::size_t most = std::max<std::size_t>(1, floor.points.size() / 20);
  Departures departures(floor, dug);
  std::vector<OutlierRow> found;
  while (found.size() < most) {
    const auto worst = departures.worst();
    if (!worst) break;
    found.push_back(
        {*worst, Length::metres(departures.by(*worst)), departures.contradicted_by(*worst)});
    departures.set_aside(*worst);
  }
  return found;
}

std::string outlier_words(const Outlier& outlier) {
  const bool above = outlier.by > Length{};
  const std::string who = "point " + quoted(outlier.point) + ", line " +
                          std::to_string(outlier.place.line) + " of " + outlier.place.file +
                          ", stands " + in_mm(abs(outlier.by)) + (above ? " above" : " below") +
                          " the plane of its neighbours";
  if (!outlier.contradicted_by.empty())
    return who + ", and point " + quoted(outlier.contradicted_by) +
           " at the same place says otherwise: one of the two is wrong, level the place again";
  return who +
         ", and none of them bears it out: a stone under the staff, a wrong code, or a spot "
         "narrower than the points are apart; level it again";
}

}  // namespace squaredig::base
