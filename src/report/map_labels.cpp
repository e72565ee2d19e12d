#include "report/map_labels.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace squaredig::report {
namespace {

constexpr double kPoints = 8.5;
constexpr double kAbove = kPoints * 0.353 * 0.78, kBelow = kPoints * 0.353 * 0.22;

Box box_of(At baseline, double half) {
  return {{baseline.x - half, baseline.y - kAbove}, {baseline.x + half, baseline.y + kBelow}};
}

}  // namespace

bool MapLabels::is_free(const Box& words) const {
  return std::none_of(taken_.begin(), taken_.end(), [&](const Box& other) {
    return other.top_left.x < words.bottom_right.x && words.top_left.x < other.bottom_right.x &&
           other.top_left.y < words.bottom_right.y && words.top_left.y < other.bottom_right.y;
  });
}

void MapLabels::tell(Canvas& canvas, At wanted, const std::string& words, Colour colour) {
  constexpr double kStep = 0.5, kFarthest = 14;
  constexpr int kDirections = 24;
  const Lettering lettering = Lettering{kPoints, colour, Anchor::Middle}.bold().on(kPaper);
  const double half = canvas.text_width(words, lettering) / 2 + 0.6;
  const auto inside = [&](At p) {
    return At{std::clamp(p.x, drawing_.top_left.x + half, drawing_.bottom_right.x - half), p.y};
  };
  At place = inside(wanted);
  bool found = is_free(box_of(place, half));
  for (double far = kStep; !found && far <= kFarthest; far += kStep)
    for (int i = 0; !found && i < kDirections; ++i) {
      const double turn = 2 * std::numbers::pi * i / kDirections;
      const At tried = inside({wanted.x + far * std::sin(turn), wanted.y - far * std::cos(turn)});
      found = is_free(box_of(tried, half));
      if (found) place = tried;
    }
  const Box ground = box_of(place, half);
  taken_.push_back(ground);
  if (found)  // lines of the map make no dots and dashes between its letters
    canvas.fill({ground.top_left,
                 {ground.bottom_right.x, ground.top_left.y},
                 ground.bottom_right,
                 {ground.top_left.x, ground.bottom_right.y}},
                kPaper);
  canvas.text(place, words, lettering);
}

}  // namespace squaredig::report
