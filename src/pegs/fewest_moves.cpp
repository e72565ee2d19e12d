// Which pegs to move. A deviation outside its limit can only be mended by a peg it depends on, so
// the search branches over those alone, with one move more each round until everything is inside.
#include <algorithm>
#include <limits>

#include "pegs/remade_internal.h"

namespace squaredig::pegs {
namespace {

// Trials are counted against the deviations each of them looks at.
constexpr std::size_t kMostLooks = 2'000'000;

class Search {
 public:
  Search(const std::vector<Deviation>& deviations, const PegSet& measured, const PegSet& designed)
      : deviations_(deviations), measured_(measured), designed_(designed) {}

  // The best set of exactly `count` moves; nothing where none does.
  std::optional<std::vector<std::size_t>> with(std::size_t count) {
    best_.reset();
    best_left_ = std::numeric_limits<double>::infinity();
    seen_.clear();
    branch({}, count);
    return best_;
  }
  bool cut_short() const { return trials_ * deviations_.size() > kMostLooks; }

  // One peg after another, always the one that leaves the least excess.
  std::vector<std::size_t> one_by_one() {
    std::set<std::size_t> moved;
    while (first_outside(put_back(moved)) != nullptr) {
      std::optional<std::size_t> next;
      double least = std::numeric_limits<double>::infinity();
      for (std::size_t peg = 0; peg < measured_.at.size(); ++peg) {
        if (moved.contains(peg) || !measured_.at[peg] || measured_.at[peg] == designed_.at[peg])
          continue;
        auto trial = moved;
        trial.insert(peg);
        const double left = excess(put_back(trial));
        if (left < least) {
          least = left;
          next = peg;
        }
      }
      if (!next) break;
      moved.insert(*next);
    }
    return {moved.begin(), moved.end()};
  }

 private:
  PegSet put_back(const std::set<std::size_t>& moved) const {
    PegSet pegs = measured_;
    for (const std::size_t peg : moved) pegs.at[peg] = designed_.at[peg];
    return pegs;
  }

  static double share(const Deviation& d, const PegSet& pegs) {
    const auto size = size_of(d, pegs);
    return d.limit && size ? *size / d.limit->in_metres() : 0;
  }

  const Deviation* first_outside(const PegSet& pegs) const {
    const auto found = std::find_if(deviations_.begin(), deviations_.end(),
                                    [&](const Deviation& d) { return share(d, pegs) > 1; });
    return found == deviations_.end() ? nullptr : &*found;
  }

  double greatest_share(const PegSet& pegs) const {
    double greatest = 0;
    for (const Deviation& d : deviations_) greatest = std::max(greatest, share(d, pegs));
    return greatest;
  }

  double excess(const PegSet& pegs) const {
    double sum = 0;
    for (const Deviation& d : deviations_) sum += std::max(0.0, share(d, pegs) - 1);
    return sum;
  }

  void branch(const std::set<std::size_t>& moved, std::size_t left) {
    if (cut_short() || !seen_.insert(moved).second) return;
    ++trials_;
    const PegSet pegs = put_back(moved);
    const Deviation* outside = first_outside(pegs);
    if (outside == nullptr) {
      const double remains = greatest_share(pegs);
      if (remains < best_left_) {
        best_left_ = remains;
        best_ = std::vector<std::size_t>(moved.begin(), moved.end());
      }
      return;
    }
    if (left == 0) return;
    for (const std::size_t peg : outside->pegs) {
      if (moved.contains(peg) || measured_.at[peg] == designed_.at[peg]) continue;
      auto more = moved;
      more.insert(peg);
      branch(more, left - 1);
    }
  }

  const std::vector<Deviation>& deviations_;
  const PegSet& measured_;
  const PegSet& designed_;
  std::set<std::set<std::size_t>> seen_;
  std::optional<std::vector<std::size_t>> best_;
  double best_left_ = 0;
  std::size_t trials_ = 0;
};

}  // namespace

Moves fewest_moves(const std::vector<Deviation>& deviations, const PegSet& measured,
                   const PegSet& designed) {
  Search search(deviations, measured, designed);
  for (std::size_t count = 0; count <= measured.at.size() && !search.cut_short(); ++count)
    if (auto found = search.with(count); found && !search.cut_short()) return {*found, true};
  return {search.one_by_one(), false};
}

}  // namespace squaredig::pegs
