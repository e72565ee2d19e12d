// By how much the tank would have to be raised or lowered, as planned in all else, for the bedding
// to keep between least and most on the base as it is dug; and where that leaves the pipes.
#include <algorithm>

#include "base/checks_internal.h"
#include "quantity/number_text.h"

namespace squaredig::base {
namespace {

constexpr Length kSlack = Length::metres(1e-9);

std::string level(Elevation e) { return fixed(e.in_metres(), 4); }

std::string invert_words(const std::vector<ShiftedInvert>& inverts) {
  if (inverts.empty()) return "no pipe of the tank is entered, so no invert is told";
  std::string text = "inverts go with it:";
  for (const ShiftedInvert& i : inverts)
    text += std::string(&i == &inverts.front() ? " " : "; ") + quoted(i.name) + " planned " +
            level(i.planned) + " would be " + level(i.at_from) + " to " + level(i.at_to);
  return text;
}

std::string words_of(const Shift& shift, const std::string& skin) {
  const auto [from, to] = *shift.fits;
  const bool as_planned = from <= kSlack && to >= -kSlack;
  return "with the tank shifted in level by " + signed_mm(from) + " to " + signed_mm(to) +
         ", up positive, the bedding keeps " + skin + " everywhere without digging" +
         (as_planned ? ", as planned included; " : "; ") + invert_words(shift.inverts);
}

}  // namespace

Shift fitting_shift(const PlannedBase& planned, Length thinnest, Length thickest) {
  Shift shift;
  if (!planned.least || !planned.most) {
    shift.words = "no shift is sought: it takes both the least and the most of [bedding]";
    return shift;
  }
  const std::string skin = "from " + in_mm(*planned.least) + " to " + in_mm(*planned.most);
  const Length from = *planned.least - thinnest;
  const Length to = *planned.most - thickest;
  if (from > to + kSlack) {
    shift.words = "no shift of the tank in level keeps the bedding " + skin +
                  " everywhere: it varies by " + in_mm(thickest - thinnest) + " where " +
                  in_mm(*planned.most - *planned.least) +
                  " are allowed; trimming what is high, or making up what is low, is needed";
    return shift;
  }
  shift.fits = std::pair(from, std::max(from, to));
  for (const PlannedInvert& pipe : planned.inverts)
    shift.inverts.push_back({pipe.name, pipe.invert, pipe.invert + shift.fits->first,
                             pipe.invert + shift.fits->second});
  shift.words = words_of(shift, skin);
  return shift;
}

}  // namespace squaredig::base
