#include <cmath>

#include "base/checks_internal.h"
#include "quantity/number_text.h"

namespace squaredig::base {

std::string in_mm(Length v) { return fixed(v.in_millimetres(), 1) + " mm"; }

std::string tied(const design::Tank& tank, GridPoint p) {
  return fixed(tank.along_ab(p).in_metres(), 2) + " m along A-B, " +
         fixed(tank.across_ab(p).in_metres(), 2) + " m in";
}

std::string to_settle(const Check& check, double coverage_factor) {
  if (check.verdict != Verdict::NotProven || !check.value || !check.limit || !check.uncertainty)
    return {};
  const auto* value = std::get_if<Length>(&*check.value);
  const auto* limit = std::get_if<Length>(&*check.limit);
  const auto* u = std::get_if<Length>(&*check.uncertainty);
  if (!value || !limit || !u || coverage_factor <= 0) return {};
  const Length room = abs(abs(*value) - abs(*limit));
  return "; proven either way once its standard uncertainty is below " +
         fixed(room.in_millimetres() / coverage_factor, 2) + " mm, now " +
         fixed(u->in_millimetres() / coverage_factor, 2) + " mm";
}

}  // namespace squaredig::base
