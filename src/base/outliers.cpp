// A staff on a stone, a wrong code, a slip of the pen: points that stand off the plane of their
// neighbours by more than the base's own roughness and the survey's uncertainty explain. The worst
// goes first, then its neighbours are looked at without it, so that it blames none of them.
#include <algorithm>
#include <cmath>
#include <set>

#include "base/checks_internal.h"
#include "geometry/fit_plane.h"
#include "quantity/number_text.h"

namespace squaredig::base {
namespace {

constexpr std::size_t kNeighbours = 8;
constexpr double kBeyond = 6;  // times the scale of all departures

class Departures {
 public:
  Departures(const Floor& floor, const DugSurface& dug)
      : floor_(floor), next_to_(floor.points.size()), gone_(floor.points.size(), false) {
    for (geometry::Index t = 0; t < dug.surveyed_triangles; ++t) {
      const auto& ids = dug.surface.triangles[static_cast<std::size_t>(t)];
      for (std::size_t k = 0; k < 3; ++k) {
        const std::size_t a = dug.source[static_cast<std::size_t>(ids[k])];
        const std::size_t b = dug.source[static_cast<std::size_t>(ids[(k + 1) % 3])];
        next_to_[a].push_back(b);
        next_to_[b].push_back(a);
      }
    }
    off_.resize(floor.points.size());
    for (std::size_t i = 0; i < off_.size(); ++i) off_[i] = depart(i);
  }

  // The point farthest beyond what is usual, if there is one.
  std::optional<std::size_t> worst() const {
    const double usual = scale();
    std::optional<std::size_t> found;
    double most = kBeyond;
    for (std::size_t i = 0; i < off_.size(); ++i) {
      const double own = std::max(usual, floor_.points[i].sigma);
      if (gone_[i] || own <= 0 || std::abs(off_[i].scaled) / own <= most) continue;
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

 private:
  struct Off {
    double by = 0;      // above the plane of the neighbours
    double scaled = 0;  // divided by how well that plane is known there
  };

  // Median of the sizes, as the standard deviation of a normal spread.
  double scale() const {
    std::vector<double> sizes;
    for (std::size_t i = 0; i < off_.size(); ++i)
      if (!gone_[i]) sizes.push_back(std::abs(off_[i].scaled));
    const auto middle = sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2);
    std::nth_element(sizes.begin(), middle, sizes.end());
    return 1.4826 * *middle;
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

  Off depart(std::size_t i) const {
    const geometry::Point2 here = floor_.points[i].at;
    std::vector<std::pair<double, std::size_t>> near;
    for (const std::size_t j : round(i)) {
      const geometry::Point2 d = floor_.points[j].at - here;
      if (!gone_[j]) near.emplace_back(geometry::dot(d, d), j);
    }
    std::sort(near.begin(), near.end());
    if (near.size() < 5) return {};
    if (near.size() > kNeighbours) near.resize(kNeighbours);
    std::vector<geometry::Point3> points;
    for (const auto& [d, j] : near)
      points.push_back({floor_.points[j].at.x, floor_.points[j].at.y, floor_.points[j].deviation});
    const auto fit = geometry::fit_least_squares(points);
    if (!fit) return {};
    const geometry::Point2 d = here - fit->plane.about;
    const double variance = 1 + fit->var_height + d.x * d.x * fit->var_xx +
                            2 * d.x * d.y * fit->var_xy + d.y * d.y * fit->var_yy;
    const double by = floor_.points[i].deviation - fit->plane.at(here);
    return {by, by / std::sqrt(variance)};
  }

  const Floor& floor_;
  std::vector<std::vector<std::size_t>> next_to_;
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
    found.push_back({*worst, Length::metres(departures.by(*worst))});
    departures.set_aside(*worst);
  }
  return found;
}

std::string outlier_words(const Outlier& outlier) {
  const bool above = outlier.by > Length{};
  return "point " + quoted(outlier.point) + ", line " + std::to_string(outlier.place.line) +
         " of " + outlier.place.file + ", stands " + in_mm(abs(outlier.by)) +
         (above ? " above" : " below") + " the plane of its neighbours: look at it again";
}

}  // namespace squaredig::base
