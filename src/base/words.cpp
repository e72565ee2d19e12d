#include <cmath>

#include "base/checks_internal.h"
#include "quantity/number_text.h"

namespace squaredig::base {

std::string in_mm(Length v) { return fixed(v.in_millimetres(), 1) + " mm"; }

std::string signed_mm(Length v) { return (v > Length{} ? "+" : "") + in_mm(v); }

std::string tied(const design::Tank& tank, GridPoint p) {
  return fixed(tank.along_ab(p).in_metres(), 2) + " m along A-B, " +
         fixed(tank.across_ab(p).in_metres(), 2) + " m in";
}

namespace {

// In millimetres or percent.
double plain(const Amount& amount) {
  if (const auto* length = std::get_if<Length>(&amount)) return length->in_millimetres();
  if (const auto* fall = std::get_if<Fall>(&amount)) return fall->in_percent();
  return std::get<Ratio>(amount).in_percent();
}

}  // namespace

std::string to_settle(const Check& check, double coverage_factor) {
  if (check.verdict != Verdict::NotProven || !check.value || !check.limit || !check.uncertainty)
    return {};
  if (coverage_factor <= 0) return {};
  const bool length = std::holds_alternative<Length>(*check.value);
  const std::string unit = length ? " mm" : " %";
  const int decimals = length ? 2 : 4;
  const double room = std::abs(std::abs(plain(*check.value)) - std::abs(plain(*check.limit)));
  const std::string now = fixed(plain(*check.uncertainty) / coverage_factor, decimals) + unit;
  if (room < 1e-6)
    return "; on its limit: proven neither way by any instrument, its standard uncertainty is " +
           now;
  return "; proven either way once its standard uncertainty is below " +
         fixed(room / coverage_factor, decimals) + unit + ", now " + now;
}

}  // namespace squaredig::base
