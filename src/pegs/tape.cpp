#include <algorithm>
#include <cmath>
#include <limits>

#include "pegs/tape_internal.h"
#include "quantity/number_text.h"

namespace squaredig::pegs {
namespace {

// The ends that are taped between, each once.
struct Ends {
  std::vector<std::string> names;
  std::vector<GridPoint> designed;
};

std::optional<GridPoint> designed_place(const PegsResult& design, const std::string& name) {
  for (const Corner& c : design.corners)
    if (c.name == name) return c.at.at;
  if (const auto* peg = find_peg(design.reference, name)) return peg->at;
  return std::nullopt;
}

std::size_t end_named(const PegsResult& design, const std::string& name, const Place& place,
                      Ends& ends) {
  const auto known = std::find(ends.names.begin(), ends.names.end(), name);
  if (known != ends.names.end()) return static_cast<std::size_t>(known - ends.names.begin());
  const auto at = designed_place(design, name);
  if (!at)
    refuse(place, quoted(name) + " is no corner or peg of this tank",
           "names such as " + quoted(design.corners[0].name) + " and " +
               quoted(design.corners[0].name + "1"),
           "correct the name or leave the line out");
  ends.names.push_back(name);
  ends.designed.push_back(*at);
  return ends.names.size() - 1;
}

double horizontal_of(const TapedLength& taped) {
  const double slope = taped.length.in_metres();
  const double rise = taped.height_difference.value_or(Length{}).in_metres();
  if (std::abs(rise) >= slope)
    refuse(taped.place,
           "a height difference of " + metres_text(*taped.height_difference) + " over a taped " +
               metres_text(taped.length),
           "a height difference smaller than the length", "correct the row");
  return std::sqrt((slope - rise) * (slope + rise));
}

// The tank's own name of the line between two corners, whichever way it was taped.
std::string line_name(const PegsResult& design, const std::string& a, const std::string& b) {
  for (const auto* lengths : {&design.sides, &design.diagonals})
    for (const NamedLength& l : *lengths)
      if (l.name == a + b || l.name == b + a) return l.name;
  return a + "-" + b;
}

std::vector<TapeLine> lines_of(const std::vector<TapedLength>& tape, const PegsResult& design,
                               Ends& ends) {
  std::vector<TapeLine> lines;
  for (const TapedLength& taped : tape) {
    TapeLine line;
    line.from = end_named(design, taped.from, taped.place, ends);
    line.to = end_named(design, taped.to, taped.place, ends);
    if (line.from == line.to)
      refuse(taped.place, "a length from " + quoted(taped.from) + " to itself",
             "two different points", "correct the row");
    line.name = line_name(design, taped.from, taped.to);
    line.horizontal = horizontal_of(taped);
    line.design =
        geodesy::to_ground_length(distance(ends.designed[line.from], ends.designed[line.to]),
                                  design.scale.combined)
            .in_metres();
    lines.push_back(std::move(line));
  }
  return lines;
}

// The mean of a length taped more than once.
std::optional<Length> taped(const std::vector<TapeLine>& lines, const std::string& name) {
  double sum = 0;
  int count = 0;
  for (const TapeLine& line : lines)
    if (line.name == name) {
      sum += line.horizontal;
      ++count;
    }
  return count == 0 ? std::nullopt : std::optional(Length::metres(sum / count));
}

Check check_of(std::string name, std::optional<Length> off, std::optional<Length> limit) {
  Check check;
  check.name = std::move(name);
  check.limit = limit;
  if (off) check.value = abs(*off);
  if (limit)
    check.verdict = !off                    ? Verdict::NotProven
                    : check.value <= *limit ? Verdict::Conforms
                                            : Verdict::DoesNotConform;
  return check;
}

void add_checks(const PegsInput& input, const PegsResult& design,
                const std::vector<TapeLine>& lines, TapeResult& result) {
  const auto off = [&](const NamedLength& l) -> std::optional<Length> {
    const auto length = taped(lines, l.name);
    return length ? std::optional(*length - l.ground) : std::nullopt;
  };
  for (const NamedLength& l : design.sides) {
    result.sides.push_back(taped(lines, l.name));
    result.checks.push_back(check_of("side " + l.name, off(l), input.side_tolerance));
  }
  for (const NamedLength& l : design.diagonals) {
    result.diagonals.push_back(taped(lines, l.name));
    // of many corners not every diagonal need be taped: those that are, are judged
    if (design.sides.size() == 4 || result.diagonals.back())
      result.checks.push_back(check_of("diagonal " + l.name, off(l), input.diagonal_tolerance));
  }
  if (design.sides.size() != 4) return;
  std::optional<Length> difference;
  if (result.diagonals[0] && result.diagonals[1]) {
    result.diagonal_difference = *result.diagonals[0] - *result.diagonals[1];
    difference =
        *result.diagonal_difference - (design.diagonals[0].ground - design.diagonals[1].ground);
  }
  result.checks.push_back(check_of("diagonal difference", difference, input.diagonal_tolerance));
}

Verdict overall(const std::vector<Check>& checks, bool shape_is_fixed) {
  const auto any = [&](Verdict v) {
    return std::any_of(checks.begin(), checks.end(),
                       [&](const Check& c) { return c.verdict == v; });
  };
  if (any(Verdict::DoesNotConform)) return Verdict::DoesNotConform;
  if (any(Verdict::NotProven)) return Verdict::NotProven;
  if (!any(Verdict::Conforms)) return Verdict::NotAsked;
  return shape_is_fixed ? Verdict::Conforms : Verdict::NotProven;
}

// How far off the others a length may be before it is doubted: its tolerance; without one,
// anything.
std::vector<double> limits_of(const PegsInput& input, const PegsResult& design,
                              const std::vector<TapeLine>& lines) {
  std::vector<double> limits;
  for (const TapeLine& line : lines) {
    const bool side = std::any_of(design.sides.begin(), design.sides.end(),
                                  [&](const NamedLength& l) { return l.name == line.name; });
    const auto& limit = side ? input.side_tolerance : input.diagonal_tolerance;
    limits.push_back(limit ? limit->in_metres() : std::numeric_limits<double>::infinity());
  }
  return limits;
}

std::string doubt_words(const std::vector<TapeLine>& lines, const TapeDoubt& doubt) {
  if (doubt.wrong) {
    const TapeLine& line = lines[*doubt.wrong];
    const Length off = Length::metres(line.horizontal - *doubt.by_the_others[*doubt.wrong]);
    return line.name + " is most likely wrong: it reads " + millimetres_text(abs(off)) +
           (off < Length{} ? " short" : " long") + " of what the other lengths say. Tape it again.";
  }
  if (!doubt.tied.empty()) {
    std::string names;
    for (const std::size_t i : doubt.tied) names += (names.empty() ? "" : ", ") + lines[i].name;
    return "The lengths contradict one another, and one of these is wrong: " + names +
           ". Tape them again.";
  }
  if (std::any_of(doubt.by_the_others.begin(), doubt.by_the_others.end(),
                  [](const auto& l) { return l.has_value(); }))
    return "The lengths agree with one another.";
  return "There are too few lengths to check one another.";
}

// Sides and diagonals alone say what shape it is; equal diagonals do not.
std::string equal_diagonals_words(const PegsResult& design, const TapeResult& result) {
  const auto& designed = design.diagonals;
  if (designed.size() != 2 || abs(designed[0].grid - designed[1].grid) > Length::millimetres(1))
    return {};
  const auto failed = [](const Check& c) { return c.verdict == Verdict::DoesNotConform; };
  if (!result.diagonal_difference ||
      std::none_of(result.checks.begin(), result.checks.end(), failed))
    return {};
  const Check& difference = result.checks.back();
  if (!difference.limit || abs(difference.value) > *difference.limit) return {};
  return " The diagonals agree, and still it is no rectangle as designed: equal diagonals prove "
         "none.";
}

// What is outside by most, and what the lengths together say of it.
void tell_outside(const TapeResult& result, ResultHead& head) {
  if (result.verdict != Verdict::DoesNotConform) return;
  const Check* worst = nullptr;
  for (const Check& check : result.checks)
    if (check.verdict == Verdict::DoesNotConform &&
        (worst == nullptr || check.value > worst->value))
      worst = &check;
  head.findings.push_back({"tape", "Tape: " + worst->name + " is " +
                                       millimetres_text(worst->value) + " off design (permitted " +
                                       millimetres_text(*worst->limit) + "). " + result.words});
}

// Each length, with what the others make of it; and the one that is most likely wrong.
void add_doubt(const std::vector<TapedLength>& tape, const std::vector<TapeLine>& lines,
               TapeDoubt in_doubt, const PegsResult& design, TapeResult& result) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto others = in_doubt.by_the_others[i];
    result.lines.push_back({lines[i].name, tape[i].length, Length::metres(lines[i].horizontal),
                            Length::metres(lines[i].design),
                            others ? std::optional(Length::metres(*others)) : std::nullopt});
  }
  const bool contradict = in_doubt.wrong || !in_doubt.tied.empty();
  if (contradict && result.verdict == Verdict::Conforms) {
    // small errors of long diagonals look large on short sides: not a wrong length
    result.words = "Each length is inside its tolerance.";
    return;
  }
  result.words = doubt_words(lines, in_doubt) + equal_diagonals_words(design, result);
  if (!in_doubt.wrong) return;
  const TapeLine& wrong = lines[*in_doubt.wrong];
  result.likely_wrong = wrong.name;
  result.likely_wrong_by =
      Length::metres(wrong.horizontal - *in_doubt.by_the_others[*in_doubt.wrong]);
}

}  // namespace

TapeResult check_tape(const Work& work, const PegsResult& design, ResultHead& head) {
  Ends ends;
  const auto lines = lines_of(*work.input.tape, design, ends);
  TapeResult result;
  add_checks(work.input, design, lines, result);
  const double ground_per_grid = 1 / design.scale.combined.value();
  const auto shape = shape_of(lines, ends.designed, ground_per_grid, std::nullopt);
  result.verdict = overall(result.checks, shape.has_value());
  add_doubt(*work.input.tape, lines,
            doubt(lines, ends.designed, ground_per_grid, limits_of(work.input, design, lines)),
            design, result);
  tell_outside(result, head);
  if (!shape)
    head.findings.push_back({"tape-shape",
                             "Tape: the lengths do not fix the shape of the tank: tape the missing "
                             "sides or diagonals."});
  return result;
}

}  // namespace squaredig::pegs
